/** Reading a measured curve between its points. */
import { heightOf, type Points } from '../quantity/line.ts';
import type { Curve } from '../sheet/types.ts';

const POINTS: Points<Curve> = {
  count: ({ x }) => x.length,
  x: ({ x }, at) => x[at]!,
  y: ({ y }, at) => y[at]!,
};

/** Straight line between the neighbouring points; NaN outside the curve, for which `outside` gives the reason. */
export const interpolate = (points: Curve, x: number): number => heightOf(POINTS, points, x, 'nothing');

/** Why a curve says nothing at x, or undefined when it does. `show` writes a value of x with its unit. */
export function outside(points: Curve, x: number, show: (x: number) => string): string | undefined {
  const first = points.x[0]!;
  const last = points.x[points.x.length - 1]!;
  if (x >= first && x <= last) return undefined;
  return `the curve runs from ${show(first)} to ${show(last)} and says nothing about ${show(x)}`;
}

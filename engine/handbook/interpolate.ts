/** Reading a measured curve between its points. */
import type { Curve } from '../sheet/types.ts';

/** Straight line between the neighbouring points; NaN outside the curve, for which `outside` gives the reason. */
export function interpolate(points: Curve, x: number): number {
  const last = points.x.length - 1;
  if (outside(points, x, String) !== undefined) return Number.NaN;
  let right = points.x.findIndex((each) => each >= x);
  if (right === 0) return points.y[0]!;
  if (right < 0) right = last;
  const x0 = points.x[right - 1]!;
  const x1 = points.x[right]!;
  const y0 = points.y[right - 1]!;
  return y0 + ((points.y[right]! - y0) * (x - x0)) / (x1 - x0);
}

/** Why a curve says nothing at x, or undefined when it does. `show` writes a value of x with its unit. */
export function outside(points: Curve, x: number, show: (x: number) => string): string | undefined {
  const first = points.x[0]!;
  const last = points.x[points.x.length - 1]!;
  if (x >= first && x <= last) return undefined;
  return `the curve runs from ${show(first)} to ${show(last)} and says nothing about ${show(x)}`;
}

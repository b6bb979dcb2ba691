/** What a curve has to be before a procedure may read it. */
import type { Argument } from './types.ts';

/** Why a curve cannot be used, or undefined when it can. */
export function curveProblem(name: string, argument: Argument): string | undefined {
  if (typeof argument === 'number') return `${name} must be a curve, not one number`;
  const { x, y } = argument;
  if (x.length === 0) return `${name} has no points`;
  if (x.length !== y.length) return `${name} needs as many values across as up`;
  if (![...x, ...y].every(Number.isFinite)) return `${name} has a point that is not a finite number`;
  if (x.some((each, at) => at > 0 && each <= x[at - 1]!)) {
    return `${name} needs its points in ascending order, none twice`;
  }
  return undefined;
}

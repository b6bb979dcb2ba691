/** Whole numbers from measured ones: pole pairs, lines. */
import { budgetOf } from './estimate.ts';
import type { Estimate } from './types.ts';

export interface Whole {
  readonly nearest: number;
  /** Whole numbers within the ±, the nearest first. */
  readonly within: readonly number[];
}

/** Which whole numbers the ± leaves; none when it lies between two. */
export function wholeWithin(of: Estimate): Whole {
  const { expanded } = budgetOf(of);
  const nearest = Math.round(of.value);
  const within: number[] = [];
  for (let off = 0; off <= 20; off++)
    for (const each of off === 0 ? [nearest] : [nearest - off, nearest + off])
      if (each > 0 && Math.abs(each - of.value) <= expanded + 1e-9 * nearest) within.push(each);
  return { nearest, within };
}

/** Numbers of the machine that may not be known, and what is worked out from them. */
import { weaker } from '../assess/value.ts';
import type { Basis } from '../quantity/types.ts';

/** A number of the machine, or the facts it waits for. */
export interface Known {
  readonly value: number | null;
  readonly needs: readonly string[];
  readonly basis?: Basis | undefined;
}

/** Not there, and no fact would bring it. */
export const NONE: Known = { value: null, needs: [] };

/** Works on several numbers; unknown while one of them is. */
export function from(parts: readonly Known[], how: (...values: number[]) => number): Known {
  const needs = [...new Set(parts.flatMap((each) => each.needs))];
  if (parts.some(({ value }) => value === null)) return { value: null, needs };
  let basis: Basis | undefined;
  for (const each of parts) basis = weaker(basis, each.basis);
  return { value: how(...parts.map(({ value }) => value as number)), needs: [], basis };
}

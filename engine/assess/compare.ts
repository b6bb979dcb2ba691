/** Capacity against demand, with the doubt of both. */
import type { Verdict } from './finding.ts';
import { normalBelow } from './normal.ts';
import { combine, type Known, uncertainty } from './value.ts';

/** Chance of fitting below which a verdict is at best tight. */
export const SURE = 0.95;

export interface Compared {
  readonly margin: number | null;
  readonly range?: readonly [number, number];
  readonly chance?: number;
  readonly verdict: Verdict;
}

/** Capacity against demand, both with their doubt. */
export function compare(demand: Known, capacity: Known, tight: number): Compared {
  if (demand.value <= 0) return { margin: null, verdict: 'fits' };
  const margin = Math.max(0, capacity.value / demand.value);
  const spare = uncertainty(combine(1, capacity.doubt, -1, demand.doubt));
  let verdict: Verdict = margin < 1 ? 'fails' : margin < tight ? 'tight' : 'fits';
  if (spare === 0) return { margin, verdict };
  const chance = normalBelow((capacity.value - demand.value) / spare);
  if (verdict === 'fits' && chance < SURE) verdict = 'tight';
  const relative = uncertainty(
    combine(1 / Math.max(capacity.value, Number.MIN_VALUE), capacity.doubt, -1 / demand.value, demand.doubt),
  );
  const reach = Math.exp(Math.min(1.96 * relative, 20));
  return { margin, verdict, chance, range: [margin / reach, margin * reach] };
}

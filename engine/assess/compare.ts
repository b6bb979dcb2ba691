/** Capacity against demand, with the doubt of both. */
import type { Verdict } from '../quantity/verdict.ts';
import type { Doubt } from './finding.ts';
import { normalBelow } from './normal.ts';
import type { Spreading } from './spread.ts';
import { combine, type Known, uncertainty } from './value.ts';

/** Chance of fitting below which a verdict is at best tight. */
export const SURE = 0.95;

/** Parts of the doubt smaller than this are not named. */
const LEAST_SHARE = 0.01;

export interface Compared {
  readonly margin: number | null;
  readonly range?: readonly [number, number];
  readonly chance?: number;
  readonly verdict: Verdict;
  readonly doubts?: readonly Doubt[];
}

/**
 * Capacity against demand, both with their doubt. `spreading` takes the place of chance and range worked out from slopes,
 * where it was drawn.
 */
export function compare(
  demand: Known,
  capacity: Known,
  tight: number,
  spreading?: Pick<Spreading, 'chance' | 'range'>,
): Compared {
  const margin = demand.value <= 0 ? null : Math.max(0, capacity.value / demand.value);
  const spare = combine(1, capacity.doubt, -1, demand.doubt);
  const deviation = uncertainty(spare);
  let verdict: Verdict = margin === null ? 'fits' : margin < 1 ? 'fails' : margin < tight ? 'tight' : 'fits';
  if (deviation === 0) return { margin, verdict };
  const chance = spreading?.chance ?? normalBelow((capacity.value - demand.value) / deviation);
  if (verdict === 'fits' && chance < SURE) verdict = 'tight';
  const doubts = doubtsOf(spare, deviation);
  if (margin === null) return { margin, verdict, chance, doubts };
  if (spreading) return { margin, verdict, chance, range: spreading.range, doubts };
  const relative = uncertainty(
    combine(1 / Math.max(capacity.value, Number.MIN_VALUE), capacity.doubt, -1 / demand.value, demand.doubt),
  );
  const reach = Math.exp(Math.min(1.96 * relative, 20));
  return { margin, verdict, chance, range: [margin / reach, margin * reach], doubts };
}

const doubtsOf = (spare: ReadonlyMap<string, number>, deviation: number): Doubt[] =>
  [...spare]
    .map(([source, part]) => ({ source, share: (part / deviation) ** 2 }))
    .filter(({ share }) => share >= LEAST_SHARE)
    .sort((a, b) => b.share - a.share);

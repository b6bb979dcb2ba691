/** Two faults, the first unnoticed: what the second then does. In pieces, so that it can show progress and be cancelled. */
import type { Baseline } from './baseline.ts';
import type { NamedFault } from './faults.ts';
import { type Judgement, judge } from './judge.ts';

export interface FaultPair {
  readonly first: NamedFault;
  readonly second: NamedFault;
  readonly judged: Judgement;
}

export interface PairProgress {
  readonly done: number;
  readonly all: number;
  /** Found in this piece. */
  readonly found: readonly FaultPair[];
}

/** Pairs to each piece. */
const PIECE = 20;

/**
 * Every pair whose first is unnoticed and whose second alone is not dangerous, but together they are. Stop asking and it
 * stops; each piece says how far it has come.
 */
export function* dangerousPairs(
  base: Baseline,
  judged: readonly (readonly [NamedFault, Judgement])[],
): Generator<PairProgress, void, void> {
  const firsts = judged.filter(([, { verdict }]) => verdict === 'unnoticed').map(([fault]) => fault);
  const seconds = judged.filter(([, { verdict }]) => verdict !== 'dangerous').map(([fault]) => fault);
  const all = firsts.length * seconds.length;
  let done = 0;
  let found: FaultPair[] = [];
  for (const [n, first] of firsts.entries())
    for (const second of seconds) {
      done++;
      // Two that are both unnoticed are one pair, whichever comes first.
      const other = firsts.indexOf(second);
      if (second !== first && (other < 0 || other > n)) {
        const both = judge(base, [...first.faults, ...second.faults]);
        if (both.verdict === 'dangerous') found.push({ first, second, judged: both });
      }
      if (done % PIECE === 0 || done === all) {
        yield { done, all, found };
        found = [];
      }
    }
}

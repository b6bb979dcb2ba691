/**
 * Faults that nobody is told of are still there when the next one comes, so the two count together: for each the next fault
 * with which it no longer stops.
 */
import type { Baseline } from './baseline.ts';
import type { NamedFault } from './faults.ts';
import { type Judgement, judge } from './judge.ts';
import type { LookProgress } from './pieces.ts';

export interface NextFault {
  readonly fault: NamedFault;
  readonly judged: Judgement;
}

type Judged = readonly (readonly [NamedFault, Judgement])[];

/**
 * The first dangerous next fault by the id of the unnoticed one; absent where no single next fault is dangerous. Faults that
 * keep on the same things and leave the same ones to let go are tried once.
 */
export function* nextFaults(
  base: Baseline,
  judged: Judged,
): Generator<LookProgress, ReadonlyMap<string, NextFault>, void> {
  const firsts = judged.filter(([, { verdict }]) => verdict === 'unnoticed');
  const seconds = judged
    .filter(([{ mayExclude }, { verdict }]) => verdict !== 'dangerous' && !mayExclude)
    // What keeps something on ends stopping sooner than what only breaks.
    .sort(([, a], [, b]) => Math.sign(b.kept.length) - Math.sign(a.kept.length));
  const known = new Map<string, NextFault | undefined>();
  const found = new Map<string, NextFault>();
  for (const [n, [first, of]] of firsts.entries()) {
    const alike = alikeOf(first, of);
    if (!known.has(alike)) known.set(alike, nextOf(base, first, seconds));
    const next = known.get(alike);
    if (next) found.set(first.id, next);
    yield { doing: 'the next fault after each that is not noticed', done: n + 1, all: firsts.length };
  }
  return found;
}

const alikeOf = ({ id, element }: NamedFault, { kept, by }: Judgement): string =>
  kept.length > 0 ? [...kept, '|', ...by].join(' ') : id.includes(' to ') ? id : `${element} ${by.join(' ')}`;

function nextOf(base: Baseline, first: NamedFault, seconds: Judged): NextFault | undefined {
  for (const [fault] of seconds) {
    if (fault === first) continue;
    const judged = judge(base, [...first.faults, ...fault.faults]);
    if (judged.verdict === 'dangerous') return { fault, judged };
  }
  return undefined;
}

/** The four answers a question can have, their order and their number. */

export type Verdict = 'fits' | 'tight' | 'fails' | 'unknown';

/** Worst first: what is known to fail, then what nobody knows, then what is close. */
export const WORST_FIRST: readonly Verdict[] = ['fails', 'unknown', 'tight', 'fits'];

/** Anything that was judged. */
export interface Judged {
  readonly verdict: Verdict;
}

/** Sorts worst first. */
export const byVerdict = (a: Judged, b: Judged): number =>
  WORST_FIRST.indexOf(a.verdict) - WORST_FIRST.indexOf(b.verdict);

/** The worst that is there; undefined where there is nothing. */
export const worstVerdict = (all: readonly Judged[]): Verdict | undefined =>
  WORST_FIRST.find((each) => all.some(({ verdict }) => verdict === each));

export type Counts = Readonly<Record<Verdict, number>>;

export function countVerdicts(all: readonly Judged[]): Counts {
  const counts = { fails: 0, unknown: 0, tight: 0, fits: 0 };
  for (const { verdict } of all) counts[verdict]++;
  return counts;
}

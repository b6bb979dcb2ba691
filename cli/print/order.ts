/** The order in which findings matter. */
import { type Finding, type Verdict, WORST_FIRST } from '../../engine/assess/index.ts';

/** Worst verdict first, within it the smallest margin; equals stay in the order of the checks. */
export const worstFirst = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort(
    (a, b) => WORST_FIRST.indexOf(a.verdict) - WORST_FIRST.indexOf(b.verdict) || weight(a) - weight(b),
  );

/** A yes-or-no that fails leaves nothing to weigh, so it comes before margins. */
const weight = ({ margin, form }: Finding): number =>
  typeof margin === 'number' ? margin : form === 'fact' ? 0 : Number.MAX_VALUE;

export type Counts = Readonly<Record<Verdict, number>>;

export function countVerdicts(findings: readonly Finding[]): Counts {
  const counts = { fails: 0, unknown: 0, tight: 0, fits: 0 };
  for (const { verdict } of findings) counts[verdict]++;
  return counts;
}

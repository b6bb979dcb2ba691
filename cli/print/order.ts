/** The order in which findings matter. */

import type { Finding } from '../../engine/assess/index.ts';
import { byVerdict } from '../../engine/quantity/verdict.ts';

/** Worst verdict first, within it the smallest margin; equals stay in the order of the checks. */
export const worstFirst = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((a, b) => byVerdict(a, b) || weight(a) - weight(b));

/** A yes-or-no that fails leaves nothing to weigh, so it comes before margins. */
const weight = ({ margin, form }: Finding): number =>
  typeof margin === 'number' ? margin : form === 'fact' ? 0 : Number.MAX_VALUE;

/** A margin as text, no finer than it is known. */
import { formatNumber } from '../quantity/index.ts';

/** Two-sided 95 % of a bell are this many standard uncertainties wide. */
const WIDTH = 3.92;
const MOST_DIGITS = 3;

/**
 * '0.86', '1.3', '12': as many digits as its doubt leaves, three at most. A margin just below one never reads as one, for it
 * fails. `range`: where it lies with 95 % confidence.
 */
export function marginText(margin: number, range?: readonly [low: number, high: number]): string {
  const deviation = range ? (range[1] - range[0]) / WIDTH : 0;
  const known =
    deviation > 0 && margin > 0 && Number.isFinite(deviation)
      ? Math.floor(Math.log10(margin)) - Math.floor(Math.log10(2 * deviation)) + 1
      : MOST_DIGITS;
  for (let digits = Math.min(MOST_DIGITS, Math.max(1, known)); digits < 12; digits++) {
    const text = formatNumber(margin, digits);
    if (margin >= 1 || Number(text) < 1) return text;
  }
  return '1, less a trifle';
}

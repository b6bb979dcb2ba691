/** A margin as text, the same wherever it is read. */
import { formatNumber } from '../quantity/index.ts';

const DECIMALS = 2;
const FIGURES = 3;
/** Below this two decimals would leave one figure or none. */
const SMALL = 0.1;

/**
 * '0.84', '1.30', '12.3', '240': two decimals below ten, three figures from there on, two figures below a tenth. A margin just
 * below one never reads as one, for it fails. Where it lies with 95 % confidence does not change it: the same margin reads the
 * same on every screen.
 */
export function marginText(margin: number): string {
  if (margin >= 9.995) return formatNumber(margin, FIGURES);
  if (margin < SMALL) return formatNumber(margin, 2);
  for (let decimals = DECIMALS; decimals < 12; decimals++) {
    const text = margin.toFixed(decimals);
    if (margin >= 1 || Number(text) < 1) return text;
  }
  return '1, less a trifle';
}

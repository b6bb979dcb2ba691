/** Readings in the words of somebody with a meter in hand. */

import { formatQuantity } from '../../quantity/index.ts';
import { andList } from '../../quantity/words.ts';
import type { Company } from './ohms.ts';
import type { Band } from './types.ts';

export const ohms = (value: number): string =>
  formatQuantity(value, value >= 1e6 ? 'MΩ' : value >= 1e3 ? 'kΩ' : 'Ω', { digits: value < 10 ? 2 : 3 });
export const volts = (value: number): string =>
  formatQuantity(Math.abs(value) < 0.05 ? 0 : value, 'V', { digits: 3 });

/** Volts that say no more than that nothing is there. */
const NOTHING = 0.3;

/** Below this a hand meter with its leads shows a short. */
export const SHORT = 1;

export function sayVolts({ low, high }: Band): string {
  if (Math.max(Math.abs(low), Math.abs(high)) <= NOTHING) return 'next to nothing';
  return high - low < 0.15 ? `about ${volts((low + high) / 2)}` : `${volts(low)} to ${volts(high)}`;
}

/** What another reading than a band means, where a path is looked for between two points. */
export function ohmsAmiss({ low, high }: Band, isEarth: boolean): string {
  const touches = isEarth
    ? 'a live wire touches metal; find it before power is ever put on'
    : 'a short, or a wire on the wrong terminal';
  if (low === Number.POSITIVE_INFINITY) return `Any reading but OL: ${touches}.`;
  if (high <= SHORT)
    return isEarth
      ? 'More: paint under a screw, or a loose one. OL: the way to earth is broken. Nothing is switched on until this beeps.'
      : 'More: a loose screw on the way. OL: a wire of the 0 V is off, or a fuse blown.';
  if (high === Number.POSITIVE_INFINITY) return `Much less: ${touches}.`;
  const open = 'OL: a coil or resistor burnt out, a fuse blown or a wire off.';
  // A lower bound next to nothing cannot be fallen short of.
  return low <= SHORT
    ? `More, or ${open}`
    : `Less: ${isEarth ? touches : 'turns of a coil shorted, or a wire on the wrong terminal'}. More: a bad joint. ${open}`;
}

/** A reading between bounds, or why it cannot be judged. */
export function judgeOhms(band: Band, company: Company): { readonly says: string; readonly expect?: Band } {
  const { low, high } = band;
  if (low === Number.POSITIVE_INFINITY) return { says: 'no path: the meter shows OL', expect: band };
  if (high <= SHORT) return { says: `under ${SHORT} Ω: it beeps`, expect: { low: 0, high: SHORT } };
  const narrow = high !== Number.POSITIVE_INFINITY && high <= low * 1.6 + SHORT;
  if (narrow) return { says: `${ohms(low)} to ${ohms(high)}`, expect: band };
  if (high === Number.POSITIVE_INFINITY && company.electronics.length > 0)
    return {
      says: `not meaningful: electronics of ${andList(company.electronics.slice(0, 3))}; to measure, disconnect there`,
    };
  if (high === Number.POSITIVE_INFINITY)
    return low > 1000
      ? { says: `more than ${ohms(low)}, or no path at all`, expect: band }
      : { says: 'not meaningful: electronics hang on it further on; to measure, disconnect there' };
  if (company.unsaid.length > 0 && high > SHORT)
    return {
      says: `a path of ${ohms(high)} at most; what ${andList(company.unsaid.slice(0, 3))} resists has not been said`,
      expect: { low: 0, high },
    };
  return {
    says: `${ohms(high)} at most; what hangs on it further on may make it less`,
    expect: { low: 0, high },
  };
}

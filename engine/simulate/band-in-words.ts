/** What many runs of one move showed together. */
import { formatNumber } from '../quantity/index.ts';
import { andList } from '../quantity/words.ts';
import type { Band } from './band.ts';
import { type Saying, short } from './say.ts';

/** 1.96 standard deviations either way: 95 % confidence. */
const Z = 1.96;

/** m below which the peaks of this share of the runs lie. */
export function peakOf({ peaks }: Band, share: number): number {
  const sorted = peaks.toSorted();
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1))] ?? 0;
}

/** Wilson's interval for a share that `runs` draws gave, with 95 % confidence. */
export function shareBetween(share: number, runs: number): readonly [number, number] {
  const weight = 1 + Z ** 2 / runs;
  const middle = (share + Z ** 2 / (2 * runs)) / weight;
  const half = (Z / weight) * Math.sqrt((share * (1 - share)) / runs + Z ** 2 / (4 * runs ** 2));
  return [Math.max(0, middle - half), Math.min(1, middle + half)];
}

const percent = (share: number): string => `${formatNumber(100 * share, 2)} %`;

export function bandInWords(band: Band, system: 'mm' | 'in' = 'mm'): Saying[] {
  const { runs } = band;
  const happened = (
    [
      ['of a trip', band.tripped],
      ['that it falls out of step', band.stalled],
      ['that its loop swings', band.unstable],
    ] as const
  ).filter(([, share]) => share > 0);
  const chance = (share: number): string => {
    const [low, high] = shareBetween(share, runs);
    return `${percent(share)} (between ${percent(low)} and ${percent(high)} with 95 % confidence)`;
  };
  return [
    happened.length > 0
      ? {
          level: 'bad',
          sentence: `The chance ${andList(happened.map(([what, share]) => `${what} is ${chance(share)}`))}.`,
        }
      : {
          level: 'good',
          sentence: `None of ${runs} trips, stalls or swings: with 95 % confidence the chance is under ${percent(shareBetween(0, runs)[1])}.`,
        },
    {
      level: 'note',
      sentence: `Half of them stay within ${short(peakOf(band, 0.5), system)} of their command, nine of ten within ${short(peakOf(band, 0.9), system)}; the worst is ${short(peakOf(band, 1), system)} off.`,
    },
  ];
}

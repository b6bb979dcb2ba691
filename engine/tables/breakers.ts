/** When circuit breakers of the household kind trip. */

export type BreakerCurve = 'B' | 'C' | 'D';

/** Multiples of the rated current (r.m.s.) between which it trips at once. */
export const INSTANT: Readonly<Record<BreakerCurve, readonly [never: number, surely: number]>> = {
  B: [3, 5],
  C: [5, 10],
  D: [10, 20],
};

/** Multiples that it carries for an hour, and that trip it within one. */
export const HOUR: readonly [carries: number, trips: number] = [1.13, 1.45];

export const BREAKER_SOURCE = { source: 'IEC 60898-1, as quoted by makers', status: 'published' as const };

/** Rated currents of fuses and breakers sold, in A. */
export const RATINGS = [0.5, 1, 2, 3, 4, 6, 10, 13, 16, 20, 25, 32, 40, 50, 63] as const;

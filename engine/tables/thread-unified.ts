/** Unified inch threads: sizes and threads per inch (ASME B1.1). */

export const UNIFIED_SOURCE =
  'ASME B1.1, series UNC, UNF and UNEF, as a public table of designations lists them';

export interface UnifiedSize {
  /** As it is written: '1/4', '#10', '1 1/8'. */
  readonly size: string;
  /** Inches. */
  readonly d: number;
  readonly unc?: number;
  readonly unf?: number;
  readonly unef?: number;
}

const row = (size: string, d: number, unc?: number, unf?: number, unef?: number): UnifiedSize => ({
  size,
  d,
  ...(unc === undefined ? {} : { unc }),
  ...(unf === undefined ? {} : { unf }),
  ...(unef === undefined ? {} : { unef }),
});

export const UNIFIED_SIZES: readonly UnifiedSize[] = [
  row('#0', 0.06, undefined, 80),
  row('#1', 0.073, 64, 72),
  row('#2', 0.086, 56, 64),
  row('#3', 0.099, 48, 56),
  row('#4', 0.112, 40, 48),
  row('#5', 0.125, 40, 44),
  row('#6', 0.138, 32, 40),
  row('#8', 0.164, 32, 36),
  row('#10', 0.19, 24, 32),
  row('#12', 0.216, 24, 28, 32),
  row('1/4', 0.25, 20, 28, 32),
  row('5/16', 0.3125, 18, 24, 32),
  row('3/8', 0.375, 16, 24, 32),
  row('7/16', 0.4375, 14, 20, 28),
  row('1/2', 0.5, 13, 20, 28),
  row('9/16', 0.5625, 12, 18, 24),
  row('5/8', 0.625, 11, 18, 24),
  row('11/16', 0.6875, undefined, undefined, 24),
  row('3/4', 0.75, 10, 16, 20),
  row('13/16', 0.8125, undefined, undefined, 20),
  row('7/8', 0.875, 9, 14, 20),
  row('15/16', 0.9375, undefined, undefined, 20),
  row('1', 1, 8, 12, 20),
  row('1 1/16', 1.0625, undefined, undefined, 18),
  row('1 1/8', 1.125, 7, 12, 18),
  row('1 3/16', 1.1875, undefined, undefined, 18),
  row('1 1/4', 1.25, 7, 12, 18),
  row('1 5/16', 1.3125, undefined, undefined, 18),
  row('1 3/8', 1.375, 6, 12, 18),
  row('1 7/16', 1.4375, undefined, undefined, 18),
  row('1 1/2', 1.5, 6, 12, 18),
  row('1 9/16', 1.5625, undefined, undefined, 18),
  row('1 5/8', 1.625, undefined, undefined, 18),
  row('1 11/16', 1.6875, undefined, undefined, 18),
  row('1 3/4', 1.75, 5),
  row('2', 2, 4.5),
  row('2 1/4', 2.25, 4.5),
  row('2 1/2', 2.5, 4),
  row('2 3/4', 2.75, 4),
  row('3', 3, 4),
  row('3 1/4', 3.25, 4),
  row('3 1/2', 3.5, 4),
  row('3 3/4', 3.75, 4),
  row('4', 4, 4),
];

/** Constant-pitch series that the standard lists as UN; other pairs are UNS. */
export const CONSTANT_PITCHES: readonly number[] = [4, 6, 8, 12, 16, 20, 28, 32];
/** Series whose tolerances take one diameter of engagement; the others take nine pitches. */
export const ONE_DIAMETER: readonly number[] = [4, 6, 8];

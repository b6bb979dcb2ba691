/** Whitworth threads: sizes and threads per inch (BS 84). */

export const WHITWORTH_SOURCE =
  'BS 84 series as a gauge maker’s page and an old-engine club’s threading tables list them';

/** The tapping drills for BSF that are printed; the one for 1 1/8 is left out, for it would leave but 57 % of the thread. */
export const BSF_DRILL_SOURCE = 'a public encyclopaedia’s table of BSF sizes';

export interface WhitworthSize {
  readonly size: string;
  /** Inches. */
  readonly d: number;
  readonly bsw?: number;
  readonly bsf?: number;
  /** Tapping drills for BSW and BSF as printed, mm. */
  readonly bswDrill?: number;
  readonly bsfDrill?: number;
}

const row = (
  size: string,
  d: number,
  bsw?: number,
  bsf?: number,
  bswDrill?: number,
  bsfDrill?: number,
): WhitworthSize => ({
  size,
  d,
  ...(bsw === undefined ? {} : { bsw }),
  ...(bsf === undefined ? {} : { bsf }),
  ...(bswDrill === undefined ? {} : { bswDrill }),
  ...(bsfDrill === undefined ? {} : { bsfDrill }),
});

export const WHITWORTH_SIZES: readonly WhitworthSize[] = [
  row('1/8', 0.125, 40, undefined, 2.55),
  row('3/16', 0.1875, 24, 32, 3.7),
  row('7/32', 0.21875, undefined, 28),
  row('1/4', 0.25, 20, 26, 5.1),
  row('5/16', 0.3125, 18, 22, 6.5),
  row('3/8', 0.375, 16, 20, 7.9, 8.2),
  row('7/16', 0.4375, 14, 18, 9.3, 9.7),
  row('1/2', 0.5, 12, 16, 10.5),
  row('9/16', 0.5625, 12, 16, 12.1),
  row('5/8', 0.625, 11, 14, 13.5, 14),
  row('11/16', 0.6875, 11, 14, 15, 15.5),
  row('3/4', 0.75, 10, 12, 16.25, 16.75),
  row('7/8', 0.875, 9, 11, 19.25),
  row('1', 1, 8, 10, 22, 22.75),
  row('1 1/8', 1.125, 7, 9, 24.75),
  row('1 1/4', 1.25, 7, 9, 28, 28.75),
  row('1 3/8', 1.375, undefined, 8),
  row('1 1/2', 1.5, 6, 8, 33.5, 34.5),
  row('1 3/4', 1.75, 5, 7, 39),
  row('2', 2, 4.5, 7, 44.5),
  row('2 1/4', 2.25, 4, 6),
  row('2 1/2', 2.5, 4, 6),
  row('2 3/4', 2.75, 3.5, 6),
  row('3', 3, 3.5, 5),
];

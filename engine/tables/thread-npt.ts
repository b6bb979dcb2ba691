/** American taper pipe thread NPT (ASME B1.20.1). Inches. */

export const NPT_SOURCE = 'ASME B1.20.1 basic dimensions as reprinted by pipe suppliers';

export interface NptSize {
  readonly size: string;
  readonly tpi: number;
  /** Outside diameter of the pipe. */
  readonly D: number;
  /** Hand-tight length. */
  readonly L1: number;
  /** Tap drill as printed in a public pipe-thread table: a fraction of an inch, or a letter. */
  readonly drill?: string;
}

const row = (size: string, tpi: number, D: number, L1: number, drill?: string): NptSize => ({
  size,
  tpi,
  D,
  L1,
  ...(drill === undefined ? {} : { drill }),
});

export const NPT_SIZES: readonly NptSize[] = [
  row('1/16', 27, 0.3125, 0.16),
  row('1/8', 27, 0.405, 0.1615, 'R'),
  row('1/4', 18, 0.54, 0.2278, '7/16'),
  row('3/8', 18, 0.675, 0.24, '37/64'),
  row('1/2', 14, 0.84, 0.32, '23/32'),
  row('3/4', 14, 1.05, 0.339, '59/64'),
  row('1', 11.5, 1.315, 0.4, '1 5/32'),
  row('1 1/4', 11.5, 1.66, 0.42, '1 1/2'),
  row('1 1/2', 11.5, 1.9, 0.42, '1 47/64'),
  row('2', 11.5, 2.375, 0.436, '2 7/32'),
  row('2 1/2', 8, 2.875, 0.682, '2 5/8'),
  row('3', 8, 3.5, 0.766, '3 1/4'),
  row('3 1/2', 8, 4, 0.821, '3 3/4'),
  row('4', 8, 4.5, 0.844, '4 1/4'),
  row('5', 8, 5.563, 0.937),
  row('6', 8, 6.625, 0.958),
];

/** What ISO 965-1 fixes beside its formulas: gaps, diameter ranges, and where a printed value is not the formula's. */

export const ISO_965 =
  'ISO 965-1:1998, tables 1, 3, 4, 5 and 6 as transcribed in public source files, compared with published limits; position f from memory';

/** Lower ends of the diameter ranges and the end of the last, mm. */
export const DIAMETER_RANGES = [0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45, 90, 180, 355] as const;

/** Pitch in mm; gaps of positions g (and G), f and e in µm. */
export const FUNDAMENTAL_DEVIATIONS: readonly (readonly [P: number, g: number, f?: number, e?: number])[] = [
  [0.2, 17],
  [0.25, 18],
  [0.3, 18],
  [0.35, 19, 34],
  [0.4, 19, 34],
  [0.45, 20, 35],
  [0.5, 20, 36, 50],
  [0.6, 21, 36, 53],
  [0.7, 22, 38, 56],
  [0.75, 22, 38, 56],
  [0.8, 24, 38, 60],
  [1, 26, 40, 60],
  [1.25, 28, 42, 63],
  [1.5, 32, 45, 67],
  [1.75, 34, 48, 71],
  [2, 38, 52, 71],
  [2.5, 42, 58, 80],
  [3, 48, 63, 85],
  [3.5, 53, 70, 90],
  [4, 60, 75, 95],
  [4.5, 63, 80, 100],
  [5, 71, 85, 106],
  [5.5, 75, 90, 112],
  [6, 80, 95, 118],
  [8, 100, 118, 140],
];

/** Series R40 of preferred numbers (ISO 3), one decade. */
export const R40 = [
  1, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2, 2.12, 2.24, 2.36, 2.5, 2.65, 2.8, 3, 3.15,
  3.35, 3.55, 3.75, 4, 4.25, 4.5, 4.75, 5, 5.3, 5.6, 6, 6.3, 6.7, 7.1, 7.5, 8, 8.5, 9, 9.5,
] as const;

/** Grade 6 as printed where rounding the formula gives another number; µm. */
export const PRINTED_T_D2: readonly (readonly [rangeFrom: number, P: number, T: number])[] = [
  [2.8, 0.5, 75],
  [45, 5, 250],
  [180, 3, 250],
  [180, 4, 280],
];
export const PRINTED_T_D: readonly (readonly [P: number, T: number])[] = [[4, 475]];
export const PRINTED_T_D1: readonly (readonly [P: number, T: number])[] = [
  [0.25, 71],
  [0.5, 140],
  [2.5, 450],
  [10, 1120],
];

/** Steps in R40 from grade 6 to another grade. */
export const GRADE_STEPS = {
  d2: { 3: -12, 4: -8, 5: -4, 6: 0, 7: 4, 8: 8, 9: 12 },
  D2: { 4: -3, 5: 1, 6: 5, 7: 9, 8: 13 },
  d: { 4: -8, 6: 0, 8: 8 },
  D1: { 4: -8, 5: -4, 6: 0, 7: 4, 8: 8 },
} as const satisfies Record<string, Record<number, number>>;

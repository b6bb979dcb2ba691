/** Metric trapezoidal threads: pitches (ISO 2902), clearance (ISO 2901) and gap of position e (ISO 2903). Millimetres. */

export const TRAPEZOIDAL_SOURCE =
  'ISO 2902 and ISO 2904 as published thread data charts list them (up to 120 mm)';

export interface TrapezoidalSize {
  readonly d: number;
  /** The usual pitch first. */
  readonly pitches: readonly number[];
}

const row = (d: number, ...pitches: number[]): TrapezoidalSize => ({ d, pitches });

/** Which of its pitches a size usually has is from memory (DIN 103). */
export const TRAPEZOIDAL_SIZES: readonly TrapezoidalSize[] = [
  row(8, 1.5),
  row(9, 2, 1.5),
  row(10, 2, 1.5),
  row(11, 3, 2),
  row(12, 3, 2),
  row(14, 3, 2),
  row(16, 4, 2, 3),
  row(18, 4, 2, 3),
  row(20, 4, 2, 3),
  row(22, 5, 3, 8),
  row(24, 5, 3, 8),
  row(26, 5, 3, 8),
  row(28, 5, 3, 8),
  row(30, 6, 3, 10),
  row(32, 6, 3, 10),
  row(34, 6, 3, 10),
  row(36, 6, 3, 10),
  row(38, 7, 3, 10),
  row(40, 7, 3, 10),
  row(42, 7, 3, 10),
  row(44, 7, 3, 12),
  row(46, 8, 3, 12),
  row(48, 8, 3, 12),
  row(50, 8, 3, 12),
  row(52, 8, 3, 12),
  row(55, 9, 3, 14),
  row(60, 9, 3, 14),
  row(65, 10, 4, 16),
  row(70, 10, 4, 16),
  row(75, 10, 4, 16),
  row(80, 10, 4, 16),
  row(85, 12, 4, 18),
  row(90, 12, 4, 18),
  row(95, 12, 4, 18),
  row(100, 12, 4, 20),
  row(105, 12, 4, 20),
  row(110, 12, 4, 20),
  row(115, 14, 6, 12, 22),
  row(120, 14, 6, 12, 22),
];

/** Clearance at crest and root by pitch, ISO 2901. */
export function trapezoidalClearance(pitch: number): number {
  if (pitch < 1.75) return 0.15;
  if (pitch < 5.5) return 0.25;
  return pitch < 13 ? 0.5 : 1;
}

/** Pitch and gap of position e, µm: ISO 2903 table 1 as a published chart of limits implies it. */
export const TRAPEZOIDAL_GAP_E: readonly (readonly [P: number, e: number])[] = [
  [1.5, 67],
  [2, 71],
  [3, 85],
  [4, 95],
  [5, 106],
  [6, 118],
  [7, 125],
  [8, 132],
  [9, 140],
  [10, 150],
  [12, 170],
  [14, 180],
  [16, 190],
  [18, 200],
  [20, 212],
  [22, 224],
];

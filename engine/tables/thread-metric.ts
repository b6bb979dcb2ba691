/** Metric threads: which pitches go with which diameter (ISO 261). Millimetres. */

export interface MetricSize {
  readonly d: number;
  /** Absent where the standard has fine pitches only. */
  readonly coarse?: number;
  readonly fine: readonly number[];
}

export const METRIC_SOURCE =
  'ISO 261:1998, general plan (from memory; coarse pitches agree with ASME B1.13M tables)';

const row = (d: number, coarse: number, ...fine: number[]): MetricSize => ({ d, coarse, fine });
const fineOnly = (d: number, ...fine: number[]): MetricSize => ({ d, fine });

export const METRIC_SIZES: readonly MetricSize[] = [
  row(1, 0.25, 0.2),
  row(1.1, 0.25, 0.2),
  row(1.2, 0.25, 0.2),
  row(1.4, 0.3, 0.2),
  row(1.6, 0.35, 0.2),
  row(1.8, 0.35, 0.2),
  row(2, 0.4, 0.25),
  row(2.2, 0.45, 0.25),
  row(2.5, 0.45, 0.35),
  row(3, 0.5, 0.35),
  row(3.5, 0.6, 0.35),
  row(4, 0.7, 0.5),
  row(4.5, 0.75, 0.5),
  row(5, 0.8, 0.5),
  fineOnly(5.5, 0.5),
  row(6, 1, 0.75),
  row(7, 1, 0.75),
  row(8, 1.25, 1, 0.75),
  row(9, 1.25, 1, 0.75),
  row(10, 1.5, 1.25, 1, 0.75),
  row(11, 1.5, 1, 0.75),
  row(12, 1.75, 1.5, 1.25, 1),
  row(14, 2, 1.5, 1.25, 1),
  fineOnly(15, 1.5, 1),
  row(16, 2, 1.5, 1),
  fineOnly(17, 1.5, 1),
  row(18, 2.5, 2, 1.5, 1),
  row(20, 2.5, 2, 1.5, 1),
  row(22, 2.5, 2, 1.5, 1),
  row(24, 3, 2, 1.5, 1),
  fineOnly(25, 2, 1.5, 1),
  fineOnly(26, 1.5),
  row(27, 3, 2, 1.5, 1),
  fineOnly(28, 2, 1.5, 1),
  row(30, 3.5, 3, 2, 1.5, 1),
  fineOnly(32, 2, 1.5),
  row(33, 3.5, 3, 2, 1.5),
  fineOnly(35, 1.5),
  row(36, 4, 3, 2, 1.5),
  fineOnly(38, 1.5),
  row(39, 4, 3, 2, 1.5),
  fineOnly(40, 3, 2, 1.5),
  row(42, 4.5, 4, 3, 2, 1.5),
  row(45, 4.5, 4, 3, 2, 1.5),
  row(48, 5, 4, 3, 2, 1.5),
  fineOnly(50, 3, 2, 1.5),
  row(52, 5, 4, 3, 2, 1.5),
  fineOnly(55, 4, 3, 2, 1.5),
  row(56, 5.5, 4, 3, 2, 1.5),
  fineOnly(58, 4, 3, 2, 1.5),
  row(60, 5.5, 4, 3, 2, 1.5),
  fineOnly(62, 4, 3, 2, 1.5),
  row(64, 6, 4, 3, 2, 1.5),
  fineOnly(65, 4, 3, 2, 1.5),
  row(68, 6, 4, 3, 2, 1.5),
  fineOnly(70, 6, 4, 3, 2, 1.5),
  fineOnly(72, 6, 4, 3, 2, 1.5),
  fineOnly(75, 4, 3, 2, 1.5),
  fineOnly(76, 6, 4, 3, 2, 1.5),
  fineOnly(80, 6, 4, 3, 2, 1.5),
  fineOnly(85, 6, 4, 3, 2),
  fineOnly(90, 6, 4, 3, 2),
  fineOnly(95, 6, 4, 3, 2),
  fineOnly(100, 6, 4, 3, 2),
  fineOnly(110, 6, 4, 3, 2),
  fineOnly(120, 6, 4, 3, 2),
  fineOnly(130, 6, 4, 3, 2),
  fineOnly(140, 6, 4, 3, 2),
  fineOnly(150, 6, 4, 3, 2),
  fineOnly(160, 6, 4, 3),
  fineOnly(180, 6, 4, 3),
  fineOnly(200, 6, 4, 3),
];

/** Pipe threads of Whitworth form: parallel G (ISO 228-1) and taper R, Rc with parallel Rp (ISO 7-1). Millimetres. */

export const ISO_228 = 'ISO 228-1:2003 as a published thread data chart gives it';
export const ISO_7 =
  'ISO 7-1, compared with table 1 of its counterpart JIS B 0203:1999 as catalogues reprint it';

export interface PipeSize {
  readonly size: string;
  readonly tpi: number;
  /** Major diameter; for a taper thread at the gauge plane. */
  readonly d: number;
  /** ISO 228-1: tolerance of the pitch diameter (class A; class B has twice as much), of the bore, mm. */
  readonly pitchTolerance: number;
  readonly boreTolerance: number;
  /** Hole for a parallel G thread as printed, mm. */
  readonly drillG?: number;
  /** ISO 7-1, where the size exists as a taper thread. */
  readonly taper?: {
    readonly gaugeLength: number;
    readonly usefulLength: number;
    /** Turns by which the gauge plane may lie either way, outside (along the pipe) and inside (behind the face). */
    readonly gaugeTurns: { readonly external: number; readonly internal: number };
    /** Hole before the taper, mm. */
    readonly drill?: number;
  };
}

function row(
  size: string,
  tpi: number,
  d: number,
  pitchTolerance: number,
  boreTolerance: number,
  drillG?: number,
  taper?: readonly [gaugeLength: number, allowance: number, drill?: number],
): PipeSize {
  return {
    size,
    tpi,
    d,
    pitchTolerance,
    boreTolerance,
    ...(drillG === undefined ? {} : { drillG }),
    ...(taper
      ? {
          taper: {
            gaugeLength: taper[0],
            usefulLength: taper[0] + taper[1],
            gaugeTurns: d > LARGE ? { external: 1.5, internal: 1.5 } : { external: 1, internal: 1.25 },
            ...(taper[2] === undefined ? {} : { drill: taper[2] }),
          },
        }
      : {}),
  };
}

/** From 2½ inches on the gauge plane may lie farther off. */
const LARGE = 70;

export const PIPE_SIZES: readonly PipeSize[] = [
  row('1/16', 28, 7.723, 0.107, 0.282, 6.8, [4, 2.5, 6.6]),
  row('1/8', 28, 9.728, 0.107, 0.282, 8.8, [4, 2.5, 8.6]),
  row('1/4', 19, 13.157, 0.125, 0.445, 11.8, [6, 3.7, 11.5]),
  row('3/8', 19, 16.662, 0.125, 0.445, 15.25, [6.4, 3.7, 15]),
  row('1/2', 14, 20.955, 0.142, 0.541, 19, [8.2, 5, 18.75]),
  row('5/8', 14, 22.911, 0.142, 0.541, 21),
  row('3/4', 14, 26.441, 0.142, 0.541, 24.5, [9.5, 5, 24.25]),
  row('7/8', 14, 30.201, 0.142, 0.541, 28.25),
  row('1', 11, 33.249, 0.18, 0.64, 30.75, [10.4, 6.4, 30.4]),
  row('1 1/8', 11, 37.897, 0.18, 0.64),
  row('1 1/4', 11, 41.91, 0.18, 0.64, 39.5, [12.7, 6.4, 39]),
  row('1 1/2', 11, 47.803, 0.18, 0.64, 45.5, [12.7, 6.4, 45]),
  row('1 3/4', 11, 53.746, 0.18, 0.64, 51),
  row('2', 11, 59.614, 0.18, 0.64, 57, [15.9, 7.5, 56.75]),
  row('2 1/4', 11, 65.71, 0.217, 0.64),
  row('2 1/2', 11, 75.184, 0.217, 0.64, undefined, [17.5, 9.2]),
  row('2 3/4', 11, 81.534, 0.217, 0.64),
  row('3', 11, 87.884, 0.217, 0.64, undefined, [20.6, 9.2]),
  row('3 1/2', 11, 100.33, 0.217, 0.64),
  row('4', 11, 113.03, 0.217, 0.64, undefined, [25.4, 10.4]),
  row('4 1/2', 11, 125.73, 0.217, 0.64),
  row('5', 11, 138.43, 0.217, 0.64, undefined, [28.6, 11.5]),
  row('5 1/2', 11, 151.13, 0.217, 0.64),
  row('6', 11, 163.83, 0.217, 0.64, undefined, [28.6, 11.5]),
];

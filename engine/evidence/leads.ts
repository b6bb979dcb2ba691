/** Leads that screws are made with, to recognise a measured one. From memory of ISO 3408-2, ISO 2904 and ASME B1.5 unless stated. */

export interface StandardPitch {
  /** SI. */
  readonly pitch: number;
  readonly system: 'mm' | 'in';
  readonly says: string;
  /** How common it is in machine tools as a one-start thread, as a share of the commonest: a judgement, no source. */
  readonly common: number;
}

const INCH = 0.0254;
const metric = (pitch: number, common: number): StandardPitch => ({
  pitch: pitch / 1000,
  system: 'mm',
  says: `${pitch} mm`,
  common,
});
const inch = (threads: number, common: number): StandardPitch => ({
  pitch: INCH / threads,
  system: 'in',
  says: `${threads} threads an inch (${Number((1 / threads).toFixed(4))} in)`,
  common,
});

export const STANDARD_PITCHES: readonly StandardPitch[] = [
  ...[2, 3, 4, 6, 8, 12, 16, 20, 25, 32, 40].map((each) => metric(each, 0.5)),
  ...[5, 10].map((each) => metric(each, 1)),
  ...[1, 1.5, 2.5, 7, 9, 14, 18].map((each) => metric(each, 0.2)),
  ...[5, 4, 10].map((each) => inch(each, 0.8)),
  ...[1, 2, 2.5, 3, 6, 8, 12, 16].map((each) => inch(each, 0.3)),
];

export const MOST_STARTS = 6;

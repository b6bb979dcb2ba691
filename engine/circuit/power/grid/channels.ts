/**
 * How currents add. Loads whose phase shift and distortion are known add as arrows; of the rest, those of one phase add
 * as numbers and those of different phases by their size, which is never less than what flows.
 */
import type { Arrow } from './forest.ts';

/** What is known of the shape of a current, of a load on a.c. */
export interface Shape {
  /** Cosine of the angle by which its fundamental trails the volts; 0 < c ≤ 1. */
  readonly displacement: number;
  /** Effective harmonics over effective fundamental: 0 for a pure sine. */
  readonly distortion: number;
}

const NANO = 1e9;
export const nano = (amps: number): number => Math.round(amps * NANO);
export const fromNano = (whole: number): number => whole / NANO;

/**
 * The channels a load's amperes go into.
 *
 * 'a30': as a number, among loads whose volts stand at 30° or against it. 'h30': the harmonics of such a load. 're', 'im':
 * the fundamental as an arrow.
 *
 * @param over volts of `from` above `to`
 */
export function channelsOf(
  amps: number,
  over: Arrow,
  shape?: Shape,
): readonly (readonly [channel: string, nano: number])[] {
  const angle = Math.atan2(over.im, over.re);
  let degrees = Math.round((angle * 180) / Math.PI);
  let sign = 1;
  if (degrees < 0 || degrees >= 180) {
    degrees += degrees < 0 ? 180 : -180;
    sign = -1;
  }
  if (degrees === 180) {
    degrees = 0;
    sign = -sign;
  }
  if (!shape) return some([[`a${degrees}`, sign * nano(amps)]]);
  const fundamental = amps / Math.hypot(1, shape.distortion);
  const at = angle - Math.acos(shape.displacement);
  return some([
    ['re', nano(fundamental * Math.cos(at))],
    ['im', nano(fundamental * Math.sin(at))],
    [`h${degrees}`, sign * nano(fundamental * shape.distortion)],
  ]);
}

const some = (
  all: readonly (readonly [channel: string, nano: number])[],
): readonly (readonly [channel: string, nano: number])[] => all.filter(([, whole]) => whole !== 0);

/**
 * Effective nanoamperes of what flows in all channels together.
 *
 * Fundamentals add as arrows; harmonics by their size, since those of the third order do so in a neutral; the two are of
 * different frequencies, so their squares add. What is added as a number comes on top.
 */
export function together(sums: ReadonlyMap<string, number>): number {
  let [re, im, harmonics, plain] = [0, 0, 0, 0];
  for (const [channel, whole] of sums)
    if (channel === 're') re = whole;
    else if (channel === 'im') im = whole;
    else if (channel.startsWith('h')) harmonics += Math.abs(whole);
    else plain += Math.abs(whole);
  const arrows = re === 0 && im === 0 && harmonics === 0 ? 0 : Math.round(Math.hypot(re, im, harmonics));
  return plain + arrows;
}

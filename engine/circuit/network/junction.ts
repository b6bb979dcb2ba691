/** Junctions: current and slope by the exponential law, and how far a voltage may go in one step of Newton's. */
import { JUNCTION_LEAK, THERMAL_VOLTS } from './physics.ts';

export interface Junction {
  readonly saturation: number;
  readonly thermal: number;
  /** Above it a step is taken in the logarithm of the current instead. */
  readonly critical: number;
  readonly breakdown: number;
}

export function junction(
  saturation: number,
  emission: number,
  breakdown = Number.POSITIVE_INFINITY,
): Junction {
  const thermal = emission * THERMAL_VOLTS;
  return {
    saturation,
    thermal,
    critical: thermal * Math.log(thermal / (Math.SQRT2 * saturation)),
    breakdown,
  };
}

/** Beyond this exponent the law goes on as a straight line, so that no power overflows. */
const HIGHEST = 200;

/** Current in A and slope in S at a voltage. */
export function through(j: Junction, volts: number): readonly [current: number, slope: number] {
  const [forward, forwardSlope] = exponential(j, volts);
  let current = forward - j.saturation + JUNCTION_LEAK * volts;
  let slope = forwardSlope + JUNCTION_LEAK;
  if (volts < 0 && j.breakdown !== Number.POSITIVE_INFINITY) {
    const [back, backSlope] = exponential(j, -volts - j.breakdown);
    current -= back;
    slope += backSlope;
  }
  return [current, slope];
}

function exponential({ saturation, thermal }: Junction, volts: number): readonly [number, number] {
  const x = volts / thermal;
  if (x <= HIGHEST) {
    const current = saturation * Math.exp(x);
    return [current, current / thermal];
  }
  const edge = saturation * Math.exp(HIGHEST);
  return [edge * (1 + x - HIGHEST), edge / thermal];
}

/** The next voltage at which to linearise, when the last step asks for `wanted`. */
export function limited(j: Junction, wanted: number, last: number): number {
  if (wanted < -j.breakdown + 10 * j.thermal && j.breakdown !== Number.POSITIVE_INFINITY)
    return -limitedForward(j, -wanted - j.breakdown, -last - j.breakdown) - j.breakdown;
  return limitedForward(j, wanted, last);
}

function limitedForward(j: Junction, wanted: number, last: number): number {
  if (wanted <= j.critical || Math.abs(wanted - last) <= 2 * j.thermal) return wanted;
  if (last > 0) {
    const reach = 1 + (wanted - last) / j.thermal;
    return reach > 0 ? last + j.thermal * Math.log(reach) : j.critical;
  }
  return j.thermal * Math.log(Math.max(wanted, j.thermal) / j.thermal);
}

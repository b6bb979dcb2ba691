/** Usual elements: diodes and lamps by what a person knows of them. */
import { THERMAL_VOLTS } from './physics.ts';
import type { Diode } from './types.ts';

/** A diode that drops `volts` at `amps`; emission factor 1 for silicon, about 2 for LEDs. */
export function diodeOf(
  id: string,
  anode: string,
  cathode: string,
  at: {
    readonly volts: number;
    readonly amps: number;
    readonly emission?: number;
    readonly breakdown?: number;
  },
): Diode {
  const emission = at.emission ?? 1;
  return {
    kind: 'diode',
    id,
    anode,
    cathode,
    // expm1 and not exp: at small drops the 1 of the law counts.
    saturation: at.amps / Math.expm1(at.volts / (emission * THERMAL_VOLTS)),
    emission,
    ohms: 0,
    ...(at.breakdown === undefined ? {} : { breakdown: at.breakdown }),
  };
}

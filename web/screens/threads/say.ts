/** Sizes of a thread as text. */
import type { UnitSystem } from '../../../engine/quantity/prefer.ts';

export const mm = (metres: number, digits = 3): string => (metres * 1e3).toFixed(digits);

/** In the unit a person reads, with the unit. */
export function sayLength(metres: number, system: UnitSystem): string {
  return system === 'in' ? `${(metres / 0.0254).toFixed(4)} in` : `${mm(metres)} mm`;
}

export function sayValue(value: number, unit: string, system: UnitSystem): string {
  if (unit === 'mm') return sayLength(value, system);
  return unit === '°' ? `${((value * 180) / Math.PI).toFixed(2)}°` : value.toFixed(2);
}

export const rpm = (speed: number): string => `${Number(((speed * 30) / Math.PI).toPrecision(3))} r/min`;

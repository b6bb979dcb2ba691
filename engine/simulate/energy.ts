/** Where the energy of an axis went. */
import type { Plant } from './plant.ts';
import type { EnergyBalance } from './run.ts';

/** J in `plant.energy`, by where it went. */
export const ENERGY = {
  copper: 0,
  motorFriction: 1,
  slideFriction: 2,
  damping: 3,
  input: 4,
  load: 5,
  switching: 6,
} as const;

/** Mean square over a sample of what starts at `a`, ends at `b` and has this mean: exact for a parabola. */
export function meanSquare(a: number, b: number, mean: number): number {
  const half = (b - a) / 2;
  const bend = (b + a) / 2 - mean;
  return mean * mean + (half * half) / 3 + (bend * bend) / 5;
}

/** The books of a run that began with `storedAtStart`. A stepper's field takes no copper loss here: it is its supply's. */
export function balanceOf(plant: Plant, storedAtStart: number, stepper: boolean): EnergyBalance {
  plant.settleEnergy();
  const e = plant.energy;
  const input = e[ENERGY.input]!;
  const copper = stepper ? 0 : plant.constants.R * e[ENERGY.copper]!;
  const stored = plant.stored() - storedAtStart;
  const parts = {
    motorFriction: e[ENERGY.motorFriction]!,
    slideFriction: e[ENERGY.slideFriction]!,
    damping: e[ENERGY.damping]!,
    load: e[ENERGY.load]!,
    switching: e[ENERGY.switching]!,
  };
  const out = Object.values(parts).reduce((total, each) => total + each, copper + stored);
  const residual = input - out;
  const sizes = [input, copper, stored, 1e-12, ...Object.values(parts)].map(Math.abs);
  return { input, copper, ...parts, stored, residual, relative: Math.abs(residual) / Math.max(...sizes) };
}

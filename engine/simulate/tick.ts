/** One kept sample of a plant with a held command: a product with a matrix, taken only where no event can fall inside. */
import { advance } from './by-series.ts';
import { ENERGY, meanSquare } from './energy.ts';
import type { KeptMode } from './kept.ts';
import { CHARGE, CURRENT, HELD, INPUTS, LOAD, PHI, STATES, W1, W2, WIND } from './modes.ts';
import type { Plant } from './plant.ts';

/** One kept sample with the held command and load in `u`; by series where an event may fall inside. */
export function tick(plant: Plant): void {
  const { slot, x, u, h } = plant;
  const { kept } = slot;
  if (kept.mode.curved !== 0) {
    advance(plant, h);
    return;
  }
  if (slot.load !== u[LOAD]!) slot.prepare(u[LOAD]!, h, plant.energy);
  const P = slot.matrix;
  const w1 = x[W1]!;
  const w2 = x[W2]!;
  const wind = x[WIND]!;
  const i = x[CURRENT]!;
  const held = u[HELD]!;
  const nw1 = P[0]! * w1 + P[1]! * w2 + P[2]! * wind + P[3]! * i + (P[4]! * held + P[30]!);
  const nw2 = P[5]! * w1 + P[6]! * w2 + P[7]! * wind + P[8]! * i + (P[9]! * held + P[31]!);
  const nwind = P[10]! * w1 + P[11]! * w2 + P[12]! * wind + P[13]! * i + (P[14]! * held + P[32]!);
  const ni = P[15]! * w1 + P[16]! * w2 + P[17]! * wind + P[18]! * i + (P[19]! * held + P[33]!);
  const turn = P[20]! * w1 + P[21]! * w2 + P[22]! * wind + P[23]! * i + (P[24]! * held + P[34]!);
  const charge = P[25]! * w1 + P[26]! * w2 + P[27]! * wind + P[28]! * i + (P[29]! * held + P[35]!);
  const slid = turn - (nwind - wind);
  // How far a speed may bend below both its ends within the sample.
  const sag1 = 1.5 * Math.abs((w1 + nw1) / 2 - turn / h);
  const sag2 = 1.5 * Math.abs((w2 + nw2) / 2 - slid / h);
  // Said so that a mode that runs away within one sample, whose matrix holds no numbers, is not taken either.
  const within =
    Math.min(w1, nw1) - sag1 >= kept.low1 &&
    Math.max(w1, nw1) + sag1 <= kept.high1 &&
    Math.min(w2, nw2) - sag2 >= kept.low2 &&
    Math.max(w2, nw2) + sag2 <= kept.high2;
  if (!within || (kept.others && near(plant, kept, nw1, nw2, nwind, ni))) {
    advance(plant, h);
    return;
  }
  if (plant.books || plant.tracks) {
    const { energy } = plant;
    let given = 0;
    if (plant.drive === 'voltage') given = held * charge;
    else if (plant.drive === 'current')
      given = held * (plant.constants.R * held * h + plant.constants.K * turn);
    plant.drawn += given;
    energy[ENERGY.input]! += given;
    energy[ENERGY.load]! += u[LOAD]! * slid;
    if (plant.books) {
      energy[ENERGY.copper]! += h * meanSquare(i, ni, charge / h);
      energy[ENERGY.motorFriction]! += kept.dry1 * turn + kept.slope1 * h * meanSquare(w1, nw1, turn / h);
      energy[ENERGY.slideFriction]! += kept.dry2 * slid + kept.slope2 * h * meanSquare(w2, nw2, slid / h);
      if (kept.damping !== 0)
        energy[ENERGY.damping]! += kept.damping * h * meanSquare(w1 - w2, nw1 - nw2, (nwind - wind) / h);
    }
  }
  x[W1] = nw1;
  x[W2] = nw2;
  x[WIND] = nwind;
  x[CURRENT] = ni;
  x[PHI] = x[PHI]! + turn;
  x[CHARGE] = x[CHARGE]! + charge;
  plant.time += h;
}

/** Whether a guard on a torque comes near its end within the sample. */
export function near(plant: Plant, kept: KeptMode, w1: number, w2: number, wind: number, i: number): boolean {
  const { scratch: z, x, u } = plant;
  const { guardStart, guardColumn, guardWeight, guards } = kept.mode;
  z[W1] = w1;
  z[W2] = w2;
  z[WIND] = wind;
  z[CURRENT] = i;
  for (let at = 0; at < INPUTS; at++) z[STATES + at] = u[at]!;
  for (let g = 0; g < guards.length; g++) {
    let before = 0;
    let after = 0;
    const end = guardStart[g + 1]!;
    for (let p = guardStart[g]!; p < end; p++) {
      const column = guardColumn[p]!;
      const weight = guardWeight[p]!;
      after += weight * z[column]!;
      before += weight * (column < STATES ? x[column]! : z[column]!);
    }
    if (!(Math.min(before, after) >= 0.5 * Math.abs(after - before))) return true;
  }
  return false;
}

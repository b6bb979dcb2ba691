/** One kept sample of a plant with a held command: a product with a matrix, taken only where no event can fall inside. */
import { advance } from './by-series.ts';
import { ENERGY, meanSquare } from './energy.ts';
import type { KeptMode } from './kept.ts';
import * as modes from './modes.ts';
import type { Plant } from './plant.ts';
import * as shapes from './shapes.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CHARGE, CURRENT, HELD, LOAD, PHI, W1, W2, WIND } = modes;
const { TORQUE_WIDTH } = shapes;

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
  if (ends(kept, u, w1, w2, wind, i, nw1, nw2, nwind, ni, sag1, sag2)) {
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

/** Whether a mode may end within a step, from speeds, wind-up and current at both ends and how far the speeds may sag. */
export function ends(
  kept: KeptMode,
  u: Float64Array,
  w1: number,
  w2: number,
  wind: number,
  i: number,
  nw1: number,
  nw2: number,
  nwind: number,
  ni: number,
  sag1: number,
  sag2: number,
): boolean {
  // A mode that runs away within one step, whose matrix holds no numbers, is not taken.
  if (!(sag1 + sag2 < Number.POSITIVE_INFINITY)) return true;
  const { way1, way2, torques: t } = kept;
  if (way1 !== 0 && !(way1 * w1 >= sag1 && way1 * nw1 >= sag1)) return true;
  if (way2 !== 0) {
    const least = kept.least2 + sag2;
    const most = kept.most2 - sag2;
    const before = way2 * w2;
    const after = way2 * nw2;
    if (!(before >= least && after >= least && before <= most && after <= most)) return true;
  }
  for (let at = 0; at < t.length; at += TORQUE_WIDTH) {
    const stands = t[at + 4]! * u[HELD]! + t[at + 5]! + t[at + 6]! * u[LOAD]!;
    const before = t[at]! * w1 + t[at + 1]! * w2 + t[at + 2]! * wind + t[at + 3]! * i + stands;
    const after = t[at]! * nw1 + t[at + 1]! * nw2 + t[at + 2]! * nwind + t[at + 3]! * ni + stands;
    const change = 0.5 * Math.abs(after - before);
    if (!(before >= change && after >= change)) return true;
  }
  return false;
}

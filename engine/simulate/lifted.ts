/** All samples of the inner loop up to the next run of the speed loop, in one step of a plant. */

import { ENERGY } from './energy.ts';
import * as ioPlaces from './io.ts';
import type { InnerLoop } from './lift.ts';
import { formValue, gather } from './lift-energy.ts';
import * as memoryPlaces from './memory.ts';
import * as modes from './modes.ts';
import type { Plant } from './plant.ts';
import { ends } from './tick.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CURRENT, LOAD, PHI, W1, W2, WIND } = modes;
const { VOLTAGE, WANTED } = ioPlaces;
const { CURRENT_INTEGRAL, UNDER_WAY } = memoryPlaces;

/**
 * `memory` holds the loop's integrator and the command under way. False, with nothing done, where one step would not be
 * exact: a voltage would be cut, or an event may fall inside.
 */
export function lifted(plant: Plant, loop: InnerLoop, memory: Float64Array, io: Float64Array): boolean {
  const wanted = io[WANTED]!;
  const limit = io[VOLTAGE]!;
  const { slot, x, u } = plant;
  if (slot.load !== u[LOAD]!) slot.prepare(u[LOAD]!, plant.h, plant.energy);
  const lift = slot.lift ?? slot.lifted(loop, plant.books ? 'all' : plant.tracks ? 'input' : 'none');
  if (lift === null) return false;
  const M = lift.rows;
  const B = lift.bound;
  const a = x[W1]!;
  const b = x[W2]!;
  const c = x[WIND]!;
  const d = wanted - x[CURRENT]!;
  const e = memory[CURRENT_INTEGRAL]!;
  const f = memory[UNDER_WAY]!;
  const g = wanted;
  const bound =
    B[0]! * Math.abs(a) +
    B[1]! * Math.abs(b) +
    B[2]! * Math.abs(c) +
    B[3]! * Math.abs(d) +
    (B[4]! * Math.abs(e) + B[5]! * Math.abs(f) + B[6]! * Math.abs(g) + B[7]!);
  if (!(bound < limit)) {
    const V = lift.voltages;
    for (let at = 0; at < V.length; at += 8) {
      const v =
        V[at]! * a +
        V[at + 1]! * b +
        V[at + 2]! * c +
        V[at + 3]! * d +
        (V[at + 4]! * e + V[at + 5]! * f + V[at + 6]! * g + V[at + 7]!);
      if (!(v <= limit && v >= -limit)) return false;
    }
  }
  const n1 = M[0]! * a + M[1]! * b + M[2]! * c + M[3]! * d + (M[4]! * e + M[5]! * f + M[6]! * g + M[7]!);
  const n2 =
    M[8]! * a + M[9]! * b + M[10]! * c + M[11]! * d + (M[12]! * e + M[13]! * f + M[14]! * g + M[15]!);
  const nw =
    M[16]! * a + M[17]! * b + M[18]! * c + M[19]! * d + (M[20]! * e + M[21]! * f + M[22]! * g + M[23]!);
  const ni =
    M[24]! * a + M[25]! * b + M[26]! * c + M[27]! * d + (M[28]! * e + M[29]! * f + M[30]! * g + M[31]!);
  const nz =
    M[32]! * a + M[33]! * b + M[34]! * c + M[35]! * d + (M[36]! * e + M[37]! * f + M[38]! * g + M[39]!);
  const nq =
    M[40]! * a + M[41]! * b + M[42]! * c + M[43]! * d + (M[44]! * e + M[45]! * f + M[46]! * g + M[47]!);
  const turn =
    M[48]! * a + M[49]! * b + M[50]! * c + M[51]! * d + (M[52]! * e + M[53]! * f + M[54]! * g + M[55]!);
  const span = loop.T * loop.samples;
  const slid = turn - (nw - c);
  const sag1 = 1.5 * Math.abs((a + n1) / 2 - turn / span);
  const sag2 = 1.5 * Math.abs((b + n2) / 2 - slid / span);
  if (ends(slot.kept, u, a, b, c, x[CURRENT]!, n1, n2, nw, ni, sag1, sag2)) return false;
  if (slot.moments !== null) gather(slot.moments, a, b, c, d, e, f, g);
  if (plant.tracks) plant.drawn += formValue(lift.forms[ENERGY.input]!, a, b, c, d, e, f, g);
  x[W1] = n1;
  x[W2] = n2;
  x[WIND] = nw;
  x[CURRENT] = ni;
  x[PHI] = x[PHI]! + turn;
  memory[CURRENT_INTEGRAL] = nz;
  memory[UNDER_WAY] = nq;
  return true;
}

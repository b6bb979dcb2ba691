/** Any stretch of a plant's time, by series, with every event on the way located. */
import { ENERGY } from './energy.ts';
import type { Expression, Mode } from './modes.ts';
import * as modes from './modes.ts';
import type { Plant } from './plant.ts';
import { Series } from './series.ts';
import { turn } from './turn.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CURRENT, INPUTS, LOAD, PHI, REF, STATES, W1, W2, WIDTH, WIND } = modes;

/** Nodes and weights of Gauss's rule on 0 … 1: three for a short step of a sampled control, six for an analogue one. */
const SHORT_AT = [0.1127016653792583, 0.5, 0.8872983346207417];
const SHORT_WEIGHT = [0.2777777777777778, 0.4444444444444444, 0.2777777777777778];
const GAUSS_AT = [
  0.033765242898423975, 0.16939530676686776, 0.38069040695840156, 0.6193095930415985, 0.8306046932331322,
  0.966234757101576,
];
const GAUSS_WEIGHT = [
  0.08566224618958516, 0.1803807865240693, 0.23395696728634552, 0.23395696728634552, 0.1803807865240693,
  0.08566224618958516,
];

/** A run that needs more steps by series than this has a loop that is far too fast for its inertia. */
const MOST_SERIES = 200_000;

/** More events than this within one step are no physics a person could see; they are then passed over, and counted. */
const MOST_EVENTS = 400;

/** Nothing in it outlasts a step, so one does for all plants. */
const series = new Series();

/** Goes on for `h` seconds. The held command and load stay. */
export function advance(plant: Plant, h: number): void {
  const { x, u } = plant;
  let left = h;
  let events = 0;
  const moving = moves(plant);
  if (!moving) series.clearReference();
  while (left > 0) {
    if (plant.seriesSteps >= MOST_SERIES) {
      plant.exhausted = true;
      return;
    }
    const { mode } = plant;
    if (moving) series.setReference(plant.reference!, plant.time, plant.pulse);
    const scale =
      mode.curved === 1 ? plant.constants.smooth : mode.curved === 2 ? plant.constants.rotorTeeth : 1;
    const size = mode.curved === 2 ? plant.fieldTorque : mode.curved;
    series.expand(mode, x, u, moving, scale, size, left);
    let s = series.reach(left);
    let ended = -1;
    if (events < MOST_EVENTS) {
      for (let g = 0; g < mode.guards.length; g++) {
        const at = series.firstEnd(mode, g, s, size);
        if (at >= 0 && (at < s || ended < 0)) {
          s = at;
          ended = g;
        }
      }
    }
    plant.seriesSteps++;
    take(plant, mode, s, scale, size);
    left = left - s <= 1e-14 * h ? 0 : left - s;
    if (ended >= 0) {
      events++;
      if (events === MOST_EVENTS) plant.passedOver++;
      turn(plant, mode.guards[ended]!.ending);
    }
  }
}

/** Whether the command goes on within a step. */
function moves({ reference, drive }: Plant): boolean {
  return reference !== null && (drive === 'analogue' || drive === 'analogue-ideal' || drive === 'stepper');
}

/** Moves the state to the end of a series step of `s`, and books its energies. */
function take(plant: Plant, mode: Mode, s: number, scale: number, size: number): void {
  const { x, u, energy, sampled } = plant;
  const slide = x[PHI]! - x[WIND]!;
  if (plant.books || plant.tracks) book(plant, mode, s, scale, size);
  for (let at = 0; at < STATES; at++) x[at] = series.value(at, s);
  if (mode.current[CURRENT] !== 1) {
    const z = plant.scratch;
    for (let at = 0; at < WIDTH; at++) z[at] = at < STATES ? x[at]! : series.value(at, s);
    x[CURRENT] = dot(mode.current, z);
  }
  if (!sampled) for (let at = REF; at < REF + 3; at++) u[at] = series.value(STATES + at, s);
  energy[ENERGY.load]! += u[LOAD]! * (x[PHI]! - x[WIND]! - slide);
  plant.time += s;
}

function book(plant: Plant, mode: Mode, s: number, scale: number, size: number): void {
  const { u, energy, constants: c, rigid, scratch: z } = plant;
  const short = plant.sampled && mode.curved === 0;
  const ats = short ? SHORT_AT : GAUSS_AT;
  const weights = short ? SHORT_WEIGHT : GAUSS_WEIGHT;
  // Motor and slide speed, wind-up and current are all that a sampled drive's energies need.
  const used = short ? CURRENT : WIDTH - 1;
  for (let at = 0; at < INPUTS; at++) z[STATES + at] = u[at]!;
  let given = 0;
  for (let node = 0; node < ats.length; node++) {
    const t = ats[node]! * s;
    const weight = weights[node]! * s;
    for (let at = short ? W1 : PHI; at <= used; at++) z[at] = series.value(at, t);
    const i = dot(mode.current, z);
    const w1 = z[W1]!;
    const w2 = z[W2]!;
    energy[ENERGY.copper]! += weight * i * i;
    energy[ENERGY.motorFriction]! += weight * dot(mode.friction1, z) * w1;
    energy[ENERGY.slideFriction]! +=
      weight * (dot(mode.friction2, z) + (mode.curved === 1 ? c.Tc * Math.tanh(w2 / scale) : 0)) * w2;
    if (!rigid && plant.contact !== 0) energy[ENERGY.damping]! += weight * c.damping * (w1 - w2) ** 2;
    if (mode.curved === 2) {
      const field = z[STATES + REF + 1]!;
      const torque = size * Math.sin(scale * (z[STATES + REF]! - z[PHI]!)) + c.fieldDamping * (field - w1);
      given += weight * torque * w1;
    } else given += weight * dot(mode.voltage, z) * i;
  }
  energy[ENERGY.input]! += given;
  plant.drawn += given;
}

function dot(form: Expression, z: Float64Array): number {
  let total = 0;
  for (let at = 0; at < WIDTH; at++) total += form[at]! * z[at]!;
  return total;
}

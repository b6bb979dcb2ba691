/**
 * What a model's modes came to: equations, steps of one sample, lifted steps. They depend on the model alone, not on the
 * move, so the next run of the same model begins with them. A model is never changed in place.
 */

import { doubles } from './doubles.ts';
import type { Lift } from './lift.ts';
import type { AxisModel } from './model.ts';
import * as modes from './modes.ts';
import { type Constants, type Mode, slideFriction } from './modes.ts';
import * as shapes from './shapes.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CURRENT, HELD, LOAD, ONE, STATES, W1, W2, WIND } = modes;

/** Loads whose steps are kept for the next run, for each mode; a force that varies brings new ones. */
const MOST_LOADS = 8;

/** The step of one sample for one load, and the lifted ones made from it. */
export interface Loaded {
  readonly load: number;
  /** ROWS × 5 weights of what varies, then ROWS constants; see one-sample.ts. */
  readonly matrix: readonly number[];
  /** By which energies may be asked for. */
  readonly lifts: { all: Lift | null; input: Lift | null; none: Lift | null };
}

/** A mode with what a step of one sample needs besides. */
export interface KeptMode {
  readonly mode: Mode;
  /** The way motor and slide have to keep on turning for the mode to last: −1 or 1; 0 where no guard is on that speed. */
  readonly way1: -1 | 0 | 1;
  readonly way2: -1 | 0 | 1;
  /** rad/s between which the slide stays along its way. */
  readonly least2: number;
  readonly most2: number;
  /** Forms of the guards besides those on speed, `TORQUE_WIDTH` apart: see TORQUE_OF. Plain doubles are read quickest. */
  readonly torques: readonly number[];
  readonly dry1: number;
  readonly slope1: number;
  readonly dry2: number;
  readonly slope2: number;
  readonly damping: number;
  /** ROWS × COLUMNS for any load; null while it was not asked for. */
  sample: readonly number[] | null;
  readonly loads: Loaded[];
}

export type Kept = Map<number, KeptMode>;

/** What the forms of guards on torques are made of: motor speed, slide speed, wind-up, current, held command, 1, load. */
const TORQUE_OF = [W1, W2, WIND, CURRENT, STATES + HELD, STATES + ONE, STATES + LOAD] as const;
const { TORQUE_WIDTH } = shapes;

export function keepMode(c: Constants, mode: Mode): KeptMode {
  const { flags, guards, guardStart, guardColumn, guardWeight } = mode;
  const { s1, s2 } = flags;
  const rigid = c.stiffness === Number.POSITIVE_INFINITY;
  const sign2 = s2 > 0 ? 1 : s2 < 0 ? -1 : 0;
  let way1: -1 | 0 | 1 = 0;
  let way2: -1 | 0 | 1 = 0;
  let least2 = Number.NEGATIVE_INFINITY;
  let most2 = Number.POSITIVE_INFINITY;
  const torques = doubles(0);
  for (let at = 0; at < guards.length; at++) {
    switch (guards[at]!.ending) {
      case 'motor-still':
        way1 = s1;
        break;
      case 'slide-still':
        way2 = sign2;
        least2 = 0;
        break;
      case 'slide-slow':
        way2 = sign2;
        least2 = c.fall;
        break;
      case 'slide-fast':
        way2 = sign2;
        most2 = c.fall;
        break;
      default: {
        const to = torques.length;
        for (let column = 0; column < TORQUE_WIDTH; column++) torques.push(0);
        for (let pair = guardStart[at]!; pair < guardStart[at + 1]!; pair++) {
          const column = TORQUE_OF.indexOf(guardColumn[pair]! as (typeof TORQUE_OF)[number]);
          if (column >= 0) torques[to + column] = guardWeight[pair]!;
        }
      }
    }
  }
  const { dry, slope } = slideFriction(c, s2);
  const slips1 = rigid ? sign2 : s1;
  return {
    mode,
    way1,
    way2,
    least2,
    most2,
    torques,
    dry1: slips1 * c.T1,
    slope1: slips1 === 0 ? 0 : c.b1,
    dry2: s2 === 0 ? 0 : dry,
    slope2: s2 === 0 ? 0 : slope,
    damping: rigid || flags.contact === 0 ? 0 : c.damping,
    sample: null,
    loads: [],
  };
}

/** Keeps one more load of a mode; the oldest goes where there are many. */
export function keepLoad(kept: KeptMode, loaded: Loaded): void {
  if (kept.loads.length >= MOST_LOADS) kept.loads.shift();
  kept.loads.push(loaded);
}

const OF_MODEL = new WeakMap<AxisModel, Map<number, Kept>>();

/** What is kept for samples of `h` seconds. */
export function keptOf(model: AxisModel, h: number): Kept {
  let bySample = OF_MODEL.get(model);
  if (!bySample) {
    bySample = new Map();
    OF_MODEL.set(model, bySample);
  }
  let kept = bySample.get(h);
  if (!kept) {
    kept = new Map();
    bySample.set(h, kept);
  }
  return kept;
}

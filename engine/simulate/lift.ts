/**
 * Several samples of a current loop in one step. Between two runs of the speed loop the wanted current stands, the
 * current loop is linear, and so is a mode of the plant: all samples together are one matrix. Nothing is approximated;
 * where a voltage would be cut or an event may fall inside, the samples are taken one by one instead.
 */
import { doubles, doublesOf } from './doubles.ts';
import { addEnergies, type EnergyForms, noForms } from './lift-energy.ts';
import * as shapes from './shapes.ts';

const { LIFT_WIDTH } = shapes;
/** Motor speed, slide speed, wind-up, current, integrator, command under way, turn. */
const LIFT_ROWS = 7;

/** What the lift needs of the inner loop. */
export interface InnerLoop {
  /** s, V/A, V/(A·s). */
  readonly T: number;
  readonly Kcp: number;
  readonly Kci: number;
  /** 0 or 1. */
  readonly delay: number;
  readonly samples: number;
}

/** One sample of the plant: rows motor speed, slide speed, wind-up, current, turn, charge; see one-sample.ts. */
export interface OneSample {
  /** ROWS × 5 weights of what varies, then ROWS constants for `load`. */
  readonly matrix: readonly number[];
  readonly dry1: number;
  readonly slope1: number;
  readonly dry2: number;
  readonly slope2: number;
  readonly damping: number;
  readonly load: number;
}

export interface Lift {
  /** `LIFT_ROWS` rows, each `LIFT_WIDTH` wide. */
  readonly rows: readonly number[];
  /** Greatest size of each weight in any of the voltages asked for, and those voltages themselves. */
  readonly bound: readonly number[];
  readonly voltages: readonly number[];
  readonly forms: EnergyForms;
}

/** Row `from` of `a` in the sum with a weight: out[at] += weight × a. */
function add(out: Float64Array, to: number, weight: number, a: Float64Array, from: number): void {
  for (let at = 0; at < LIFT_WIDTH; at++) out[to + at] = out[to + at]! + weight * a[from + at]!;
}

/** Voltages asked for, as many samples as any lift has had. */
let asking = new Float64Array(4 * LIFT_WIDTH);
const scratch = [
  new Float64Array(LIFT_ROWS * LIFT_WIDTH),
  new Float64Array(LIFT_ROWS * LIFT_WIDTH),
  new Float64Array(2 * LIFT_WIDTH),
] as const;

/** `forms`: which energies may be asked for later; working them out takes longer than all the rest. */
export function makeLift(sample: OneSample, loop: InnerLoop, wanted: 'all' | 'input' | 'none' = 'all'): Lift {
  const P = sample.matrix;
  const { T, Kcp, Kci, delay, samples } = loop;
  const W = LIFT_WIDTH;
  // Rows 0 to 3 the plant, 4 the integrator, 5 the command under way, 6 the turn so far.
  let now: Float64Array = scratch[0];
  let next: Float64Array = scratch[1];
  now.fill(0);
  for (const row of [0, 1, 2, 4, 5]) now[row * W + row] = 1;
  now[3 * W + 3] = -1;
  now[3 * W + 6] = 1;
  if (asking.length < samples * W) asking = new Float64Array(samples * W);
  const voltages = asking;
  voltages.fill(0);
  const charge = scratch[2];
  const forms = noForms(wanted);
  for (let at = 0; at < samples; at++) {
    const asked = at * W;
    voltages[asked + 6] = Kcp;
    add(voltages, asked, -Kcp, now, 3 * W);
    add(voltages, asked, Kci, now, 4 * W);
    const v = delay === 0 ? voltages : now;
    const applied = delay === 0 ? asked : 5 * W;
    next.fill(0);
    charge.fill(0);
    for (let row = 0; row < 6; row++) {
      // Turn and charge of this sample stand apart: the one is gathered, the other counts for energy only.
      const out = row < 4 ? next : charge;
      const to = row < 4 ? row * W : (row - 4) * W;
      for (let from = 0; from < 4; from++) add(out, to, P[row * 5 + from]!, now, from * W);
      add(out, to, P[row * 5 + 4]!, v, applied);
      out[to + 7] = out[to + 7]! + P[30 + row]!;
    }
    next.set(voltages.subarray(asked, asked + W), 5 * W);
    add(next, 4 * W, 1, now, 4 * W);
    add(next, 4 * W, -T, now, 3 * W);
    next[4 * W + 6] = next[4 * W + 6]! + T;
    add(next, 6 * W, 1, now, 6 * W);
    add(next, 6 * W, 1, charge, 0);
    if (wanted !== 'none') addEnergies(forms, sample, T, now, next, charge, v, applied, wanted);
    const spare = now;
    now = next;
    next = spare;
  }
  const bound = doubles(W);
  for (let at = 0; at < samples * W; at++) bound[at % W] = Math.max(bound[at % W]!, Math.abs(voltages[at]!));
  return { rows: doublesOf(now), bound, voltages: doublesOf(voltages, samples * W), forms };
}

/**
 * Energies of a lifted step. Each is a sum of products of what the step began with; so the products are gathered while it
 * runs, and the energies worked out once at the end.
 */
import type { OneSample } from './lift.ts';
import * as shapes from './shapes.ts';

const W = shapes.LIFT_WIDTH;
const PAIRS = (W * (W + 1)) / 2;
/** Energies that are sums of products: see ENERGY in energy.ts, in its order up to `load`. */
const FORMS = 6;

/** By energy, the weight of each product of two beginnings. */
export type EnergyForms = readonly Float64Array[];

export const noForms = (wanted: 'all' | 'input' | 'none'): EnergyForms =>
  wanted === 'none' ? [] : Array.from({ length: FORMS }, () => new Float64Array(PAIRS));

/** Adds weight × a × b to a form over pairs. */
function addProduct(form: Float64Array, weight: number, a: Float64Array, b: Float64Array): void {
  if (weight === 0) return;
  let pair = 0;
  for (let i = 0; i < W; i++)
    for (let j = i; j < W; j++, pair++)
      form[pair] = form[pair]! + weight * (i === j ? a[i]! * b[i]! : a[i]! * b[j]! + a[j]! * b[i]!);
}

const rows = Array.from({ length: 7 }, () => new Float64Array(W));
const [before, after, mean, half, bend, turn, slid] = rows as [
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
];
const one = new Float64Array(W);
one[7] = 1;

/** weight × mean square over the sample of what goes from `before` to `after` with this `mean`: exact for a parabola. */
function addSquare(form: Float64Array, weight: number): void {
  if (weight === 0) return;
  for (let at = 0; at < W; at++) {
    half[at] = (after[at]! - before[at]!) / 2;
    bend[at] = (after[at]! + before[at]!) / 2 - mean[at]!;
  }
  addProduct(form, weight, mean, mean);
  addProduct(form, weight / 3, half, half);
  addProduct(form, weight / 5, bend, bend);
}

/** Of one sample within the step: rows before and after it, turn and charge in `gathered`, the voltage that acts. */
export function addEnergies(
  forms: EnergyForms,
  sample: OneSample,
  T: number,
  now: Float64Array,
  next: Float64Array,
  gathered: Float64Array,
  v: Float64Array,
  applied: number,
  wanted: 'all' | 'input',
): void {
  const row = (out: Float64Array, weight: number, a: Float64Array, from: number): void => {
    for (let at = 0; at < W; at++) out[at] = weight * a[from + at]!;
  };
  row(before, 1, v, applied);
  row(after, 1, gathered, W);
  addProduct(forms[4]!, 1, before, after);
  if (wanted === 'input') return;
  row(turn, 1, gathered, 0);
  for (let at = 0; at < W; at++) slid[at] = turn[at]! - next[2 * W + at]! + now[2 * W + at]!;
  row(before, 1, now, 3 * W);
  row(after, 1, next, 3 * W);
  row(mean, 1 / T, gathered, W);
  addSquare(forms[0]!, T);
  row(before, 1, now, 0);
  row(after, 1, next, 0);
  row(mean, 1 / T, turn, 0);
  addSquare(forms[1]!, sample.slope1 * T);
  addProduct(forms[1]!, sample.dry1, turn, one);
  row(before, 1, now, W);
  row(after, 1, next, W);
  row(mean, 1 / T, slid, 0);
  addSquare(forms[2]!, sample.slope2 * T);
  addProduct(forms[2]!, sample.dry2, slid, one);
  for (let at = 0; at < W; at++) {
    before[at] = now[at]! - now[W + at]!;
    after[at] = next[at]! - next[W + at]!;
    mean[at] = (next[2 * W + at]! - now[2 * W + at]!) / T;
  }
  addSquare(forms[3]!, sample.damping * T);
  addProduct(forms[5]!, sample.load, slid, one);
}

/** Products of what the lifted steps of one mode began with, and how many. */
export interface Moments {
  readonly sums: Float64Array;
  steps: number;
}

export const noMoments = (): Moments => ({ sums: new Float64Array(PAIRS), steps: 0 });

const begins = new Float64Array(W);

/** Gathers the products of what a lifted step begins with. */
export function gather(
  moments: Moments,
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  g: number,
): void {
  begins[0] = a;
  begins[1] = b;
  begins[2] = c;
  begins[3] = d;
  begins[4] = e;
  begins[5] = f;
  begins[6] = g;
  begins[7] = 1;
  const { sums } = moments;
  let pair = 0;
  for (let i = 0; i < W; i++) {
    const each = begins[i]!;
    for (let j = i; j < W; j++, pair++) sums[pair] = sums[pair]! + each * begins[j]!;
  }
  moments.steps++;
}

/** Books the energies of the steps taken since the last time. */
export function settle(forms: EnergyForms, moments: Moments, energy: Float64Array): void {
  if (moments.steps === 0) return;
  for (let at = 0; at < forms.length; at++) {
    const form = forms[at]!;
    let total = 0;
    for (let pair = 0; pair < PAIRS; pair++) total += form[pair]! * moments.sums[pair]!;
    energy[at] = energy[at]! + total;
  }
  moments.sums.fill(0);
  moments.steps = 0;
}

/** One form at one beginning. */
export function formValue(
  form: Float64Array,
  a: number,
  b: number,
  c: number,
  d: number,
  e: number,
  f: number,
  g: number,
): number {
  const F = form;
  return (
    a * (F[0]! * a + F[1]! * b + F[2]! * c + F[3]! * d + F[4]! * e + F[5]! * f + F[6]! * g + F[7]!) +
    b * (F[8]! * b + F[9]! * c + F[10]! * d + F[11]! * e + F[12]! * f + F[13]! * g + F[14]!) +
    c * (F[15]! * c + F[16]! * d + F[17]! * e + F[18]! * f + F[19]! * g + F[20]!) +
    d * (F[21]! * d + F[22]! * e + F[23]! * f + F[24]! * g + F[25]!) +
    e * (F[26]! * e + F[27]! * f + F[28]! * g + F[29]!) +
    f * (F[30]! * f + F[31]! * g + F[32]!) +
    g * (F[33]! * g + F[34]!) +
    F[35]!
  );
}

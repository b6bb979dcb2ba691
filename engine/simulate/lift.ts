/**
 * Several samples of a current loop in one step. Between two runs of the speed loop the wanted current stands, the
 * current loop is linear, and so is a mode of the plant: all samples together are one matrix. Nothing is approximated;
 * where a voltage would be cut or an event may fall inside, the samples are taken one by one instead.
 */

/** Motor speed, slide speed, wind-up, lack of current, current integrator, command under way, wanted current, 1. */
export const LIFT_WIDTH = 8;
const PAIRS = (LIFT_WIDTH * (LIFT_WIDTH + 1)) / 2;
/** Energies that are sums of squares: see ENERGY in plant.ts, in its order up to `load`. */
const FORMS = 6;

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

/** One sample of the plant: rows motor speed, slide speed, wind-up, current, turn, charge; see plant.ts. */
export interface OneSample {
  readonly matrix: Float64Array;
  readonly dry1: number;
  readonly slope1: number;
  readonly dry2: number;
  readonly slope2: number;
  readonly damping: number;
  readonly load: number;
}

export interface Lift {
  /** Seven rows (motor speed, slide speed, wind-up, current, integrator, command under way, turn), row by row. */
  readonly rows: Float64Array;
  /** Greatest size of each weight in any of the voltages asked for, and those voltages themselves. */
  readonly bound: Float64Array;
  readonly voltages: Float64Array;
  /** Sums of products of what the steps began with; energies are linear in them. */
  readonly moments: Float64Array;
  readonly forms: readonly Float64Array[];
  used: boolean;
}

type Row = number[];
const nothing = (): Row => [0, 0, 0, 0, 0, 0, 0, 0];
const unit = (at: number): Row => {
  const row = nothing();
  row[at] = 1;
  return row;
};
function mix(...terms: readonly (readonly [number, Row])[]): Row {
  const row = nothing();
  for (const [weight, from] of terms)
    for (let at = 0; at < LIFT_WIDTH; at++) row[at] = row[at]! + weight * from[at]!;
  return row;
}

/** Adds weight × a × b to a form over pairs. */
function addProduct(form: Float64Array, weight: number, a: Row, b: Row): void {
  if (weight === 0) return;
  let pair = 0;
  for (let i = 0; i < LIFT_WIDTH; i++)
    for (let j = i; j < LIFT_WIDTH; j++, pair++)
      form[pair] = form[pair]! + weight * (i === j ? a[i]! * b[i]! : a[i]! * b[j]! + a[j]! * b[i]!);
}

/** `forms`: which energies may be asked for later; working them out takes longer than all the rest. */
export function makeLift(sample: OneSample, loop: InnerLoop, wanted: 'all' | 'input' | 'none' = 'all'): Lift {
  const P = sample.matrix;
  const { T, Kcp, Kci, delay, samples } = loop;
  const one = unit(7);
  const asking = unit(6);
  let w1 = unit(0);
  let w2 = unit(1);
  let wind = unit(2);
  let i = mix([1, asking], [-1, unit(3)]);
  let zc = unit(4);
  let queued = unit(5);
  let turn = nothing();
  const forms = Array.from({ length: FORMS }, () => new Float64Array(PAIRS));
  const voltages: Row[] = [];
  const square = (form: Float64Array, weight: number, a: Row, b: Row, mean: Row): void => {
    const half = mix([0.5, b], [-0.5, a]);
    const bend = mix([0.5, b], [0.5, a], [-1, mean]);
    addProduct(form, weight, mean, mean);
    addProduct(form, weight / 3, half, half);
    addProduct(form, weight / 5, bend, bend);
  };
  for (let at = 0; at < samples; at++) {
    const lack = mix([1, asking], [-1, i]);
    const asked = mix([Kcp, lack], [Kci, zc]);
    voltages.push(asked);
    const v = delay === 0 ? asked : queued;
    const next = (row: number): Row =>
      mix(
        [P[row * 5]!, w1],
        [P[row * 5 + 1]!, w2],
        [P[row * 5 + 2]!, wind],
        [P[row * 5 + 3]!, i],
        [P[row * 5 + 4]!, v],
        [P[30 + row]!, one],
      );
    const [nw1, nw2, nwind, ni, dturn, charge] = [0, 1, 2, 3, 4, 5].map(next) as [
      Row,
      Row,
      Row,
      Row,
      Row,
      Row,
    ];
    if (wanted !== 'none') addProduct(forms[4]!, 1, v, charge);
    if (wanted === 'all') {
      const slid = mix([1, dturn], [-1, nwind], [1, wind]);
      square(forms[0]!, T, i, ni, mix([1 / T, charge]));
      square(forms[1]!, sample.slope1 * T, w1, nw1, mix([1 / T, dturn]));
      addProduct(forms[1]!, sample.dry1, dturn, one);
      square(forms[2]!, sample.slope2 * T, w2, nw2, mix([1 / T, slid]));
      addProduct(forms[2]!, sample.dry2, slid, one);
      const twist = mix([1 / T, nwind], [-1 / T, wind]);
      square(forms[3]!, sample.damping * T, mix([1, w1], [-1, w2]), mix([1, nw1], [-1, nw2]), twist);
      addProduct(forms[5]!, sample.load, slid, one);
    }
    zc = mix([1, zc], [T, lack]);
    queued = asked;
    turn = mix([1, turn], [1, dturn]);
    w1 = nw1;
    w2 = nw2;
    wind = nwind;
    i = ni;
  }
  const bound = new Float64Array(LIFT_WIDTH);
  for (const row of voltages)
    for (let at = 0; at < LIFT_WIDTH; at++) bound[at] = Math.max(bound[at]!, Math.abs(row[at]!));
  const rows = new Float64Array(7 * LIFT_WIDTH);
  for (const [at, row] of [w1, w2, wind, i, zc, queued, turn].entries()) rows.set(row, at * LIFT_WIDTH);
  return {
    rows,
    bound,
    voltages: Float64Array.from(voltages.flat()),
    moments: new Float64Array(PAIRS),
    forms,
    used: false,
  };
}

/** Books the energies of the steps taken since the last time. */
export function settle(lift: Lift, energy: Float64Array): void {
  if (!lift.used) return;
  const { moments, forms } = lift;
  for (let at = 0; at < FORMS; at++) {
    const form = forms[at]!;
    let total = 0;
    for (let pair = 0; pair < PAIRS; pair++) total += form[pair]! * moments[pair]!;
    energy[at] = energy[at]! + total;
  }
  moments.fill(0);
  lift.used = false;
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

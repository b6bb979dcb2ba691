/** Periodic steady state of a single-phase bridge with source resistance, a capacitor and a constant load current. */

export interface RectifierState {
  /** All in SI: volts, amperes, watts. */
  readonly mean: number;
  readonly high: number;
  readonly valley: number;
  readonly secondaryRms: number;
  readonly secondaryPeak: number;
  readonly capacitorRms: number;
  /** Real power given by the secondary's EMF. */
  readonly power: number;
}

/** EMF of the secondary r.m.s., its resistance, drop of one diode, line frequency, capacitance, load current. */
export type RectifierGiven = readonly [E: number, Rs: number, Vd: number, f: number, C: number, I: number];

/** While the diodes conduct: Rs·C·v' + v = Ep·sin(θ) − 2·Vd − Rs·I, solved in closed form over the angle θ. */
function charging([E, Rs, Vd, f, C, I]: RectifierGiven, start: number) {
  const Ep = Math.SQRT2 * E;
  const k = 2 * Math.PI * f * Rs * C;
  const gain = Ep / (1 + k * k);
  const forced = (a: number): number => gain * (Math.sin(a) - k * Math.cos(a)) - 2 * Vd - Rs * I;
  const v0 = Ep * Math.sin(start) - 2 * Vd;
  const free = v0 - forced(start);
  const v = (a: number): number => forced(a) + free * Math.exp(-(a - start) / k);
  const current = (a: number): number => (Ep * Math.sin(a) - 2 * Vd - v(a)) / Rs;
  return { v0, v, current };
}

/** The angle at which the current is back at zero: it makes one hump, over before the EMF passes zero. */
function endOfCharging(current: (a: number) => number, start: number): number {
  let low = start;
  let high = Math.PI;
  for (let n = 0; n < 60; n++) {
    const mid = (low + high) / 2;
    if (current(mid) > 0) low = mid;
    else high = mid;
  }
  return (low + high) / 2;
}

/** How much the bus is above (positive) where it began, half a cycle later; zero in the steady state. */
function drift(given: RectifierGiven, start: number): number {
  const [, , , f, C, I] = given;
  const { v0, v, current } = charging(given, start);
  const end = endOfCharging(current, start);
  const slope = I / (2 * Math.PI * f * C);
  return v(end) - slope * (start + Math.PI - end) - v0;
}

/** Angles between which the start of charging is sought: where the EMF first beats the diodes, and its peak. */
const bracket = ([E, , Vd]: RectifierGiven): [number, number] => [
  Math.asin((2 * Vd) / (Math.SQRT2 * E)) + 1e-9,
  Math.PI / 2 - 1e-9,
];

/** Why there is no steady bus, or undefined. */
export function rectifierRefuses(...given: RectifierGiven): string | undefined {
  const [E, , Vd, , , I] = given;
  if (I <= 0) return 'without current there is no ripple: the bus stands at its peak';
  if (Math.SQRT2 * E <= 2 * Vd) return 'the secondary does not even beat the drop of its diodes';
  return drift(given, bracket(given)[0]) > 0
    ? undefined
    : 'the source is too weak for this current: the bus would fall to nothing between two peaks';
}

/** Composite Simpson over an even number of stretches; the integrands are smooth. */
function integrate(f: (a: number) => number, from: number, to: number): number {
  const n = 400;
  const h = (to - from) / n;
  let sum = f(from) + f(to);
  for (let k = 1; k < n; k++) sum += f(from + k * h) * (k % 2 === 1 ? 4 : 2);
  return (sum * h) / 3;
}

/** The steady state. Call only when `rectifierRefuses` has no reason. */
export function rectifier(...given: RectifierGiven): RectifierState {
  const [E, , , , , I] = given;
  let [low, high] = bracket(given);
  // A later start means a fuller capacitor, which gains less: the drift falls from positive to negative.
  for (let n = 0; n < 60; n++) {
    const mid = (low + high) / 2;
    if (drift(given, mid) > 0) low = mid;
    else high = mid;
  }
  const start = (low + high) / 2;
  const { v, v0, current } = charging(given, start);
  const end = endOfCharging(current, start);
  const rest = start + Math.PI - end;
  const mean = (f: (a: number) => number): number => integrate(f, start, end) / Math.PI;
  const squares = mean((a) => current(a) ** 2);
  const capacitor = mean((a) => (current(a) - I) ** 2) + (I * I * rest) / Math.PI;
  // The bus turns where the diodes bring or leave just the load current.
  const turn = (a: number, b: number, rising: boolean): number => {
    let [p, q] = [a, b];
    for (let n = 0; n < 60; n++) {
      const mid = (p + q) / 2;
      if (current(mid) < I === rising) p = mid;
      else q = mid;
    }
    return (p + q) / 2;
  };
  const top = peakAngle(current, start, end);
  return {
    mean: mean(v) + ((v(end) + v0) / 2) * (rest / Math.PI),
    high: v(turn(top, end, false)),
    valley: v(turn(start, top, true)),
    secondaryRms: Math.sqrt(squares),
    secondaryPeak: current(top),
    capacitorRms: Math.sqrt(capacitor),
    power: mean((a) => Math.SQRT2 * E * Math.sin(a) * current(a)),
  };
}

/** Where the charging current is highest: golden section on its single hump. */
function peakAngle(current: (a: number) => number, start: number, end: number): number {
  const g = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [start, end];
  for (let n = 0; n < 80; n++) {
    const c = b - g * (b - a);
    const d = a + g * (b - a);
    if (current(c) > current(d)) b = d;
    else a = c;
  }
  return (a + b) / 2;
}

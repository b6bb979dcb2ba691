/**
 * How far a loop is from swinging by itself, by its frequency response. Linear: friction, play, counts and limits are left
 * out; sampling and computing count as a delay of half a sample and the samples from reading to effect.
 */
import { add, type Complex, complex, over, size, times, turned } from './complex.ts';
import { constantsOf } from './constants.ts';
import type { AxisModel } from './model.ts';

/** `position` cuts the loop at the position error, `whole` at the drive's output, where all loops act together. */
export type Cut = 'position' | 'whole';

export interface Margins {
  /** By what factor the gain may grow; Infinity where no gain makes it swing. */
  readonly gainMargin: number;
  /** rad/s at which it would swing then; null where none does. */
  readonly oscillatesAt: number | null;
  /** rad that may yet be lost at the crossover, the least over all crossovers; null where the gain never reaches one. */
  readonly phaseMargin: number | null;
  /** rad/s of that crossover. */
  readonly crossover: number | null;
  /** By what factor the gain may fall; 0 where it may fall to nothing. */
  readonly gainFloor: number;
  /** Whether both margins say that it settles. */
  readonly steady: boolean;
  readonly bode: {
    /** rad/s. */
    readonly frequency: Float64Array;
    readonly magnitude: Float64Array;
    /** rad, without jumps. */
    readonly phase: Float64Array;
  };
}

const POINTS = 1200;

/** Response of motor and seen position (rad, rad/s) to the motor's torque, at `s`. */
function mechanics(model: AxisModel, s: Complex): { readonly speed: Complex; readonly position: Complex } {
  const c = constantsOf(model);
  const rigid = c.stiffness === Number.POSITIVE_INFINITY;
  if (rigid) {
    const speed = over(complex(1), add(times(complex(c.J1 + c.J2), s), complex(c.b1 + c.b2)));
    return { speed, position: over(speed, s) };
  }
  const spring = add(complex(c.stiffness), times(complex(c.damping), s));
  const first = add(times(s, add(times(complex(c.J1), s), complex(c.b1))), spring);
  const second = add(times(s, add(times(complex(c.J2), s), complex(c.b2))), spring);
  const both = add(times(first, second), times(complex(-1), times(spring, spring)));
  const motor = over(second, both);
  const slide = over(spring, both);
  const seen = add(times(complex(1 - c.seesWind), motor), times(complex(c.seesWind), slide));
  return { speed: times(s, motor), position: seen };
}

/** Open-loop response at jω of a servo axis. */
export function openLoop(model: AxisModel, cut: Cut, w: number): Complex {
  const { control } = model;
  const c = constantsOf(model);
  const s = complex(0, w);
  const { speed, position } = mechanics(model, s);
  const wait = (every: number): Complex =>
    control.kind === 'open' || control.sample === 0
      ? complex(1)
      : turned(-w * control.sample * (control.delay + 0.5 * every));
  const torque = complex(c.K);
  // A voltage drives the winding against the back-EMF: i = (v − K w)/(R + L s).
  const winding = over(complex(1), add(complex(c.R), times(complex(c.L), s)));
  const emf = add(complex(1), times(times(complex(c.K * c.K), winding), speed));
  const currentOfVoltage = over(winding, emf);
  if (control.kind === 'pid') {
    const derivative = times(complex(control.derivative), s);
    const law = add(add(complex(control.proportional), over(complex(control.integral), s)), derivative);
    const drive = control.output === 'voltage' ? currentOfVoltage : complex(1);
    return times(times(times(law, wait(1)), times(drive, torque)), position);
  }
  if (control.kind === 'open') return complex(0);
  const inner = (): Complex => {
    if (control.current === 'ideal') return wait(1);
    const law = times(add(complex(c.Kcp), over(complex(c.Kci), s)), wait(1));
    const loop = times(law, currentOfVoltage);
    return over(loop, add(complex(1), loop));
  };
  const current = inner();
  const hold =
    control.sample === 0 ? complex(1) : turned(-w * control.sample * 0.5 * (control.speedEvery - 1));
  const law = times(add(complex(c.Kvp), over(complex(c.Kvi), s)), times(hold, times(current, torque)));
  // A speed from the difference of two counts is half a period old.
  const old =
    control.speedFrom === 'encoder' && control.sample > 0
      ? turned(-w * control.sample * control.speedEvery * 0.5)
      : complex(1);
  const speedLoop = times(law, times(speed, old));
  if (cut === 'whole') return add(speedLoop, times(times(law, complex(c.Kp)), position));
  return over(times(times(law, complex(c.Kp)), position), add(complex(1), speedLoop));
}

/** Margins of the model's loop. A stepping motor has none: null. */
export function loopMargins(model: AxisModel, cut: Cut = 'whole'): Margins | null {
  if (model.control.kind === 'open') return null;
  const top = model.control.sample > 0 ? Math.PI / model.control.sample : 1e5;
  const response = (w: number): Complex => openLoop(model, cut, w);
  return marginsOf(response, 0.1, top);
}

/** Margins of any open loop between two frequencies (rad/s). */
export function marginsOf(response: (w: number) => Complex, low: number, high: number): Margins {
  const frequency = new Float64Array(POINTS);
  const magnitude = new Float64Array(POINTS);
  const phase = new Float64Array(POINTS);
  const step = Math.log(high / low) / (POINTS - 1);
  let turns = 0;
  for (let k = 0; k < POINTS; k++) {
    const w = low * Math.exp(k * step);
    const L = response(w);
    frequency[k] = w;
    magnitude[k] = size(L);
    const angle = Math.atan2(L.im, L.re);
    if (k === 0) turns = angle > Math.PI / 2 ? -1 : 0;
    else {
      const raw = angle + 2 * Math.PI * turns - phase[k - 1]!;
      turns -= Math.round(raw / (2 * Math.PI));
    }
    phase[k] = angle + 2 * Math.PI * turns;
  }
  let phaseMargin: number | null = null;
  let crossover: number | null = null;
  let gainMargin = Number.POSITIVE_INFINITY;
  let oscillatesAt: number | null = null;
  let gainFloor = 0;
  let steady = true;
  const root = (k: number, f: (w: number) => number): number => bisect(f, frequency[k - 1]!, frequency[k]!);
  for (let k = 1; k < POINTS; k++) {
    if (magnitude[k - 1]! >= 1 !== magnitude[k]! >= 1) {
      const w = root(k, (each) => size(response(each)) - 1);
      const L = response(w);
      const near = wrapped(Math.atan2(L.im, L.re) + Math.PI);
      if (phaseMargin === null || Math.abs(near) < Math.abs(phaseMargin)) {
        phaseMargin = near;
        crossover = w;
      }
    }
    // The response crosses the negative real axis where its phase passes an odd multiple of half a turn.
    const before = Math.floor((phase[k - 1]! - Math.PI) / (2 * Math.PI));
    const after = Math.floor((phase[k]! - Math.PI) / (2 * Math.PI));
    if (before === after) continue;
    const w = root(k, (each) => response(each).im);
    const L = response(w);
    if (!(L.re < 0)) continue;
    const gain = size(L);
    const falls = phase[k]! < phase[k - 1]!;
    if (gain < 1 && 1 / gain < gainMargin) {
      gainMargin = 1 / gain;
      oscillatesAt = w;
    } else if (gain >= 1 && falls) {
      // Beyond −180° with gain above one on the way down: it swings already.
      gainMargin = Math.min(gainMargin, 1 / gain);
      oscillatesAt = w;
      steady = false;
    } else if (gain >= 1) gainFloor = Math.max(gainFloor, 1 / gain);
  }
  if (phaseMargin !== null && phaseMargin <= 0) steady = false;
  return {
    gainMargin,
    oscillatesAt,
    phaseMargin,
    crossover,
    gainFloor,
    steady,
    bode: { frequency, magnitude, phase },
  };
}

const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

function bisect(f: (w: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  const sign = Math.sign(f(low));
  for (let turn = 0; turn < 80; turn++) {
    const middle = Math.sqrt(low * high);
    if (middle === low || middle === high) break;
    if (Math.sign(f(middle)) === sign) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

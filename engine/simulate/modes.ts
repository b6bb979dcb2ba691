/**
 * Between events an axis is linear: a mode says which parts stick or slip, which flank is in contact, which limit
 * holds. This file writes each mode's equations x' = A x + B u and the guards that end it.
 *
 * States: motor angle, motor speed, slide speed, wind-up (motor angle less slide angle), current, the two integrators
 * of an analogue control, and charge through the motor. The slide is reckoned in motor radians.
 * Inputs: 1, the held command, the reference with two derivatives, the load torque on the slide, the voltage limit.
 */

export const PHI = 0;
export const W1 = 1;
export const W2 = 2;
export const WIND = 3;
export const CURRENT = 4;
export const ZV = 5;
export const ZC = 6;
export const CHARGE = 7;
export const STATES = 8;

export const ONE = 0;
export const HELD = 1;
export const REF = 2;
export const REF1 = 3;
export const REF2 = 4;
export const LOAD = 5;
export const LIMIT = 6;
export const INPUTS = 7;
export const WIDTH = STATES + INPUTS;

/** A linear expression: weights of states, then of inputs. */
export type Expression = Float64Array;
/** The same while it is put together: plain arrays are made faster. */
type Form = number[];

export const DRIVES = [
  'voltage',
  'current',
  'analogue',
  'analogue-ideal',
  'open',
  'short',
  'stepper',
] as const;
export type DriveKind = (typeof DRIVES)[number];

/** Constants of one axis in motor radians. */
export interface Constants {
  readonly R: number;
  readonly L: number;
  readonly K: number;
  readonly J1: number;
  readonly J2: number;
  readonly stiffness: number;
  readonly damping: number;
  /** rad, half the play. */
  readonly gap: number;
  /** N·m of dry friction at the motor; the brake adds to it. */
  readonly T1: number;
  readonly b1: number;
  /** N·m at the slide: from rest, sliding, and rad/s of the fall between them. */
  readonly Ts: number;
  readonly Tc: number;
  readonly b2: number;
  readonly fall: number;
  /** rad/s; above 0 the slide's friction is Tc·tanh(w/smooth). */
  readonly smooth: number;
  readonly currentLimit: number;
  /** Analogue cascade. */
  readonly Kp: number;
  readonly Kvp: number;
  readonly Kvi: number;
  readonly kff: number;
  readonly kaff: number;
  readonly Kcp: number;
  readonly Kci: number;
  /** Weight of the wind-up in what the position loop sees: 0 motor, 1 slide. */
  readonly seesWind: number;
  readonly rotorTeeth: number;
  readonly fieldDamping: number;
}

/** −1, 0 (sticks), 1 for the motor; the slide has ±2 beyond the speed where its friction has fallen. */
export interface ModeFlags {
  readonly drive: DriveKind;
  readonly s1: -1 | 0 | 1;
  readonly s2: -2 | -1 | 0 | 1 | 2;
  /** Flank in contact: 1, −1, or 0 in the gap. Without play always 1. */
  readonly contact: -1 | 0 | 1;
  readonly satI: -1 | 0 | 1;
  readonly satV: -1 | 0 | 1;
}

/** What ends a mode. */
export type Ending =
  | 'slide-still'
  | 'slide-slow'
  | 'slide-fast'
  | 'slide-breaks+'
  | 'slide-breaks-'
  | 'motor-still'
  | 'motor-breaks+'
  | 'motor-breaks-'
  | 'touch+'
  | 'touch-'
  | 'leave'
  | 'current+'
  | 'current-'
  | 'current-free'
  | 'voltage+'
  | 'voltage-'
  | 'voltage-free';

/** Holds while its form (see `guardWeight`) is not negative. */
export interface Guard {
  readonly ending: Ending;
  /** Below −tolerance it has ended; rounding stays within. */
  readonly tolerance: number;
  /** How much of the curved torque stands in the form besides. */
  readonly curved: number;
}

export interface Mode {
  readonly flags: ModeFlags;
  /** A and B row by row, as pairs of column (states, then inputs) and weight. */
  readonly start: Int32Array;
  readonly column: Int32Array;
  readonly weight: Float64Array;
  readonly guards: readonly Guard[];
  /** The guards' forms as pairs of column and weight, as A and B are kept. */
  readonly guardStart: Int32Array;
  readonly guardColumn: Int32Array;
  readonly guardWeight: Float64Array;
  readonly current: Expression;
  /** Torque through screw and nut on the motor. */
  readonly contactTorque: Expression;
  /** Voltage at the motor. */
  readonly voltage: Expression;
  /** Friction torques of the two bodies as linear expressions; the smoothed one is apart. */
  readonly friction1: Expression;
  readonly friction2: Expression;
  /** 0 none, 1 smoothed friction, 2 the stepper's field. */
  readonly curved: 0 | 1 | 2;
  /** What the curved torque, per N·m, does to each state's rate. */
  readonly curvedOn: Float64Array;
}

const zero = (): Form => {
  const form: Form = [];
  for (let at = 0; at < WIDTH; at++) form.push(0);
  return form;
};
const state = (at: number): Form => {
  const form = zero();
  form[at] = 1;
  return form;
};
const input = (at: number): Form => state(STATES + at);
const constant = (value: number): Form => scaled(input(ONE), value);
function scaled(form: Form, by: number): Form {
  const out = zero();
  // Nothing times an infinite limit stays nothing.
  for (let at = 0; at < WIDTH; at++) if (form[at] !== 0) out[at] = form[at]! * by;
  return out;
}
function sum(...forms: readonly Form[]): Form {
  const total = zero();
  for (const form of forms) for (let at = 0; at < WIDTH; at++) total[at]! += form[at]!;
  return total;
}
function less(a: Form, b: Form): Form {
  const out = zero();
  for (let at = 0; at < WIDTH; at++) out[at] = a[at]! - b[at]!;
  return out;
}

/** The slide's friction in slip: torque at no speed, and slope. */
export function slideFriction(c: Constants, s2: number): { readonly dry: number; readonly slope: number } {
  const sign = Math.sign(s2);
  if (Math.abs(s2) === 1 && c.fall > 0) return { dry: sign * c.Ts, slope: c.b2 - (c.Ts - c.Tc) / c.fall };
  return { dry: sign * c.Tc, slope: c.b2 };
}

/** Voltage and current of the motor as the drive makes them. */
function electrics(c: Constants, flags: ModeFlags) {
  const i = state(CURRENT);
  const emf = scaled(state(W1), c.K);
  const positionError = less(input(REF), less(state(PHI), scaled(state(WIND), c.seesWind)));
  const speedError = less(sum(scaled(positionError, c.Kp), scaled(input(REF1), c.kff)), state(W1));
  const wanted = sum(
    scaled(speedError, c.Kvp),
    scaled(state(ZV), c.Kvi),
    scaled(input(REF2), (c.kaff * (c.J1 + c.J2)) / c.K),
  );
  const allowed = flags.satI === 0 ? wanted : constant(flags.satI * c.currentLimit);
  const none = { wanted: zero(), allowed: zero(), zv: zero(), zc: zero(), wantedVoltage: zero() };
  const follows = (voltage: Form): Form => (c.L > 0 ? i : scaled(less(voltage, emf), 1 / c.R));
  const ohmic = (current: Form): Form => sum(scaled(current, c.R), emf);
  switch (flags.drive) {
    case 'voltage':
      return { ...none, voltage: input(HELD), current: follows(input(HELD)), carries: c.L > 0 };
    case 'short':
      return { ...none, voltage: zero(), current: follows(zero()), carries: c.L > 0 };
    case 'open':
    case 'stepper':
      return { ...none, voltage: zero(), current: zero(), carries: false };
    case 'current':
      return { ...none, voltage: ohmic(input(HELD)), current: input(HELD), carries: false };
    case 'analogue-ideal': {
      const limit = scaled(input(LIMIT), flags.satV);
      const current = flags.satV === 0 ? allowed : scaled(less(limit, emf), 1 / c.R);
      const zv = sum(speedError, antiWindup(wanted, current, c.Kvp));
      return { ...none, wanted, allowed, zv, voltage: ohmic(current), current, carries: false };
    }
    case 'analogue': {
      const zv = sum(speedError, antiWindup(wanted, allowed, c.Kvp));
      const limit = scaled(input(LIMIT), flags.satV);
      // Without inductance the current loop is an algebraic one: v = Kcp (i* − (v − emf)/R) + Kci zc.
      const integral = scaled(state(ZC), c.Kci);
      const wantedVoltage =
        c.L > 0
          ? sum(scaled(less(allowed, i), c.Kcp), integral)
          : scaled(sum(scaled(allowed, c.Kcp), integral, scaled(emf, c.Kcp / c.R)), 1 / (1 + c.Kcp / c.R));
      const voltage = flags.satV === 0 ? wantedVoltage : limit;
      const current = follows(voltage);
      const demand =
        c.L > 0 || flags.satV === 0 ? wantedVoltage : sum(scaled(less(allowed, current), c.Kcp), integral);
      const zc = sum(less(allowed, current), antiWindup(demand, voltage, c.Kcp));
      return { wanted, allowed, zv, zc, wantedVoltage: demand, voltage, current, carries: c.L > 0 };
    }
  }
}

/** −(wanted − had)/gain: the integrator follows what the limit let through. */
function antiWindup(wanted: Form, had: Form, gain: number): Form {
  return gain > 0 ? scaled(less(wanted, had), -1 / gain) : zero();
}

const TINY = 1e-13;

export function buildMode(c: Constants, flags: ModeFlags): Mode {
  const rigid = c.stiffness === Number.POSITIVE_INFINITY;
  const { s1, s2, contact } = flags;
  const e = electrics(c, flags);
  const rows = Array.from({ length: STATES }, zero);
  const guards: Guard[] = [];
  const guardForms: Form[] = [];
  const watch = (form: Form, ending: Ending, scale: number, curved = 0): void => {
    guards.push({ ending, tolerance: scale * TINY, curved });
    guardForms.push(form);
  };
  const smoothed = c.smooth > 0;
  const stepping = flags.drive === 'stepper';
  const drive = stepping ? scaled(less(input(REF1), state(W1)), c.fieldDamping) : scaled(e.current, c.K);
  const load = input(LOAD);
  const { dry, slope } = slideFriction(c, s2);
  const friction2 = smoothed
    ? scaled(state(W2), c.b2)
    : s2 === 0
      ? zero()
      : sum(constant(dry), scaled(state(W2), slope));
  const hold2 = s2 !== 0 || smoothed ? 0 : Math.max(c.Ts, c.Tc);
  const torqueScale = Math.max(c.T1 + c.Ts, 1e-6);

  const spring = (side: number): Form =>
    sum(
      scaled(state(WIND), c.stiffness),
      constant(-side * c.gap * c.stiffness),
      scaled(less(state(W1), state(W2)), c.damping),
    );
  const contactTorque = rigid || contact === 0 ? zero() : c.gap > 0 ? spring(contact) : spring(0);
  const curvedOn = new Float64Array(STATES);

  rows[PHI] = state(W1);
  rows[CHARGE] = e.current;
  if (e.carries)
    rows[CURRENT] = scaled(less(less(e.voltage, scaled(e.current, c.R)), scaled(state(W1), c.K)), 1 / c.L);
  rows[ZV] = e.zv;
  rows[ZC] = e.zc;

  let friction1: Form;
  if (rigid) {
    // One body: the dry frictions of motor and slide act together, in the slide's state.
    friction1 = sum(constant(Math.sign(s2) * c.T1), scaled(state(W1), c.b1));
    const net = less(drive, load);
    if (s2 === 0 && !smoothed) {
      watch(less(constant(c.T1 + hold2), net), 'slide-breaks+', torqueScale, stepping ? -1 : 0);
      watch(sum(constant(c.T1 + hold2), net), 'slide-breaks-', torqueScale, stepping ? 1 : 0);
      rows[PHI] = zero();
    } else {
      const all = scaled(less(net, sum(friction1, friction2)), 1 / (c.J1 + c.J2));
      rows[W1] = all;
      rows[W2] = all;
      const share = (stepping ? 1 : -c.Tc) / (c.J1 + c.J2);
      curvedOn[W1] = share;
      curvedOn[W2] = share;
    }
  } else {
    friction1 = s1 === 0 ? zero() : sum(constant(s1 * c.T1), scaled(state(W1), c.b1));
    const net1 = less(drive, contactTorque);
    if (s1 === 0) {
      watch(less(constant(c.T1), net1), 'motor-breaks+', torqueScale, stepping ? -1 : 0);
      watch(sum(constant(c.T1), net1), 'motor-breaks-', torqueScale, stepping ? 1 : 0);
      rows[PHI] = zero();
    } else {
      rows[W1] = scaled(less(net1, friction1), 1 / c.J1);
      if (stepping) curvedOn[W1] = 1 / c.J1;
      if (c.T1 > 0) watch(scaled(state(W1), s1), 'motor-still', 1);
    }
    const net2 = less(contactTorque, load);
    if (s2 === 0 && !smoothed) {
      watch(less(constant(hold2), net2), 'slide-breaks+', torqueScale);
      watch(sum(constant(hold2), net2), 'slide-breaks-', torqueScale);
    } else {
      rows[W2] = scaled(less(net2, friction2), 1 / c.J2);
      if (smoothed) curvedOn[W2] = -c.Tc / c.J2;
    }
    rows[WIND] = less(s1 === 0 ? zero() : state(W1), s2 === 0 && !smoothed ? zero() : state(W2));
    if (c.gap > 0) {
      const scale = Math.max(torqueScale, c.stiffness * c.gap);
      if (contact === 0) {
        watch(scaled(spring(1), -1), 'touch+', scale);
        watch(spring(-1), 'touch-', scale);
      } else watch(scaled(spring(contact), contact), 'leave', scale);
    }
  }
  const dries = rigid ? c.T1 + c.Ts + c.Tc : c.Ts + c.Tc;
  if (!smoothed && s2 !== 0) {
    const sign = Math.sign(s2);
    if (dries > 0 && (Math.abs(s2) === 1 || c.fall === 0)) watch(scaled(state(W2), sign), 'slide-still', 1);
    if (c.fall > 0) {
      const over = sum(scaled(state(W2), sign), constant(-c.fall));
      if (Math.abs(s2) === 1) watch(scaled(over, -1), 'slide-fast', c.fall);
      else watch(over, 'slide-slow', c.fall);
    }
  }
  limits(c, flags, e, watch);
  const guardRows = sparse(guardForms);

  return {
    flags,
    ...sparse(rows),
    guards,
    guardStart: guardRows.start,
    guardColumn: guardRows.column,
    guardWeight: guardRows.weight,
    current: Float64Array.from(e.current),
    contactTorque: Float64Array.from(contactTorque),
    voltage: Float64Array.from(e.voltage),
    friction1: Float64Array.from(friction1),
    friction2: Float64Array.from(friction2),
    curved: smoothed ? 1 : stepping ? 2 : 0,
    curvedOn,
  };
}

/** Guards of an analogue control's limits. */
function limits(
  c: Constants,
  { drive, satI, satV }: ModeFlags,
  e: ReturnType<typeof electrics>,
  watch: (form: Form, ending: Ending, scale: number) => void,
): void {
  if (drive !== 'analogue' && drive !== 'analogue-ideal') return;
  if (Number.isFinite(c.currentLimit)) {
    const limit = constant(c.currentLimit);
    if (satI === 0) {
      watch(less(limit, e.wanted), 'current+', c.currentLimit);
      watch(sum(limit, e.wanted), 'current-', c.currentLimit);
    } else watch(less(scaled(e.wanted, satI), limit), 'current-free', c.currentLimit);
  }
  const limit = input(LIMIT);
  if (satV === 0) {
    const voltage = drive === 'analogue' ? e.wantedVoltage : e.voltage;
    watch(less(limit, voltage), 'voltage+', 1);
    watch(sum(limit, voltage), 'voltage-', 1);
  } else if (drive === 'analogue') watch(less(scaled(e.wantedVoltage, satV), limit), 'voltage-free', 1);
  else watch(scaled(less(e.allowed, e.current), satV), 'voltage-free', 1);
}

function sparse(rows: readonly Form[]) {
  const start = [0];
  const column: number[] = [];
  const weight: number[] = [];
  for (const row of rows) {
    for (let at = 0; at < WIDTH; at++) {
      if (row[at] === 0) continue;
      column.push(at);
      weight.push(row[at]!);
    }
    start.push(column.length);
  }
  return {
    start: Int32Array.from(start),
    column: Int32Array.from(column),
    weight: Float64Array.from(weight),
  };
}

/**
 * Between events an axis is linear: a mode says which parts stick or slip, which flank is in contact, which limit
 * holds. Its equations x' = A x + B u and the guards that end it are written in build-mode.ts.
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
export type Expression = readonly number[];

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
  readonly start: readonly number[];
  readonly column: readonly number[];
  readonly weight: readonly number[];
  readonly guards: readonly Guard[];
  /** The guards' forms as pairs of column and weight, as A and B are kept. */
  readonly guardStart: readonly number[];
  readonly guardColumn: readonly number[];
  readonly guardWeight: readonly number[];
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
  readonly curvedOn: readonly number[];
}

/** The slide's friction in slip: torque at no speed, and slope. */
export function slideFriction(c: Constants, s2: number): { readonly dry: number; readonly slope: number } {
  const sign = Math.sign(s2);
  if (Math.abs(s2) === 1 && c.fall > 0) return { dry: sign * c.Ts, slope: c.b2 - (c.Ts - c.Tc) / c.fall };
  return { dry: sign * c.Tc, slope: c.b2 };
}

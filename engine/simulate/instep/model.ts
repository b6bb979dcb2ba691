/** Spindle and axis in step, as the simulation knows them. Everything is SI and radians, at the spindle. */
import { heightOf, type Points } from '../../quantity/line.ts';
import type { AxisModel } from '../model.ts';

/** Torque at a speed; speeds rise from point to point, straight lines between, level beyond the last. */
export type TorqueCurve = readonly { readonly speed: number; readonly torque: number }[];

export interface SpindleInStep {
  /** kg·m² of all that turns. */
  readonly inertia: number;
  /** N·m the drive can turn it with, at a speed. */
  readonly driving: TorqueCurve;
  /** N·m the drive can slow it with; all zero where it only runs down. */
  readonly braking: TorqueCurve;
  /** N·m that bearings and belts take. */
  readonly drag: number;
  /** 1/s: how fast the drive's own loop mends an error of speed. */
  readonly bandwidth: number;
  /** s from a new wanted speed until the drive acts on it. */
  readonly delay: number;
}

export interface FeedbackInStep {
  /** Counts in one turn of the encoder; 0 sees the angle without steps. */
  readonly counts: number;
  /** Encoder turns for one turn of the spindle. */
  readonly turns: number;
  /** rad of the spindle at which the first mark passes. */
  readonly firstMark: number;
}

export interface ControlInStep {
  /** s between two looks at the spindle. */
  readonly period: number;
  /** Looks from reading the angle until the axis is told. */
  readonly delay: number;
  /** `step` asks for the whole speed at once, `ramp` gains it with the axis's acceleration. */
  readonly start: 'step' | 'ramp';
}

/** An axis that trails: what is known of most before they run. */
export interface TrailingAxis {
  readonly kind: 'trailing';
  /** 1/s: speed over the distance by which it trails. */
  readonly gain: number;
  /** m/s² and m/s it cannot pass. */
  readonly acceleration: number;
  readonly topSpeed: number;
}

/** The axis with its motor, loops, friction, play and bus. */
export interface WholeAxis {
  readonly kind: 'whole';
  readonly model: AxisModel;
  /** m/s² and m/s the control asks of it at most. */
  readonly acceleration: number;
  readonly topSpeed: number;
}

export type AxisInStep = TrailingAxis | WholeAxis;

export interface InStepModel {
  readonly spindle: SpindleInStep;
  readonly feedback: FeedbackInStep;
  readonly control: ControlInStep;
  readonly axis: AxisInStep;
}

/** One pass of a thread with a single point. */
export interface ThreadPass {
  /** m in one turn. */
  readonly lead: number;
  /** rad/s, the spindle already turning. */
  readonly speed: number;
  /** m from where the axis waits to where the thread begins, and of the thread itself. */
  readonly runIn: number;
  readonly length: number;
  /** rad after the mark at which this start begins. */
  readonly startAngle: number;
  /** N·m of the cut, and m over which it grows to that. */
  readonly cutTorque: number;
  readonly entry: number;
  /** Share of the lead by which it may be off for a moment. */
  readonly leadError: number;
}

/** One hole tapped with axis and spindle in step. */
export interface TapStroke {
  readonly lead: number;
  /** rad/s. */
  readonly speed: number;
  /** m above the work at which the tap begins. */
  readonly clearance: number;
  /** m below the face at which the spindle is told to turn back. */
  readonly depth: number;
  /** N·m while cutting, and what share of it rubs on the way out. */
  readonly cutTorque: number;
  readonly rub: number;
}

const POINTS: Points<TorqueCurve> = {
  count: ({ length }) => length,
  x: (curve, at) => curve[at]!.speed,
  y: (curve, at) => curve[at]!.torque,
};

/** Torque of a curve at a speed above zero or at zero, level beyond its ends; without points there is none. */
export const torqueAt = (curve: TorqueCurve, speed: number): number =>
  curve.length === 0 ? 0 : heightOf(POINTS, curve, speed, 'level');

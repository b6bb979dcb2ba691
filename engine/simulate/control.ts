/**
 * The sampled control of one axis: what a drive's processor computes from counts and commands, in motor radians.
 * A command that is worked out now takes effect `delay` samples later.
 */

import * as ioPlaces from './io.ts';
import type { InnerLoop } from './lift.ts';
import * as memoryPlaces from './memory.ts';
import { type AxisModel, inertias, travelPerRadian } from './model.ts';
import * as modes from './modes.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { AMPERES, REFERENCE, REFERENCE1, REFERENCE2, SEEN, SPEED, VOLTAGE, WANTED } = ioPlaces;

const { CURRENT_INTEGRAL, INTEGRAL, LAST_COMMAND, LAST_SEEN, UNDER_WAY } = memoryPlaces;
const { CURRENT, HELD, W1 } = modes;

const HELD_BACK = 16;

export class Controller {
  /** A cascade with its own current loop, one that sets a current, or a single loop. */
  readonly cascade: boolean;
  private readonly setsCurrent: boolean;
  readonly T: number;
  readonly speedEvery: number;
  readonly positionEvery: number;
  readonly Kp: number;
  readonly Kvp: number;
  readonly Kvi: number;
  readonly kff: number;
  readonly aff: number;
  private readonly Kcp: number;
  private readonly Kci: number;
  private readonly Ki: number;
  private readonly Kd: number;
  private readonly onError: boolean;
  private readonly R: number;
  private readonly L: number;
  private readonly K: number;
  readonly limit: number;
  /** rad of one count at the motor; 0 sees without steps. */
  readonly count: number;
  readonly pulse: number;
  readonly fromEncoder: boolean;
  private readonly queue = new Float64Array(HELD_BACK);
  private readonly delay: number;
  private slot = 0;
  /** How the samples of the current loop go in one step; null where they cannot. */
  readonly loop: InnerLoop | null;
  /** Samples until the position loop runs again. */
  untilPosition = 0;
  /** What the loops remember; see INTEGRAL and so on. */
  readonly memory = new Float64Array(6);
  started = false;
  /** Whether the last command was cut by the current or the voltage limit: −1, 0 or 1. */
  cutCurrent = 0;
  cutVoltage = 0;

  /** The model's control must be sampled and not `open`. */
  constructor(model: AxisModel) {
    const { control, motor, drive, feedback, transmission } = model;
    if (control.kind === 'open' || motor.kind !== 'servo') throw new TypeError('a stepper has no controller');
    const { motorSide, slideSide } = inertias(model);
    this.cascade = control.kind === 'cascade';
    this.setsCurrent =
      control.kind === 'cascade' ? control.current === 'ideal' : control.output === 'current';
    this.T = control.sample;
    this.delay = control.delay;
    this.K = motor.constant;
    this.R = motor.resistance;
    this.L = motor.inductance;
    this.limit = drive.currentLimit;
    if (control.kind === 'cascade') {
      this.speedEvery = control.speedEvery;
      this.positionEvery = control.positionEvery;
      this.Kp = control.positionGain;
      this.Kvp = control.speedGain;
      this.Kvi = control.speedIntegral;
      this.kff = control.speedForward;
      this.aff = (control.accelerationForward * (motorSide + slideSide)) / motor.constant;
      this.Kcp = control.currentGain;
      this.Kci = control.currentIntegral;
      this.Ki = 0;
      this.Kd = 0;
      this.onError = true;
      this.fromEncoder = control.speedFrom === 'encoder';
    } else {
      this.speedEvery = 1;
      this.positionEvery = 1;
      this.Kp = control.proportional;
      this.Ki = control.integral;
      this.Kd = control.derivative;
      this.kff = control.speedForward;
      this.aff = control.accelerationForward;
      this.Kvp = 0;
      this.Kvi = 0;
      this.Kcp = 0;
      this.Kci = 0;
      this.onError = control.derivativeOn === 'error';
      this.fromEncoder = true;
    }
    const r = travelPerRadian(model);
    if (feedback.on === 'slide') this.count = feedback.countLength / r;
    else {
      const turn = 2 * Math.PI * (feedback.on === 'screw' ? transmission.ratio : 1);
      this.count = feedback.countsPerTurn > 0 ? turn / feedback.countsPerTurn : 0;
    }
    this.pulse = drive.pulse / r;
    this.loop =
      this.cascade && !this.setsCurrent && this.delay <= 1 && this.L > 0
        ? { T: this.T, Kcp: this.Kcp, Kci: this.Kci, delay: this.delay, samples: this.speedEvery }
        : null;
  }

  /**
   * Stands as if it had held `torque` for long: integrators filled. The answer is the angle by which it lags where no
   * integrator carries the load.
   */
  hold(torque: number): number {
    const i = torque / this.K;
    const command = this.setsCurrent ? i : this.R * i;
    this.queue.fill(command);
    this.memory[UNDER_WAY] = command;
    if (!this.cascade) {
      if (this.Ki > 0) this.memory[INTEGRAL] = command / this.Ki;
      return this.Ki > 0 || !(this.Kp > 0) ? 0 : command / this.Kp;
    }
    if (this.Kci > 0) this.memory[CURRENT_INTEGRAL] = (this.R * i) / this.Kci;
    if (this.Kvi > 0) this.memory[INTEGRAL] = i / this.Kvi;
    return this.Kvi > 0 || !(this.Kvp * this.Kp > 0) ? 0 : i / (this.Kvp * this.Kp);
  }

  /** V asked for now, and A or V that takes effect now, `delay` samples after it was worked out. */
  private delayed(out: number, voltage: number): number {
    if (this.delay === 0) return out;
    let due: number;
    if (this.delay === 1) {
      due = this.memory[UNDER_WAY]!;
      this.memory[UNDER_WAY] = out;
    } else {
      due = this.queue[this.slot]!;
      this.queue[this.slot] = out;
      this.slot = this.slot + 1 === this.delay ? 0 : this.slot + 1;
    }
    // The bus may have fallen since it was worked out.
    return this.setsCurrent ? due : due > voltage ? voltage : Math.max(due, -voltage);
  }

  /** As the counts show it. */
  seen(exactly: number): number {
    return this.count > 0 ? Math.floor(exactly / this.count + 0.5) * this.count : exactly;
  }

  /** As the pulses command it. */
  commanded(reference: number): number {
    return this.pulse > 0 ? Math.floor(reference / this.pulse + 0.5) * this.pulse : reference;
  }

  /**
   * One run of the current loop of a cascade, from motor speed and current in `x`. Writes into `u` the command that takes
   * effect now: V, or A where the drive sets the current.
   */
  innermost(io: Float64Array, x: Float64Array, u: Float64Array): void {
    const voltage = io[VOLTAGE]!;
    const { memory } = this;
    if (this.setsCurrent) {
      u[HELD] = this.delayed(this.asFarAs(io[WANTED]!, x[W1]!, voltage), voltage);
      return;
    }
    const error = io[WANTED]! - x[CURRENT]!;
    const wanted = this.Kcp * error + this.Kci * memory[CURRENT_INTEGRAL]!;
    const had = wanted > voltage ? voltage : Math.max(wanted, -voltage);
    this.cutVoltage = had === wanted ? 0 : wanted > 0 ? 1 : -1;
    memory[CURRENT_INTEGRAL] =
      memory[CURRENT_INTEGRAL]! + this.T * (this.Kcp > 0 ? error - (wanted - had) / this.Kcp : error);
    u[HELD] = this.delayed(had, voltage);
  }

  /** A current the bus can drive against the back-EMF at this speed. */
  private asFarAs(wanted: number, speed: number, voltage: number): number {
    const high = (voltage - this.K * speed) / this.R;
    const low = (-voltage - this.K * speed) / this.R;
    this.cutVoltage = wanted > high ? 1 : wanted < low ? -1 : 0;
    return wanted > high ? high : Math.max(wanted, low);
  }

  /** One sample of a single loop; returns what takes effect now. */
  single(io: Float64Array): number {
    const speed = io[SPEED]!;
    const current = io[AMPERES]!;
    const voltage = io[VOLTAGE]!;
    const seen = this.seen(io[SEEN]!);
    const command = this.commanded(io[REFERENCE]!);
    const { T } = this;
    if (!this.started) {
      this.started = true;
      this.memory[LAST_SEEN] = seen;
      this.memory[LAST_COMMAND] = command;
    }
    const error = command - seen;
    const rate = this.pulse > 0 ? (command - this.memory[LAST_COMMAND]!) / T : io[REFERENCE1]!;
    const change = this.onError
      ? (error - (this.memory[LAST_COMMAND]! - this.memory[LAST_SEEN]!)) / T
      : -(seen - this.memory[LAST_SEEN]!) / T;
    this.memory[LAST_SEEN] = seen;
    this.memory[LAST_COMMAND] = command;
    const wanted =
      this.Kp * error +
      this.Ki * (this.memory[INTEGRAL]! + error * T) +
      this.Kd * change +
      this.kff * rate +
      this.aff * io[REFERENCE2]!;
    let high: number;
    let low: number;
    this.cutCurrent = 0;
    this.cutVoltage = 0;
    if (this.setsCurrent) {
      high = Math.min(this.limit, (voltage - this.K * speed) / this.R);
      low = Math.max(-this.limit, (-voltage - this.K * speed) / this.R);
    } else {
      high = voltage;
      low = -voltage;
      if (this.limit < Number.POSITIVE_INFINITY) {
        // What would bring the current to its limit by the next sample.
        const ohmic = this.R * current + this.K * speed;
        high = Math.max(low, Math.min(high, ohmic + (this.L / T) * (this.limit - current)));
        low = Math.min(high, Math.max(low, ohmic - (this.L / T) * (this.limit + current)));
        if (this.L === 0) {
          high = Math.min(voltage, this.K * speed + this.R * this.limit);
          low = Math.max(-voltage, this.K * speed - this.R * this.limit);
        }
      }
    }
    const had = wanted > high ? high : Math.max(wanted, low);
    if (had !== wanted) {
      const atVoltage = this.setsCurrent ? Math.abs(had) < this.limit : Math.abs(had) >= voltage;
      if (atVoltage) this.cutVoltage = wanted > 0 ? 1 : -1;
      else this.cutCurrent = wanted > 0 ? 1 : -1;
    }
    if (had === wanted || wanted * error < 0) this.memory[INTEGRAL]! += error * T;
    return this.delayed(had, voltage);
  }
}

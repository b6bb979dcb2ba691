/**
 * The sampled control of one axis: what a drive's processor computes from counts and commands, in motor radians.
 * A command that is worked out now takes effect `delay` samples later.
 */
import { AMPERES, REFERENCE, REFERENCE1, REFERENCE2, SEEN, SPEED, VOLTAGE, WANTED } from './io.ts';
import type { InnerLoop } from './lift.ts';
import { type AxisModel, inertias, travelPerRadian } from './model.ts';

const HELD_BACK = 16;

export class Controller {
  /** A cascade with its own current loop, one that sets a current, or a single loop. */
  readonly cascade: boolean;
  private readonly setsCurrent: boolean;
  private readonly T: number;
  private readonly speedEvery: number;
  private readonly positionEvery: number;
  private readonly Kp: number;
  private readonly Kvp: number;
  private readonly Kvi: number;
  private readonly kff: number;
  private readonly aff: number;
  private readonly Kcp: number;
  private readonly Kci: number;
  private readonly Ki: number;
  private readonly Kd: number;
  private readonly onError: boolean;
  private readonly R: number;
  private readonly L: number;
  private readonly K: number;
  private readonly limit: number;
  private readonly count: number;
  private readonly pulse: number;
  private readonly fromEncoder: boolean;
  private readonly queue = new Float64Array(HELD_BACK);
  private readonly delay: number;
  private slot = 0;
  /** How the samples of the current loop go in one step; null where they cannot. */
  readonly loop: InnerLoop | null;
  private untilPosition = 0;
  private wantedSpeed = 0;
  private zv = 0;
  /** Of the current loop: its integrator, and the command under way with a delay of one sample. */
  readonly inner = new Float64Array(2);
  private lastSeen = 0;
  private lastCommand = 0;
  private started = false;
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
    this.inner[1] = command;
    if (!this.cascade) {
      if (this.Ki > 0) this.zv = command / this.Ki;
      return this.Ki > 0 || !(this.Kp > 0) ? 0 : command / this.Kp;
    }
    if (this.Kci > 0) this.inner[0] = (this.R * i) / this.Kci;
    if (this.Kvi > 0) this.zv = i / this.Kvi;
    return this.Kvi > 0 || !(this.Kvp * this.Kp > 0) ? 0 : i / (this.Kvp * this.Kp);
  }

  /** V asked for now, and A or V that takes effect now, `delay` samples after it was worked out. */
  private delayed(out: number, voltage: number): number {
    if (this.delay === 0) return out;
    let due: number;
    if (this.delay === 1) {
      due = this.inner[1]!;
      this.inner[1] = out;
    } else {
      due = this.queue[this.slot]!;
      this.queue[this.slot] = out;
      this.slot = this.slot + 1 === this.delay ? 0 : this.slot + 1;
    }
    // The bus may have fallen since it was worked out.
    return this.setsCurrent ? due : due > voltage ? voltage : Math.max(due, -voltage);
  }

  private seen(exactly: number): number {
    return this.count > 0 ? Math.floor(exactly / this.count + 0.5) * this.count : exactly;
  }

  private commanded(reference: number): number {
    return this.pulse > 0 ? Math.floor(reference / this.pulse + 0.5) * this.pulse : reference;
  }

  /**
   * One run of the outer loops: where the axis is seen and how fast it turns, and the command with two derivatives.
   * Sets the wanted current of a cascade.
   */
  outer(io: Float64Array): void {
    const seen = this.seen(io[SEEN]!);
    const Tv = this.T * this.speedEvery;
    if (!this.started) this.lastSeen = seen;
    if (this.untilPosition === 0) {
      const command = this.commanded(io[REFERENCE]!);
      const rate =
        this.pulse === 0
          ? io[REFERENCE1]!
          : this.started
            ? (command - this.lastCommand) / (this.T * this.positionEvery)
            : 0;
      this.wantedSpeed = this.Kp * (command - seen) + this.kff * rate;
      this.lastCommand = command;
      this.untilPosition = this.positionEvery;
    }
    this.untilPosition -= this.speedEvery;
    this.started = true;
    const w = this.fromEncoder ? (seen - this.lastSeen) / Tv : io[SPEED]!;
    this.lastSeen = seen;
    const error = this.wantedSpeed - w;
    const wanted = this.Kvp * error + this.Kvi * this.zv + this.aff * io[REFERENCE2]!;
    const had = wanted > this.limit ? this.limit : Math.max(wanted, -this.limit);
    this.cutCurrent = had === wanted ? 0 : wanted > 0 ? 1 : -1;
    this.zv += Tv * (this.Kvp > 0 ? error - (wanted - had) / this.Kvp : error);
    io[WANTED] = had;
    this.cutVoltage = 0;
  }

  /** One run of the current loop of a cascade. Returns what takes effect now: V, or A where the drive sets the current. */
  innermost(io: Float64Array, speed: number, current: number): number {
    const voltage = io[VOLTAGE]!;
    if (this.setsCurrent) return this.delayed(this.asFarAs(io[WANTED]!, speed, voltage), voltage);
    const error = io[WANTED]! - current;
    const wanted = this.Kcp * error + this.Kci * this.inner[0]!;
    const had = wanted > voltage ? voltage : Math.max(wanted, -voltage);
    this.cutVoltage = had === wanted ? 0 : wanted > 0 ? 1 : -1;
    this.inner[0] = this.inner[0]! + this.T * (this.Kcp > 0 ? error - (wanted - had) / this.Kcp : error);
    return this.delayed(had, voltage);
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
      this.lastSeen = seen;
      this.lastCommand = command;
    }
    const error = command - seen;
    const rate = this.pulse > 0 ? (command - this.lastCommand) / T : io[REFERENCE1]!;
    const change = this.onError
      ? (error - (this.lastCommand - this.lastSeen)) / T
      : -(seen - this.lastSeen) / T;
    this.lastSeen = seen;
    this.lastCommand = command;
    const wanted =
      this.Kp * error +
      this.Ki * (this.zv + error * T) +
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
    if (had === wanted || wanted * error < 0) this.zv += error * T;
    return this.delayed(had, voltage);
  }
}

/** The axis that follows: either it trails by its gain, or the whole axis with motor, loops, friction and bus runs. */
import { AxisRun, lookOf } from '../axis-run.ts';
import { Bus } from '../bus.ts';
import { EventList } from '../events.ts';
import { ACTUAL, BUS, FOLLOWING, SPAN, T, TAKEN } from '../io.ts';
import { sampleOf } from '../simulate.ts';
import type { Follower } from './follower.ts';
import type { AxisInStep, TrailingAxis, WholeAxis } from './model.ts';

const NEVER = Number.POSITIVE_INFINITY;
const CALM = { mainsOff: NEVER, driveOff: NEVER, force: 0, forceFrom: NEVER, forceTo: NEVER };

export interface RunningAxis {
  /** m from where it waits. */
  readonly place: number;
  /** s at which its drive would switch off, with why; null while it has not. */
  readonly trip: { readonly at: number; readonly says: string } | null;
  /** Goes on from `from` to `to` after its command. */
  advance(from: number, to: number): void;
}

/** Longest step of an axis that trails, s. */
const STEP = 1e-4;

class Trailing implements RunningAxis {
  place = 0;
  readonly trip = null;
  private speed = 0;
  private readonly of: TrailingAxis;
  private readonly command: Follower;

  constructor(of: TrailingAxis, command: Follower) {
    this.of = of;
    this.command = command;
  }

  advance(from: number, to: number): void {
    const steps = Math.ceil((to - from) / STEP - 1e-9);
    const dt = (to - from) / steps;
    for (let step = 0; step < steps; step++) this.step(from + step * dt, dt);
  }

  /** Exact for a command that moves evenly, as long as neither limit cuts. */
  private step(t: number, dt: number): void {
    const { gain, acceleration, topSpeed } = this.of;
    const { speed: v } = this.command;
    const behind = this.command.place(t) - this.place;
    const steady = v / gain;
    const left = steady + (behind - steady) * Math.exp(-gain * dt);
    const free = gain * left;
    const most = Math.min(topSpeed, this.speed + acceleration * dt);
    const least = Math.max(-topSpeed, this.speed - acceleration * dt);
    if (free <= most && free >= least) {
      this.place = this.command.place(t) + v * dt - left;
      this.speed = free;
      return;
    }
    const after = Math.min(most, Math.max(least, free));
    this.place += ((this.speed + after) / 2) * dt;
    this.speed = after;
  }
}

class Whole implements RunningAxis {
  place = 0;
  trip: { at: number; says: string } | null = null;
  private readonly run: AxisRun;
  private readonly bus: Bus;
  private readonly look: number;
  private readonly of: WholeAxis;
  private time = 0;

  constructor(of: WholeAxis, command: Follower) {
    this.of = of;
    const h = sampleOf(of.model, 1);
    this.look = lookOf(of.model, h);
    this.run = new AxisRun(of.model, command, CALM, h, 0, new EventList(), 2e-6, false);
    this.bus = new Bus(of.model.supply, () => {});
  }

  advance(_from: number, to: number): void {
    const { run, bus, of } = this;
    const { io } = run;
    // Looks of the drive go on by themselves; the control's look takes what the last one left.
    while (this.time + this.look <= to + 1e-9 * this.look) {
      io[T] = this.time;
      run.observe();
      this.watch(Math.abs(io[FOLLOWING]!));
      io[SPAN] = this.look;
      io[BUS] = bus.voltage;
      run.go();
      bus.advance(this.time, this.look, io[TAKEN]! / this.look);
      this.time += this.look;
      if (bus.voltage > of.model.drive.overvoltage) this.off('the bus rose above what the drive stands');
      else if (bus.voltage < of.model.drive.undervoltage) this.off('the bus fell below what the drive needs');
    }
    io[T] = this.time;
    run.observe();
    this.place = io[ACTUAL]!;
  }

  private watch(behind: number): void {
    if (behind > this.run.followingLimit) this.off('the axis fell further behind than its drive allows');
  }

  private off(says: string): void {
    if (this.trip) return;
    this.trip = { at: this.time, says };
    this.run.switchOff(this.time);
  }
}

export const axisAfter = (axis: AxisInStep, command: Follower): RunningAxis =>
  axis.kind === 'trailing' ? new Trailing(axis, command) : new Whole(axis, command);

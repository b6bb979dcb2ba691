/** One axis under way in a simulation: plant, control, and what happens to it at set times. */

import { advance } from './by-series.ts';
import { constantsOf, driveKindOf, weightTorque } from './constants.ts';
import { Controller } from './control.ts';
import { ENERGY } from './energy.ts';
import type { EventKind, EventList } from './events.ts';
import {
  ACTUAL,
  AMPERES,
  BUS,
  COMMANDED,
  FOLLOWING,
  IO_SIZE,
  REFERENCE,
  REFERENCE1,
  SEEN,
  SPAN,
  SPEED,
  T,
  TAKEN,
  VOLTAGE,
} from './io.ts';
import { keptOf } from './kept.ts';
import { lifted } from './lifted.ts';
import { type AxisModel, type StepperMotor, travelPerRadian } from './model.ts';
import { CURRENT, type DriveKind, type Ending, HELD, LIMIT, LOAD, PHI, W1, WIND, ZC, ZV } from './modes.ts';
import type { Move } from './moves.ts';
import { Notes } from './notes.ts';
import { Plant } from './plant.ts';
import type { Happenings, Reference } from './reference.ts';
import type { EnergyBalance, Summary } from './run.ts';
import { pullOutTorque } from './stepper.ts';
import { tick } from './tick.ts';

/** s between two runs of the outer loops, where everything is noted; `h` is one sample. */
export function lookOf({ control }: AxisModel, h: number): number {
  return control.kind === 'cascade' && control.sample > 0 ? h * control.speedEvery : h;
}

const NEVER = Number.POSITIVE_INFINITY;

export class AxisRun {
  readonly plant: Plant;
  readonly model: AxisModel;
  readonly followingLimit: number;
  readonly notes: Notes;
  /** m of travel per motor radian. */
  readonly r: number;
  on = true;
  /** s at which the error first left all proportion; undefined while it has not. */
  leaving: number | undefined;
  private readonly axis: number;
  private readonly controller: Controller | null;
  private readonly stepper: StepperMotor | null;
  private readonly reference: Reference;
  private readonly events: EventList;
  private readonly force: number;
  private readonly breaks: readonly number[];
  private readonly marks: readonly number[];
  readonly io = new Float64Array(IO_SIZE);
  /** s of one sample, and from one look (a run of the outer loops) to the next. */
  private readonly h: number;
  private readonly look: number;
  private readonly weight: number;
  private readonly books: boolean;
  private readonly duty: number;
  private readonly brushDrop: number;
  private readonly storedAtStart: number;
  private nextBreak = 0;
  /** s of the next thing set to happen. */
  private next = NEVER;
  private nextMark = 0;
  private driveOffAt: number;
  private forceFrom: number;
  private forceTo: number;
  private brakeAt = NEVER;
  private placeAtOff = Number.NaN;

  constructor(
    model: AxisModel,
    reference: Reference,
    happenings: Happenings,
    h: number,
    axis: number,
    events: EventList,
    settleBand: number,
    books: boolean,
  ) {
    this.model = model;
    this.books = books;
    this.followingLimit = model.drive.followingLimit;
    this.axis = axis;
    this.events = events;
    this.h = h;
    this.look = lookOf(model, h);
    this.notes = new Notes(settleBand);
    this.r = travelPerRadian(model);
    this.reference = reference.scaled(1 / this.r);
    const drive = driveKindOf(model);
    const sampled = drive === 'voltage' || drive === 'current';
    this.controller = sampled ? new Controller(model) : null;
    this.stepper = model.motor.kind === 'stepper' ? model.motor : null;
    const note = (ending: Ending | 'stuck', time: number): void => this.note(ending, time);
    this.plant = new Plant(constantsOf(model), drive, h, this.reference, note, books, keptOf(model, h));
    this.plant.tracks = model.supply.kind !== 'constant';
    this.weight = weightTorque(model);
    this.driveOffAt = happenings.driveOff;
    this.force = happenings.force;
    this.forceFrom = happenings.forceFrom;
    this.forceTo = happenings.forceTo;
    this.breaks = sampled ? [] : reference.breaks.filter((t) => t > 0);
    this.marks = reference.marks;
    this.duty = model.drive.duty;
    this.brushDrop = model.motor.kind === 'servo' ? model.motor.brushDrop : 0;
    if (this.stepper) this.plant.pulse = model.drive.pulse / this.r;
    this.foresee();
    this.start(drive);
    this.storedAtStart = this.plant.stored();
  }

  /** The axis hangs on its motor as if it had done so for long. */
  private start(drive: DriveKind): void {
    const { plant, weight, stepper } = this;
    const { x, u, constants: c } = plant;
    u[LOAD] = weight;
    if (c.stiffness < NEVER) x[WIND] = (weight < 0 ? -c.gap : c.gap) + weight / c.stiffness;
    const i = c.K > 0 ? weight / c.K : 0;
    let lag = 0;
    if (this.controller) {
      lag = this.controller.hold(weight);
      u[HELD] = drive === 'current' ? i : c.R * i;
    } else if (stepper) {
      plant.fieldTorque = pullOutTorque(stepper, 0, NEVER);
      lag = Math.asin(Math.max(-1, Math.min(1, weight / plant.fieldTorque))) / c.rotorTeeth;
    } else if (c.Kvi > 0) x[ZV] = i / c.Kvi;
    else if (c.Kvp * c.Kp > 0) lag = i / (c.Kvp * c.Kp);
    if (drive === 'analogue' && c.Kci > 0) x[ZC] = (c.R * i) / c.Kci;
    x[CURRENT] = stepper ? 0 : i;
    x[PHI] = -lag + c.seesWind * x[WIND]!;
    plant.settleModes();
  }

  /** What the position loop sees, rad at the motor. */
  private seen(): number {
    const { plant, model } = this;
    const { on } = model.feedback;
    if (on === 'motor') return plant.x[PHI]!;
    if (on === 'slide') return plant.x[PHI]! - plant.x[WIND]!;
    return plant.x[PHI]! - plant.windBeforeScrew(model.transmission.couplingShare);
  }

  /** Notes where everything is at the time in `io`, before the look that begins there. */
  observe(): void {
    const { io, plant, r } = this;
    const { x } = plant;
    this.reference.at(io);
    const seen = this.seen();
    io[SEEN] = seen;
    io[COMMANDED] = io[REFERENCE]! * r;
    io[ACTUAL] = (x[PHI]! - x[WIND]!) * r;
    io[FOLLOWING] = (io[REFERENCE]! - seen) * r;
    io[SPEED] = x[W1]!;
    io[AMPERES] = x[CURRENT]!;
    this.notes.observe(io, io[T]! >= this.reference.end);
    if (this.nextMark < this.marks.length && io[T]! >= this.marks[this.nextMark]! - this.look) {
      this.notes.places.push(io[ACTUAL]!);
      this.nextMark++;
    }
  }

  /** The look that begins at the time in `io` and lasts its span, with its bus voltage; writes what was taken. */
  go(): void {
    const { io, plant, controller, stepper } = this;
    const { u } = plant;
    const voltage = Math.max(0, this.duty * io[BUS]! - this.brushDrop);
    io[VOLTAGE] = voltage;
    u[LIMIT] = voltage;
    const before = plant.drawn;
    if (!this.on) this.advance(io[T]! + io[SPAN]!, io[SPAN]!);
    else if (controller) this.controlled(controller);
    else {
      if (stepper) {
        plant.fieldTorque = pullOutTorque(stepper, io[REFERENCE1]!, voltage);
        this.watchStep();
      } else this.analogueLimits();
      this.advance(io[T]! + io[SPAN]!, io[SPAN]!);
    }
    io[TAKEN] = plant.drawn - before;
    // Both phases of a stepper carry their current whether it moves or not.
    if (stepper && this.on) io[TAKEN] += stepper.ratedCurrent ** 2 * stepper.resistance * io[SPAN]!;
  }

  /** One look of a sampled control: its outer loops once, the current loop at each of its samples. */
  private controlled(controller: Controller): void {
    const { plant, io } = this;
    const { x, u } = plant;
    if (!controller.cascade) {
      u[HELD] = controller.single(io);
      this.cuts(controller, io[T]!, io[SPAN]!);
      this.advance(io[T]! + io[SPAN]!, io[SPAN]!);
      return;
    }
    controller.outer(io);
    if (controller.cutCurrent !== 0) {
      this.cuts(controller, io[T]!, io[SPAN]!);
      controller.cutCurrent = 0;
    }
    if (this.calm(controller) && lifted(plant, controller.loop!, controller.inner, io)) {
      plant.time = io[T]! + io[SPAN]!;
      return;
    }
    this.oneByOne(controller, io[T]!, io[T]! + io[SPAN]!, x, u);
  }

  /** A whole look in which nothing is set to happen, of a loop that can go in one step. */
  private calm({ loop }: Controller): boolean {
    const { io } = this;
    return loop !== null && io[SPAN]! > this.look - 1e-9 * this.h && this.pending() >= io[T]! + io[SPAN]!;
  }

  private oneByOne(
    controller: Controller,
    from: number,
    end: number,
    x: Float64Array,
    u: Float64Array,
  ): void {
    for (let at = from; end - at > 1e-9 * this.h; ) {
      const span = Math.min(this.h, end - at);
      u[HELD] = controller.innermost(this.io, x[W1]!, x[CURRENT]!);
      if (controller.cutVoltage !== 0) this.cuts(controller, at, span);
      this.advance(at + span, span);
      at += span;
      if (this.on) continue;
      if (end - at > 1e-9 * this.h) this.advance(end, end - at);
      return;
    }
  }

  private cuts(controller: Controller, t: number, h: number): void {
    if (controller.cutCurrent !== 0 && this.notes.cutCurrent(t, h, controller.cutCurrent))
      this.events.add('current-limit', t, this.axis);
    if (controller.cutVoltage !== 0 && this.notes.cutVoltage(t, h, controller.cutVoltage))
      this.events.add('voltage-limit', t, this.axis);
  }

  private analogueLimits(): void {
    const { current, voltage } = this.plant.limits;
    const t = this.io[T]!;
    const h = this.io[SPAN]!;
    if (current !== 0 && this.notes.cutCurrent(t, h, current)) this.events.add('current-limit', t, this.axis);
    if (voltage !== 0 && this.notes.cutVoltage(t, h, voltage)) this.events.add('voltage-limit', t, this.axis);
  }

  /** A rotor more than half an electrical turn behind its field has lost its hold. */
  private watchStep(): void {
    if (this.notes.stalledAt < NEVER) return;
    const t = this.io[T]!;
    const behind = (this.io[REFERENCE]! - this.plant.x[PHI]!) * this.plant.constants.rotorTeeth;
    if (Math.abs(behind) <= Math.PI) return;
    this.notes.stalledAt = t;
    this.events.add('stall', t, this.axis);
  }

  /** Up to `end`, a kept step long where nothing is set to happen on the way. */
  private advance(end: number, h: number): void {
    const { plant } = this;
    let whole = (this.controller !== null || !this.on) && Math.abs(h - this.h) < 1e-9 * this.h;
    for (;;) {
      const next = this.pending();
      // A moment within rounding of the end belongs to the next sample.
      if (next >= end - 1e-9 * h) break;
      if (next > plant.time) {
        advance(plant, next - plant.time);
        whole = false;
      }
      plant.time = next;
      this.happen(next);
      this.foresee();
    }
    if (whole) tick(plant);
    else if (end - plant.time > 1e-9 * h) advance(plant, end - plant.time);
    plant.time = end;
  }

  private pending(): number {
    return this.next;
  }

  private foresee(): void {
    const law = this.nextBreak < this.breaks.length ? this.breaks[this.nextBreak]! : NEVER;
    this.next = Math.min(law, this.driveOffAt, this.forceFrom, this.forceTo, this.brakeAt);
  }

  private happen(t: number): void {
    const { plant } = this;
    const due = t;
    if (this.nextBreak < this.breaks.length && this.breaks[this.nextBreak]! <= due) this.nextBreak++;
    if (this.forceFrom <= due) {
      plant.u[LOAD] = this.weight + this.force * this.r;
      this.forceFrom = NEVER;
      this.events.add('force-on', t, this.axis);
    }
    if (this.forceTo <= due) {
      plant.u[LOAD] = this.weight;
      this.forceTo = NEVER;
      this.events.add('force-off', t, this.axis);
    }
    if (this.driveOffAt <= due) {
      this.driveOffAt = NEVER;
      this.switchOff(t);
    }
    if (this.brakeAt <= due) {
      this.brakeAt = NEVER;
      const c = plant.constants;
      plant.setConstants({ ...c, T1: c.T1 + this.model.brake!.torque });
      this.events.add('brake-holds', t, this.axis);
    }
  }

  /** The drive lets go; a brake takes hold after its delay. */
  switchOff(t: number): void {
    if (!this.on) return;
    this.on = false;
    const { plant, model } = this;
    this.placeAtOff = (plant.x[PHI]! - plant.x[WIND]!) * this.r;
    plant.u[HELD] = 0;
    plant.fieldTorque = 0;
    plant.setDrive(model.drive.whenOff === 'short' && model.motor.kind === 'servo' ? 'short' : 'open');
    if (model.brake) this.brakeAt = t + model.brake.delay;
    this.foresee();
    this.events.add('drive-off', t, this.axis);
  }

  private note(ending: Ending | 'stuck', time: number): void {
    const kind = EVENT_OF[ending];
    if (!kind) return;
    this.events.add(kind, time, this.axis);
    if (ending === 'voltage+' || ending === 'voltage-')
      this.notes.cutVoltage(time, 0, ending === 'voltage+' ? 1 : -1);
    if (ending === 'current+' || ending === 'current-')
      this.notes.cutCurrent(time, 0, ending === 'current+' ? 1 : -1);
  }

  /** Whether every number is still one. */
  get finite(): boolean {
    const { x } = this.plant;
    return Number.isFinite(x[PHI]! + x[W1]! + x[CURRENT]! + x[WIND]!);
  }

  finish(until: number, move: Move): Summary {
    const { plant, model, events, axis } = this;
    plant.settleEnergy();
    const c = plant.constants;
    const behind = (this.io[REFERENCE]! - plant.x[PHI]!) * c.rotorTeeth;
    return this.notes.summary({
      until,
      referenceEnd: this.reference.end,
      finalFollowing: this.io[FOLLOWING]!,
      rmsCurrent: this.books ? Math.sqrt(Math.max(0, plant.energy[ENERGY.copper]!) / until) : null,
      sticks: events.count('stick', axis),
      slips: events.count('slip', axis),
      distance: move.kind === 'reversal' ? move.distance : null,
      travelAfterOff: this.on ? null : this.io[ACTUAL]! - this.placeAtOff,
      stepsLost: model.motor.kind === 'stepper' ? Math.round(behind / (2 * Math.PI)) * 4 : 0,
      energy: this.books ? this.energy() : null,
    });
  }

  private energy(): EnergyBalance {
    const { plant } = this;
    plant.settleEnergy();
    const e = plant.energy;
    const input = e[ENERGY.input]!;
    const copper = this.stepper ? 0 : plant.constants.R * e[ENERGY.copper]!;
    const stored = plant.stored() - this.storedAtStart;
    const parts = {
      motorFriction: e[ENERGY.motorFriction]!,
      slideFriction: e[ENERGY.slideFriction]!,
      damping: e[ENERGY.damping]!,
      load: e[ENERGY.load]!,
      switching: e[ENERGY.switching]!,
    };
    const out = Object.values(parts).reduce((total, each) => total + each, copper + stored);
    const residual = input - out;
    const sizes = [input, copper, stored, 1e-12, ...Object.values(parts)].map(Math.abs);
    return { input, copper, ...parts, stored, residual, relative: Math.abs(residual) / Math.max(...sizes) };
  }
}

const EVENT_OF: Partial<Readonly<Record<Ending | 'stuck', EventKind>>> = {
  stuck: 'stick',
  'slide-breaks+': 'slip',
  'slide-breaks-': 'slip',
  'touch+': 'play-crossed',
  'touch-': 'play-crossed',
  leave: 'flank-left',
  'current+': 'current-limit',
  'current-': 'current-limit',
  'voltage+': 'voltage-limit',
  'voltage-': 'voltage-limit',
};

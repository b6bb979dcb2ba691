/** One axis under way in a simulation: plant, control, and what happens to it at set times. */
import { Agenda } from './agenda.ts';
import { happen, noteEnding } from './axis-events.ts';
import { advance } from './by-series.ts';
import { cascadeLook } from './cascade.ts';
import { constantsOf, driveKindOf, weightTorque } from './constants.ts';
import { Controller } from './control.ts';
import type { EventList } from './events.ts';
import * as ioPlaces from './io.ts';
import { keptOf } from './kept.ts';
import { type AxisModel, type StepperMotor, travelPerRadian } from './model.ts';
import type { Ending } from './modes.ts';
import * as modes from './modes.ts';
import type { Move } from './moves.ts';
import { Notes } from './notes.ts';
import { Plant } from './plant.ts';
import type { Happenings, Reference } from './reference.ts';
import type { DeviationParts, Summary } from './run.ts';
import { RunningOn } from './running-on.ts';
import { standHeld } from './stand-held.ts';
import { pullOutTorque } from './stepper.ts';
import { summaryOf } from './summary-of.ts';
import { tick } from './tick.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { CURRENT, HELD, LIMIT, PHI, W1, W2, WIND } = modes;
const {
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
} = ioPlaces;

/** s between two runs of the outer loops, where everything is noted; `h` is one sample. */
export function lookOf({ control }: AxisModel, h: number): number {
  return control.kind === 'cascade' && control.sample > 0 ? h * control.speedEvery : h;
}

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
  /** Numbers handed from look to look; see io.ts. */
  readonly io = new Float64Array(IO_SIZE);
  /** Null for an analogue control and a stepper. */
  readonly controller: Controller | null;
  readonly agenda: Agenda;
  /** s of one sample, and from one look (a run of the outer loops) to the next. */
  readonly h: number;
  readonly look: number;
  /** s of the next mark of the reference, where the slide's place is noted; less one look. */
  nextMark: number;
  readonly axis: number;
  readonly stepper: StepperMotor | null;
  readonly reference: Reference;
  readonly events: EventList;
  readonly force: number;
  readonly weight: number;
  readonly books: boolean;
  private readonly duty: number;
  private readonly brushDrop: number;
  readonly storedAtStart: number;
  /** Weight of the wind-up in what the position loop sees, where it does not look at the screw. */
  private readonly seesWind: number;
  private marksDone = 0;
  readonly runningOn = new RunningOn();

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
    const note = (ending: Ending | 'stuck', time: number): void => noteEnding(this, ending, time);
    this.plant = new Plant(constantsOf(model), drive, h, this.reference, note, books, keptOf(model, h));
    this.plant.tracks = model.supply.kind !== 'constant';
    this.weight = weightTorque(model);
    this.force = happenings.force;
    this.agenda = new Agenda(happenings, sampled ? [] : reference.breaks.filter((t) => t > 0));
    this.nextMark = this.markAt(0);
    this.duty = model.drive.duty;
    this.brushDrop = model.motor.kind === 'servo' ? model.motor.brushDrop : 0;
    this.seesWind = model.feedback.on === 'slide' ? 1 : 0;
    if (this.stepper) this.plant.pulse = model.drive.pulse / this.r;
    standHeld(this.plant, this.controller, this.stepper, this.weight);
    this.storedAtStart = this.plant.stored();
  }

  private markAt(at: number): number {
    const { marks } = this.reference;
    return at < marks.length ? marks[at]! - this.look : Number.POSITIVE_INFINITY;
  }

  /** Notes where everything is at the time in `io`, before the look that begins there. */
  observe(): void {
    const { io, plant, r } = this;
    const { x } = plant;
    this.reference.at(io);
    const slide = x[PHI]! - x[WIND]!;
    const seen =
      this.model.feedback.on === 'screw'
        ? x[PHI]! - plant.windBeforeScrew(this.model.transmission.couplingShare)
        : x[PHI]! - this.seesWind * x[WIND]!;
    io[SEEN] = seen;
    io[COMMANDED] = io[REFERENCE]! * r;
    io[ACTUAL] = slide * r;
    io[FOLLOWING] = (io[REFERENCE]! - seen) * r;
    io[SPEED] = x[W1]!;
    io[AMPERES] = x[CURRENT]!;
    this.notes.observe(io, io[T]! >= this.reference.end);
    if (this.runningOn.begun) this.runningOn.observe(io[T]!, io[ACTUAL]!, this.slideSpeed);
    if (io[T]! >= this.nextMark) {
      this.notes.places.push(io[ACTUAL]!);
      this.nextMark = this.markAt(++this.marksDone);
    }
  }

  /** The look that begins at the time in `io` and lasts its span, with its bus voltage; writes what was taken. */
  go(): void {
    const { io, plant, controller, stepper } = this;
    this.takeBus();
    const before = plant.drawn;
    if (this.on && controller?.cascade) cascadeLook(this);
    else {
      if (!this.on) {
        // Nothing commands it any more.
      } else if (controller) {
        plant.u[HELD] = controller.single(io);
        this.cuts(io[T]!, io[SPAN]!, controller.cutCurrent, controller.cutVoltage);
      } else if (stepper) {
        plant.fieldTorque = pullOutTorque(stepper, io[REFERENCE1]!, io[VOLTAGE]!);
        this.watchStep(plant);
      } else this.cuts(io[T]!, io[SPAN]!, plant.satI, plant.satV);
      this.advance(io[T]! + io[SPAN]!, io[SPAN]!);
    }
    io[TAKEN] = plant.drawn - before;
    // Both phases of a stepper carry their current whether it moves or not.
    if (stepper && this.on) io[TAKEN] += stepper.ratedCurrent ** 2 * stepper.resistance * io[SPAN]!;
  }

  /** Takes over the bus voltage in `io`. */
  takeBus(): void {
    const voltage = Math.max(0, this.duty * this.io[BUS]! - this.brushDrop);
    this.io[VOLTAGE] = voltage;
    this.plant.u[LIMIT] = voltage;
  }

  /** A whole look in which nothing is set to happen. */
  calm(): boolean {
    const { io } = this;
    return io[SPAN]! > this.look - 1e-9 * this.h && this.agenda.next >= io[T]! + io[SPAN]!;
  }

  /** The samples of a cascade's current loop over the look in `io`, one after another. */
  oneByOne(): void {
    const { io, plant, h } = this;
    const { x, u } = plant;
    const controller = this.controller!;
    const end = io[T]! + io[SPAN]!;
    if (this.on && this.calm()) {
      for (let sample = 0; sample < controller.speedEvery; sample++) {
        controller.innermost(io, x, u);
        if (controller.cutVoltage !== 0) this.cuts(io[T]! + sample * h, h, 0, controller.cutVoltage);
        tick(plant);
      }
      plant.time = end;
      return;
    }
    for (let at = io[T]!; end - at > 1e-9 * h; ) {
      const span = Math.min(h, end - at);
      controller.innermost(io, x, u);
      if (controller.cutVoltage !== 0) this.cuts(at, span, 0, controller.cutVoltage);
      this.advance(at + span, span);
      at += span;
      if (this.on) continue;
      if (end - at > 1e-9 * h) this.advance(end, end - at);
      return;
    }
  }

  /** Notes commands cut by the limits (−1, 0 or 1 each) in a sample of `h` from `t`. */
  cuts(t: number, h: number, current: number, voltage: number): void {
    if (current !== 0 && this.notes.cutCurrent(t, h, current)) this.events.add('current-limit', t, this.axis);
    if (voltage !== 0 && this.notes.cutVoltage(t, h, voltage)) this.events.add('voltage-limit', t, this.axis);
  }

  /** A rotor more than half an electrical turn behind its field has lost its hold. */
  private watchStep({ x, constants }: Plant): void {
    if (this.notes.stalledAt < Number.POSITIVE_INFINITY) return;
    const t = this.io[T]!;
    const behind = (this.io[REFERENCE]! - x[PHI]!) * constants.rotorTeeth;
    if (Math.abs(behind) <= Math.PI) return;
    this.notes.stalledAt = t;
    this.events.add('stall', t, this.axis);
  }

  /** Up to `end`, a kept step long where nothing is set to happen on the way. */
  private advance(end: number, h: number): void {
    const { plant, agenda } = this;
    let whole = (this.controller !== null || !this.on) && Math.abs(h - this.h) < 1e-9 * this.h;
    // A moment within rounding of the end belongs to the next sample.
    while (agenda.next < end - 1e-9 * h) {
      const { next } = agenda;
      if (next > plant.time) {
        advance(plant, next - plant.time);
        whole = false;
      }
      plant.time = next;
      for (const due of agenda.due(next)) happen(this, due, next);
    }
    if (whole) tick(plant);
    else if (end - plant.time > 1e-9 * h) advance(plant, end - plant.time);
    plant.time = end;
  }

  /** m and m/s of the slide as its plant stands. */
  get place(): number {
    const { x } = this.plant;
    return (x[PHI]! - x[WIND]!) * this.r;
  }

  get slideSpeed(): number {
    const { x, rigid } = this.plant;
    return x[rigid ? W1 : W2]! * this.r;
  }

  /** From here on it is not held against its command any more: the mains fail, or its drive is off. */
  letGo(what: 'mains' | 'drive', t: number): void {
    this.notes.letGo(this.io[FOLLOWING]!);
    this.runningOn.begin(what, t, this.place, this.slideSpeed);
  }

  /** m by which the slide lies behind its command, by what makes it. */
  errorParts(): DeviationParts {
    const { io, plant, r } = this;
    const { x, constants, contact } = plant;
    const play = plant.rigid ? 0 : contact === 0 ? x[WIND]! : contact * constants.gap;
    return {
      lag: (io[REFERENCE]! - x[PHI]!) * r,
      play: play * r,
      yielding: (plant.rigid ? 0 : x[WIND]! - play) * r,
    };
  }

  /** The drive lets go; a brake takes hold after its delay. */
  switchOff(t: number): void {
    if (!this.on) return;
    this.on = false;
    const { plant, model } = this;
    this.letGo('drive', t);
    plant.u[HELD] = 0;
    plant.fieldTorque = 0;
    plant.setDrive(model.drive.whenOff === 'short' && model.motor.kind === 'servo' ? 'short' : 'open');
    if (model.brake) this.agenda.brakeHoldsAt(t + model.brake.delay);
    this.events.add('drive-off', t, this.axis);
  }

  /** Whether every number is still one. */
  get finite(): boolean {
    const { x } = this.plant;
    return Number.isFinite(x[PHI]! + x[W1]! + x[CURRENT]! + x[WIND]!);
  }

  finish(until: number, move: Move): Summary {
    return summaryOf(this, until, move);
  }
}

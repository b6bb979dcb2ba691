/** Runs one move of an axis, or of two in step, sample by sample, with the bus that they share. */
import { AxisRun, lookOf } from './axis-run.ts';
import { Bus } from './bus.ts';
import { checkModel, checkMove, checkTogether } from './check-model.ts';
import { CircleGauge } from './circle.ts';
import { EventList } from './events.ts';
import { BUS, FOLLOWING, SPAN, T, TAKEN } from './io.ts';
import type { AxisModel } from './model.ts';
import { ModelError } from './model-error.ts';
import type { Move } from './moves.ts';
import { seconds } from './notes.ts';
import { Recorder } from './record.ts';
import { happeningsOf, referencesOf } from './reference.ts';
import type { Run } from './run.ts';
import { modelFor } from './run-out.ts';
import { Sampler } from './sampler.ts';
import { canStride, stride } from './stride.ts';

export interface SimulateOptions {
  /** s; the move with a quarter of a second to settle where absent. */
  readonly until?: number;
  /** Points kept of each quantity, about; 0 keeps none. */
  readonly points?: number;
  /** Keeps the following error alone instead, at so many even times (at least 2). */
  readonly followingAt?: number;
  /** s between two looks at an analogue control, which itself never pauses. */
  readonly look?: number;
  /** m within which the axis counts as arrived. */
  readonly settleBand?: number;
  /** Whether energies and the r.m.s. current are worked out; true where absent. Without them a run is quicker. */
  readonly books?: boolean;
  /** The second axis of a circle, where it is not this one's twin. */
  readonly second?: AxisModel;
  /** Asked now and then; true ends the run early. */
  readonly shouldStop?: () => boolean;
}

const SETTLE = 0.25;
/** s after the mains failed in which an axis comes to rest, if it ever does. */
const LONGEST_RUN_OUT = 5;
/** s at rest after which nothing more is awaited. */
const RESTED = 0.05;
const ASK_EVERY = 2048;

/** s of one sample, or of one look at an axis whose control never pauses. */
export function sampleOf(model: AxisModel, until: number, look?: number): number {
  if (model.control.sample > 0) return model.control.sample;
  const wished = look ?? Math.min(5e-4, until / 1000);
  return model.supply.kind === 'constant' ? wished : Math.min(wished, 5e-5);
}

/**
 * s that a run takes where nothing else is said: the move, and a while to settle or to come to rest. A drop takes as long
 * without its brake as with it, so that the two can be held side by side.
 */
export function timeOf(model: AxisModel, move: Move, options: SimulateOptions = {}): number {
  const end = referencesOf(move)[0].end;
  if (move.kind === 'drop') return end + SETTLE + (model.brake?.delay ?? 0);
  if (move.kind !== 'power-cut') return end + SETTLE;
  const { mainsOff } = happeningsOf(move);
  const tried = { ...options, until: mainsOff + LONGEST_RUN_OUT, points: 0, books: false };
  const { runOut } = go(model, move, tried, true).summary;
  return Math.max(mainsOff, runOut?.restAt ?? mainsOff + 1) + SETTLE;
}

/** Throws ModelError, with every problem by the name of its field, for a model or move that cannot be. */
export function simulate(model: AxisModel, move: Move, options: SimulateOptions = {}): Run {
  return go(model, move, options, false);
}

/** `untilRest`: it ends as soon as everything is off and at rest. */
function go(given: AxisModel, move: Move, options: SimulateOptions, untilRest: boolean): Run {
  const problems = [...checkModel(given), ...checkMove(move)];
  if (options.second) problems.push(...checkModel(options.second, 'second'));
  if (problems.length > 0) throw new ModelError(problems);
  const model = modelFor(given, move);
  const references = referencesOf(move);
  const happenings = happeningsOf(move);
  const until = options.until ?? timeOf(given, move, options);
  const h = sampleOf(model, until, options.look);
  const clashes = checkTogether(model, options.second, move, until, h);
  if (clashes.length > 0) throw new ModelError(clashes);

  const events = new EventList();
  const band = options.settleBand ?? 2e-6;
  const models = references.length === 2 ? [model, options.second ?? model] : [model];
  const axes = models.map(
    (each, at) => new AxisRun(each, references[at]!, happenings, h, at, events, band, options.books ?? true),
  );
  const bus = new Bus(model.supply, (kind, t) => {
    if (kind === 'dump-on' || kind === 'dump-off') events.add(kind, t, -1);
  });
  const busStart = bus.stored;
  // Whole looks, and a last short one where they do not fill the time.
  const look = lookOf(model, h);
  const samples = Math.ceil(until / look - 1e-9);
  const { points = 4000, followingAt } = options;
  const recorders = axes.flatMap((): (Recorder | Sampler)[] => {
    if (followingAt !== undefined) return [new Sampler(until, followingAt)];
    return points === 0 ? [] : [new Recorder(samples + 1, points)];
  });
  const gauge = move.kind === 'circle' ? new CircleGauge(move, axes) : null;
  const trips: { at: number; axis: number; sentence: string }[] = [];
  const trip = (kind: 'trip-following' | 'trip-overvoltage' | 'trip-undervoltage', t: number, at: number) => {
    events.add(kind, t, at);
    trips.push({ at: t, axis: at, sentence: events.list.at(-1)!.sentence });
    for (const axis of axes) axis.switchOff(t);
  };
  const blowUp = 1e3 * (farthest(move) + 1e-3);
  let mains = happenings.mainsOff;
  let stopped: string | null = null;
  let t = 0;
  // A constant supply whose mains never fail needs no looking after.
  const unchanging = bus.steady && happenings.mainsOff === Number.POSITIVE_INFINITY;

  // Up to here the error needs no looking after either.
  const alarm = Math.min(axes[0]!.followingLimit, 2e-3 * blowUp);
  for (let sample = 0; ; sample++) {
    if (unchanging && axes.length === 1 && canStride(axes[0]!)) {
      const whole = Math.min(samples - 1, sample - (sample % ASK_EVERY) + ASK_EVERY);
      sample = stride(axes[0]!, sample, whole, bus.voltage, alarm, recorders[0]);
    }
    t = sample < samples ? sample * look : until;
    for (let at = 0; at < axes.length; at++) {
      const axis = axes[at]!;
      const { io } = axis;
      io[T] = t;
      io[BUS] = bus.voltage;
      axis.observe();
      const size = io[FOLLOWING]! < 0 ? -io[FOLLOWING]! : io[FOLLOWING]!;
      if (!(size < blowUp)) {
        const from = axis.notes.unstable?.from ?? axis.leaving ?? t;
        axis.notes.unstable = { from, says: `unstable: it grows without bound from ${seconds(from)} on` };
        events.add('unstable', t, at, `The loop is ${axis.notes.unstable.says}.`);
        stopped = 'The error grows without bound.';
      } else if (size > 2e-3 * blowUp) axis.leaving ??= t;
      if (axis.on && size > axis.followingLimit) trip('trip-following', t, at);
      if (axis.finite) recorders[at]?.takeFrom(io);
    }
    if (stopped !== null || sample >= samples) break;
    if (gauge) gauge.take(t);
    if (untilRest && axes.every(({ on, runningOn }) => !on && t - runningOn.lastMoving > RESTED)) break;
    if (t >= mains) {
      bus.mainsOff();
      events.add('mains-off', t, -1);
      for (const axis of axes) axis.letGo('mains', t);
      mains = Number.POSITIVE_INFINITY;
    }
    const span = sample === samples - 1 ? until - t : look;
    let taken = 0;
    for (let at = 0; at < axes.length; at++) {
      const axis = axes[at]!;
      axis.io[SPAN] = span;
      axis.go();
      taken += axis.io[TAKEN]!;
    }
    if (!unchanging) {
      bus.advance(t, span, taken / span);
      if (bus.voltage > model.drive.overvoltage && axes[0]!.on) trip('trip-overvoltage', t + span, -1);
      else if (bus.voltage < model.drive.undervoltage && axes[0]!.on) trip('trip-undervoltage', t + span, -1);
    }
    if (sample % ASK_EVERY === 0 || axes[0]!.plant.exhausted) {
      if (options.shouldStop?.()) stopped = 'It was asked to stop.';
      else if (axes.some(({ plant }) => plant.exhausted))
        stopped =
          'The loop is so fast for its inertia that it cannot be followed in reasonable time; look at gains and units.';
      if (stopped) events.add('stopped', t, -1, stopped);
    }
  }

  for (const [at, { notes }] of axes.entries())
    if (notes.unstable && !stopped)
      events.add('unstable', notes.unstable.from, at, `The loop is ${notes.unstable.says}.`);
  const summaries = axes.map((axis) => axis.finish(Math.max(t, h), move));
  const traces = recorders.map((recorder) => recorder.finish(t));
  const none = new Float64Array(0);
  const empty = { commanded: none, actual: none, following: none, speed: none, current: none, bus: none };
  return {
    move,
    time: traces[0]?.time ?? none,
    ...(traces[0]?.trace ?? empty),
    second: summaries[1] ? { ...(traces[1]?.trace ?? empty), summary: summaries[1] } : null,
    events: events.list.toSorted((a, b) => a.time - b.time),
    summary: summaries[0]!,
    trips,
    circle: gauge ? gauge.finish() : null,
    supply: {
      lowest: bus.lowest,
      highest: bus.highest,
      end: bus.voltage,
      taken: bus.taken,
      dumped: bus.dumped,
      bled: bus.bled,
      residual: bus.steady ? 0 : bus.residual(busStart),
    },
    stopped,
    until: t,
    look,
    looks: samples,
    seriesSteps: axes.reduce((total, { plant }) => total + plant.seriesSteps, 0),
    passedOver: axes.reduce((total, { plant }) => total + plant.passedOver, 0),
  };
}

/** m from the start to the farthest the command goes. */
function farthest(move: Move): number {
  switch (move.kind) {
    case 'rapid':
    case 'step':
    case 'reversal':
      return Math.abs(move.distance);
    case 'ramp':
      return Math.abs(move.speed) * move.duration;
    case 'small-steps':
      return Math.abs(move.size) * move.count;
    case 'circle':
      return 2 * move.radius;
    case 'brake-from-rapid':
    case 'power-cut':
      return move.speed * (1 + move.cruise) + move.speed ** 2 / move.acceleration;
    case 'force-step':
    case 'drop':
      return 0.1;
  }
}

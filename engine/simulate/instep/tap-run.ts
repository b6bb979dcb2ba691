/** Tapping with axis and spindle in step: in from rest, turn back at depth, out again. */
import { axisAfter } from './axis.ts';
import { checkStroke, LONGEST } from './check.ts';
import { seenAngle } from './feedback.ts';
import { Follower } from './follower.ts';
import type { InStepModel, TapStroke } from './model.ts';
import { type SpindleEnergy, SpindleRun } from './spindle.ts';
import type { InStepOptions } from './thread-run.ts';
import { type InStepTrace, TraceList } from './trace.ts';

const TURN = 2 * Math.PI;

export interface TapRun {
  readonly trace: InStepTrace;
  /** rad/s the spindle had when it was told to turn back. */
  readonly reached: number;
  /** rad and m it turned on after that, and s until it stood. */
  readonly overTurn: number;
  readonly overshoot: number;
  readonly stopTime: number;
  /** m below the face that the tap reaches. */
  readonly deepest: number;
  /** m by which the axis is ahead of the spindle (below zero: behind), going in, coming out, and at most both ways in the hole. */
  readonly stepIn: number;
  readonly stepOut: number;
  readonly ahead: number;
  readonly behind: number;
  /** m of float the holder needs with the axis in step, and with an axis that stops at its depth. */
  readonly float: number;
  readonly floatAlone: number;
  /** s for the whole stroke. */
  readonly time: number;
  readonly energy: SpindleEnergy;
  readonly faults: readonly string[];
}

/** Below this a spindle that nothing moves counts as standing for good, s. */
const STANDS = 0.5;

/** Throws ModelError for what cannot be simulated, each problem by the name of its field. */
export function simulateTap(model: InStepModel, stroke: TapStroke, options: InStepOptions = {}): TapRun {
  checkStroke(model, stroke);
  const { control, feedback } = model;
  const { period } = control;
  const perRadian = stroke.lead / TURN;
  const spindle = new SpindleRun(model.spindle, 0);
  spindle.ask(stroke.speed, -model.spindle.delay);
  const command = new Follower({ from: 0, place: 0, speed: 0 });
  const axis = axisAfter(model.axis, command);
  const seen: number[] = [];
  const trace = new TraceList();
  const faults: string[] = [];
  let told: { t: number; angle: number; speed: number } | null = null;
  let stood: { t: number; angle: number } | null = null;
  let still = 0;

  for (let look = 0; ; look++) {
    const t = look * period;
    const depth = axis.place - stroke.clearance;
    trace.add(t, spindle.angle, spindle.speed, depth, perRadian * spindle.angle - stroke.clearance);
    if (told && stood && spindle.angle <= 0) break;
    if (axis.trip) {
      faults.push(
        `The axis switches off after ${axis.trip.at.toFixed(2)} s: ${axis.trip.says}. The tap breaks.`,
      );
      break;
    }
    if (t > LONGEST || still > STANDS) {
      faults.push(
        told
          ? stood
            ? 'The spindle cannot turn the tap back out: its drive has not the torque.'
            : 'The spindle never comes to rest: nothing brakes it.'
          : 'The spindle stands before the hole is deep enough: the tap asks more torque than it has.',
      );
      break;
    }
    seen.push(seenAngle(feedback, spindle.angle));
    const read = seen[look - control.delay] ?? 0;
    command.goTo(perRadian * read, t, period);
    if (!told && perRadian * read >= stroke.clearance + stroke.depth) {
      told = { t, angle: spindle.angle, speed: spindle.speed };
      spindle.ask(-stroke.speed, t);
    }
    const inHole = perRadian * spindle.angle > stroke.clearance;
    const out = told !== null && spindle.speed <= 0;
    spindle.advance(t, period, inHole ? stroke.cutTorque * (out ? stroke.rub : 1) : 0);
    axis.advance(t, t + period);
    if (told && !stood && spindle.speed <= 0) stood = { t: t + period, angle: spindle.angle };
    still = spindle.speed === 0 && !spindle.waits ? still + period : 0;
  }
  return judged(stroke, trace, { told, spindle, faults }, options);
}

interface Ending {
  readonly told: { readonly t: number; readonly angle: number; readonly speed: number } | null;
  readonly spindle: SpindleRun;
  readonly faults: readonly string[];
}

function judged(
  stroke: TapStroke,
  trace: TraceList,
  { told, spindle, faults }: Ending,
  { points = 1500 }: InStepOptions,
): TapRun {
  const { time, angle, place, ideal, speed } = trace;
  const farthest = angle.reduce((most, each) => Math.max(most, each), 0);
  const turnedAt = angle.indexOf(farthest);
  const overTurn = told ? farthest - told.angle : 0;
  let [ahead, behind, deepest] = [0, 0, 0];
  for (let at = 0; at < time.length; at++) {
    deepest = Math.max(deepest, ideal[at]!, place[at]!);
    if (ideal[at]! <= 0) continue;
    ahead = Math.max(ahead, place[at]! - ideal[at]!);
    behind = Math.max(behind, ideal[at]! - place[at]!);
  }
  const toldAt = told ? time.findIndex((t) => t >= told.t) : time.length - 1;
  const stepIn = place[toldAt]! - ideal[toldAt]!;
  // Out: as it leaves the hole, where the spindle has long had its speed.
  let leavesAt = time.length - 1;
  while (leavesAt > turnedAt && ideal[leavesAt]! <= 0) leavesAt--;
  const stepOut = place[leavesAt]! - ideal[leavesAt]!;
  const overshoot = (overTurn * stroke.lead) / TURN;
  const float = ahead + behind;
  return {
    trace: trace.thinned(points),
    reached: told ? told.speed : (speed.at(-1) ?? 0),
    overTurn,
    overshoot,
    stopTime: told ? time[turnedAt]! - told.t : 0,
    deepest,
    stepIn,
    stepOut,
    ahead,
    behind,
    float,
    floatAlone: overshoot + float,
    time: time.at(-1) ?? 0,
    energy: spindle.energy(),
    faults,
  };
}

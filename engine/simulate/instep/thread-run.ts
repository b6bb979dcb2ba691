/** One pass of a thread in time: the mark, the start, the run-in, the cut that slows the spindle, the pull-out. */
import { axisAfter } from './axis.ts';
import { checkPass } from './check.ts';
import { nextMark, seenAngle } from './feedback.ts';
import { Follower } from './follower.ts';
import type { InStepModel, ThreadPass } from './model.ts';
import { type SpindleEnergy, SpindleRun } from './spindle.ts';
import { type InStepTrace, TraceList } from './trace.ts';

const TURN = 2 * Math.PI;

export interface InStepOptions {
  /** Points kept of each quantity, about. */
  readonly points?: number;
}

export interface ThreadRun {
  readonly trace: InStepTrace;
  /** s until the mark came and the axis set off. */
  readonly waited: number;
  /** m from the start at which the lead has become right for good; null where it never did. */
  readonly settledAt: number | null;
  /** m by which the tool trails the spindle’s angle once settled, what the start cost included; the same at every pass. */
  readonly trail: number;
  /** Within the thread: m of the tool off its groove, and of the lead as a share of it, at most. */
  readonly worstPlace: number;
  readonly worstLead: number;
  /** Share of its speed that the spindle loses when the tool bites. */
  readonly dip: number;
  /** m the tool goes on after the thread is long enough. */
  readonly runOut: number;
  readonly energy: SpindleEnergy;
  /** What went wrong, a sentence each. */
  readonly faults: readonly string[];
}

/** Time after the end of the command in which the axis comes to rest, s. */
const REST = 0.3;
/** Share of a turn over which a lead is measured where counts or a ringing axis make it flutter. */
const WINDOW = 1 / 4;
/** Share of a turn for which the lead must stay right to count as settled. */
const STAYS = 1 / 4;

/** Throws ModelError for what cannot be simulated, each problem by the name of its field. */
export function simulateThread(model: InStepModel, pass: ThreadPass, options: InStepOptions = {}): ThreadRun {
  checkPass(model, pass);
  const { control, feedback, spindle: of } = model;
  const perRadian = pass.lead / TURN;
  const { period } = control;
  const spindle = new SpindleRun(of, pass.speed);
  const command = new Follower();
  const axis = axisAfter(model.axis, command);
  const start = nextMark(feedback, 0) + pass.startAngle;
  const whole = pass.runIn + pass.length;
  const ramp = control.start === 'ramp' ? rampOf(model, pass) : null;
  const seen: number[] = [];
  const trace = new TraceList();
  let set = -1;
  let leaves: { at: number; place: number; speed: number } | null = null;
  let ended = Number.POSITIVE_INFINITY;

  for (let look = 0; ; look++) {
    const t = look * period;
    trace.add(t, spindle.angle, spindle.speed, axis.place, perRadian * (spindle.angle - start));
    if (t >= ended) break;
    seen.push(seenAngle(feedback, spindle.angle));
    const read = seen[look - control.delay] ?? 0;
    const turned = read - start;
    if (leaves) {
      const since = t + period - leaves.at;
      const braking = Math.min(since, leaves.speed / model.axis.acceleration);
      const place = leaves.place + leaves.speed * braking - (model.axis.acceleration * braking ** 2) / 2;
      command.goTo(place, t, period);
      if (since >= leaves.speed / model.axis.acceleration) ended = Math.min(ended, t + period + REST);
    } else if (turned >= 0) {
      if (set < 0) set = t;
      const place = ramp ? ramp(turned) : perRadian * turned;
      command.goTo(place, t, period);
      if (axis.place >= whole || command.place(t) >= whole + pass.speed * perRadian)
        leaves = { at: t, place: command.place(t), speed: pass.speed * perRadian };
    }
    const inCut = leaves === null && axis.place > pass.runIn;
    const share = inCut ? Math.min(1, (axis.place - pass.runIn) / pass.entry) : 0;
    spindle.advance(t, period, share * pass.cutTorque);
    axis.advance(t, t + period);
    if (axis.trip && ended === Number.POSITIVE_INFINITY) ended = t + period;
    if (spindle.speed === 0 && ended === Number.POSITIVE_INFINITY) ended = t + period;
  }
  return judged(model, pass, trace, { set, leaves, axis, spindle }, options);
}

/** Place of the command by angle, gaining speed with the axis's acceleration: the same at every pass. */
function rampOf({ axis }: InStepModel, { lead, speed }: ThreadPass): (angle: number) => number {
  const v = (lead * speed) / TURN;
  const time = v / axis.acceleration;
  return (angle) => {
    const s = angle / speed;
    return s < time ? (axis.acceleration * s * s) / 2 : (lead * angle) / TURN - (v * time) / 2;
  };
}

interface Ending {
  readonly set: number;
  readonly leaves: { readonly at: number } | null;
  readonly axis: ReturnType<typeof axisAfter>;
  readonly spindle: SpindleRun;
}

function judged(
  model: InStepModel,
  pass: ThreadPass,
  trace: TraceList,
  { set, leaves, axis, spindle }: Ending,
  { points = 1500 }: InStepOptions,
): ThreadRun {
  const { time, place, ideal, speed, angle } = trace;
  const { period } = model.control;
  const from = time.findIndex((t) => t >= set && set >= 0);
  const to = leaves ? Math.round(leaves.at / period) : time.length - 1;
  const turnTime = TURN / pass.speed;
  const smooth = model.feedback.counts > 0 || model.axis.kind === 'whole';
  const span = Math.max(1, smooth ? Math.round((WINDOW * turnTime) / (2 * period)) : 1);
  /** Share of the lead that is missing, around a look. */
  const missing = (at: number): number => {
    const a = Math.max(0, at - span);
    const b = Math.min(time.length - 1, at + span);
    return 1 - (place[b]! - place[a]!) / (ideal[b]! - ideal[a]!);
  };
  const stays = Math.max(1, Math.round((STAYS * turnTime) / period));
  let settled: number | null = null;
  let good = 0;
  for (let at = Math.max(from, 0) + span; from >= 0 && at + span <= to; at++) {
    if (Math.abs(missing(at)) > pass.leadError) {
      good = 0;
      settled = null;
      continue;
    }
    if (good === 0) settled = place[at]!;
    good++;
    if (good >= stays) break;
  }
  if (good < Math.min(stays, to - from)) settled = null;
  // The groove as it becomes: the mean over the last turn of the thread.
  const last = Math.max(from, to - Math.max(1, Math.round(turnTime / period)));
  let trail = 0;
  for (let at = last; at < to; at++) trail += (ideal[at]! - place[at]!) / Math.max(1, to - last);
  let [worstPlace, worstLead, slowest] = [0, 0, pass.speed];
  for (let at = Math.max(from, 0); at < to; at++) {
    slowest = Math.min(slowest, speed[at]!);
    if (place[at]! < pass.runIn) continue;
    worstPlace = Math.max(worstPlace, Math.abs(ideal[at]! - place[at]! - trail));
    if (at - span >= from && at + span <= to) worstLead = Math.max(worstLead, Math.abs(missing(at)));
  }
  const faults: string[] = [];
  if (axis.trip) faults.push(`The axis switches off after ${axis.trip.at.toFixed(2)} s: ${axis.trip.says}.`);
  if (spindle.speed === 0) faults.push('The spindle stalls: the cut asks more torque than its drive has.');
  if (settled === null && faults.length === 0)
    faults.push('The lead never becomes right within the length there is.');
  return {
    trace: trace.thinned(points),
    waited: set < 0 ? (angle.at(-1) ?? 0) / pass.speed : set,
    settledAt: settled,
    trail,
    worstPlace,
    worstLead,
    dip: Math.max(0, 1 - slowest / pass.speed),
    runOut: Math.max(0, (place.at(-1) ?? 0) - (pass.runIn + pass.length)),
    energy: spindle.energy(),
    faults,
  };
}

/** A judged thread or tap in time: spindle and axis of this machine put into the simulation, and what comes out in words. */
import { sayPath } from '../assess/index.ts';
import {
  type AxisInStep,
  type InStepModel,
  simulateTap,
  simulateThread,
  type TapRun,
  type ThreadRun,
} from '../simulate/instep/index.ts';
import { USUAL_LEAD_ERROR } from '../threads/plan.ts';
import type { Habits } from './habits.ts';
import type { JudgedWork } from './judge.ts';
import { rangeAt, stoppingAt } from './limits.ts';
import type { WorkAxis, WorkMachine } from './machine.ts';
import { mm, rpm, say } from './say.ts';
import type { TapDetail } from './taps.ts';
import { axisFor } from './thread-axis.ts';
import type { ThreadDetail } from './threads.ts';

const TURN = 2 * Math.PI;
/** Looks of the control until the axis is told: it works out at one what it saw at the one before. */
const LOOKS = 1;
/** Turns of a thread that are simulated; the rest goes on as these end. */
const MOST_TURNS = 25;
const MOST_POINTS = 900;

export interface InStepThread {
  readonly kind: 'thread';
  readonly run: ThreadRun;
  readonly runIn: number;
  /** m of thread that is run. */
  readonly length: number;
  readonly lead: number;
}
export interface InStepTap {
  readonly kind: 'tap';
  readonly run: TapRun;
  readonly depth: number;
  readonly lead: number;
}

export interface InStepAnswer {
  readonly of: InStepThread | InStepTap;
  /** What came out, a sentence each, the gravest first. */
  readonly sentences: readonly { readonly level: 'bad' | 'mind' | 'good'; readonly says: string }[];
  /** What was taken for want of better. */
  readonly assumed: readonly string[];
}

/** Why there is no run, and the facts it waits for. */
export interface NotInStep {
  readonly says: string;
  /** Paths of facts. */
  readonly needs: readonly string[];
}

const not = (says: string, needs: readonly string[] = []): NotInStep => ({
  says:
    needs.length === 0
      ? says
      : `${says} Not known: ${needs.map((path) => `${sayPath(path)} (${path})`).join('; ')}.`,
  needs,
});

/** The run, or why there is none. Throws ModelError only for numbers that cannot be. */
export function runInStep(machine: WorkMachine, judged: JudgedWork): InStepAnswer | NotInStep {
  const { detail, findings } = judged;
  const { spindle, habits } = machine;
  const unread = findings.filter(({ link, verdict }) => link === 'settings' && verdict === 'fails');
  if (!detail && unread.length > 0)
    return not(
      `It cannot be simulated before its settings can be read. ${unread.map(({ sentence }) => sentence).join(' ')}`,
    );
  if (detail?.kind === 'cut') return not('A cut does not run in step with the spindle; threads and taps do.');
  if (detail?.kind === 'milled')
    return not('A milled thread does not run in step with the spindle: its climb goes with the circle.');
  if (!spindle)
    return not('It cannot be simulated before the spindle is known well enough.', machine.spindleNeeds);
  if (!detail) return not('It does not run in step with the spindle.');
  const chain = spindle.chain;
  if (!spindle.feedback)
    return not(
      'It cannot be simulated: nothing is known that tells the control the angle of the spindle.',
      machine.feedbackFitted === 'no' ? [] : [`${chain}.spindle-feedback`],
    );
  if (detail.speed === null || !(detail.speed > 0))
    return not('It cannot be simulated: no spindle speed is known for it.');
  const axis = axisFor(machine, detail.axis);
  const following = axis && axisIn(axis);
  if (!axis || !following)
    return not(
      `It cannot be simulated: how the ${detail.axis} axis follows is not known well enough.`,
      axis ? [...new Set([...axis.rapid.needs, ...axis.acceleration.needs, ...axis.gain.needs])] : [],
    );
  const range =
    detail.kind === 'tap'
      ? stoppingAt(spindle, detail.speed, habits.delay.value)?.range
      : rangeAt(spindle, detail.speed);
  if (!range) return not(`No range of the spindle reaches ${rpm(detail.speed)}.`);
  const model: InStepModel = {
    spindle: {
      inertia: range.inertia,
      driving: range.peak,
      braking: range.braking,
      drag: range.drag,
      bandwidth: habits.bandwidth.value,
      delay: habits.delay.value,
    },
    feedback: {
      counts: 4 * spindle.feedback.lines,
      turns: spindle.feedback.turns.encoder / spindle.feedback.turns.spindle,
      firstMark: 1,
    },
    control: { period: habits.look.value, delay: LOOKS, start: 'ramp' },
    axis: following,
  };
  const assumed = [
    `The spindle turns in its ${range.name}; its drive mends an error of speed at ${habits.bandwidth.says}: two thirds of it within ${say(1 / habits.bandwidth.value, 'ms')}.`,
    `The spindle’s drive acts on an order after ${habits.delay.says}.`,
    `The control looks at the spindle every ${habits.look.says} and tells the axis one look later.`,
    axis.gainSays,
  ];
  return detail.kind === 'tap'
    ? tapAnswer(model, detail, assumed, habits)
    : threadAnswer(model, detail, assumed);
}

function axisIn(axis: WorkAxis): AxisInStep | undefined {
  const { acceleration, rapid, gain, model } = axis;
  if (acceleration.value === null || rapid.value === null) return undefined;
  const most = { acceleration: acceleration.value, topSpeed: rapid.value };
  if (model) return { kind: 'whole', model, ...most };
  return gain.value === null ? undefined : { kind: 'trailing', gain: gain.value, ...most };
}

function threadAnswer(model: InStepModel, detail: ThreadDetail, assumed: readonly string[]): InStepAnswer {
  const { thread } = detail;
  const runIn = detail.room ?? detail.plan?.runIn ?? thread.lead;
  const length = Math.min(detail.length, MOST_TURNS * thread.lead);
  const run = simulateThread(
    model,
    {
      lead: thread.lead,
      speed: detail.speed!,
      runIn,
      length,
      startAngle: 0,
      cutTorque: detail.cutTorque,
      entry: Math.max(thread.pitch, 1e-4),
      leadError: USUAL_LEAD_ERROR,
    },
    { points: MOST_POINTS },
  );
  const sentences: InStepAnswer['sentences'][number][] = run.faults.map((says) => ({ level: 'bad', says }));
  if (run.settledAt !== null)
    sentences.push(
      run.settledAt <= runIn
        ? {
            level: 'good',
            says: `The lead is right after ${mm(run.settledAt)}, before the thread begins at ${mm(runIn)}.`,
          }
        : {
            level: 'bad',
            says: `The lead is right only after ${mm(run.settledAt)}, but the thread begins at ${mm(runIn)}: its first ${say((run.settledAt - runIn) / thread.lead, '1')} turns are wrong.`,
          },
    );
  const formula = detail.plan?.runIn;
  if (run.settledAt !== null && formula !== undefined && formula > run.settledAt)
    sentences.push({
      level: 'good',
      says: `The plan asks for more, ${mm(formula)}: its formula takes the axis at the worst of three speeds and counts on a plain lag, so it stands on the safe side. Both call the lead right once less than ${say(USUAL_LEAD_ERROR, '%')} of it is missing.`,
    });
  sentences.push(
    {
      level: run.dip > 0.05 ? 'mind' : 'good',
      says: `When the tool bites the spindle loses ${say(run.dip, '%')} of its speed, and finds it again.`,
    },
    {
      level: run.worstPlace > 0.05 * thread.pitch ? 'mind' : 'good',
      says: `In the cut the tool is off its groove by ${say(run.worstPlace, 'µm')} at most.`,
    },
    { level: 'good', says: `After the thread it goes on for ${mm(run.runOut)} before it stands.` },
  );
  return {
    of: { kind: 'thread', run, runIn, length, lead: thread.lead },
    sentences,
    assumed: [
      ...assumed,
      ...(length < detail.length ? [`The first ${MOST_TURNS} turns are shown; the rest goes on alike.`] : []),
    ],
  };
}

function tapAnswer(
  model: InStepModel,
  detail: TapDetail,
  assumed: readonly string[],
  { rigid }: Habits,
): InStepAnswer {
  const { thread, depth } = detail;
  const clearance = Math.max(3 * thread.lead, 3e-3);
  const run = simulateTap(
    model,
    {
      lead: thread.lead,
      speed: detail.speed!,
      clearance,
      depth,
      cutTorque: detail.torque ?? 0,
      rub: 0.3,
    },
    { points: MOST_POINTS },
  );
  const sentences: InStepAnswer['sentences'][number][] = run.faults.map((says) => ({ level: 'bad', says }));
  if (run.reached < 0.97 * detail.speed!)
    sentences.push({
      level: 'mind',
      says: `In so short a stroke the spindle only reaches ${rpm(run.reached)}; from more room above the hole it would run on further.`,
    });
  sentences.push(
    {
      level: run.overshoot > depth ? 'bad' : run.overshoot > depth / 4 ? 'mind' : 'good',
      says: `After the order to turn back it turns ${say(run.overTurn / TURN, '1')} times more and goes ${mm(run.overshoot)} deeper, to ${mm(run.deepest)}; it stands after ${say(run.stopTime, 's')}.`,
    },
    {
      level: run.float > rigid.value * thread.pitch ? 'mind' : 'good',
      says: `Axis and spindle part by ${mm(run.behind)} going in and ${mm(run.ahead)} the other way: a holder in step needs ${mm(run.float)} of float, one whose axis stops at depth ${mm(run.floatAlone)}.`,
    },
    { level: 'good', says: `The stroke takes ${say(run.time, 's')}.` },
  );
  return {
    of: { kind: 'tap', run, depth, lead: thread.lead },
    sentences,
    assumed: [
      ...assumed,
      `The tap starts ${mm(clearance)} above the face; while it cuts it takes ${say(detail.torque ?? 0, 'N·m')}, and three tenths of that on the way out.`,
    ],
  };
}

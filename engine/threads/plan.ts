/** A plan for cutting a thread with a single point on a given machine. */
import { moveTrapezoidal } from '../handbook/move-trapezoidal.ts';
import { threadRunIn } from '../handbook/thread-run-in.ts';
import { threadSpeed } from '../handbook/thread-speed.ts';
import { threadStarts } from '../handbook/thread-starts.ts';
import { largest } from './bisect.ts';
import { basicSizes, work } from './dimensions.ts';
import { flankInfeed, type Pass, passesOf, usualPasses } from './passes.ts';
import { MM } from './text.ts';
import type { Side, Thread } from './types.ts';

const TURN = 2 * Math.PI;

/** The machine; SI. What is absent is not a limit, except the gain, which is then taken as usual. */
export interface Machine {
  /** Fastest speed of the axis along the thread, m/s. */
  readonly rapid: number;
  /** m/s². */
  readonly acceleration: number;
  /** Gain of the position loop, 1/s. */
  readonly gain?: number;
  /** Highest spindle speed, rad/s. */
  readonly spindle?: number;
  /** Lines of the spindle's encoder and the highest frequency of its receiver, Hz. */
  readonly encoder?: { readonly lines: number; readonly frequency: number };
}

export interface Wish {
  readonly side: Side;
  /** Length of thread, metres. */
  readonly length: number;
  readonly passes?: number;
  /** Straight in, or along a flank. */
  readonly infeed?: 'straight' | 'flank';
  /** Passes at full depth without infeed. */
  readonly springs?: number;
  /** Cutting speed, m/s. */
  readonly cuttingSpeed?: number;
  /** Momentary error of the lead that is allowed, 0.01 for fits. */
  readonly leadError?: number;
  /** Free length before the thread, metres. */
  readonly room?: number;
}

export interface SpeedLimit {
  readonly id: 'axis' | 'encoder' | 'spindle' | 'cutting' | 'run-in';
  readonly name: string;
  /** rad/s. */
  readonly speed: number;
}

export interface Plan {
  readonly passes: readonly Pass[];
  readonly springs: number;
  /** All limits, the lowest first. */
  readonly limits: readonly SpeedLimit[];
  readonly speed: number;
  /** Speed of the axis, m/s. */
  readonly feed: number;
  readonly runIn: number;
  readonly runOut: number;
  /** Constant distance by which the axis trails, metres. */
  readonly trail: number;
  readonly starts: readonly { readonly number: number; readonly angle: number; readonly shift: number }[];
  /** For all passes of all starts, seconds. */
  readonly time: number;
  /** What was taken as usual because it was not given. Whole sentences. */
  readonly assumed: readonly string[];
}

/** Stands with every plan, before anything turns. */
export const PLAN_CAUTION =
  'Never turn faster than is marked on the chuck. Close the guard, and let the first pass run in the air with the tool clear of the work: the slide must stop before shoulder and chuck.';

/** 1 m/min for each millimetre it trails, near the middle of old machines. */
export const USUAL_GAIN = 1 / 60 / MM;
/** Share of the fastest axis speed: a habit, so that feed and control keep something in hand. */
export const AXIS_SHARE = 0.9;
export const USUAL_LEAD_ERROR = 0.01;
/** Distance the tool is drawn back from the work. */
const CLEAR = 1 * MM;
/** Above any workshop's spindle, rad/s. */
const FASTEST = (20_000 * TURN) / 60;

export function planThread(thread: Thread, machine: Machine, wish: Wish): Plan {
  const assumed: string[] = [];
  const gain = machine.gain ?? USUAL_GAIN;
  if (machine.gain === undefined)
    assumed.push(
      'The gain of the axis is not known and was taken as 16.7 1/s (1 m/min trails 1 mm); measure it, since the run-in depends on it.',
    );
  const e = wish.leadError ?? USUAL_LEAD_ERROR;
  const runInAt = (n: number) =>
    work(threadRunIn, { n, Ph: thread.lead, Kv: gain, a: machine.acceleration, e });
  const limits = [...limitsOfSpeed(thread, machine, wish, (n) => runInAt(n).L_in)].sort(
    (a, b) => a.speed - b.speed,
  );
  const speed = limits[0]!.speed;
  const infeed = (wish.infeed ?? 'flank') === 'flank' ? flankInfeed(thread) : 0;
  const passes = passesOf(thread, wish.side, wish.passes ?? usualPasses(thread), infeed);
  const springs = wish.springs ?? 1;
  const run = runInAt(speed);
  const length = run.L_in + wish.length + run.L_out;
  const move = (D: number): number =>
    work(moveTrapezoidal, { D, v: machine.rapid, a: machine.acceleration, t_dwell: 0, T_want: 1 }).T;
  const across = basicSizes(thread).depth[wish.side] + CLEAR;
  // In, cut, out, back; and half a turn on average until the spindle's mark comes round.
  const onePass = 2 * move(across) + length / run.V + run.ta + move(length) + Math.PI / speed;
  return {
    passes,
    springs,
    limits,
    speed,
    feed: run.V,
    runIn: run.L_in,
    runOut: run.L_out,
    trail: run.x_lag,
    starts: Array.from({ length: thread.starts }, (_, at) => {
      const { phi, dz } = work(threadStarts, { P: thread.pitch, z: thread.starts, j: at + 1 });
      return { number: at + 1, angle: phi, shift: dz };
    }),
    time: onePass * (passes.length + springs) * thread.starts,
    assumed,
  };
}

function* limitsOfSpeed(
  thread: Thread,
  machine: Machine,
  wish: Wish,
  runIn: (n: number) => number,
): Generator<SpeedLimit> {
  const { n_axis, n_line } = work(threadSpeed, {
    v: machine.rapid,
    Ph: thread.lead,
    k: AXIS_SHARE,
    N: machine.encoder?.lines ?? 1,
    f: machine.encoder?.frequency ?? 1,
    n: 1,
    dt: 0,
  });
  yield { id: 'axis', name: 'nine tenths of the axis’s fastest speed', speed: n_axis };
  if (machine.encoder) yield { id: 'encoder', name: 'signal of the spindle’s encoder', speed: n_line };
  if (machine.spindle !== undefined)
    yield { id: 'spindle', name: 'highest spindle speed', speed: machine.spindle };
  if (wish.cuttingSpeed !== undefined)
    yield { id: 'cutting', name: 'cutting speed', speed: (2 * wish.cuttingSpeed) / basicSizes(thread).major };
  if (wish.room !== undefined) {
    const { room } = wish;
    yield {
      id: 'run-in',
      name: 'room before the thread',
      speed: largest(FASTEST, (n) => n === 0 || runIn(n) <= room),
    };
  }
}

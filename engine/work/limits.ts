/** How fast the spindle may turn for a thread, link by link. */
import { andList, capital } from '../quantity/words.ts';
import { type Stopping, stopFrom, torqueAt } from '../simulate/instep/index.ts';
import { AXIS_SHARE } from '../threads/index.ts';
import type { WorkAxis, WorkMachine } from './machine.ts';
import { mm, rpm, say } from './say.ts';
import type { SpindleModel, SpindleRange } from './types.ts';

export interface LinkLimit {
  /** 'axis-speed', 'axis-acceleration', 'feedback', 'pulses', 'chuck', 'jaws' … */
  readonly id: string;
  readonly name: string;
  /** rad/s; null while it is not known. */
  readonly speed: number | null;
  /** How it comes about, or what is missing. */
  readonly says: string;
  readonly needs: readonly string[];
  /** Not to be turned faster whatever else allows it; unknown is no permission. */
  readonly isHard: boolean;
}

const TURN = 2 * Math.PI;

/** Where a limit of the spindle is found out. */
const WHERE: Readonly<Record<string, readonly string[]>> = {
  chuck: ['chuck.topSpeed'],
  jaws: ['chuck.grip', 'chuck.jaws', 'chuck.jawMass', 'chuck.jawRadius'],
  bearing: ['spindle.topSpeed'],
  pulley: ['belts.pulleySpeed'],
  motor: ['spindle-motor.topSpeed'],
  drive: ['spindle-drive.highestFrequency'],
  feedback: ['spindle-feedback.highestRate'],
};
const NAMES: Readonly<Record<string, string>> = {
  chuck: 'speed marked on the chuck',
  jaws: 'grip of the jaws at speed',
  bearing: 'limit of the spindle’s bearings',
  pulley: 'wheel on the spindle',
  motor: 'rotor of the spindle motor',
  drive: 'spindle drive',
  feedback: 'signal of the spindle feedback',
};

/** What is not known where a limit is not. */
const UNKNOWN: Readonly<Record<string, string>> = {
  chuck: 'The speed marked on the chuck or holder',
  jaws: 'The grip of the jaws at speed',
  bearing: 'The highest speed of the spindle’s bearings',
  pulley: 'The highest speed of the wheel on the spindle',
  motor: 'The highest speed of the spindle motor’s rotor',
  drive: 'The highest frequency of the spindle drive',
  feedback: 'The highest speed of the spindle’s encoder',
};

/** What a limit is called where only that is said that it is unknown. */
const SHORT: Readonly<Record<string, string>> = {
  chuck: 'the chuck’s limit',
  jaws: 'the limit of the jaws',
  bearing: 'the bearings’ limit',
  pulley: 'the limit of the wheel on the spindle',
  motor: 'the motor’s limit',
  drive: 'the drive’s limit',
  feedback: 'the encoder’s limit',
  pulses: 'how fast the axis can be pulsed',
  'axis-speed': 'the fastest speed of the axis',
  'axis-acceleration': 'how soon the axis has its speed',
};

/** 'no permission: the chuck’s limit is unknown'; null where every link is known. */
export function noPermission(limits: readonly LinkLimit[]): string | null {
  const unknown = limits.filter(({ speed }) => speed === null).map(({ id }) => id);
  // The jaws belong to the chuck: while nobody knows the chuck there is one thing to find out.
  const told = unknown.filter((id) => id !== 'jaws' || !unknown.includes('chuck'));
  if (told.length === 0) return null;
  const names = told.map((id) => SHORT[id] ?? id);
  return `no permission: ${andList(names)} ${names.length === 1 ? 'is' : 'are'} unknown`;
}

/** Limits of the spindle itself, whatever it cuts; those that are known stand also where the spindle is not known whole. */
export function spindleLimits({
  spindle,
  spindleLimits: of,
  spindleChain,
}: Pick<WorkMachine, 'spindle' | 'spindleLimits' | 'spindleChain'>): readonly LinkLimit[] {
  const limits = of.map(({ by, speed }): LinkLimit => {
    const name = NAMES[by] ?? by;
    return {
      id: by,
      name,
      speed,
      says:
        speed === null
          ? `${UNKNOWN[by] ?? `The limit by the ${name}`} is not known, and what is not known is no permission.`
          : `${capital(name)}: ${rpm(speed)}.`,
      needs: speed === null ? (WHERE[by] ?? []).map((each) => `${spindleChain ?? 'S'}.${each}`) : [],
      isHard: true,
    };
  });
  if (!spindle) return limits;
  const highest = Math.max(...spindle.ranges.map((each) => each.highest));
  const fastest = spindle.ranges.find((each) => each.highest === highest);
  // The drive's own limit and its fastest range are mostly the same thing.
  if (limits.some(({ speed }) => speed !== null && Math.abs(speed / highest - 1) < 1e-3)) return limits;
  return [
    ...limits,
    {
      id: 'range',
      name: 'fastest range of the spindle',
      speed: highest,
      says: `The ${fastest?.name ?? 'only range'} reaches ${rpm(highest)}.`,
      needs: [],
      isHard: true,
    },
  ];
}

/** Limits that a lead puts on the spindle: the axis that has to keep up, and the signals between. */
export function leadLimits(
  { spindle, spindleLimits: of }: WorkMachine,
  axis: WorkAxis,
  lead: number,
): readonly LinkLimit[] {
  const limits: LinkLimit[] = [];
  const rapid = axis.rapid.value;
  limits.push({
    id: 'axis-speed',
    name: `speed of the ${axis.id} axis`,
    speed: rapid === null ? null : (TURN * AXIS_SHARE * rapid) / lead,
    says:
      rapid === null
        ? `The fastest speed of the ${axis.id} axis is not known.`
        : `${axis.id} runs at ${say(rapid, 'm/min')} at most; nine tenths of it at ${mm(lead)} a turn.`,
    needs: axis.rapid.needs,
    isHard: false,
  });
  const { pulseSpeed } = axis;
  if (pulseSpeed.value !== null || pulseSpeed.needs.length > 0)
    limits.push({
      id: 'pulses',
      name: `pulses for the ${axis.id} axis`,
      speed: pulseSpeed.value === null ? null : (TURN * AXIS_SHARE * pulseSpeed.value) / lead,
      says:
        pulseSpeed.value === null
          ? 'The highest pulse rate of control and drive is not known.'
          : `Control and drive can pulse ${axis.id} to ${say(pulseSpeed.value, 'm/min')}; nine tenths of it.`,
      needs: pulseSpeed.needs,
      isHard: false,
    });
  const feedback = spindle?.feedback;
  if (feedback && feedback.highestFrequency !== null && !of.some(({ by }) => by === 'feedback')) {
    const ratio = feedback.turns.encoder / feedback.turns.spindle;
    limits.push({
      id: 'feedback',
      name: 'signal of the spindle feedback',
      speed: (TURN * feedback.highestFrequency) / (feedback.lines * ratio),
      says: `${feedback.lines} lines a turn at no more than ${say(feedback.highestFrequency, 'kHz')}.`,
      needs: [],
      isHard: false,
    });
  }
  return limits;
}

/** Lowest first; what is not known stands at the end. */
export const sorted = (limits: readonly LinkLimit[]): readonly LinkLimit[] =>
  [...limits].sort((a, b) => (a.speed ?? Number.POSITIVE_INFINITY) - (b.speed ?? Number.POSITIVE_INFINITY));

/**
 * The speed a piece of work is judged at, rad/s: as typed, else `wish` (whatever all allow where there is none), not slower than
 * the spindle gives torque and never above any limit. Null where no limit is known.
 */
export function chosenSpeed(
  spindle: SpindleModel | null,
  limits: readonly LinkLimit[],
  typed: number | 'zero' | undefined,
  wish: number | null = null,
): number | null {
  if (typeof typed === 'number') return typed;
  const lowest = sorted(limits)[0]?.speed ?? null;
  if (lowest === null || wish === null) return lowest;
  const slowest = spindle ? slowestOf(spindle) : 0;
  return Math.min(lowest, Math.max(wish, slowest));
}

/** rad/s below which no range gives useful torque. */
export const slowestOf = ({ ranges: all }: SpindleModel): number =>
  Math.min(...all.map(({ lowest }) => lowest));

/** rad/s that every known limit of the spindle allows. */
export const highestAllowed = (machine: WorkMachine): number | null =>
  sorted(spindleLimits(machine))[0]?.speed ?? null;

/** Why no speed of the spindle itself is permitted; null where all its limits are known, or where it has none. */
export const spindleRefused = (machine: WorkMachine): string | null => noPermission(spindleLimits(machine));

/** Ranges it may stand in. */
const ranges = ({ ranges: all, kept }: SpindleModel): readonly SpindleRange[] =>
  kept === undefined ? all : all.filter(({ id }) => id === kept);

/** The range that gives the most torque at a speed; undefined where none reaches it. */
export function rangeAt(spindle: SpindleModel, speed: number): SpindleRange | undefined {
  return ranges(spindle)
    .filter(({ lowest, highest }) => speed >= lowest * (1 - 1e-9) && speed <= highest * (1 + 1e-9))
    .reduce<SpindleRange | undefined>(
      (best, each) =>
        !best || torqueAt(each.continuous, speed) > torqueAt(best.continuous, speed) ? each : best,
      undefined,
    );
}

/** The range that stops soonest from a speed. */
export function stoppingAt(
  spindle: SpindleModel,
  speed: number,
  delay: number,
): { readonly range: SpindleRange; readonly stop: Stopping } | undefined {
  let best: { range: SpindleRange; stop: Stopping } | undefined;
  for (const range of ranges(spindle)) {
    if (speed < range.lowest * (1 - 1e-9) || speed > range.highest * (1 + 1e-9)) continue;
    const stop = stopFrom(range.inertia, range.braking, range.drag, speed, delay);
    if (!best || stop.angle < best.stop.angle) best = { range, stop };
  }
  return best;
}

/** N·m that a range has over for the cut at a speed, its own drag taken off: for as long as wanted, or for some seconds. */
export const torqueOver = (
  range: SpindleRange,
  speed: number,
  held: 'continuous' | 'peak' = 'continuous',
): number => Math.max(0, torqueAt(range[held], speed) - range.drag);

/** Speed up to which the continuous torque of a range stays level: above it the power does. */
export function baseSpeed(range: SpindleRange): number {
  const most = Math.max(...range.continuous.map(({ torque }) => torque));
  const last = range.continuous.findLast(({ torque }) => torque >= 0.98 * most);
  return last?.speed ?? 0;
}

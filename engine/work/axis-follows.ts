/** How an axis follows, found by moving it in the simulation as threads would. */
import { threadRunIn } from '../handbook/thread-run-in.ts';
import { Bus } from '../simulate/bus.ts';
import type { AxisModel } from '../simulate/index.ts';
import { type InStepModel, simulateThread } from '../simulate/instep/index.ts';
import { work } from '../threads/dimensions.ts';
import { USUAL_LEAD_ERROR } from '../threads/plan.ts';

export interface Follows {
  /** 1/s: gain of the plain lag that would need as much run-in, the worst of the speeds tried. */
  readonly gain: number;
  /** s by which it trails the spindle's angle once settled, looks of the control included, the worst of them. */
  readonly lag: number;
  /** The speeds, as places among those tried, at which gain and lag were worst. */
  readonly worst: readonly number[];
}

/** m/s at which it is tried, and the share of its rapid that none of them passes. */
const PACES = [0.005, 0.01, 0.02] as const;
const SHARE = 0.3;
const LEAD = 2e-3;
/** s a trial may take to settle. */
const LONG = 0.8;
/** A spindle that nothing slows. */
const EVEN = {
  inertia: 100,
  driving: [{ speed: 0, torque: 1e6 }],
  braking: [{ speed: 0, torque: 1e6 }],
  drag: 0,
  bandwidth: 10,
  delay: 0,
};
const RANGE = [1, 1e4] as const;
const HALVINGS = 50;
/** The draws of three axes and some more. */
const MOST_KEPT = 100;

const FOUND = new Map<string, Follows | null>();

/**
 * Null where the axis trips or never settles. `look`: s between two looks of the control. `at`: places of the speeds it is
 * tried at, all of them where nothing is said. Worked out once for each model.
 */
export function axisFollows(
  model: AxisModel,
  acceleration: number,
  rapid: number,
  look: number,
  at: readonly number[] = PACES.map((_, each) => each),
): Follows | null {
  const key = JSON.stringify([model, acceleration, rapid, look, at]);
  const before = FOUND.get(key);
  if (before !== undefined) return before;
  const found = worst(onEvenBus(model), acceleration, rapid, look, at);
  if (FOUND.size >= MOST_KEPT) FOUND.delete(FOUND.keys().next().value!);
  FOUND.set(key, found);
  return found;
}

/**
 * The same axis on a bus that stays where it is at rest. At so slow a pace the bus hardly moves, and what the axis takes
 * need not be booked sample by sample: half the time and more.
 */
function onEvenBus(model: AxisModel): AxisModel {
  const { voltage } = new Bus(model.supply, () => {});
  return { ...model, supply: { ...model.supply, kind: 'constant', voltage } };
}

function worst(
  model: AxisModel,
  acceleration: number,
  rapid: number,
  look: number,
  at: readonly number[],
): Follows | null {
  let [gain, lag] = [RANGE[1] as number, 0];
  let [ofGain, ofLag] = [at[0]!, at[0]!];
  for (const each of at) {
    const one = trial(model, acceleration, rapid, Math.min(PACES[each]!, SHARE * rapid), look);
    if (!one) return null;
    if (one.gain < gain) [gain, ofGain] = [one.gain, each];
    if (one.lag > lag) [lag, ofLag] = [one.lag, each];
  }
  return { gain, lag, worst: [...new Set([ofGain, ofLag])] };
}

function trial(
  axis: AxisModel,
  acceleration: number,
  rapid: number,
  V: number,
  look: number,
): Pick<Follows, 'gain' | 'lag'> | null {
  const speed = (V / LEAD) * 2 * Math.PI;
  const model: InStepModel = {
    spindle: EVEN,
    feedback: { counts: 0, turns: 1, firstMark: 0 },
    control: { period: look, delay: 1, start: 'ramp' },
    axis: { kind: 'whole', model: axis, acceleration, topSpeed: rapid },
  };
  const run = simulateThread(
    model,
    {
      lead: LEAD,
      speed,
      runIn: 0,
      length: V * LONG + V ** 2 / acceleration,
      startAngle: 0,
      cutTorque: 0,
      entry: LEAD,
      leadError: USUAL_LEAD_ERROR,
    },
    { points: 10 },
  );
  if (run.settledAt === null || run.faults.length > 0) return null;
  const runIn = (Kv: number): number =>
    work(threadRunIn, { n: speed, Ph: LEAD, Kv, a: acceleration, e: USUAL_LEAD_ERROR }).L_in;
  let [low, high]: [number, number] = [...RANGE];
  for (let turn = 0; turn < HALVINGS; turn++) {
    const middle = Math.sqrt(low * high);
    if (runIn(middle) > run.settledAt) low = middle;
    else high = middle;
  }
  return { gain: low, lag: Math.max(0, (run.trail - V ** 2 / (2 * acceleration)) / V) };
}

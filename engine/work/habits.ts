/** The policies this room reckons with, as a refit has them: factors that are only habit. */

import { resolve, type Scope } from '../assess/resolve.ts';
import { policyFault } from '../assess/set-policy.ts';
import { POLICY } from '../checks/policies.ts';
import { fact, type Ref } from '../checks/refs.ts';
import { parseQuantity } from '../quantity/index.ts';
import type { Refit } from '../refit/types.ts';
import { say } from './say.ts';

/** What each is called here, and the id of its policy. */
export const HABITS = {
  /** s from an order to turn back until the spindle's drive acts on it. */
  delay: 'spindle-delay',
  /** 1/s at which the spindle's drive mends an error of speed. */
  bandwidth: 'spindle-bandwidth',
  /** s between two looks of the control at the spindle. */
  look: 'control-look',
  /** Share by which a spindle is off its speed where the axis does not follow it. */
  slip: 'spindle-slip',
  /** Share of the pitch that a rigid holder and the flanks bear. */
  rigid: 'tap-rigid',
  /** Torque of a worn tap over that of a sharp one. */
  worn: 'tap-worn',
  /** m of room for chips at the bottom of a hole. */
  chips: 'tap-chips',
  /** m along a thread that one count of the spindle may stand for. */
  count: 'thread-count',
  /** Share by which the force of a cut may be off either way. */
  cutting: 'cutting-doubt',
  /** Share by which the gains of an axis's loop may be off either way. */
  loop: 'loop-doubt',
  /** Safeties of jaws: of the grip, and of the cut against slipping. */
  grip: 'grip',
  gripCut: 'grip-cut',
  /** Margin below which something is tight. */
  margin: 'margin',
} as const;
export type HabitName = keyof typeof HABITS;

/** What a fact of the spindle tells better than habit does. */
const FACTS: Readonly<Partial<Record<HabitName, { readonly ref: Ref; readonly place: string }>>> = {
  delay: { ref: fact('spindle-drive', 'orderDelay'), place: 'spindle drive' },
  bandwidth: { ref: fact('spindle-drive', 'speedLoop'), place: 'spindle drive' },
};

/** Between these a run can be simulated in good time; outside, the nearest is taken and said. */
const SIMULATED: Readonly<Partial<Record<HabitName, readonly [least: number, most: number]>>> = {
  delay: [0, 2],
  bandwidth: [0.5, 500],
  look: [1e-4, 0.05],
};

export interface Habit {
  readonly policy: string;
  /** SI. */
  readonly value: number;
  /** '20 ms (policy “time from an order…”, as usual)', '12 ms (spindle drive, measured)': the value, and whose it is. */
  readonly says: string;
}
export type Habits = Readonly<Record<HabitName, Habit>>;

/** From the spindle's own fact, where somebody knows it. */
function known(scope: Scope | null, name: HabitName): Habit | undefined {
  const own = FACTS[name];
  const value = own && scope ? resolve(scope, own.ref) : undefined;
  if (value?.state !== 'known') return undefined;
  const policy = HABITS[name];
  const { unit } = POLICY.get(policy)!;
  const taken = within(name, value.value);
  const whose =
    taken === value.value
      ? `${own!.place}, ${value.basis ?? 'chosen'}`
      : `the ${own!.place} is said to have ${say(value.value, unit)}, which is beyond what can be reckoned with`;
  return { policy, value: taken, says: `${say(taken, unit)} (${whose})` };
}

function within(name: HabitName, value: number): number {
  const [least, most] = SIMULATED[name] ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  return Math.min(Math.max(value, least), most);
}

function habitOf(refit: Refit, name: HabitName): Habit {
  const id = HABITS[name];
  const policy = POLICY.get(id)!;
  const usual = parseQuantity(policy.usual, policy.unit);
  if (!usual.ok) throw new Error(`policy ${id}: ${usual.problem.message}`);
  const changed = Object.hasOwn(refit.policies, id) ? refit.policies[id]! : undefined;
  const typed = changed === undefined ? undefined : parseQuantity(changed, policy.unit);
  // What cannot be read or cannot be is told as a problem of the refit; here the usual value stands in, and says so.
  const isLawful = typed?.ok === true && policyFault(policy, typed.value.value) === undefined;
  const wanted = isLawful ? typed.value.value : usual.value.value;
  const value = within(name, wanted);
  const whose =
    value !== wanted
      ? `you say ${say(wanted, policy.unit)}, which is beyond what can be reckoned with`
      : isLawful
        ? `yours; usual is ${policy.usual}`
        : changed === undefined
          ? 'as usual'
          : 'as usual, for what you say cannot be';
  return { policy: id, value, says: `${say(value, policy.unit)} (policy “${policy.name}”, ${whose})` };
}

/** All of them, as the refit has them; `spindle`: scope of the spindle, whose facts come before habits. */
export const habitsOf = (refit: Refit, spindle: Scope | null = null): Habits =>
  withFacts(
    Object.fromEntries(
      (Object.keys(HABITS) as HabitName[]).map((name) => [name, habitOf(refit, name)]),
    ) as Record<HabitName, Habit>,
    spindle,
  );

/** The same with the facts of another scope of the spindle. */
export const withFacts = (habits: Habits, spindle: Scope | null): Habits => ({
  ...habits,
  ...Object.fromEntries(
    (Object.keys(FACTS) as HabitName[]).flatMap((name) => {
      const habit = known(spindle, name);
      return habit ? [[name, habit]] : [];
    }),
  ),
});

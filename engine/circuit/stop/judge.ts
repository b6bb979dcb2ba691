/**
 * What a fault does: the machine runs, the fault comes, somebody asks for a stop, takes it back, and tries to start again.
 * The healthy circuit goes through the same, so that what should have let go and did not shows.
 */
import { POWER_OFF, POWER_ON, takeOver } from './acts.ts';
import type { Baseline } from './baseline.ts';
import type { Fault } from './network.ts';
import { atRest, copyState } from './state.ts';
import { type Happening, isDangerous, Trial } from './trial.ts';

/**
 * 'dangerous': see the kinds of happening. 'unnoticed': it still stops, and starts again as if nothing were wrong.
 * 'noticed': it still stops, and after at least one kind of stop does not start again. 'stops': the fault itself stops the
 * machine or keeps it from starting, and everything that should let go does.
 */
export type Verdict = 'dangerous' | 'unnoticed' | 'noticed' | 'stops';

export interface Judgement {
  readonly verdict: Verdict;
  readonly happenings: readonly Happening[];
  /** Stops the machine by itself the moment it comes. */
  readonly atOnce: boolean;
  /** Acts after which it does not start again, and so is seen: 'press S1'. */
  readonly noticedBy: readonly string[];
  /** Seen only as long as the power stays on: switching off and on hides it. */
  readonly hiddenByPower: boolean;
  /** What let go all the same when a stop was asked for: contactors, safe torque off, enables. */
  readonly by: readonly string[];
  /** What stayed on that should have let go. */
  readonly kept: readonly string[];
  readonly melted: readonly string[];
  readonly restless: readonly string[];
}

/** Goes through everything with these faults in. */
export function judge(base: Baseline, faults: readonly Fault[]): Judgement {
  const trial = new Trial(base, faults);
  const hit = takeOver(trial.network, base.running);
  trial.comes(hit);
  const atOnce = base.runs.length > 0 && !trial.runs(hit);
  const noticedBy: string[] = [];
  let hidden = false;
  for (const demand of base.demands) {
    const state = copyState(hit);
    trial.demand(state, demand, '');
    if (demand.role === 'power') continue;
    const cycled = copyState(state);
    trial.do(cycled, POWER_OFF);
    trial.do(cycled, POWER_ON);
    trial.note('starts', 'switching off and on', trial.driven(cycled, demand.stops));
    if (trial.start(state)) {
      trial.demand(state, demand, ', the second time');
      continue;
    }
    noticedBy.push(demand.act.says);
    if (!trial.start(cycled)) continue;
    hidden = true;
    trial.demand(cycled, demand, ', after switching off and on');
  }
  const seen =
    !startsFromRest(trial) || noticedBy.length > 0 || trial.happenings.some(({ kind }) => kind === 'ignored');
  const kept = [...trial.kept];
  return {
    verdict: trial.happenings.some(isDangerous)
      ? 'dangerous'
      : !seen
        ? 'unnoticed'
        : kept.length > 0
          ? 'noticed'
          : 'stops',
    happenings: trial.happenings,
    atOnce,
    noticedBy,
    hiddenByPower: hidden,
    by: [...trial.by],
    kept,
    melted: [...trial.melted],
    restless: [...trial.restless],
  };
}

/** The fault comes while the machine stands: nothing may start by itself. True where it can then be started. */
function startsFromRest(trial: Trial): boolean {
  const { model } = trial.base;
  const state = takeOver(trial.network, atRest(model));
  trial.do(state, POWER_ON);
  trial.note(
    'starts',
    'switch the power on',
    trial.driven(
      state,
      model.motions.map((_, at) => at),
    ),
  );
  return trial.start(state);
}

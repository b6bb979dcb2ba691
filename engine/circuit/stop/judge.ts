/**
 * What a fault does: the machine runs, the fault comes, somebody asks for a stop, takes it back, and tries to start again.
 * The healthy circuit goes through the same, so that what should have let go and did not shows.
 */
import {
  act,
  type Demand,
  demandsOf,
  POWER_OFF,
  POWER_ON,
  standingOf,
  startActs,
  started,
  takeOver,
} from './acts.ts';
import type { Model } from './model.ts';
import { type Fault, type Network, networkOf } from './network.ts';
import { Simulation } from './simulate.ts';
import { atRest, copyState as copyOf, type State } from './state.ts';

/**
 * 'dangerous': it does not stop, starts by itself, drops, or opens a guard too early. 'unnoticed': it still stops, and
 * starts again as if nothing were wrong. 'noticed': it still stops, and after at least one kind of stop does not start
 * again. 'stops': the fault itself
 * stops the machine or keeps it from starting, and everything that should let go does.
 */
export type Verdict = 'dangerous' | 'unnoticed' | 'noticed' | 'stops';

export interface Happening {
  readonly kind: 'runs-on' | 'starts' | 'drops' | 'unlocks' | 'rougher';
  /** After which act, in words: 'press S1'. */
  readonly after: string;
  readonly motions: readonly string[];
}

export interface Judgement {
  readonly verdict: Verdict;
  /** What is dangerous, and after which act. */
  readonly happenings: readonly Happening[];
  /** Stops the machine by itself the moment it comes. */
  readonly atOnce: boolean;
  /** Acts after which it does not start again, and so is seen: 'press S1'. */
  readonly noticedBy: readonly string[];
  /** Seen only as long as the power stays on: switching off and on hides it. */
  readonly hiddenByPower: boolean;
  /** What let go all the same when a stop was asked for: contactors and safe torque off. */
  readonly by: readonly string[];
  /** What stayed on that should have let go. */
  readonly kept: readonly string[];
  readonly melted: readonly string[];
  readonly restless: readonly string[];
}

/** The healthy circuit, gone through once. */
export interface Baseline {
  readonly model: Model;
  readonly simulation: Simulation;
  readonly running: State;
  /** Motions that run after a start. */
  readonly runs: readonly number[];
  readonly demands: readonly (Demand & {
    /** Motions that stop. */
    readonly stops: readonly number[];
    readonly after: State;
    readonly undone: State;
    /** For each motion that stops, whether the drive brakes before it lets go. */
    readonly controlled: readonly boolean[];
  })[];
  /** Never more than a moment without brake and torque in the healthy circuit, by motion. */
  readonly restless: readonly string[];
}

export function baselineOf(model: Model): Baseline {
  const simulation = new Simulation(networkOf(model));
  const running = started(simulation);
  const runs = model.motions.flatMap((_, at) => (standingOf(model, running, at).driven ? [at] : []));
  const restless = new Set<string>();
  const demands = demandsOf(model).map((demand) => {
    const state = copyOf(running);
    const order = new StopOrder(model, state);
    const settled = act(simulation, state, demand.act, order.watch);
    for (const at of settled.restless) restless.add(model.movers[at]!.id);
    const after = copyOf(state);
    act(simulation, state, demand.back);
    return {
      ...demand,
      after,
      undone: state,
      stops: runs.filter((at) => !standingOf(model, after, at).driven),
      controlled: model.motions.map((_, at) => order.controlled(at)),
    };
  });
  return { model, simulation, running, runs, demands, restless: [...restless] };
}

/** Movers that take the power away: contactors, safe torque off, the drive's enable. */
export const powerMovers = (model: Model): readonly number[] => [
  ...new Set([
    ...model.contacts.filter(({ main }) => main).map(({ mover }) => mover),
    ...model.drives.flatMap(({ sto, enable }) => (enable < 0 ? sto : [...sto, enable])),
  ]),
];

/** In which order enable, power and brake of each motion went. */
export class StopOrder {
  readonly #model: Model;
  /** Seconds after the act; Infinity for not. */
  readonly enableOff: number[];
  readonly torqueOff: number[];
  readonly brakeOn: number[];
  readonly #began: number;
  constructor(model: Model, state: State) {
    this.#model = model;
    this.#began = state.time;
    const never = () => model.motions.map(() => Number.POSITIVE_INFINITY);
    this.enableOff = never();
    this.torqueOff = never();
    this.brakeOn = never();
  }

  watch = (state: State): void => {
    const after = state.time - this.#began;
    for (let at = 0; at < this.#model.motions.length; at++) {
      const { torque, driven, open } = standingOf(this.#model, state, at);
      if (!driven && after < this.enableOff[at]!) this.enableOff[at] = after;
      if (!torque && after < this.torqueOff[at]!) this.torqueOff[at] = after;
      if (!open && this.#model.motions[at]!.brake >= 0 && after < this.brakeOn[at]!) this.brakeOn[at] = after;
    }
  };

  /** The drive is told to stop and has time to before it can no more. */
  controlled(at: number): boolean {
    const { brakes } = this.#model.drives[this.#model.motions[at]!.drive]!;
    return brakes && this.torqueOff[at]! - this.enableOff[at]! > 0.1;
  }
}

const DROP = 0.005;

class Trial {
  readonly happenings: Happening[] = [];
  readonly kept = new Set<string>();
  readonly by = new Set<string>();
  readonly melted = new Set<string>();
  readonly restless = new Set<string>();
  readonly base: Baseline;
  readonly network: Network;
  readonly simulation: Simulation;

  constructor(base: Baseline, faults: readonly Fault[]) {
    this.base = base;
    this.network = networkOf(base.model, faults);
    this.simulation = new Simulation(this.network);
  }

  do(state: State, each: Parameters<typeof act>[2]): StopOrder {
    const { model } = this.base;
    const order = new StopOrder(model, state);
    const settled = act(this.simulation, state, each, order.watch);
    for (const at of settled.melted) this.melted.add(model.contacts[at]!.element);
    for (const at of settled.restless) this.restless.add(model.movers[at]!.id);
    return order;
  }

  driven(state: State, among: readonly number[]): readonly string[] {
    const { model } = this.base;
    return among.filter((at) => standingOf(model, state, at).driven).map((at) => model.motions[at]!.id);
  }

  runs(state: State): boolean {
    return this.base.runs.length > 0 && this.driven(state, this.base.runs).length === this.base.runs.length;
  }

  note(kind: Happening['kind'], after: string, motions: readonly string[]): void {
    if (motions.length > 0 && !this.happenings.some((each) => each.kind === kind && each.after === after))
      this.happenings.push({ kind, after, motions });
  }

  start(state: State): boolean {
    for (const each of startActs(this.base.model)) this.do(state, each);
    return this.runs(state);
  }

  /** Movers that the healthy circuit has let go and this one has not. */
  compare(state: State, healthy: State): void {
    const { model } = this.base;
    for (const [at, { id, kind, does }] of model.movers.entries())
      if (kind !== 'hand' && !does && state.at[at] === 1 && healthy.at[at] === 0) this.kept.add(id);
    for (const [at, { id, main, mover }] of model.contacts.entries())
      if (this.network.forced[at] === 1 && (main || model.movers[mover]?.kind === 'hand')) this.kept.add(id);
  }

  /** A stop asked for while it runs, and taken back. */
  demand(state: State, demand: Baseline['demands'][number], again: string): void {
    const { model } = this.base;
    const before = copyOf(state);
    const order = this.do(state, demand.act);
    if (demand.role !== 'power')
      for (const mover of powerMovers(model))
        if (
          before.at[mover] === 1 &&
          state.at[mover] === 0 &&
          this.network.forced.every(
            (force, at) => force <= 0 || model.contacts[at]!.mover !== mover || !model.contacts[at]!.main,
          )
        )
          this.by.add(model.movers[mover]!.id);
    const after = `${demand.act.says}${again}`;
    this.note('runs-on', after, this.driven(state, demand.stops));
    this.falls(state, order, after);
    this.unlocks(state, after);
    const rougher = demand.stops.filter((at) => demand.controlled[at] && !order.controlled(at));
    this.note(
      'rougher',
      after,
      rougher.map((at) => model.motions[at]!.id),
    );
    this.compare(state, demand.after);
    this.do(state, demand.back);
    this.note('starts', demand.back.says, this.driven(state, demand.stops));
    this.compare(state, demand.undone);
  }

  falls(state: State, order: StopOrder, after: string): void {
    const { model } = this.base;
    const names = model.motions.flatMap(({ id, vertical }, at) => {
      if (!vertical) return [];
      const gap = order.brakeOn[at]! - order.torqueOff[at]!;
      return standingOf(model, state, at).falls || (Number.isFinite(order.torqueOff[at]!) && gap > DROP)
        ? [id]
        : [];
    });
    this.note('drops', after, names);
  }

  /** A lock that lets go while what it guards is still driven. */
  unlocks(state: State, after: string): void {
    const { model, runs } = this.base;
    for (const { lock } of model.locks)
      if (state.at[lock] === 1) this.note('unlocks', after, this.driven(state, runs));
  }
}

/** Goes through everything with these faults in. */
export function judge(base: Baseline, faults: readonly Fault[]): Judgement {
  const { model } = base;
  const trial = new Trial(base, faults);
  const hit = takeOver(trial.network, base.running);
  const order = new StopOrder(model, hit);
  const settled = trial.simulation.settle(hit, order.watch);
  for (const at of settled.melted) trial.melted.add(model.contacts[at]!.element);
  for (const at of settled.restless) trial.restless.add(model.movers[at]!.id);
  trial.falls(hit, order, 'the fault comes');
  trial.unlocks(hit, 'the fault comes');
  const atOnce = base.runs.length > 0 && !trial.runs(hit);
  const noticedBy: string[] = [];
  let hidden = false;
  for (const demand of base.demands) {
    const state = copyOf(hit);
    trial.demand(state, demand, '');
    if (demand.role === 'power') continue;
    const cycled = copyOf(state);
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
  const seen = !standstill(trial) || noticedBy.length > 0;
  const dangerous = trial.happenings.some(({ kind }) => kind !== 'rougher');
  return {
    verdict: dangerous ? 'dangerous' : !seen ? 'unnoticed' : trial.kept.size > 0 ? 'noticed' : 'stops',
    happenings: trial.happenings,
    atOnce,
    noticedBy,
    hiddenByPower: hidden,
    by: [...trial.by],
    kept: [...trial.kept],
    melted: [...trial.melted],
    restless: [...trial.restless],
  };
}

/** The fault comes while the machine stands: nothing may start by itself. True where it can then be started. */
function standstill(trial: Trial): boolean {
  const { base } = trial;
  const everything = base.model.motions.map((_, at) => at);
  const state = takeOver(trial.network, atRest(base.model));
  trial.do(state, POWER_ON);
  trial.note('starts', 'switch the power on', trial.driven(state, everything));
  return trial.start(state);
}

/** One faulty circuit going through what the healthy one went through. */
import { type Act, act, standingOf, startActs } from './acts.ts';
import { type Baseline, type DemandRun, powerMovers } from './baseline.ts';
import { type Fault, type Network, networkOf } from './network.ts';
import { StopOrder } from './order.ts';
import { type Settled, Simulation } from './simulate.ts';
import { copyState, type State } from './state.ts';

/**
 * 'runs-on' does not stop; 'only-told' is told to stop and keeps its power; 'starts' starts by itself; 'drops' is held by
 * nothing; 'unlocks' a door too early. The last three are told, and are not dangerous by themselves: it stops rougher than
 * it should, its power comes back without a start while it is not driven, a stop button for every day is not heeded.
 */
export type HappeningKind =
  | 'runs-on'
  | 'only-told'
  | 'starts'
  | 'drops'
  | 'unlocks'
  | 'rougher'
  | 'power-returns'
  | 'ignored';

export interface Happening {
  readonly kind: HappeningKind;
  /** After which act, in words: 'press S1'. */
  readonly after: string;
  readonly motions: readonly string[];
}

const MILD = new Set<HappeningKind>(['rougher', 'power-returns', 'ignored']);
export const isDangerous = ({ kind }: Happening): boolean => !MILD.has(kind);

export class Trial {
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

  do(state: State, each: Act): StopOrder {
    const order = new StopOrder(this.base.model, state);
    this.remember(act(this.simulation, state, each, order.watch));
    return order;
  }

  /** Lets what follows from the fault itself happen. */
  comes(state: State): StopOrder {
    const order = new StopOrder(this.base.model, state);
    this.remember(this.simulation.settle(state, order.watch));
    this.falls(state, order, 'the fault comes');
    this.unlocks(order, 'the fault comes');
    return order;
  }

  remember({ melted, restless }: Settled): void {
    const { contacts, movers } = this.base.model;
    for (const at of melted) this.melted.add(contacts[at]!.element);
    for (const at of restless) this.restless.add(movers[at]!.id);
  }

  driven(state: State, among: readonly number[]): readonly number[] {
    return among.filter((at) => standingOf(this.base.model, state, at).driven);
  }

  runs(state: State): boolean {
    const { runs } = this.base;
    return runs.length > 0 && this.driven(state, runs).length === runs.length;
  }

  note(kind: HappeningKind, after: string, motions: readonly number[]): void {
    if (motions.length === 0) return;
    if (this.happenings.some((each) => each.kind === kind && each.after === after)) return;
    this.happenings.push({ kind, after, motions: motions.map((at) => this.base.model.motions[at]!.id) });
  }

  start(state: State): boolean {
    for (const each of startActs(this.base.model)) this.do(state, each);
    return this.runs(state);
  }

  /** A stop asked for while it runs, and taken back. */
  demand(state: State, demand: DemandRun, again: string): void {
    const { model } = this.base;
    const before = copyState(state);
    const order = this.do(state, demand.act);
    const after = `${demand.act.says}${again}`;
    if (demand.role !== 'power') this.credit(before, state);
    // A stop button for every day that fails is seen when it is pressed; the emergency stop is still there.
    const spare = demand.role === 'stop' && this.base.demands.some(({ role }) => role === 'emergency');
    this.note(spare ? 'ignored' : 'runs-on', after, this.driven(state, demand.stops));
    this.falls(state, order, after);
    this.unlocks(order, after);
    const standing = (at: number) => standingOf(model, state, at);
    if (demand.role === 'emergency')
      this.note(
        'only-told',
        after,
        demand.dead.filter((at) => standing(at).torque && !standing(at).driven),
      );
    this.note(
      'rougher',
      after,
      demand.stops.filter((at) => demand.controlled[at] && !order.controlled(at)),
    );
    this.compare(state, demand.after);
    this.do(state, demand.back);
    if (!spare) this.note('starts', demand.back.says, this.driven(state, demand.stops));
    this.note(
      'power-returns',
      demand.back.says,
      demand.stops.filter(
        (at) => standing(at).torque && !standing(at).driven && !standingOf(model, demand.undone, at).torque,
      ),
    );
    this.compare(state, demand.undone);
  }

  /** What let go and really opens. */
  credit(before: State, after: State): void {
    const { contacts, movers } = this.base.model;
    for (const mover of powerMovers(this.base.model)) {
      if (before.at[mover] !== 1 || after.at[mover] !== 0) continue;
      const mains = contacts.flatMap((each, at) => (each.mover === mover && each.main ? [at] : []));
      if (mains.every((at) => this.network.forced[at]! <= 0)) this.by.add(movers[mover]!.id);
    }
  }

  /** Movers that the healthy circuit has let go and this one has not. */
  compare(state: State, healthy: State): void {
    const { movers, contacts } = this.base.model;
    for (const [at, { id, kind }] of movers.entries())
      if (kind !== 'hand' && state.at[at] === 1 && healthy.at[at] === 0) this.kept.add(id);
    for (const [at, { id, main, mover }] of contacts.entries())
      if (this.network.forced[at] === 1 && (main || movers[mover]?.kind === 'hand')) this.kept.add(id);
  }

  falls(state: State, order: StopOrder, after: string): void {
    const { model } = this.base;
    const falling = model.motions.flatMap(({ vertical }, at) => {
      // What the healthy circuit lets drop is no fault of a fault; it has a finding of its own.
      if (!vertical || this.base.drops.has(at)) return [];
      return order.drops(at) || standingOf(model, state, at).falls ? [at] : [];
    });
    this.note('drops', after, falling);
  }

  /** A lock that lets go before what it guards stands still. */
  unlocks(order: StopOrder, after: string): void {
    const { model, runs, runOn } = this.base;
    for (const at of model.locks.keys()) {
      const when = order.unlocked[at]!;
      if (when === Number.POSITIVE_INFINITY) continue;
      const early = runs.filter(
        (motion) =>
          order.moved[motion] &&
          (order.enableOff[motion] === Number.POSITIVE_INFINITY || when < runOn(order, motion)),
      );
      this.note('unlocks', after, early);
    }
  }
}

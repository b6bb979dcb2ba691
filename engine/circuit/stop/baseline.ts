/** The healthy circuit, gone through once: what runs after a start, and what each demand stops. */
import { act, canAct, type Demand, demandsOf, standingOf, started } from './acts.ts';
import type { Model } from './model.ts';
import { networkOf } from './network.ts';
import { StopOrder } from './order.ts';
import { Simulation } from './simulate.ts';
import { copyState, type State } from './state.ts';

/** Seconds until a motion stands, from when its enable, power and brake went; 0 where that is not known. */
export type RunOn = (order: StopOrder, motion: number) => number;

export interface DemandRun extends Demand {
  /** Motions that stop. */
  readonly stops: readonly number[];
  /** Those of them that can no longer turn. */
  readonly dead: readonly number[];
  readonly after: State;
  /** Once the demand was taken back. */
  readonly undone: State;
  /** For each motion, whether the drive brakes before it lets go. */
  readonly controlled: readonly boolean[];
  readonly order: StopOrder;
}

export interface Baseline {
  readonly model: Model;
  readonly simulation: Simulation;
  readonly running: State;
  readonly runOn: RunOn;
  /** Motions that run after a start. */
  readonly runs: readonly number[];
  readonly demands: readonly DemandRun[];
  /** Demands that cannot be made while it runs: a locked door. */
  readonly barred: readonly Demand[];
  /** Motions that fall after some demand, with nothing wrong. */
  readonly drops: ReadonlySet<number>;
  readonly restless: readonly string[];
}

export function baselineOf(model: Model, runOn: RunOn = () => 0): Baseline {
  const simulation = new Simulation(networkOf(model));
  const running = started(simulation);
  const runs = model.motions.flatMap((_, at) => (standingOf(model, running, at).driven ? [at] : []));
  const restless = new Set<string>();
  for (const at of simulation.settle(copyState(running)).restless) restless.add(model.movers[at]!.id);
  const all = demandsOf(model);
  const barred = all.filter((demand) => !canAct(simulation, running, demand.act));
  const drops = new Set<number>();
  const demands = all
    .filter((demand) => !barred.includes(demand))
    .map((demand): DemandRun => {
      const state = copyState(running);
      const order = new StopOrder(model, state);
      for (const at of act(simulation, state, demand.act, order.watch).restless)
        restless.add(model.movers[at]!.id);
      for (const [at, { vertical }] of model.motions.entries())
        if (vertical && order.drops(at)) drops.add(at);
      const after = copyState(state);
      act(simulation, state, demand.back);
      const stops = runs.filter((at) => !standingOf(model, after, at).driven);
      return {
        ...demand,
        after,
        undone: state,
        order,
        stops,
        dead: stops.filter((at) => !standingOf(model, after, at).torque),
        controlled: model.motions.map((_, at) => order.controlled(at)),
      };
    });
  return { model, simulation, running, runs, runOn, demands, barred, drops, restless: [...restless] };
}

/** Movers that take the power away: contactors, safe torque off, the drive's enable. */
export const powerMovers = (model: Model): readonly number[] => [
  ...new Set([
    ...model.contacts.filter(({ main }) => main).map(({ mover }) => mover),
    ...model.drives.flatMap(({ sto, enable }) => (enable < 0 ? sto : [...sto, enable])),
  ]),
];

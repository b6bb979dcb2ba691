/** What a person can do to a machine, done in the simulation. */
import type { Doing, Model } from './model.ts';
import type { Network } from './network.ts';
import { driven, type Settled, type Simulation, torque, type Watch } from './simulate.ts';
import { atRest, copyState, type State } from './state.ts';

/** One act: a hand on something, or the main switch (mover −1). */
export interface Act {
  readonly mover: number;
  readonly to: 0 | 1;
  /** 'press S1' */
  readonly says: string;
}

export const POWER_ON: Act = { mover: -1, to: 1, says: 'switch the power on' };
export const POWER_OFF: Act = { mover: -1, to: 0, says: 'switch the power off' };

export const handsOf = (model: Model): readonly (readonly [mover: number, does: Doing])[] =>
  model.movers.flatMap(({ does }, at) => (does ? [[at, does] as const] : []));

export const actOn = (model: Model, mover: number, to: 0 | 1): Act => {
  const { on, off } = model.movers[mover]!.does!;
  return { mover, to, says: to === 1 ? on : off };
};

/** Every act there is, each way. */
export function actsOf(model: Model): readonly Act[] {
  return [
    ...handsOf(model).flatMap(([mover]) => [actOn(model, mover, 1), actOn(model, mover, 0)]),
    POWER_OFF,
    POWER_ON,
  ];
}

/** What is done to start: the keys stand on, then each start button and each program start is pressed and let go. */
export function startActs(model: Model): readonly Act[] {
  const of = (role: Doing['role']) => handsOf(model).filter(([, does]) => does.role === role);
  return [...of('start'), ...of('program')].flatMap(([mover]) => [
    actOn(model, mover, 1),
    actOn(model, mover, 0),
  ]);
}

/** What asks the machine to stop, with what takes it back. */
export interface Demand {
  readonly act: Act;
  readonly back: Act;
  readonly role: Doing['role'] | 'power';
}

export function demandsOf(model: Model): readonly Demand[] {
  const stops = new Set<Doing['role']>(['stop', 'emergency', 'door', 'limit', 'key']);
  return [
    ...handsOf(model)
      .filter(([, { role }]) => stops.has(role))
      .map(([mover, { role, normal }]) => ({
        act: actOn(model, mover, normal === 1 ? 0 : 1),
        back: actOn(model, mover, normal),
        role,
      })),
    { act: POWER_OFF, back: POWER_ON, role: 'power' as const },
  ];
}

/** Whether an act can be done now, and would change anything. */
export function canAct({ network }: Simulation, state: State, { mover, to }: Act): boolean {
  if (mover < 0) return state.power !== to;
  if (state.at[mover] === to) return false;
  if (to === 1 && elsewhere(network.model, state, mover)) return false;
  const { needs } = network.model.movers[mover]!.does!;
  return to === 0 || needs < 0 || state.at[needs] === 1;
}

/** A slide that stands on one of its limit switches cannot run onto the other. */
function elsewhere({ limits }: Model, state: State, mover: number): boolean {
  const own = limits.find((each) => each.mover === mover);
  return (
    own !== undefined &&
    own.axis !== '' &&
    limits.some((each) => each !== own && each.axis === own.axis && state.at[each.mover] === 1)
  );
}

/** Does it and lets everything settle; what springs back, does. The state is changed in place. */
export function act(simulation: Simulation, state: State, { mover, to }: Act, watch?: Watch): Settled {
  const { network } = simulation;
  if (mover < 0) {
    state.power = to;
    // A supply that gave up tries again when it is switched on; a fuse stays melted.
    if (to === 1) state.tripped.fill(0);
    return simulation.settle(state, watch);
  }
  if (network.stuck[mover]! >= 0 || !canAct(simulation, state, { mover, to, says: '' }))
    return simulation.settle(state, watch);
  state.at[mover] = to;
  const settled = simulation.settle(state, watch);
  const { springsBack, role } = network.model.movers[mover]!.does!;
  const back = network.noLatch[mover] === 1 || (springsBack && role === 'emergency');
  if (to === 0 || !back) return settled;
  state.at[mover] = 0;
  const after = simulation.settle(state, watch);
  return {
    restless: [...settled.restless, ...after.restless],
    melted: [...settled.melted, ...after.melted],
    shorted: [...settled.shorted, ...after.shorted],
  };
}

/** The same state in another network: what is stuck goes where it sticks. */
export function takeOver(network: Network, state: State): State {
  const taken = copyState(state);
  for (const [at, { kind }] of network.model.movers.entries())
    if (kind === 'hand' && network.stuck[at]! >= 0) taken.at[at] = network.stuck[at]!;
  return taken;
}

/** How a motion stands: whether its drive can turn it, is told to, and its brake is open. */
export interface Standing {
  readonly torque: boolean;
  readonly driven: boolean;
  /** True where there is no brake. */
  readonly open: boolean;
  /** The drive holds it: driven, or braking by itself. */
  readonly holds: boolean;
  readonly falls: boolean;
}

export function standingOf(model: Model, state: State, motion: number): Standing {
  const { drive, brake, vertical } = model.motions[motion]!;
  const unit = model.drives[drive]!;
  const on = (mover: number) => state.at[mover] === 1;
  const can = torque(unit, on);
  const open = brake < 0 || on(brake);
  const moves = can && driven(unit, on);
  const holds = moves || (can && unit.brakes);
  return { torque: can, driven: moves, open, holds, falls: vertical && !holds && open };
}

export const isDriven = (model: Model, state: State, motion: number): boolean =>
  standingOf(model, state, motion).driven;

/** Power on, then all that is done to start. */
export function started(simulation: Simulation): State {
  const { model } = simulation.network;
  const state = takeOver(simulation.network, atRest(model));
  simulation.settle(state);
  act(simulation, state, POWER_ON);
  for (const each of startActs(model)) act(simulation, state, each);
  return state;
}

/** Everything a person can do in every state the machine can be in. */

import { type Act, act, actsOf, canAct, handsOf, standingOf, started } from './acts.ts';
import type { Baseline } from './baseline.ts';
import type { Model } from './model.ts';
import { networkOf } from './network.ts';
import { StopOrder } from './order.ts';
import type { LookProgress } from './pieces.ts';
import { Simulation } from './simulate.ts';
import { atRest, copyState, keyOf, type State } from './state.ts';
import { type Stopping, stoppingOf } from './stops.ts';

export interface TruthRow {
  /** The state before, in words: 'power on; S1 pressed'. */
  readonly from: string;
  readonly act: string;
  /** Coils and inputs that are on afterwards. */
  readonly held: readonly string[];
  /** Motions that are driven afterwards. */
  readonly driven: readonly string[];
  readonly stops: readonly Stopping[];
  readonly starts: readonly string[];
  /** Started by something that is no start. */
  readonly unasked: boolean;
  readonly restless: readonly string[];
}

export interface Truth {
  readonly rows: readonly TruthRow[];
  readonly states: number;
  /** False where there were more states than are gone through. */
  readonly complete: boolean;
  /** Coils that are never pulled in, contacts that never change, among what was gone through. */
  readonly neverOn: readonly string[];
  readonly neverMoves: readonly string[];
}

const MOST_STATES = 600;

/** A state in words: what is not as it is while the machine runs, and what runs. */
export function sayState(model: Model, state: State): string {
  if (state.power === 0) return ['power off', ...oddHands(model, state)].join('; ');
  const runs = model.motions.filter((_, at) => standingOf(model, state, at).driven).map(({ id }) => id);
  const held = model.movers
    .filter(({ kind, id }, at) => kind === 'coil' && state.at[at] === 1 && !id.includes(' '))
    .map(({ id }) => id);
  return [
    'power on',
    ...oddHands(model, state),
    ...model.controls.flatMap(({ element }, at) =>
      state.program[at] === 1 ? [`program runs at ${element}`] : [],
    ),
    held.length > 0 ? `${held.join(', ')} held` : 'nothing held',
    runs.length > 0 ? `${runs.join(', ')} driven` : 'nothing driven',
  ].join('; ');
}

function oddHands(model: Model, state: State): readonly string[] {
  return handsOf(model).flatMap(([at, { role, normal, springsBack }]) => {
    if (state.at[at] === normal) return [];
    const { id } = model.movers[at]!;
    return [
      role === 'door'
        ? `${id} open`
        : role === 'key'
          ? `${id} off`
          : role === 'limit'
            ? `on ${id}`
            : role === 'other' && !springsBack
              ? `${id} on`
              : `${id} pressed`,
    ];
  });
}

/** Walks from power off through every act until no new state turns up. */
export function* truthOf(base: Baseline, most = MOST_STATES): Generator<LookProgress, Truth, void> {
  const { model } = base;
  const simulation = new Simulation(networkOf(model));
  const first = atRest(model);
  simulation.settle(first);
  const seen = new Map<string, State>([[keyOf(first), first]]);
  const queue = [first];
  const acts = actsOf(model);
  const rows: TruthRow[] = [];
  const on = new Uint8Array(model.movers.length);
  const positions = model.contacts.map(() => new Set<boolean>());
  let complete = true;
  for (let state = queue.shift(); state; state = queue.shift()) {
    yield { doing: 'every act in every state', done: seen.size - queue.length, all: 0 };
    for (const [at, each] of positions.entries()) each.add(simulation.closed(state, at));
    const from = sayState(model, state);
    for (const each of acts) {
      if (!canAct(simulation, state, each)) continue;
      const { row, after } = step(base, simulation, state, each, from, (now) => {
        for (let at = 0; at < on.length; at++) if (now.at[at] === 1) on[at] = 1;
        for (const [at, closed] of positions.entries())
          if (closed.size < 2) closed.add(simulation.closed(now, at));
      });
      rows.push(row);
      if (row.restless.length > 0) continue;
      const key = keyOf(after);
      if (seen.has(key)) continue;
      if (seen.size >= most) {
        complete = false;
        continue;
      }
      seen.set(key, after);
      queue.push(after);
    }
  }
  const wired = new Set(model.wires.flatMap(({ a, b }) => [a, b]));
  return {
    rows,
    states: seen.size,
    complete,
    neverOn: model.movers
      .filter(({ kind, a }, at) => kind === 'coil' && on[at] === 0 && a >= 0)
      .map(({ id }) => id),
    neverMoves: model.contacts
      .filter(({ fuse, a, b }, at) => !fuse && positions[at]!.size < 2 && wired.has(a) && wired.has(b))
      .map(({ id }) => id),
  };
}

function step(
  base: Baseline,
  simulation: Simulation,
  state: State,
  each: Act,
  from: string,
  see: (state: State) => void,
): { row: TruthRow; after: State } {
  const { model } = base;
  const after = copyState(state);
  const order = new StopOrder(model, after);
  const settled = act(simulation, after, each, (now) => {
    order.watch(now);
    see(now);
  });
  const motions = model.motions.map((_, at) => at);
  const before = motions.map((at) => standingOf(model, state, at).driven);
  const now = motions.map((at) => standingOf(model, after, at).driven);
  const starts = motions.filter((at) => !before[at] && now[at]).map((at) => model.motions[at]!.id);
  const role = each.mover < 0 ? 'power' : model.movers[each.mover]!.does!.role;
  return {
    after,
    row: {
      from,
      act: each.says,
      held: model.movers.filter(({ kind }, at) => kind !== 'hand' && after.at[at] === 1).map(({ id }) => id),
      driven: motions.filter((at) => now[at]).map((at) => model.motions[at]!.id),
      stops: motions.filter((at) => before[at] && !now[at]).map((at) => stoppingOf(model, at, order)),
      starts,
      // While somebody holds a start button down, a start is asked for.
      unasked: starts.length > 0 && role !== 'start' && role !== 'program' && !startHeld(model, state),
      restless: settled.restless.map((at) => model.movers[at]!.id),
    },
  };
}

export interface Race {
  readonly mover: string;
  readonly how: 'quicker' | 'slower';
  readonly after: string;
}

/** Movers whose speed decides how things end, within half to double the time that is written. */
export function racesOf(base: Baseline): readonly Race[] {
  const { model } = base;
  const found: Race[] = [];
  const wanted = [keyOf(base.running), ...base.demands.map(({ after }) => keyOf(after))];
  for (const [mover, { id, kind }] of model.movers.entries()) {
    if (kind !== 'coil' && kind !== 'logic') continue;
    for (const [how, factor] of [
      ['quicker', 0.5],
      ['slower', 2],
    ] as const) {
      const simulation = new Simulation(networkOf(model, [{ kind: 'tempo', mover, factor }]));
      const ends = endsOf(simulation, base);
      const at = ends.findIndex((end, n) => end !== wanted[n]);
      if (at >= 0)
        found.push({ mover: id, how, after: at === 0 ? 'starting' : base.demands[at - 1]!.act.says });
    }
  }
  return found;
}

function endsOf(simulation: Simulation, base: Baseline): readonly string[] {
  const running = started(simulation);
  return [
    keyOf(running),
    ...base.demands.map((demand) => {
      const state = copyState(running);
      act(simulation, state, demand.act);
      return keyOf(state);
    }),
  ];
}

const startHeld = (model: Model, state: State): boolean =>
  model.movers.some(
    ({ does }, at) => (does?.role === 'start' || does?.role === 'program') && state.at[at] === 1,
  );

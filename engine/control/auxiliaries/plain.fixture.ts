/**
 * A second way to go through an auxiliary, written apart from the first: states as text, every rule read from the machine as it
 * stands, depth first, and for each state its own search for a way out. Slow, for tests.
 */
import type { Fault } from './compile.ts';
import type { Becomes, Machine, Seen, Values } from './machine.ts';

type State = Record<string, string>;

export interface Plain {
  readonly states: number;
  readonly hazards: readonly string[];
  readonly hangs: readonly string[];
}

const RESTING = new Set(['ready', 'held', 'stopped', 'dark']);

export function plainly(machine: Machine, fault: Fault | null): Plain {
  const trouble = fault?.kind === 'trouble' ? machine.troubles.find(({ id }) => id === fault.id)! : undefined;
  const domain = new Map(machine.variables.map(({ id, values }) => [id, values]));
  const start: State = { step: 'ready' };
  for (const { id, start: first } of machine.variables) start[id] = first;
  for (const { id } of machine.outputs) start[id] = machine.startsOn?.includes(id) ? 'on' : 'off';
  if (fault) start.fault = 'no';

  const is = (state: State, when: Values = {}): boolean =>
    Object.entries(when).every(([id, value]) => [value].flat().includes(state[id]!));
  const felt = (state: State): State =>
    fault?.kind === 'output' && state.fault === 'yes'
      ? { ...state, [fault.id]: fault.stuck ? 'on' : 'off' }
      : state;
  const reads = (state: State, id: string): boolean[] => {
    if (fault?.kind === 'input' && fault.id === id && state.fault === 'yes') return [fault.stuck];
    const input = machine.inputs.find((each) => each.id === id)!;
    if (input.maybe?.some((when) => is(felt(state), when))) return [true, false];
    return [input.on.some((when) => is(felt(state), when))];
  };
  const may = (state: State, seen: Seen): boolean =>
    Object.entries(seen.inputs).every(([id, on]) => reads(state, id).includes(on));
  const mayNot = (state: State, seen: Seen): boolean =>
    Object.entries(seen.inputs).some(([id, on]) => reads(state, id).includes(!on));
  const become = (state: State, becomes: Becomes): State[] => {
    let all: State[] = [{ ...state }];
    for (const [id, to] of Object.entries(becomes)) {
      const values = id === 'step' ? [] : (domain.get(id) ?? ['off', 'on']);
      all = all.flatMap((each) => {
        if (to === 'any') return values.map((value) => ({ ...each, [id]: value }));
        if (typeof to === 'string') return [{ ...each, [id]: to }];
        const at = values.indexOf(state[id]!) + to.by;
        return [{ ...each, [id]: values[((at % values.length) + values.length) % values.length]! }];
      });
    }
    return all;
  };
  const off: Record<string, string> = {};
  for (const { id } of machine.outputs) off[id] = 'off';

  function after(state: State): { soft: State[]; hard: State[] } {
    const soft: State[] = [];
    const hard: State[] = [];
    const bad = state.fault === 'yes';
    const active = [
      ...machine.rules.filter(({ says }) => !(bad && trouble?.stops?.includes(says))),
      ...(bad ? (trouble?.adds ?? []) : []),
    ].filter(({ when }) => is(felt(state), when));
    for (const { becomes } of active) soft.push(...become(state, becomes));
    const still = !active.some(({ who, endless }) => who === 'mechanism' && !endless);
    if (state.fault === 'no') hard.push({ ...state, fault: 'yes' });
    const stopped = (): State => ({ ...state, ...(machine.stopClears ? off : {}), step: 'stopped' });
    const begin = (operation: string, n: number): Becomes => {
      const { steps, ends } = machine.operations.find(({ id }) => id === operation)!;
      const step = steps[n];
      if (!step) return { step: ends };
      const becomes: Record<string, Becomes[string]> = { ...step.sets };
      for (const id of step.on ?? []) becomes[id] = 'on';
      for (const id of step.off ?? []) becomes[id] = 'off';
      becomes.step = `${operation}.${step.id}`;
      return becomes;
    };
    for (const operation of machine.operations) {
      const { id, steps } = operation;
      if (['ready', 'held', 'stopped'].includes(state.step!))
        for (const need of operation.needs ?? [{ inputs: {} }])
          if (is(state, need.when) && may(state, need))
            soft.push(...become(state, { ...begin(id, 0), ...operation.sets }));
      steps.forEach((step, n) => {
        if (state.step !== `${id}.${step.id}`) return;
        hard.push(stopped());
        for (const keep of operation.keeps ?? [])
          if (is(state, keep.when) && mayNot(state, keep)) soft.push(stopped());
        if (step.until) {
          for (const seen of step.until)
            if (is(state, seen.when) && may(state, seen)) soft.push(...become(state, begin(id, n + 1)));
          if (typeof step.limit === 'number')
            soft.push(...(step.late === 'go on' ? become(state, begin(id, n + 1)) : [stopped()]));
        } else if (still) soft.push(...become(state, begin(id, n + 1)));
      });
    }
    if (state.step === 'ready')
      for (const { seen, clears } of machine.watches ?? [])
        if (is(state, seen.when) && mayNot(state, seen))
          soft.push({ ...state, ...(clears ? off : {}), step: 'stopped' });
    if (state.step !== 'dark') hard.push({ ...state, ...off, step: 'dark' });
    else if (still) {
      const { afterPower } = machine;
      if (afterPower.does === 'trusts') soft.push({ ...state, step: 'ready' });
      else soft.push({ ...state, step: 'stopped' });
      if (afterPower.does === 'reads')
        for (const seen of afterPower.seen)
          if (is(state, seen.when) && may(state, seen))
            soft.push(...become(state, { ...seen.sets, step: 'ready' }));
    }
    return { soft, hard };
  }

  const name = (state: State): string =>
    JSON.stringify(Object.entries(state).sort(([a], [b]) => (a < b ? -1 : 1)));
  const all = new Map<string, { state: State; soft: string[] }>();
  const open: State[] = [start];
  while (open.length > 0) {
    const state = open.pop()!;
    const key = name(state);
    if (all.has(key)) continue;
    const { soft, hard } = after(state);
    all.set(key, { state, soft: soft.map(name) });
    open.push(...soft, ...hard);
  }
  const hazards = machine.hazards
    .filter(({ when }) => [...all.values()].some(({ state }) => when.some((each) => is(felt(state), each))))
    .map(({ id }) => id);
  /** Every state it can come to without a mishap. */
  const reach = (key: string): Set<string> => {
    const seen = new Set<string>();
    const todo = [key];
    while (todo.length > 0) {
      const now = todo.pop()!;
      if (seen.has(now)) continue;
      seen.add(now);
      todo.push(...all.get(now)!.soft);
    }
    return seen;
  };
  const hangs = new Set<string>();
  for (const [key, { state }] of all) {
    if (RESTING.has(state.step!) || hangs.has(state.step!)) continue;
    if ([...reach(key)].every((each) => all.get(each)!.state.step === state.step)) hangs.add(state.step!);
  }
  return { states: all.size, hazards, hangs: [...hangs].sort() };
}

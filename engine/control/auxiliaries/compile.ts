/** An auxiliary's machine as numbers: variables, and rules with what they ask, in order to be explored. */
import type { Becomes, Input, Machine, Rule, Seen, Step, Values } from './machine.ts';
import { RESTS } from './machine.ts';

/** One thing that is wrong for good. */
export type Fault =
  | { readonly kind: 'input'; readonly id: string; readonly stuck: boolean }
  | { readonly kind: 'output'; readonly id: string; readonly stuck: boolean }
  | { readonly kind: 'trouble'; readonly id: string };

/** A variable, and 1 for each of its values that will do. */
export interface Guard {
  readonly variable: number;
  readonly allowed: Uint8Array;
}

export interface Compiled {
  readonly says: string;
  readonly who: Rule['who'] | 'control';
  readonly guards: readonly Guard[];
  /** Inputs to be seen, one of the lists; empty where nothing is asked. */
  readonly seen: readonly (readonly (readonly [input: number, on: boolean])[])[];
  /** Fires where `seen` is possibly not so, instead of possibly so. */
  readonly unless: boolean;
  /** Only once nothing moves any more by itself. */
  readonly settled: boolean;
  /** It moves something that will come to rest. */
  readonly settles: boolean;
  /** Only while the fault is there, or only while it is not. */
  readonly fault: 'any' | 'with' | 'without';
  readonly sets: readonly (readonly [variable: number, to: number | 'any', by: number])[];
}

export interface Model {
  readonly machine: Machine;
  readonly names: readonly string[];
  readonly values: readonly (readonly string[])[];
  readonly start: readonly number[];
  readonly index: ReadonlyMap<string, number>;
  readonly step: number;
  /** 0 while all is well, 1 once the fault is there. */
  readonly faultAt: number;
  readonly rules: readonly Compiled[];
  readonly inputs: readonly {
    readonly id: string;
    readonly on: readonly (readonly Guard[])[];
    readonly maybe: readonly (readonly Guard[])[];
    /** 0 or 1 once the fault is there; undefined where it works. */
    readonly stuck: number | undefined;
  }[];
  /** An output that does what it likes once the fault is there. */
  readonly broken: { readonly variable: number; readonly value: number } | undefined;
  readonly hazards: readonly { readonly id: string; readonly when: readonly (readonly Guard[])[] }[];
}

const OFF_ON = ['off', 'on'];

/** Puts numbers to a machine with one fault, or with none. Throws where a kind names what it has not. */
export function compile(machine: Machine, fault: Fault | null): Model {
  const steps = [
    ...RESTS,
    ...machine.operations.flatMap(({ id, steps: own }) => own.map((step) => `${id}.${step.id}`)),
  ];
  const variables = [
    { id: 'step', values: steps, start: 'ready' },
    ...machine.variables,
    ...machine.outputs.map(({ id }) => ({
      id,
      values: OFF_ON,
      start: machine.startsOn?.includes(id) ? 'on' : 'off',
    })),
    ...(fault ? [{ id: 'fault', values: ['no', 'yes'], start: 'no' }] : []),
  ];
  const index = new Map(variables.map(({ id }, at) => [id, at]));
  const at = (id: string): number => {
    const found = index.get(id);
    if (found === undefined) throw new Error(`no variable ${id}`);
    return found;
  };
  const numberOf = (id: string, value: string): number => {
    const found = variables[at(id)]!.values.indexOf(value);
    if (found < 0) throw new Error(`${id} is never ${value}`);
    return found;
  };
  const guardsOf = (when: Values): Guard[] =>
    Object.entries(when).map(([id, value]) => {
      const allowed = new Uint8Array(variables[at(id)]!.values.length);
      for (const each of [value].flat()) allowed[numberOf(id, each)] = 1;
      return { variable: at(id), allowed };
    });
  const setsOf = (becomes: Becomes): Compiled['sets'] =>
    Object.entries(becomes).map(([id, to]) =>
      typeof to === 'object'
        ? [at(id), -1, to.by]
        : to === 'any'
          ? [at(id), 'any', 0]
          : [at(id), numberOf(id, to), 0],
    );
  const inputAt = (id: string): number => {
    const found = machine.inputs.findIndex((each) => each.id === id);
    if (found < 0) throw new Error(`no input ${id}`);
    return found;
  };
  const seenOf = (seen: readonly Seen[]): Compiled['seen'] =>
    seen.map(({ inputs }) => Object.entries(inputs).map(([id, on]) => [inputAt(id), on] as const));

  const rules: Compiled[] = [];
  const add = (rule: Partial<Compiled> & Pick<Compiled, 'says' | 'who' | 'sets'>): void => {
    rules.push({
      guards: [],
      seen: [],
      unless: false,
      settled: false,
      settles: false,
      fault: 'any',
      ...rule,
    });
  };
  const plain = (rule: Rule, when: Compiled['fault']): void =>
    add({
      says: rule.says,
      who: rule.who,
      settles: rule.who === 'mechanism' && !rule.endless,
      guards: guardsOf(rule.when),
      sets: setsOf(rule.becomes),
      fault: when,
    });

  const trouble = fault?.kind === 'trouble' ? machine.troubles.find(({ id }) => id === fault.id) : undefined;
  for (const rule of machine.rules) plain(rule, trouble?.stops?.includes(rule.says) ? 'without' : 'any');
  for (const rule of trouble?.adds ?? []) plain(rule, 'with');
  if (fault)
    add({
      says: 'From now on the fault is there',
      who: 'mishap',
      guards: guardsOf({ fault: 'no' }),
      sets: setsOf({ fault: 'yes' }),
    });

  const outputs = (ids: readonly string[] | undefined, value: string): Record<string, string> =>
    Object.fromEntries((ids ?? []).map((id) => [id, value]));
  const allOff = outputs(
    machine.outputs.map(({ id }) => id),
    'off',
  );
  const given = { ...(machine.stopClears ? allOff : {}), step: 'stopped' };
  const enter = (operation: string, step: Step): Record<string, Becomes[string]> => ({
    ...step.sets,
    ...outputs(step.on, 'on'),
    ...outputs(step.off, 'off'),
    step: `${operation}.${step.id}`,
  });
  for (const operation of machine.operations) {
    const { id, name, steps: own } = operation;
    const within = own.map((step) => `${id}.${step.id}`);
    for (const need of operation.needs ?? [{ inputs: {} }])
      add({
        says: `The control begins to ${name}`,
        who: 'control',
        guards: guardsOf({ step: ['ready', 'held', 'stopped'], ...need.when }),
        seen: seenOf([need]),
        sets: setsOf({ ...enter(id, own[0]!), ...operation.sets }),
      });
    for (const keep of operation.keeps ?? [])
      add({
        says: 'The control gives it up: what must hold all the while no longer does',
        who: 'control',
        guards: guardsOf({ step: within, ...keep.when }),
        seen: seenOf([keep]),
        unless: true,
        sets: setsOf(given),
      });
    own.forEach((step, n) => {
      const next = own[n + 1];
      const onwards = next ? enter(id, next) : { step: operation.ends };
      const here = `${id}.${step.id}`;
      if (!step.until)
        add({
          says: `Time has passed: ${step.says}`,
          who: 'control',
          guards: guardsOf({ step: here }),
          settled: true,
          sets: setsOf(onwards),
        });
      for (const seen of step.until ?? [])
        add({
          says: next ? `The control goes on: ${next.says}` : `The control counts it as done`,
          who: 'control',
          guards: guardsOf({ step: here, ...seen.when }),
          seen: seenOf([seen]),
          sets: setsOf(onwards),
        });
      if (step.until && step.limit !== null && step.limit !== undefined) {
        const goes = step.late === 'go on';
        add({
          says: goes
            ? 'The time is over, and the control goes on all the same'
            : 'The time is over: the control gives up and says so',
          who: 'control',
          guards: guardsOf({ step: here }),
          sets: setsOf(goes ? onwards : given),
        });
      }
    });
    add({
      says: 'Somebody stops it in the middle',
      who: 'mishap',
      guards: guardsOf({ step: within }),
      sets: setsOf(given),
    });
  }
  for (const { seen, says, clears } of machine.watches ?? [])
    add({
      says,
      who: 'control',
      guards: guardsOf({ step: 'ready', ...seen.when }),
      seen: seenOf([seen]),
      unless: true,
      sets: setsOf({ ...(clears ? allOff : {}), step: 'stopped' }),
    });
  const lit = steps.filter((step) => step !== 'dark');
  add({
    says: 'The power goes',
    who: 'mishap',
    guards: guardsOf({ step: lit }),
    sets: setsOf({ ...allOff, step: 'dark' }),
  });
  const back = { says: 'The power comes back', who: 'control' as const, settled: true };
  const { afterPower } = machine;
  if (afterPower.does === 'reads') {
    for (const seen of afterPower.seen)
      add({
        ...back,
        says: 'The power comes back; the control reads the switches and is ready',
        guards: guardsOf({ step: 'dark', ...seen.when }),
        seen: seenOf([seen]),
        sets: setsOf({ ...seen.sets, step: 'ready' }),
      });
    add({ ...back, guards: guardsOf({ step: 'dark' }), sets: setsOf({ step: 'stopped' }) });
  } else
    add({
      ...back,
      says:
        afterPower.does === 'trusts'
          ? 'The power comes back, and the control takes all to be as it was'
          : back.says,
      guards: guardsOf({ step: 'dark' }),
      sets: setsOf({ step: afterPower.does === 'trusts' ? 'ready' : 'stopped' }),
    });

  const stuckOf = ({ id }: Input): number | undefined =>
    fault?.kind === 'input' && fault.id === id ? Number(fault.stuck) : undefined;
  return {
    machine,
    names: variables.map(({ id }) => id),
    values: variables.map(({ values }) => values),
    start: variables.map(({ id, start }) => numberOf(id, start)),
    index,
    step: 0,
    faultAt: fault ? at('fault') : -1,
    rules,
    inputs: machine.inputs.map((input) => ({
      id: input.id,
      on: input.on.map(guardsOf),
      maybe: (input.maybe ?? []).map(guardsOf),
      stuck: stuckOf(input),
    })),
    broken: fault?.kind === 'output' ? { variable: at(fault.id), value: Number(fault.stuck) } : undefined,
    hazards: machine.hazards.map(({ id, when }) => ({ id, when: when.map(guardsOf) })),
  };
}

/** Every single fault of a machine; of inputs that are alike, those of the first. */
export function faultsOf(machine: Machine): Fault[] {
  return [
    ...machine.inputs
      .filter(
        ({ inside, alike }, n) =>
          !inside && (alike === undefined || machine.inputs.findIndex((each) => each.alike === alike) === n),
      )
      .flatMap(({ id }): Fault[] => [
        { kind: 'input', id, stuck: false },
        { kind: 'input', id, stuck: true },
      ]),
    ...machine.outputs.flatMap(({ id }): Fault[] => [
      { kind: 'output', id, stuck: false },
      { kind: 'output', id, stuck: true },
    ]),
    ...machine.troubles.map(({ id }): Fault => ({ kind: 'trouble', id })),
  ];
}

export function sayFault(machine: Machine, fault: Fault): string {
  if (fault.kind === 'trouble') return machine.troubles.find(({ id }) => id === fault.id)?.says ?? fault.id;
  const name = (fault.kind === 'input' ? machine.inputs : machine.outputs).find(
    ({ id }) => id === fault.id,
  )!.name;
  if (fault.kind === 'input')
    return fault.stuck ? `the input “${name}” stays on` : `the input “${name}” stays off`;
  return fault.stuck ? `the output “${name}” stays on` : `the output “${name}” does nothing`;
}

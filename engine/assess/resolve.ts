/** A reference to its value, for one chain. */
import { POLICY } from '../checks/policies.ts';
import type { Ref } from '../checks/refs.ts';
import { factSpec, type PlaceId } from '../parts/index.ts';
import { parseQuantity, standardUncertainty, type UnitSystem } from '../quantity/index.ts';
import type { Basis } from '../quantity/types.ts';
import type { Chain } from '../refit/types.ts';
import { type Context, partIn, pathOf, type Reading, readPath } from './context.ts';
import type { Judged } from './frame.ts';
import type { Spread } from './spread.ts';
import { combineAll, type Known, NO_DOUBT, NOTHING, restsOf, union, type Value } from './value.ts';

/** What resolving needs besides the refit: results of workings, and values already made for the same things. */
export interface Scope {
  readonly context: Context;
  result(working: string, symbol: string): Value;
  /** The same scope for another chain. */
  forChain(chain: Chain): Scope;
  /** Returns the earlier value where it says the same, so that identity means 'unchanged'. */
  keep(key: string, make: () => Value): Value;
  /** The earlier judgement where every value is the same, else a new one. */
  judged(id: string, values: readonly Value[], make: () => Judged): Judged;
  readonly system: UnitSystem;
  /** Drawn chances, where they are known. */
  readonly spread: Spread | undefined;
  /** Told of every reference that is resolved here, where somebody wants to know what is read. */
  readonly heard?: (ref: Ref) => void;
}

const sameDoubt = (a: ReadonlyMap<string, number>, b: ReadonlyMap<string, number>): boolean => {
  if (a === b) return true;
  if (a.size !== b.size) return false;
  for (const [source, part] of a) if (b.get(source) !== part) return false;
  return true;
};

const sameSet = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean => {
  if (a === b) return true;
  if (a.size !== b.size) return false;
  for (const item of a) if (!b.has(item)) return false;
  return true;
};

/** Whether two values say the same in every respect. */
export function sameValue(a: Value, b: Value): boolean {
  if (a === b) return true;
  if (a.state !== b.state) return false;
  switch (a.state) {
    case 'known': {
      const c = b as Known;
      return (
        a.value === c.value &&
        a.basis === c.basis &&
        sameDoubt(a.doubt, c.doubt) &&
        sameSet(a.facts, c.facts) &&
        sameSet(a.policies, c.policies)
      );
    }
    case 'missing':
      return sameSet(a.facts, (b as typeof a).facts);
    case 'curve': {
      // A curve is read once for each fact, so the same fact gives the same curve.
      const c = b as typeof a;
      return (
        a.curve === c.curve &&
        a.basis === c.basis &&
        sameSet(a.facts, c.facts) &&
        sameSet(a.policies, c.policies)
      );
    }
    default:
      return a.reason === (b as typeof a).reason;
  }
}

/** Values of readings with the habit they rest on; readings are kept for as long as their fact stays the same. */
const VALUES = new WeakMap<Reading, { readonly habit: Value | undefined; readonly value: Value }>();

/** What a number without a ± of its own is worth, by where it comes from. */
export const HABIT_OF: Readonly<Partial<Record<Basis, string>>> = {
  guess: 'guess-doubt',
  told: 'told-doubt',
};

function factValue(scope: Scope, place: PlaceId, name: string): Value {
  const reading = readPath(scope.context, place, name);
  if (reading.state === 'missing' || reading.state === 'inapplicable') return reading;
  if (reading.state === 'bad') return { state: 'no-answer', reason: reading.problem.message };
  const habitId = habitOf(reading, place, name);
  const habit = habitId === undefined ? undefined : resolve(scope, { kind: 'policy', policy: habitId });
  const before = VALUES.get(reading);
  if (before && before.habit === habit) return before.value;
  const value = readValue(reading, place, name, habit);
  VALUES.set(reading, { habit, value });
  return value;
}

type Read = Extract<Reading, { state: 'read' }>;

/** A wish is the person's own decision: unless they call it a guess it weakens nothing. */
const isWish = (place: PlaceId, name: string): boolean => {
  const spec = factSpec(place, name);
  return spec?.kind === 'quantity' && spec.chosen === true;
};

/**
 * The habit that says how far a bare number may be off. What is counted or wished for is not off by a share; a part that
 * strays from what is printed on it does so though it was chosen.
 */
function habitOf({ read, fact }: Read, place: PlaceId, name: string): string | undefined {
  if (read.kind !== 'quantity' || read.half !== 0) return undefined;
  const spec = factSpec(place, name);
  const tolerance = spec?.kind === 'quantity' ? spec.tolerance : undefined;
  if (tolerance !== undefined && fact.basis !== 'measured')
    return fact.basis === 'guess' ? HABIT_OF.guess : tolerance;
  if (isWish(place, name)) return undefined;
  const { tally } = read.quantity.unit.dimension;
  return tally === 'none' || tally === 'angle' ? HABIT_OF[fact.basis] : undefined;
}

function readValue(reading: Read, place: PlaceId, name: string, habit: Value | undefined): Value {
  const { fact, read, path } = reading;
  const basis = isWish(place, name) && fact.basis !== 'guess' ? undefined : fact.basis;
  const rests = { facts: new Set([path]), policies: NOTHING, basis };
  if (read.kind === 'curve') return { state: 'curve', curve: read.curve, ...rests };
  if (read.kind !== 'quantity') throw new Error(`${place}.${name} is a ${read.kind} and has no number`);
  const { quantity, value, half } = read;
  if (habit?.state === 'known') {
    const limit = Math.abs(value) * habit.value;
    const doubt = limit > 0 ? new Map([[path, limit / Math.sqrt(3)]]) : NO_DOUBT;
    return { state: 'known', value, doubt, ...rests, policies: habit.policies };
  }
  const spread = half === 0 ? 0 : (standardUncertainty(quantity, fact.basis) * half) / quantity.half;
  const doubt = spread > 0 ? new Map([[path, spread]]) : NO_DOUBT;
  return { state: 'known', value, doubt, ...rests };
}

/** The option chosen for a choice, or the value that says why there is none. */
export function optionOf(
  scope: Scope,
  place: PlaceId,
  name: string,
): { option: string; path: string; basis: Known['basis'] } | Value {
  const reading = readPath(scope.context, place, name);
  if (reading.state === 'missing' || reading.state === 'inapplicable') return reading;
  if (reading.state === 'bad') return { state: 'no-answer', reason: reading.problem.message };
  if (reading.read.kind !== 'choice') throw new Error(`${place}.${name} is not a choice`);
  return { option: reading.read.option, path: reading.path, basis: reading.fact.basis };
}

/** A name for a reference, made once. */
const names = new WeakMap<Ref, string>();
export function nameOf(ref: Ref): string {
  let name = names.get(ref);
  if (name === undefined) {
    name = JSON.stringify(ref);
    names.set(ref, name);
  }
  return name;
}

const isValue = (x: object): x is Value => 'state' in x;

/** Numbers of our own tables and policies that were read before. */
const OWN = new Map<string, { value: number; spread: number }>();

/** A number written in our own tables; a misprint there is our mistake, not the person's. */
function ownNumber(text: string, unit: string): { value: number; spread: number } {
  const key = `${text} (${unit})`;
  let own = OWN.get(key);
  if (!own) {
    const parsed = parseQuantity(text, unit);
    if (!parsed.ok) throw new Error(`${key}: ${parsed.problem.message}`);
    own = { value: parsed.value.value, spread: standardUncertainty(parsed.value, 'handbook') };
    OWN.set(key, own);
  }
  return own;
}

function tableValue(scope: Scope, ref: Extract<Ref, { kind: 'table' }>): Value {
  const chosen = optionOf(scope, ref.place, ref.fact);
  if (isValue(chosen)) return chosen;
  const row = ref.rows[chosen.option];
  if (row === undefined) return { state: 'inapplicable', reason: `No table row for ${chosen.option}.` };
  const { value, spread } = ownNumber(row, ref.unit);
  const key = `table ${chosen.path} ${ref.unit}`;
  return {
    state: 'known',
    value,
    doubt: spread > 0 ? new Map([[key, spread]]) : NO_DOUBT,
    facts: new Set([chosen.path]),
    policies: NOTHING,
    basis: 'handbook',
  };
}

function policyValue(scope: Scope, id: string): Value {
  const known = POLICY.get(id);
  if (!known) throw new Error(`no policy ${id}`);
  const changed = Object.hasOwn(scope.context.refit.policies, id)
    ? scope.context.refit.policies[id]
    : undefined;
  let value: number;
  if (changed === undefined) value = ownNumber(known.usual, known.unit).value;
  else {
    const parsed = parseQuantity(changed, known.unit);
    if (!parsed.ok) return { state: 'no-answer', reason: parsed.problem.message };
    value = parsed.value.value;
  }
  return {
    state: 'known',
    value,
    doubt: NO_DOUBT,
    facts: NOTHING,
    policies: new Set([id]),
    basis: undefined,
  };
}

const troubleOf = (path: string): number => {
  const [place, name] = path.split('.').slice(-2);
  return (place && name && factSpec(place, name)?.trouble) || 1;
};

/** The known one; else the one that is least trouble to find out. */
function firstValue(scope: Scope, refs: readonly Ref[]): Value {
  let best: Value | undefined;
  let bestTrouble = Number.POSITIVE_INFINITY;
  for (const ref of refs) {
    const value = resolve(scope, ref);
    if (value.state === 'known' || value.state === 'curve') return value;
    if (value.state !== 'missing') {
      best ??= value;
      continue;
    }
    let trouble = 0;
    for (const path of value.facts) trouble += troubleOf(path);
    if (trouble < bestTrouble) {
      best = value;
      bestTrouble = trouble;
    }
  }
  return best ?? { state: 'inapplicable', reason: 'There is nothing to choose from.' };
}

/** Adds what a choice rests on to the value it led to. */
function resting(scope: Scope, key: string, value: Value, path: string): Value {
  if ((value.state !== 'known' && value.state !== 'curve') || value.facts.has(path)) return value;
  return scope.keep(key, () => ({ ...value, facts: union(value.facts, new Set([path])) }));
}

function axesValue(scope: Scope, ref: Extract<Ref, { kind: 'axes' }>): Value {
  const missing = new Set<string>();
  const known: Known[] = [];
  let refused: Value | undefined;
  for (const chain of scope.context.refit.chains) {
    if (chain.kind !== 'axis') continue;
    const value = resolve(scope.forChain(chain), ref.of);
    if (value.state === 'known') known.push(value);
    else if (value.state === 'missing') for (const path of value.facts) missing.add(path);
    else if (value.state !== 'inapplicable') refused = value;
  }
  if (refused) return refused;
  if (missing.size > 0) return { state: 'missing', facts: missing };
  if (known.length === 0) return { state: 'inapplicable', reason: 'No axis has this.' };
  // The least was found among all of them, so it rests on all.
  if (ref.how === 'least')
    return { ...known.reduce((a, b) => (b.value < a.value ? b : a)), ...restsOf(known) };
  const doubt = combineAll(known.map((value) => ({ by: 1, of: value.doubt })));
  return { state: 'known', value: known.reduce((sum, v) => sum + v.value, 0), doubt, ...restsOf(known) };
}

/** Works out a reference. Never throws for what a person may have entered. */
export function resolve(scope: Scope, ref: Ref): Value {
  const { context } = scope;
  scope.heard?.(ref);
  switch (ref.kind) {
    case 'fact': {
      const key = pathOf(context.chain, ref.place, ref.fact);
      return scope.keep(key, () => factValue(scope, ref.place, ref.fact));
    }
    case 'table':
      return scope.keep(`table ${pathOf(context.chain, ref.place, ref.fact)} ${nameOf(ref)}`, () =>
        tableValue(scope, ref),
      );
    case 'result':
      return scope.result(ref.working, ref.symbol);
    case 'policy':
      return scope.keep(`policy ${ref.policy}`, () => policyValue(scope, ref.policy));
    case 'stated':
      return scope.keep(`stated ${ref.text} ${ref.unit}`, () => ({
        state: 'known',
        value: ownNumber(ref.text, ref.unit).value,
        doubt: NO_DOUBT,
        facts: NOTHING,
        policies: NOTHING,
        basis: undefined,
      }));
    case 'first':
      return firstValue(scope, ref.of);
    case 'when': {
      const chosen = optionOf(scope, ref.place, ref.fact);
      if (isValue(chosen)) return chosen;
      const branch = Object.hasOwn(ref.cases, chosen.option) ? ref.cases[chosen.option] : ref.otherwise;
      if (!branch) return { state: 'inapplicable', reason: ref.inapplicable ?? 'It does not apply here.' };
      const value = resolve(scope, branch);
      return resting(scope, `when ${chosen.path} ${nameOf(branch)}`, value, chosen.path);
    }
    case 'fitted': {
      const part = partIn(context, ref.place);
      if (part === null) return { state: 'missing', facts: new Set([pathOf(context.chain, ref.place)]) };
      return resolve(scope, part === 'none' ? ref.no : ref.yes);
    }
    case 'axes':
      return scope.keep(`axes ${nameOf(ref)}`, () => axesValue(scope, ref));
    case 'exact': {
      const value = resolve(scope, ref.of);
      if (value.state !== 'known' || value.doubt.size === 0) return value;
      const key = `exact ${context.chain?.id ?? 'machine'} ${nameOf(ref)}`;
      return scope.keep(key, () => ({ ...value, doubt: NO_DOUBT }));
    }
    case 'inapplicable':
      return { state: 'inapplicable', reason: ref.reason };
  }
}

/** One working for one chain: inputs resolved, the sheet evaluated, doubt carried through by exact derivatives. */
import type { Working } from '../checks/working.ts';
import { evaluate, gradient } from '../sheet/index.ts';
import type { Argument, Outcome } from '../sheet/types.ts';
import { bindings } from './plan.ts';
import { resolve, type Scope, sameValue } from './resolve.ts';
import {
  combineAll,
  type Known,
  type KnownCurve,
  type Missing,
  type Rests,
  restsOf,
  union,
  type Value,
} from './value.ts';

export interface Worked {
  readonly working: Working;
  /** By symbol of the sheet; a symbol that nothing is bound to is absent. */
  readonly inputs: ReadonlyMap<string, Value>;
  readonly results: ReadonlyMap<string, Value>;
}

const hasBasis = (value: Value | undefined): value is Known | KnownCurve =>
  value?.state === 'known' || value?.state === 'curve';

/** Why a derived symbol has no value, from the inputs it lacks. The most telling reason wins. */
function absence(needs: readonly string[], inputs: ReadonlyMap<string, Value>): Value {
  let missing: ReadonlySet<string> = new Set();
  let other: Value | undefined;
  for (const symbol of needs) {
    const value = inputs.get(symbol);
    if (!value || value.state === 'inapplicable')
      other = value ?? { state: 'inapplicable', reason: 'It does not apply here.' };
    else if (value.state === 'no-answer') return value;
    else if (value.state === 'missing') missing = union(missing, value.facts);
  }
  return other ?? ({ state: 'missing', facts: missing } satisfies Missing);
}

const isUnchanged = (scope: Scope, working: Working, earlier: Worked): boolean =>
  bindings(working).every(([symbol, ref]) => {
    const before = earlier.inputs.get(symbol);
    return before !== undefined && sameValue(before, resolve(scope, ref));
  });

/** Evaluates a working, or returns the earlier one when no input changed. */
export function work(scope: Scope, working: Working, earlier: Worked | undefined): Worked {
  if (earlier && isUnchanged(scope, working, earlier)) return earlier;
  const inputs = new Map<string, Value>();
  for (const [symbol, ref] of bindings(working)) {
    const now = resolve(scope, ref);
    const before = earlier?.inputs.get(symbol);
    inputs.set(symbol, before && sameValue(before, now) ? before : now);
  }

  const { sheet } = working;
  const given: Record<string, Argument> = {};
  const uncertain: string[] = [];
  for (const [symbol, value] of inputs) {
    if (value.state === 'known') {
      given[symbol] = value.value;
      if (value.doubt.size > 0) uncertain.push(symbol);
    } else if (value.state === 'curve') given[symbol] = value.curve;
  }
  const slopes = uncertain.length > 0 ? gradient(sheet, given, uncertain) : undefined;
  const outcomes: Readonly<Record<string, Outcome>> = slopes?.outcomes ?? evaluate(sheet, given);

  // Many symbols of a sheet need the same inputs.
  const rests = new Map<string, Rests>();
  const restsFor = (symbols: readonly string[]): Rests => {
    const name = symbols.join();
    let found = rests.get(name);
    if (!found) {
      found = restsOf(symbols.map((symbol) => inputs.get(symbol)).filter(hasBasis));
      rests.set(name, found);
    }
    return found;
  };
  const results = new Map<string, Value>();
  for (const key of sheet.derived) {
    const outcome = outcomes[key]!;
    if (outcome.state === 'missing') results.set(key, absence(outcome.needs, inputs));
    else if (outcome.state === 'undefined') results.set(key, { state: 'no-answer', reason: outcome.reason });
    else {
      const partials = slopes?.partials[key];
      const doubt = combineAll(
        uncertain.map((symbol) => ({
          by: partials?.[symbol] ?? 0,
          of: (inputs.get(symbol) as Known).doubt,
        })),
      );
      results.set(key, {
        state: 'known',
        value: outcome.value,
        doubt,
        ...restsFor(sheet.dependsOn[key] ?? []),
      });
    }
  }
  return { working, inputs, results };
}

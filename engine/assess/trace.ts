/** A reference as a key of the joined sheet: the same way as `resolve` takes, but to where a value lies, not to it. */
import type { Ref } from '../checks/refs.ts';
import { factSpec } from '../parts/index.ts';
import type { Total } from '../sheet/join.ts';
import { partIn, readPath } from './context.ts';
import { nameOf, optionOf, resolve, type Scope } from './resolve.ts';
import type { Known, KnownCurve, Shape } from './value.ts';

/** What the joined sheet is given from outside: a value, and how it is drawn anew where it is in doubt. */
export interface Source {
  readonly value: Known | KnownCurve;
  readonly shape: Shape;
  /** Draws outside are moved to its edge: no measurement makes a length negative. */
  readonly domain: 'any' | 'positive' | 'not negative' | 'fraction';
}

/** Collects sources and totals while references are traced. */
export interface Tracing {
  /** Sources by key: paths of facts, table rows, policies, stated numbers. */
  readonly sources: Map<string, Source>;
  /** The key under which a working's result lies, or undefined when it has none. */
  result(scope: Scope, working: string, symbol: string): string | undefined;
  /** The key of a total over these keys. */
  total(how: Total, of: readonly string[]): string;
}

/** The key of a reference's value, or undefined where it has none. */
export function trace(tracing: Tracing, scope: Scope, ref: Ref): string | undefined {
  switch (ref.kind) {
    case 'result':
      return tracing.result(scope, ref.working, ref.symbol);
    case 'first': {
      const known = ref.of.find((each) => hasValue(resolve(scope, each).state));
      return known && trace(tracing, scope, known);
    }
    case 'when': {
      const chosen = optionOf(scope, ref.place, ref.fact);
      if ('state' in chosen) return undefined;
      const branch = Object.hasOwn(ref.cases, chosen.option) ? ref.cases[chosen.option] : ref.otherwise;
      return branch && trace(tracing, scope, branch);
    }
    case 'fitted': {
      const part = partIn(scope.context, ref.place);
      return part === null ? undefined : trace(tracing, scope, part === 'none' ? ref.no : ref.yes);
    }
    case 'axes': {
      const keys: string[] = [];
      for (const chain of scope.context.refit.chains) {
        if (chain.kind !== 'axis') continue;
        const own = scope.forChain(chain);
        if (resolve(own, ref.of).state === 'inapplicable') continue;
        const key = trace(tracing, own, ref.of);
        if (key === undefined) return undefined;
        keys.push(key);
      }
      return keys.length > 0 ? tracing.total(ref.how, keys) : undefined;
    }
    case 'inapplicable':
      return undefined;
    default: {
      const value = resolve(scope, ref);
      if (value.state !== 'known' && value.state !== 'curve') return undefined;
      const key = sourceKey(scope, ref, value);
      tracing.sources.set(key, { value, ...drawnAs(scope, ref) });
      return key;
    }
  }
}

/** A measured ± is a bell unless its text says otherwise; any other is a limit, evenly likely within. */
function drawnAs(scope: Scope, ref: Ref): Omit<Source, 'value'> {
  if (ref.kind !== 'fact') return { shape: 'rectangular', domain: 'any' };
  const spec = factSpec(ref.place, ref.fact);
  const reading = readPath(scope.context, ref.place, ref.fact);
  const quantity =
    reading.state === 'read' && reading.read.kind === 'quantity' ? reading.read.quantity : undefined;
  const measured = reading.state === 'read' && reading.fact.basis === 'measured' && quantity?.half !== 0;
  return {
    shape: quantity?.spread?.shape ?? (measured ? 'normal' : 'rectangular'),
    domain: spec?.kind === 'quantity' ? spec.domain : 'any',
  };
}

const hasValue = (state: string): boolean => state === 'known' || state === 'curve';

/** Facts are named by their path, so that a fact that several references read is drawn once. */
function sourceKey(scope: Scope, ref: Ref, value: Known | KnownCurve): string {
  switch (ref.kind) {
    case 'fact':
      return [...value.facts][0]!;
    case 'table':
      return `table ${[...value.facts][0]} ${nameOf(ref)}`;
    case 'policy':
      return `policy ${ref.policy}`;
    case 'stated':
      return `stated ${ref.text} ${ref.unit}`;
    case 'exact':
      return `exact ${scope.context.chain?.id ?? 'machine'} ${nameOf(ref)}`;
    default:
      throw new TypeError(`a ${ref.kind} is no source`);
  }
}

/**
 * The scopes of an assessment as each draw of the doubtful has them: what asks them for a fact or a result gets the value of
 * that draw. So whatever is worked out from scopes alone can be worked out draw by draw, without knowing that it is.
 */
import type { Chain } from '../refit/types.ts';
import { lanes } from '../sheet/index.ts';
import { type Assessment, scopesOf } from './assess.ts';
import { drawSource } from './draw-source.ts';
import { join, type Wanted } from './joined.ts';
import { nameOf, type Scope } from './resolve.ts';

export type ScopeFor = ReturnType<typeof scopesOf>;

export interface DrawnScopes {
  readonly lanes: number;
  /** Scopes of the refit as it stands. */
  readonly scopeFor: ScopeFor;
  /** Paths of the facts and names of the tables that are drawn. */
  readonly sources: readonly string[];
  at(lane: number): ScopeFor;
}

/** `read` asks the scopes for everything it will ask of each draw; the same seed draws the same as the findings' chances. */
export function drawScopes(
  assessment: Assessment,
  read: (scopeFor: ScopeFor) => void,
  { lanes: n, seed = 1 }: { readonly lanes: number; readonly seed?: number },
): DrawnScopes {
  const scopeFor = scopesOf(assessment);
  const wanted = new Map<string, Wanted>();
  read((chain) => listening(scopeFor(chain), wanted));
  const { sheet, sources, given, also } = join(assessment, [...wanted.values()]);
  const columns = new Map<string, Float64Array>();
  const drawn: Record<string, Float64Array | (typeof given)[string]> = { ...given };
  for (const [key, source] of sources) {
    const values = drawSource(source, n, seed, undefined);
    if (!values) continue;
    drawn[key] = values;
    columns.set(key, values);
  }
  const derived = new Set<string>(sheet.derived);
  const { values } = lanes(sheet, drawn, n, { only: also.filter((key) => derived.has(key)) });
  for (const key of also) {
    const column = values[key];
    if (column instanceof Float64Array) columns.set(key, column);
  }
  const at = (lane: number): ScopeFor => {
    const made = new Map<Chain | null, Scope>();
    const of: ScopeFor = (chain) => {
      let scope = made.get(chain);
      if (!scope) {
        scope = ofLane(scopeFor(chain), columns, lane, of);
        made.set(chain, scope);
      }
      return scope;
    };
    return of;
  };
  return {
    lanes: n,
    scopeFor,
    sources: [...sources.keys()].filter((key) => columns.has(key)),
    at,
  };
}

/** Notes every reference to where a value lies; what only leads there is not noted. */
function listening(scope: Scope, wanted: Map<string, Wanted>): Scope {
  const { chain } = scope.context;
  return {
    ...scope,
    heard: (ref) => {
      if (ref.kind === 'fact' || ref.kind === 'table' || ref.kind === 'result')
        wanted.set(`${chain?.id ?? 'machine'} ${nameOf(ref)}`, { chain, ref });
    },
    forChain: (other) => listening(scope.forChain(other), wanted),
  };
}

function ofLane(
  scope: Scope,
  columns: ReadonlyMap<string, Float64Array>,
  lane: number,
  scopeFor: ScopeFor,
): Scope {
  const { chain } = scope.context;
  return {
    ...scope,
    forChain: scopeFor,
    result(working, symbol) {
      const value = scope.result(working, symbol);
      if (value.state !== 'known') return value;
      const column =
        columns.get(`${chain?.id ?? 'machine'}/${working}/${symbol}`) ??
        columns.get(`machine/${working}/${symbol}`);
      const drawn = column?.[lane];
      if (drawn === undefined) return value;
      return Number.isNaN(drawn)
        ? { state: 'no-answer', reason: 'This draw has no answer.' }
        : { ...value, value: drawn };
    },
    keep(key, make) {
      // What leads to a drawn value must be worked out anew; the rest is the same in every draw.
      if (key.startsWith('when ') || key.startsWith('axes ')) return make();
      const value = scope.keep(key, make);
      const drawn = columns.get(key)?.[lane];
      return value.state === 'known' && drawn !== undefined ? { ...value, value: drawn } : value;
    },
  };
}

/** The same workings with the mains low, as they usually are, and high. */
import { stated } from '../../checks/refs.ts';
import type { Working } from '../../checks/working.ts';
import type { Chain } from '../../refit/types.ts';
import { evaluate } from '../../sheet/index.ts';
import type { Assessment } from '../assess.ts';
import { bindings, PLAN, WORKING, workingsOf } from '../plan.ts';
import { resolve, type Scope } from '../resolve.ts';
import type { Known, Value } from '../value.ts';
import { type Worked, work } from '../work.ts';
import { numbers } from './sweep.ts';

export type Mains = 'low' | 'nominal' | 'high';

const NONE: Value = { state: 'inapplicable', reason: 'It does not apply here.' };
const NO_SPREAD = stated('0 %', '1', 'the mains as they usually are');

/** Sheets that hold a tolerance, with the tolerance at zero. */
const STEADY: ReadonlyMap<string, Working> = new Map(
  (
    [
      ['bus', ['up', 'down']],
      ['regulated', ['tol']],
    ] as const
  ).map(([id, symbols]) => {
    const working = WORKING.get(id)!;
    const steady = Object.fromEntries(symbols.map((symbol) => [symbol, NO_SPREAD]));
    return [id, { ...working, bind: { ...working.bind, ...steady } }];
  }),
);

/** Workings that change with the mains; all others are taken from the assessment. */
const FOLLOWING: ReadonlySet<string> = (() => {
  const following = new Set(['mains-tap', ...STEADY.keys()]);
  for (const working of PLAN) {
    const needed = bindings(working).flatMap(([, ref]) => workingsOf(ref));
    if (needed.some((id) => following.has(id))) following.add(working.id);
  }
  return following;
})();

export interface MainsScope extends Scope {
  worked(working: string): Worked | undefined;
}

/**
 * Scopes of an assessment at one state of the mains.
 * - low: the assessment itself. The bus is loaded, at the bottom of its ripple, the mains as low as the policy says.
 * - nominal: the same loaded bus with the tolerances of the mains (or of a regulated supply) at zero.
 * - high: again the loaded bus, with the mains up by the policy's share: the secondary follows the mains in proportion.
 *   This is less than the empty bus that the drive must survive (the finding 'bus-high'): a motor that asks for torque
 *   loads the bus.
 */
export function scopesAt(assessment: Assessment, mains: Mains): (chain: Chain | null) => MainsScope {
  const { refit, kept } = assessment;
  const made = new Map<string, Worked>();
  const scopes = new Map<Chain | null, MainsScope>();
  const raised = new Map<string, Value>();

  const workedIn = (chain: Chain | null, id: string): Worked | undefined => {
    const working = WORKING.get(id);
    if (!working) return undefined;
    const at = working.scope === 'machine' ? null : chain;
    const key = `${at?.id ?? 'machine'}/${id}`;
    if (mains === 'low' || !FOLLOWING.has(id)) return assessment.worked.get(key);
    let worked = made.get(key);
    if (!worked) {
      worked = work(scopeFor(at), STEADY.get(id) ?? working, undefined);
      made.set(key, worked);
    }
    return worked;
  };

  const scopeFor = (chain: Chain | null): MainsScope => {
    let scope = scopes.get(chain);
    if (!scope) {
      scope = {
        context: { refit, chain, memo: kept.facts },
        result: (id, symbol) =>
          raised.get(`${id}/${symbol}`) ?? workedIn(chain, id)?.results.get(symbol) ?? NONE,
        worked: (id) => workedIn(chain, id),
        forChain: scopeFor,
        keep: (_, make) => make(),
        judged: (_, __, make) => make(),
        system: kept.system,
        spread: undefined,
      };
      scopes.set(chain, scope);
    }
    return scope;
  };

  if (mains === 'high') raise(scopeFor(null), assessment, raised);
  return scopeFor;
}

/** The two values that lift the bus when the mains are high. */
function raise(scope: MainsScope, assessment: Assessment, raised: Map<string, Value>): void {
  const up = resolve(scope, { kind: 'policy', policy: 'mains-high' });
  const tap = assessment.worked.get('machine/mains-tap');
  const secondary = tap?.results.get('Vsec');
  if (tap && secondary?.state === 'known' && up.state === 'known') {
    const given = numbers(tap);
    const mains = given.V_mains as number;
    const lifted = evaluate(tap.working.sheet, { ...given, V_mains: mains * (1 + up.value) }).Vsec;
    if (lifted?.state === 'known')
      raised.set('mains-tap/Vsec', { ...secondary, value: lifted.value } satisfies Known);
  }
  const top = assessment.worked.get('machine/regulated')?.results.get('V_high');
  if (top) raised.set('regulated/V_low', top);
}

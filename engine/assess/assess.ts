/** A refit through workings and checks: findings. Pure; one edit recomputes what depends on it. */
import { CHECKS } from '../checks/index.ts';
import { POLICY } from '../checks/policies.ts';
import type { Working } from '../checks/working.ts';
import { factSpec } from '../parts/index.ts';
import { parseQuantity, type UnitSystem } from '../quantity/index.ts';
import type { Problem } from '../quantity/types.ts';
import { oddity } from '../refit/read-fact.ts';
import type { Chain, Refit } from '../refit/types.ts';
import { type Context, type FactMemo, partIn, placeOf, readPath } from './context.ts';
import type { Amount, Finding, NotAsked, Question } from './finding.ts';
import type { Judged } from './frame.ts';
import { judge } from './judge.ts';
import { CHECK, PLAN, planFor } from './plan.ts';
import { type Scope, sameValue } from './resolve.ts';
import { policyFault } from './set-policy.ts';
import type { Spread, Spreading } from './spread.ts';
import type { Value } from './value.ts';
import { type Worked, work } from './work.ts';

export interface Assessment {
  readonly refit: Refit;
  /** By chain in the refit's order, then the machine's own; within each in the order of the checks. */
  readonly findings: readonly Finding[];
  readonly notAsked: readonly NotAsked[];
  /** Facts that cannot be read as they stand, with where and why. */
  readonly problems: readonly Problem[];
  /** Readable but unusual: is that right? */
  readonly questions: readonly Question[];
  /** Workings by 'X/whirl' or 'machine/bus'. */
  readonly worked: ReadonlyMap<string, Worked>;
  /** Workings that had to be worked out again for this assessment. */
  readonly recomputed: readonly string[];
  /** What the next assessment may use again. */
  readonly kept: Kept;
}

interface Judgement {
  readonly values: readonly Value[];
  readonly spreading: Spreading | undefined;
  readonly judged: Judged;
}

interface Kept {
  readonly facts: FactMemo;
  readonly values: ReadonlyMap<string, Value>;
  readonly judged: ReadonlyMap<string, Judgement>;
  readonly system: UnitSystem;
}

export const workedKey = (chain: Chain | null, working: string): string =>
  `${chain?.id ?? 'machine'}/${working}`;

/** The chains a working or check of this scope is asked of; null stands for the machine. */
const chainsOf = (refit: Refit, scope: Working['scope']): readonly (Chain | null)[] =>
  scope === 'machine' ? [null] : refit.chains.filter(({ kind }) => kind === scope);

/** What is odd about a reading, or '': a reading is kept for as long as its fact stays the same. */
const ODDITIES = new WeakMap<object, string>();

/** Every fact of every chosen place, read once, for problems and questions. */
function readAll(context: Context, problems: Problem[], questions: Question[], guesses: Set<string>): void {
  const places = context.chain ? context.chain.places : context.refit.places;
  for (const place of Object.keys(places)) {
    const part = partIn(context, place);
    if (part === null || part === 'none' || !placeOf(context, place)) continue;
    for (const name of Object.keys(part.facts)) {
      const spec = factSpec(place, name);
      if (!spec) continue;
      const reading = readPath(context, place, name);
      if (reading.state === 'bad') problems.push(reading.problem);
      if (reading.state !== 'read') continue;
      if (reading.fact.basis === 'guess') guesses.add(reading.path);
      let odd = ODDITIES.get(reading);
      if (odd === undefined) {
        odd = oddity(spec, reading.read) ?? '';
        ODDITIES.set(reading, odd);
      }
      if (odd) questions.push({ code: 'out-of-domain', message: odd, where: reading.path });
    }
  }
}

/** Names the guesses a finding rests on; the earlier finding itself where nothing about it changed. */
function withGuesses(finding: Finding, guesses: ReadonlySet<string>, before: Finding | undefined): Finding {
  const own = finding.facts.filter((path) => guesses.has(path));
  if (
    before &&
    before.verdict === finding.verdict &&
    before.sentence === finding.sentence &&
    before.basis === finding.basis &&
    before.side === finding.side &&
    before.chance === finding.chance &&
    before.marginRange?.[0] === finding.marginRange?.[0] &&
    before.marginRange?.[1] === finding.marginRange?.[1] &&
    sameAmount(before.there, finding.there) &&
    sameAmount(before.asked, finding.asked) &&
    sameList(before.policies, finding.policies) &&
    sameList(before.facts, finding.facts) &&
    sameList(before.missing, finding.missing) &&
    sameList(before.guesses, own)
  )
    return before;
  return own.length === 0 ? finding : { ...finding, guesses: own };
}

const sameAmount = (a: Amount | undefined, b: Amount | undefined): boolean =>
  a?.value === b?.value && a?.doubt === b?.doubt && a?.unit === b?.unit;

const sameList = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i]);

function policyProblems(refit: Refit, problems: Problem[]): void {
  for (const [id, text] of Object.entries(refit.policies)) {
    const policy = POLICY.get(id);
    const where = `policies.${id}`;
    if (!policy) {
      problems.push({ code: 'unknown-name', where, message: `There is no policy called “${id}”.` });
      continue;
    }
    const read = parseQuantity(text, policy.unit);
    if (!read.ok) problems.push({ ...read.problem, where });
    else {
      const message = policyFault(policy, read.value.value);
      if (message) problems.push({ code: 'out-of-domain', where, message });
    }
  }
}

interface Ground {
  readonly scopeFor: (chain: Chain | null) => Scope;
  readonly worked: Map<string, Worked>;
  readonly recomputed: string[];
  readonly kept: Kept;
}

/** Works through a plan, taking over from the previous assessment what did not change. */
function lay(
  refit: Refit,
  plan: readonly Working[],
  previous: Assessment | undefined,
  system: UnitSystem,
  spread?: Spread,
): Ground {
  const memo: FactMemo = previous?.kept.facts ?? new WeakMap();
  const values = new Map<string, Value>();
  const judgements = new Map<string, Judgement>();
  const worked = new Map<string, Worked>();
  const recomputed: string[] = [];
  const scopes = new Map<Chain | null, Scope>();

  const keep = (key: string, make: () => Value): Value => {
    const now = values.get(key);
    if (now) return now;
    const before = previous?.kept.values.get(key);
    const value = make();
    const kept = before && sameValue(before, value) ? before : value;
    values.set(key, kept);
    return kept;
  };

  const judged: Scope['judged'] = (id, of, make) => {
    const before = previous?.kept.system === system ? previous.kept.judged.get(id) : undefined;
    const spreading = spread?.findings.get(id);
    const same =
      before?.spreading === spreading &&
      before?.values.length === of.length &&
      before.values.every((value, i) => value === of[i]);
    const entry = before && same ? before : { values: of, spreading, judged: make() };
    judgements.set(id, entry);
    return entry.judged;
  };

  const scopeFor = (chain: Chain | null): Scope => {
    let scope = scopes.get(chain);
    if (!scope) {
      scope = {
        context: { refit, chain, memo },
        result: (working, symbol) =>
          worked.get(workedKey(chain, working))?.results.get(symbol) ??
          worked.get(workedKey(null, working))?.results.get(symbol) ?? {
            state: 'inapplicable',
            reason: 'It does not apply here.',
          },
        forChain: scopeFor,
        keep,
        judged,
        system,
        spread,
      };
      scopes.set(chain, scope);
    }
    return scope;
  };

  for (const working of plan) {
    for (const chain of chainsOf(refit, working.scope)) {
      const key = workedKey(chain, working.id);
      const earlier = previous?.worked.get(key);
      const now = work(scopeFor(chain), working, earlier);
      if (now !== earlier) recomputed.push(key);
      worked.set(key, now);
    }
  }
  return { scopeFor, worked, recomputed, kept: { facts: memo, values, judged: judgements, system } };
}

/**
 * Assesses a refit. Give the previous assessment to recompute only what an edit touched.
 * Never throws for what a person may have entered; unreadable facts count as unknown and stand in `problems`.
 */
export function assess(
  refit: Refit,
  options: {
    previous?: Assessment | undefined;
    system?: UnitSystem | undefined;
    /** Chances drawn for this very refit; without them they follow from slopes. */
    spread?: Spread | undefined;
  } = {},
): Assessment {
  const { previous, system = previous?.kept.system ?? 'mm', spread } = options;
  const { scopeFor, worked, recomputed, kept } = lay(refit, PLAN, previous, system, spread);
  const findings: Finding[] = [];
  const notAsked: NotAsked[] = [];
  for (const chain of [...refit.chains, null]) {
    for (const check of CHECKS) {
      if (check.scope !== (chain?.kind ?? 'machine')) continue;
      const answer = judge(scopeFor(chain), check);
      if ('finding' in answer) findings.push(answer.finding);
      else notAsked.push(answer.notAsked);
    }
  }
  const problems: Problem[] = [];
  const questions: Question[] = [];
  policyProblems(refit, problems);
  const guesses = new Set<string>();
  for (const chain of [null, ...refit.chains]) {
    readAll({ refit, chain, memo: kept.facts }, problems, questions, guesses);
  }
  const before = new Map(previous?.findings.map((finding) => [finding.id, finding]));
  return {
    refit,
    findings: findings.map((finding) => withGuesses(finding, guesses, before.get(finding.id))),
    notAsked,
    problems,
    questions,
    worked,
    recomputed,
    kept,
  };
}

/** Scopes in which references resolve as they did for this assessment. */
export function scopesOf(assessment: Assessment): (chain: Chain | null) => Scope {
  return lay(assessment.refit, PLAN, assessment, assessment.kept.system).scopeFor;
}

/** One finding of a changed refit, and nothing that it does not need. Undefined when it is not asked there. */
export function reassess(previous: Assessment, refit: Refit, finding: Finding): Finding | undefined {
  const { scopeFor } = lay(refit, planFor(finding.check), previous, previous.kept.system);
  const chain = refit.chains.find((each) => each.id === finding.chain) ?? null;
  const answer = judge(scopeFor(chain), CHECK.get(finding.check)!);
  return 'finding' in answer ? answer.finding : undefined;
}

/** The working behind a finding: every step from the facts to the verdict, with sources. */
import { POLICY } from '../checks/policies.ts';
import type { Ref } from '../checks/refs.ts';
import { factSpec } from '../parts/index.ts';
import { readable } from '../quantity/index.ts';
import type { Basis } from '../quantity/types.ts';
import { findFact } from '../refit/place.ts';
import type { Chain, Fact } from '../refit/types.ts';
import { type Explanation, explain } from '../sheet/explain.ts';
import type { Argument } from '../sheet/types.ts';
import { type Assessment, workedKey } from './assess.ts';
import { partIn, pathOf } from './context.ts';
import type { Finding } from './finding.ts';
import { bindings, CHECK, WORKING } from './plan.ts';
import { sayPath } from './words.ts';
import type { Worked } from './work.ts';

/** A fact the finding rests on, or would rest on if it were known. */
export interface FactRow {
  readonly path: string;
  readonly name: string;
  /** As typed, or undefined while unknown. */
  readonly text: string | undefined;
  readonly basis: Basis | undefined;
  readonly note: string | undefined;
  /** How to find it out; for unknown and guessed facts. */
  readonly findOut: string | undefined;
  readonly caution: string | undefined;
}

/** A number from a table or stated with its reason. */
export interface StatedRow {
  readonly name: string;
  readonly text: string;
  readonly source: string;
}

export interface PolicyRow {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly usual: string;
  readonly why: string;
  readonly source: string;
}

/** One formula of one working. */
export interface WorkStep extends Explanation {
  /** 'Whirling speed of the screw'. */
  readonly heading: string;
  readonly sheet: string;
  /** 'X/whirl.n_allow'. */
  readonly id: string;
  /** The result with its unit and doubt; undefined while there is none. */
  readonly text: string | undefined;
}

export interface Why {
  readonly finding: Finding;
  readonly why: string;
  readonly caution: string | undefined;
  /** In working order: each step uses facts and steps before it. */
  readonly steps: readonly WorkStep[];
  readonly facts: readonly FactRow[];
  readonly stated: readonly StatedRow[];
  readonly policies: readonly PolicyRow[];
}

/** Gathers what a reference leads to, each thing once, in working order. */
class Trail {
  readonly steps = new Map<string, WorkStep>();
  readonly facts = new Set<string>();
  readonly stated = new Map<string, StatedRow>();
  readonly policies = new Set<string>();
  readonly #assessment: Assessment;

  constructor(assessment: Assessment) {
    this.#assessment = assessment;
  }

  follow(ref: Ref, chain: Chain | null, reader: string): void {
    switch (ref.kind) {
      case 'fact':
        this.facts.add(pathOf(chain, ref.place, ref.fact));
        return;
      case 'table': {
        const path = pathOf(chain, ref.place, ref.fact);
        this.facts.add(path);
        const option = this.#option(path);
        const text = option === undefined ? undefined : ref.rows[option];
        if (text !== undefined)
          this.stated.set(`${reader} ${path}`, {
            name: reader,
            text: withUnit(text, ref.unit),
            source: ref.source,
          });
        return;
      }
      case 'stated':
        this.stated.set(`${reader} ${ref.text}`, {
          name: reader,
          text: withUnit(ref.text, ref.unit),
          source: ref.source,
        });
        return;
      case 'policy':
        this.policies.add(ref.policy);
        return;
      case 'first': {
        const one = ref.of.find((each) => this.#known(each, chain)) ?? ref.of.at(-1);
        if (one) this.follow(one, chain, reader);
        return;
      }
      case 'when': {
        const path = pathOf(chain, ref.place, ref.fact);
        this.facts.add(path);
        const option = this.#option(path);
        const branch = option === undefined ? undefined : (ref.cases[option] ?? ref.otherwise);
        if (branch) this.follow(branch, chain, reader);
        return;
      }
      case 'fitted': {
        const part = partIn({ refit: this.#assessment.refit, chain }, ref.place);
        if (part !== null) this.follow(part === 'none' ? ref.no : ref.yes, chain, reader);
        return;
      }
      case 'axes':
        for (const each of this.#axes()) this.follow(ref.of, each, reader);
        return;
      case 'exact':
        this.follow(ref.of, chain, reader);
        return;
      case 'result':
        this.#result(ref.working, ref.symbol, chain);
        return;
      case 'inapplicable':
        return;
    }
  }

  #axes(): readonly Chain[] {
    return this.#assessment.refit.chains.filter(({ kind }) => kind === 'axis');
  }

  #option(path: string): string | undefined {
    const value = findFact(this.#assessment.refit, path)?.value;
    return value?.kind === 'choice' ? value.option : undefined;
  }

  /** Whether a reference has a value, by following it the way the assessment did. */
  #known(ref: Ref, chain: Chain | null): boolean {
    switch (ref.kind) {
      case 'fact':
        return findFact(this.#assessment.refit, pathOf(chain, ref.place, ref.fact)) !== null;
      case 'table':
        return this.#option(pathOf(chain, ref.place, ref.fact)) !== undefined;
      case 'result': {
        const state = this.#worked(ref.working, chain)?.results.get(ref.symbol)?.state;
        return state === 'known' || state === 'curve';
      }
      case 'first':
        return ref.of.some((each) => this.#known(each, chain));
      case 'when': {
        const option = this.#option(pathOf(chain, ref.place, ref.fact));
        const branch = option === undefined ? undefined : (ref.cases[option] ?? ref.otherwise);
        return branch !== undefined && this.#known(branch, chain);
      }
      case 'fitted': {
        const part = partIn({ refit: this.#assessment.refit, chain }, ref.place);
        return part !== null && this.#known(part === 'none' ? ref.no : ref.yes, chain);
      }
      case 'axes':
        return this.#axes().some((each) => this.#known(ref.of, each));
      case 'exact':
        return this.#known(ref.of, chain);
      case 'inapplicable':
        return false;
      default:
        return true;
    }
  }

  #worked(working: string, chain: Chain | null): Worked | undefined {
    const { worked } = this.#assessment;
    return worked.get(workedKey(chain, working)) ?? worked.get(workedKey(null, working));
  }

  #result(id: string, symbol: string, chain: Chain | null): void {
    const working = WORKING.get(id)!;
    const at = working.scope === 'machine' ? null : chain;
    const key = `${workedKey(at, id)}.${symbol}`;
    if (this.steps.has(key)) return;
    const worked = this.#worked(id, at);
    const { sheet } = working;
    const given: Record<string, Argument> = {};
    for (const [input, value] of worked?.inputs ?? []) {
      if (value.state === 'known') given[input] = value.value;
      else if (value.state === 'curve') given[input] = value.curve;
    }
    const explained = explain(sheet, symbol, given);
    const refs = new Map(bindings(working));
    for (const input of explained.inputs) {
      const spec = sheet.symbols[input.key]!;
      if (spec.kind === 'formula' || spec.kind === 'procedure') this.#result(id, input.key, at);
      else if (spec.kind === 'constant') {
        this.stated.set(spec.name, { name: spec.name, text: spec.value, source: spec.source });
      } else {
        const ref = refs.get(input.key);
        if (ref) this.follow(ref, at, spec.name);
      }
    }
    const value = worked?.results.get(symbol);
    this.steps.set(key, {
      ...explained,
      heading: at ? `${working.title} (${at.id})` : working.title,
      sheet: sheet.id,
      id: key,
      text:
        value?.state === 'known'
          ? isYesOrNo(sheet.symbols[symbol]!)
            ? value.value === 0
              ? 'no'
              : 'yes'
            : readable(value.value, sheet.symbols[symbol]!.unit, {
                half: 2 * spread(value.doubt),
                figures: 4,
              })
          : undefined,
    });
  }
}

/** A sheet says one for yes and zero for no; 'whether …' is its name. */
const isYesOrNo = ({ name, unit }: { readonly name: string; readonly unit: string }): boolean =>
  unit === '1' && /^whether /i.test(name);

const spread = (doubt: ReadonlyMap<string, number>): number =>
  Math.sqrt([...doubt.values()].reduce((sum, part) => sum + part * part, 0));

const withUnit = (text: string, unit: string): string =>
  unit === '1' || /[^\d\s.,±eE+-]/.test(text) ? text : `${text} ${unit}`;

/** A fact's value in words. */
export function sayValue(fact: Fact | null, path: string): string | undefined {
  if (!fact) return undefined;
  const [place, name] = path.split('.').slice(-2) as [string, string];
  const spec = factSpec(place, name);
  const { value } = fact;
  const options = spec && 'options' in spec ? spec.options : {};
  if (value.kind === 'choice') return options[value.option] ?? value.option;
  if (value.kind === 'choices') return value.options.map((option) => options[option] ?? option).join('; ');
  return value.text;
}

function factRow(assessment: Assessment, path: string): FactRow {
  const fact = findFact(assessment.refit, path);
  const [place, name] = path.split('.').slice(-2) as [string, string];
  const spec = factSpec(place, name);
  const ask = fact === null || fact.basis === 'guess';
  return {
    path,
    name: sayPath(path),
    text: sayValue(fact, path),
    basis: fact?.basis,
    note: fact?.note,
    findOut: ask
      ? (spec?.findOut ?? 'Look whether the machine has one. Answer “fitted” or “none”.')
      : undefined,
    caution: ask ? spec?.caution : undefined,
  };
}

/** The working of a finding; undefined when the assessment has no such finding. */
export function why(assessment: Assessment, id: string): Why | undefined {
  const finding = assessment.findings.find((each) => each.id === id);
  const check = finding && CHECK.get(finding.check);
  if (!finding || !check) return undefined;
  const chain = assessment.refit.chains.find((each) => each.id === finding.chain) ?? null;
  const trail = new Trail(assessment);
  for (const condition of check.onlyIf ?? []) {
    if ('above' in condition) trail.follow(condition.above, chain, check.title);
    else if ('fact' in condition) trail.facts.add(pathOf(chain, condition.place, condition.fact));
  }
  if (check.form === 'ratio')
    for (const ref of [check.demand, check.capacity]) trail.follow(ref, chain, check.title);
  if (check.form === 'band') {
    for (const ref of [check.value, check.low, check.high]) trail.follow(ref, chain, check.title);
  }
  if (check.form === 'fact')
    for (const ref of Object.values(check.reads ?? {})) trail.follow(ref, chain, check.title);
  if (check.form !== 'fact') trail.policies.add(check.tight);
  for (const id of finding.policies) trail.policies.add(id);
  const facts = [...new Set([...trail.facts, ...finding.facts, ...finding.missing])].sort();
  return {
    finding,
    why: check.why,
    caution: check.caution,
    steps: [...trail.steps.values()],
    facts: facts.map((path) => factRow(assessment, path)),
    stated: [...trail.stated.values()],
    policies: [...trail.policies].map((policyId) => {
      const policy = POLICY.get(policyId)!;
      return {
        id: policyId,
        name: policy.name,
        text: withUnit(assessment.refit.policies[policyId] ?? policy.usual, policy.unit),
        usual: withUnit(policy.usual, policy.unit),
        why: policy.why,
        source: policy.source,
      };
    }),
  };
}

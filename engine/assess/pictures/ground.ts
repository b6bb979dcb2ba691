/** What every picture reads: the workings of one axis at each state of the mains, its findings, and words for numbers. */

import type { Ref } from '../../checks/refs.ts';
import type { FactId, PlaceId } from '../../parts/index.ts';
import { formatQuantity, preferred } from '../../quantity/index.ts';
import { type Verdict, worstVerdict } from '../../quantity/verdict.ts';
import type { Chain } from '../../refit/types.ts';
import type { Assessment } from '../assess.ts';
import { readPath } from '../context.ts';
import type { Finding } from '../finding.ts';
import { resolve } from '../resolve.ts';
import type { Known, KnownCurve, Value } from '../value.ts';
import { missingSentence } from '../words.ts';
import type { Worked } from '../work.ts';
import { type Mains, type MainsScope, scopesAt } from './mains.ts';
import type { ChartPicture, Scale } from './types.ts';

export interface Ground {
  readonly chain: string;
  value(ref: Ref, mains?: Mains): Value;
  worked(working: string, mains?: Mains): Worked;
  finding(check: string): Finding | undefined;
  /** The option of a choice, or why there is none. */
  choice<P extends PlaceId>(place: P, fact: FactId<P>): string | Stopped;
  /** The unit a person reads instead of this one. */
  unit(unit: string): string;
  /** A number for a sentence; `unit` is the one for millimetre people. */
  say(value: number, unit: string): string;
}

export function groundOf(assessment: Assessment, chain: Chain, system: Assessment['kept']['system']): Ground {
  const scopes = new Map<Mains, MainsScope>();
  const at = (mains: Mains): MainsScope => {
    let scope = scopes.get(mains);
    if (!scope) {
      scope = scopesAt(assessment, mains)(chain);
      scopes.set(mains, scope);
    }
    return scope;
  };
  return {
    chain: chain.id,
    value: (ref, mains = 'low') => resolve(at(mains), ref),
    worked: (id, mains = 'low') => {
      const worked = at(mains).worked(id);
      if (!worked) throw new Error(`no working ${id}`);
      return worked;
    },
    finding: (check) => assessment.findings.find((each) => each.id === `${chain.id}.${check}`),
    choice: (place, fact) => {
      const reading = readPath(at('low').context, place, fact);
      if (reading.state === 'read')
        return reading.read.kind === 'choice' ? reading.read.option : { why: 'inapplicable' };
      if (reading.state !== 'bad') return stopped([reading])!;
      return { why: 'missing', missing: [reading.path], says: reading.problem.message };
    },
    unit: (unit) => preferred(unit, system),
    say: (value, unit) => formatQuantity(value, preferred(unit, system), { digits: 3 }),
  };
}

/** What cannot be drawn, and why. */
export type Stopped =
  | { readonly why: 'inapplicable' }
  | { readonly why: 'missing'; readonly missing: readonly string[]; readonly says: string };

/** The reason why these values do not all stand for numbers or curves, or undefined when they do. */
export function stopped(values: readonly Value[]): Stopped | undefined {
  if (values.some((value) => value.state === 'inapplicable')) return { why: 'inapplicable' };
  const missing = [
    ...new Set(values.flatMap((value) => (value.state === 'missing' ? [...value.facts] : []))),
  ];
  if (missing.length > 0) return { why: 'missing', missing, says: missingSentence(missing) };
  const refused = values.find((value) => value.state === 'no-answer');
  if (refused?.state === 'no-answer')
    return {
      why: 'missing',
      missing: [],
      says: `It cannot be drawn: ${refused.reason.replace(/\.?$/, '.')}`,
    };
  return undefined;
}

export const known = (value: Value): value is Known => value.state === 'known';
export const numberOf = (value: Value): number | undefined =>
  value.state === 'known' ? value.value : undefined;
export const isCurve = (value: Value | undefined): value is KnownCurve => value?.state === 'curve';

export const worst = (findings: readonly (Pick<Finding, 'verdict'> | undefined)[]): Verdict | undefined =>
  worstVerdict(findings.filter((finding) => finding !== undefined));

export const idsOf = (findings: readonly (Finding | undefined)[]): string[] =>
  findings.flatMap((finding) => (finding ? [finding.id] : []));

/** A chart of which something needed is unknown. */
export function blank(
  head: Pick<ChartPicture, 'id' | 'title' | 'question'> & { readonly x: Scale; readonly y: Scale },
  findings: readonly string[],
  reason: Extract<Stopped, { why: 'missing' }>,
): ChartPicture {
  const { x, y, id, title, question } = head;
  return {
    kind: 'chart',
    id,
    title,
    question,
    says: reason.says,
    verdict: 'unknown',
    findings,
    missing: reason.missing,
    x,
    y,
    series: [],
    marks: [],
    table: { columns: [], rows: [] },
  };
}

/** Findings as JSON for scripts; docs/command-line.md describes it. Values are SI, each with the unit it is read in. */
import type { Amount, Assessment, Finding } from '../../engine/assess/index.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import type { Group } from '../groups.ts';

/** An amount in SI with its standard uncertainty; nothing for what is no finite number, which JSON cannot hold. */
const amountJson = (amount: Amount | undefined) =>
  amount && Number.isFinite(amount.value)
    ? { value: amount.value, doubt: Number.isFinite(amount.doubt) ? amount.doubt : null, unit: amount.unit }
    : undefined;

const finite = (value: number | null | undefined): number | null | undefined =>
  typeof value === 'number' && !Number.isFinite(value) ? undefined : value;

export function findingJson(finding: Finding) {
  const { id, check, chain, place, title, form, verdict, sentence, side, basis, margin, marginRange } =
    finding;
  return {
    id,
    check,
    chain,
    place,
    title,
    form,
    verdict,
    sentence,
    asked: amountJson(finding.asked),
    there: amountJson(finding.there),
    margin: finite(margin),
    marginRange: marginRange?.every(Number.isFinite) ? marginRange : undefined,
    chance: finite(finding.chance),
    doubts: finding.doubts,
    side,
    basis,
    facts: finding.facts,
    guesses: finding.guesses,
    missing: finding.missing,
    policies: finding.policies,
  };
}

export function findingsJson(assessment: Assessment, findings: readonly Finding[], groups: readonly Group[]) {
  const { refit, notAsked, questions, problems } = assessment;
  return {
    format: 'fettle-findings',
    version: 1,
    refit: { id: refit.id, name: refit.name },
    counts: countVerdicts(findings),
    findings: findings.map(findingJson),
    notAsked: notAsked.filter((each) => groups.some((group) => group.holds(each))),
    questions: questions.map(({ where, message }) => ({ where, message })),
    problems: problems.map(({ where, message }) => ({ where, message })),
  };
}

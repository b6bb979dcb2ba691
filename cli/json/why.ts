/** A finding with its working as JSON for scripts. */
import type { Remedy, Why } from '../../engine/assess/index.ts';
import { findingJson } from './findings.ts';

export function whyJson(answer: Why, found: readonly Remedy[]) {
  const { finding, why, caution, steps, facts, stated, policies } = answer;
  return {
    format: 'fettle-why',
    version: 1,
    finding: findingJson(finding),
    why,
    caution,
    steps: steps.map((step) => ({
      id: step.id,
      heading: step.heading,
      sheet: step.sheet,
      symbol: step.key,
      name: step.name,
      formula: step.plain,
      withNumbers: step.plainWithNumbers,
      result: step.text,
      value: step.outcome.state === 'known' ? step.outcome.value : undefined,
      says: step.says,
      source: step.source,
    })),
    facts,
    stated,
    policies,
    remedies: found,
  };
}

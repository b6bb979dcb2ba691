/** Everything a screen shows of one assessment. */

import { type Assessment, answer, type Finding, type Step } from '../../engine/assess/index.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import type { Snapshot } from './protocol.ts';

/** What to find out next is only worked out for what is recorded: a draft must answer within a frame. */
export function snapshot(
  assessment: Assessment,
  steps: readonly Step[] = [],
  findings: readonly Finding[] = assessment.findings,
): Snapshot {
  const answers: Record<string, string> = {};
  for (const chain of [...assessment.refit.chains.map((each) => each.id), null]) {
    answers[chain ?? 'machine'] = answer(findings.filter((finding) => finding.chain === chain));
  }
  const { notAsked, problems, questions } = assessment;
  return { findings, notAsked, problems, questions, next: steps, answers, counts: countVerdicts(findings) };
}

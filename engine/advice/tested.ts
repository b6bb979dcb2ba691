/** Bench tests that were recorded on a part, run again on their readings. */
import { METHOD, runMethod } from '../evidence/index.ts';
import type { Refit } from '../refit/types.ts';
import type { Reason, TestResult } from './types.ts';

/** What a bad result asks for, where it is not the usual repair. */
const TOWARDS: Readonly<Record<string, Reason['towards']>> = { 'weak-magnet': 'replace' };

export function testedPart(refit: Refit, part: string): { tests: TestResult[]; reasons: Reason[] } {
  const tests: TestResult[] = [];
  const reasons: Reason[] = [];
  for (const evidence of Object.values(refit.evidence)) {
    const method = evidence.part === part ? METHOD.get(evidence.method) : undefined;
    if (!method) continue;
    const source = `measured ${evidence.when.slice(0, 10)}: ${method.title}`;
    const run = runMethod(method, evidence);
    if (!run.ok) {
      tests.push({
        title: method.title,
        level: 'note',
        source,
        sentence: `It cannot be worked out. ${run.problem.message}`,
      });
      continue;
    }
    for (const { level, sentence } of run.value.verdicts) {
      tests.push({ title: method.title, level, sentence, source });
      if (level === 'bad') reasons.push({ towards: TOWARDS[method.id] ?? 'repair', sentence, source });
    }
  }
  return { tests, reasons };
}

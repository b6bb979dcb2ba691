/** The lead against pitch × starts: a yes or no, with its working shown and no margin. */
import { expect, test } from 'vitest';
import { sample } from '../../samples/read.fixture.ts';
import { applyEdit, type Refit } from '../refit/index.ts';
import { assess, setPath, why } from './index.ts';

function lead(refit: Refit, text: string, more: Readonly<Record<string, string>> = {}, system?: 'in') {
  let now = refit;
  for (const [path, value] of Object.entries({ 'X.screw.lead': text, ...more })) {
    const setting = setPath(now, path, value);
    if (!setting.ok) throw new Error(setting.problem.message);
    const after = applyEdit(now, { changes: setting.value.changes });
    if (!after.ok) throw new Error(after.problem.message);
    now = after.value;
  }
  const assessment = assess(now, system ? { system } : {});
  return { finding: assessment.findings.find(({ id }) => id === 'X.lead')!, assessment };
}
const lathe = sample('carriage-works-lathe');

test.each([
  ['5 mm', 'fits', 'agrees'],
  ['5.04 mm', 'fits', 'agrees'],
  ['5.2 mm', 'fails', 'one of the three is wrong'],
  ['10 mm', 'fails', 'pitch × starts makes 5'],
  ['5.1 ± 0.2 mm', 'tight', 'Measure over more turns'],
  ['4.6 ± 0.1 mm', 'fails', 'one of the three is wrong'],
] as const)('derived: %s against 5 mm %s', (text, verdict, words) => {
  const { finding } = lead(lathe, text);
  expect(finding.verdict).toBe(verdict);
  expect(finding.sentence).toContain(words);
  expect(finding.form).toBe('fact');
  expect(finding).not.toHaveProperty('margin');
  expect(finding).not.toHaveProperty('there');
});

test('derived: it rests on lead, pitch, starts and the habit, and shows its working', () => {
  const { finding, assessment } = lead(lathe, '5 mm');
  expect(finding.facts).toEqual(['X.screw.lead', 'X.screw.pitch', 'X.screw.starts']);
  expect(finding.policies).toEqual(['lead-agreement']);
  const sheet = why(assessment, 'X.lead')!;
  expect(sheet.steps.map(({ name }) => name)).toContain('lead from pitch and starts');
  expect(sheet.policies.map(({ id }) => id)).toContain('lead-agreement');
});

test('derived: in inches it speaks inches', () => {
  expect(lead(lathe, '5 mm', {}, 'in').finding.sentence).toMatch(/0\.197 in|0\.1969 in/);
});

import { expect, test } from 'vitest';
import { run } from './run.fixture.ts';

const answers = async (...words: string[]) => {
  const { out } = await run('sheet', ...words, '--json');
  const found: { key: string; value?: number; doubt?: number }[] = JSON.parse(out).answers;
  return new Map(found.map((each) => [each.key, each]));
};

test('derived: the lead of a screw carries the doubt of its pitch once for each start', async () => {
  const measured = await answers('screw-lead', 'P=2 ± 0.01 mm', 'z=3', '--basis', 'measured');
  expect(measured.get('Ph')!.value).toBeCloseTo(0.006, 12);
  expect(measured.get('Ph')!.doubt).toBeCloseTo((3 * 1e-5) / 2, 12);
  const told = await answers('screw-lead', 'P=2 ± 0.01 mm', 'z=3', '--basis', 'told');
  expect(told.get('Ph')!.doubt).toBeCloseTo((3 * 1e-5) / Math.sqrt(3), 12);
});

test('derived: half way between two points of a curve lies half way between their torques', async () => {
  const found = await answers(
    'stepper-curve',
    'pullOut=1.1 N·m at 300 r/min; 0.8 N·m at 600 r/min',
    'w=450 r/min',
  );
  expect(found.get('T_po')!.value).toBeCloseTo(0.95, 12);
});

test('derived: what is missing is named, with exit 3', async () => {
  const { code, out } = await run('sheet', 'screw-lead', 'P=5 mm');
  expect(code).toBe(3);
  expect(out).toContain('it needs z (number of starts)');
});

test.each([
  'P=',
  'P=words',
  'P=5 kg',
  'P=0 mm',
  'P=-5 mm',
  'P=1e999 mm',
  'P=NaN',
  'P=5 bananas',
  'P=1,250 mm',
  '__proto__=1',
  'Ph=5 mm',
  'nothing',
  `P=${'1'.repeat(1_000_000)}`,
])('derived: a sheet refuses an input that cannot be (%#)', async (word) => {
  const { code, err, out } = await run('sheet', 'screw-lead', word);
  expect(code).toBe(2);
  expect(out).toBe('');
  expect(err).not.toMatch(/mistake of its own|\n\s+at /);
});

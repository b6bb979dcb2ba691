import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  chiSquareProbability,
  chiSquareQuantile,
  coverage,
  normalProbability,
  normalQuantile,
  studentProbability,
  studentQuantile,
} from './index.ts';

const near = (own: number, other: number, relative: number, what: string): void =>
  expect(Math.abs(own - other), `${what}: ${own} against ${other}`).toBeLessThanOrEqual(
    relative * Math.abs(other),
  );

test('published: Student t at 95, 95.45 and 99 % (JCGM 100:2008, table G.2)', () => {
  const TABLE: readonly (readonly [number, number, number])[] = [
    [16, 95, 2.12],
    [16, 95.45, 2.17],
    [16, 99, 2.92],
  ];
  for (const [freedom, level, printed] of TABLE)
    expect(Math.abs(coverage(freedom, level / 100) - printed)).toBeLessThanOrEqual(0.005);
});

test('derived: t of one, two and four degrees of freedom in closed form', () => {
  for (const level of [1e-8, 0.1, 0.5, 0.6827, 0.9, 0.95, 0.99, 0.999999]) {
    near(coverage(1, level), Math.tan((Math.PI * level) / 2), 1e-10, `1 at ${level}`);
    near(coverage(2, level), level * Math.sqrt(2 / ((1 - level) * (1 + level))), 1e-11, `2 at ${level}`);
  }
  // ν = 4: the tail outside solves a cubic (W. T. Shaw, 2006).
  for (const level of [0.5, 0.9, 0.95, 0.99]) {
    const a = (1 - level) * (1 + level);
    const q = (4 * Math.cos(Math.acos(Math.sqrt(a)) / 3)) / Math.sqrt(a);
    near(coverage(4, level), Math.sqrt(q - 4), 1e-11, `4 at ${level}`);
  }
});

test('derived: limits: no coverage is no width, endless freedom is the normal distribution, χ² of two is an exponential', () => {
  expect(coverage(5, 0)).toBe(0);
  near(coverage(Number.POSITIVE_INFINITY), 1.959963984540054, 1e-14, 'normal');
  near(coverage(1e6 - 1), coverage(1e6), 1e-9, 'both sides of the change of method');
  for (const p of [1e-9, 0.3, 0.7, 0.999999])
    near(chiSquareQuantile(p, 2), -2 * Math.log1p(-p), 1e-12, `${p}`);
  for (const p of [0.05, 0.6, 0.99])
    near(chiSquareQuantile(p, 1), normalQuantile((1 + p) / 2) ** 2, 1e-11, `${p}`);
});

test('derived: probability and quantile undo each other', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }),
      fc.double({ min: 0.2, max: 1e5, noNaN: true }),
      (p, freedom) => {
        near(studentProbability(studentQuantile(p, freedom), freedom), p, 1e-10, `t ${p} ${freedom}`);
        near(chiSquareProbability(chiSquareQuantile(p, freedom), freedom), p, 1e-10, `χ² ${p} ${freedom}`);
        near(normalProbability(normalQuantile(p)), p, 1e-11, `normal ${p}`);
        near(studentQuantile(1 - p, freedom), -studentQuantile(1 - (1 - p), freedom), 1e-9, 'symmetry');
      },
    ),
    { numRuns: 300 },
  );
});

test('derived: what has no answer is refused', () => {
  for (const bad of [() => coverage(0), () => coverage(-1), () => coverage(Number.NaN)])
    expect(bad).toThrow(/above 0/);
  for (const level of [1, -0.1, Number.NaN, 95]) expect(() => coverage(5, level)).toThrow(/level/);
  for (const p of [0, 1, Number.NaN]) {
    expect(() => studentQuantile(p, 3)).toThrow(/between 0 and 1/);
    expect(() => chiSquareQuantile(p, 3)).toThrow(/between 0 and 1/);
  }
  expect(() => chiSquareQuantile(0.5, Number.POSITIVE_INFINITY)).toThrow(/finite/);
});

interface Outside {
  readonly student: readonly { given: { tail: number; freedom: number }; result: number }[];
  readonly chi: readonly { given: { p: number; freedom: number }; result: number }[];
  readonly normal: readonly { given: { tail: number }; result: number }[];
  readonly below: readonly { given: { t: number; freedom: number }; result: number }[];
}

const SCRIPT = fileURLToPath(new URL('../../tests/outside/quantiles.py', import.meta.url));

function agrees({ student, chi, normal, below }: Outside, relative: number): void {
  for (const { given, result } of student)
    near(-studentQuantile(given.tail, given.freedom), result, relative, JSON.stringify(given));
  for (const { given, result } of chi)
    near(chiSquareQuantile(given.p, given.freedom), result, relative, `χ² ${JSON.stringify(given)}`);
  for (const { given, result } of normal)
    near(-normalQuantile(given.tail), result, relative, JSON.stringify(given));
  for (const { given, result } of below)
    near(studentProbability(given.t, given.freedom), result, relative, JSON.stringify(given));
}

test('derived: quantiles agree with kept results of scipy (second method)', () => {
  const outside = JSON.parse(readFileSync(SCRIPT.replace(/py$/, 'json'), 'utf8')) as Outside;
  expect(outside.student.length).toBeGreaterThan(100);
  agrees(outside, 1e-10);
});

const hasScipy = spawnSync('/usr/bin/python3', ['-c', 'import scipy']).status === 0;

test.skipIf(!hasScipy)(
  'derived: quantiles agree with scipy run again (second method; skipped where /usr/bin/python3 has no scipy)',
  { timeout: 60_000 },
  () => {
    const run = spawnSync('/usr/bin/python3', [SCRIPT], { encoding: 'utf8' });
    expect(run.stderr).toBe('');
    // The searches of scipy before 1.11 stop at some 1e-9.
    agrees(JSON.parse(run.stdout) as Outside, 1e-8);
  },
);

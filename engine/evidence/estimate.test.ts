/** Doubt carried through sheets, against closed forms and against simulation. */
import { expect, test } from 'vitest';
import { benchCoastDown } from '../handbook/bench-coast-down.ts';
import { benchResistance } from '../handbook/bench-resistance.ts';
import { seeded } from '../handbook/samples.ts';
import { evaluate } from '../sheet/index.ts';
import { doubtOf, estimate, exact, meanOf, minus, standardOf, through } from './estimate.ts';
import { lineThrough } from './line.ts';
import type { Estimate } from './types.ts';

const of = (value: number, id: string, amount: number): Estimate =>
  estimate(value, doubtOf({ id, name: id, kind: 'instrument' }, amount));

test('derived: what two values share cancels in their difference and adds in their sum', () => {
  const [a, b] = [of(5, 'meter', 0.1), of(3, 'meter', 0.1)];
  expect(standardOf(minus(a, b))).toBe(0);
  expect(standardOf(minus(a, of(3, 'other', 0.1)))).toBeCloseTo(Math.hypot(0.1, 0.1), 15);
  const ratio = through(benchResistance, 'R', {
    V: of(10, 'm', 0.1),
    I: of(2, 'm', 0.02),
    R_probe: exact(0),
  });
  expect(standardOf(ratio)).toBeLessThan(1e-15);
});

test('derived: more readings shrink their scatter and not what their meter is wrong by', () => {
  const readings = (n: number): Estimate[] =>
    Array.from({ length: n }, (_, at) => of(10 + (at % 2 ? 0.1 : -0.1), 'meter', 0.05));
  const [few, many] = [meanOf(readings(4), 'scatter'), meanOf(readings(400), 'scatter')];
  expect(few.parts.find(({ id }) => id === 'meter')!.amount).toBeCloseTo(0.05, 12);
  expect(many.parts.find(({ id }) => id === 'meter')!.amount).toBeCloseTo(0.05, 12);
  expect(many.parts.find(({ kind }) => kind === 'readings')!.amount).toBeLessThan(0.0051);
});

test('derived: a last digit counts where the readings do not scatter, and is in the scatter where they do', () => {
  const read = (value: number, row: number): Estimate =>
    estimate(value, doubtOf({ id: `digit:${row}`, name: 'digit', kind: 'resolution' }, 0.1 / Math.sqrt(12)));
  const still = meanOf([1.3, 1.3, 1.3].map(read), 'still');
  expect(still.parts.map(({ kind }) => kind)).toContain('resolution');
  const jumping = meanOf([1.2, 1.5, 1.1, 1.6].map(read), 'jumping');
  expect(jumping.parts.map(({ kind }) => kind)).toEqual(['readings']);
});

test('derived: where a formula bends, the doubt is that of a simulation', () => {
  const given = { J_a: of(0.00125, 'J', 1e-5), t1: of(1.4, 't1', 0.12), t2: of(3.6, 't2', 0.2) };
  const found = through(benchCoastDown, 'J_times', given);
  expect(found.parts.some(({ id }) => id.startsWith('bend:'))).toBe(true);
  const random = seeded(5);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const draws: number[] = [];
  for (let n = 0; n < 40_000; n++) {
    const at = Object.fromEntries(
      Object.entries(given).map(([key, { value, parts }]) => [key, value + parts[0]!.amount * normal()]),
    );
    const outcome = evaluate(benchCoastDown, at).J_times;
    if (outcome.state === 'known') draws.push(outcome.value);
  }
  const mean = draws.reduce((sum, each) => sum + each, 0) / draws.length;
  const deviation = Math.sqrt(draws.reduce((sum, each) => sum + (each - mean) ** 2, 0) / draws.length);
  // Terms of third order are left out of the estimate.
  expect(standardOf(found) / deviation).toBeGreaterThan(0.95);
  expect(standardOf(found) / deviation).toBeLessThan(1.1);
});

test('derived: a line through exact points is that line, and a meter wrong by a share turns both by it', () => {
  const points = [1, 2, 3, 4].map((x) => ({ x: exact(x), y: of(2 + 3 * x, 'gain', 0.01 * (2 + 3 * x)) }));
  const { intercept, slope } = lineThrough(points, 'line', 'x');
  expect(intercept.value).toBeCloseTo(2, 12);
  expect(slope.value).toBeCloseTo(3, 12);
  expect(standardOf(intercept)).toBeCloseTo(0.02, 12);
  expect(standardOf(slope)).toBeCloseTo(0.03, 12);
});

test('derived: the value of a scattered line in the middle of its points is surer than at its start', () => {
  const points = [1, 2, 3, 4, 5].map((x, at) => ({
    x: exact(x),
    y: exact(2 * x + [0.1, -0.1, 0.05, -0.1, 0.05][at]!),
  }));
  const { intercept, slope, deviation } = lineThrough(points, 'line', 'x');
  const middle = {
    value: 0,
    parts: [...intercept.parts, ...slope.parts.map((part) => ({ ...part, amount: 3 * part.amount }))],
  };
  const merged = new Map<string, number>();
  for (const { id, amount } of middle.parts) merged.set(id, (merged.get(id) ?? 0) + amount);
  // At the mean of x only the mean of y is in doubt: s/√n.
  expect(Math.hypot(...merged.values())).toBeCloseTo(deviation / Math.sqrt(5), 10);
  expect(standardOf(intercept)).toBeGreaterThan(deviation / Math.sqrt(5));
});

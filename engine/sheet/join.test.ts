/** Sheets joined into one. */
import { expect, test } from 'vitest';
import { defineSheet } from './define.ts';
import { evaluate } from './evaluate.ts';
import { joinSheets } from './join.ts';
import { lanes } from './lanes.ts';
import { constant, formula, input, procedure } from './symbols.ts';

const area = defineSheet({
  id: 'area',
  title: 'Area',
  about: 'made up',
  symbols: {
    d: input('diameter', 'mm', { domain: 'positive' }),
    A: formula('area', 'mm²', 'pi / 4 * d^2', 'geometry'),
  },
});
const pressure = defineSheet({
  id: 'pressure',
  title: 'Pressure',
  about: 'made up',
  symbols: {
    F: input('force', 'N'),
    A: input('area', 'mm²', { domain: 'positive' }),
    k: constant('share', '1', '2', 'made up'),
    p: formula('pressure', 'MPa', 'k * F / A', 'definition'),
    h: procedure('half', 'MPa', {
      reads: ['p'],
      run: (p) => (p as number) / 2,
      says: 'half of it',
      source: 'made up',
    }),
  },
});
const number = { kind: 'input', name: 'given', unit: '1' } as const;
const whole = joinSheets('whole', { d: number, F: number }, [
  { name: 'one', sheet: area, bind: { d: 'd' } },
  { name: 'two', sheet: pressure, bind: { F: 'F', A: 'one/A' } },
  { name: 'three', sheet: pressure, bind: { F: 'F' } },
  { name: 'both', how: 'sum', of: ['one/A', 'one/A'] },
]);
const A = (Math.PI / 4) * 0.01;

test('derived: a joined sheet gives what its pieces give one after the other', () => {
  const out = evaluate(whole, { d: 0.1, F: 5 });
  expect(out['one/A']).toEqual({ state: 'known', value: A });
  expect(out['two/p']).toMatchObject({ value: expect.closeTo(10 / A, 9) });
  expect(out['two/h']).toMatchObject({ value: expect.closeTo(5 / A, 9) });
  expect(out.both).toMatchObject({ value: expect.closeTo(2 * A, 12) });
});

test('derived: what a piece lacks, and what lies outside its own domain, has no value', () => {
  expect(evaluate(whole, { d: 0.1, F: 5 })['three/p']).toMatchObject({ state: 'missing' });
  expect(evaluate(whole, { d: -1, F: 5 })['one/A']).toMatchObject({
    state: 'undefined',
    reason: expect.stringContaining('above zero'),
  });
});

test('derived: lanes of a joined sheet agree with its single answers', () => {
  const d = Float64Array.from([0.1, 0.2, -1, 0.4, 0.5]);
  const { values } = lanes(whole, { d, F: 5 }, 5, { only: ['two/h', 'both'] });
  d.forEach((each, lane) => {
    const one = evaluate(whole, { d: each, F: 5 });
    for (const key of ['two/h', 'both']) {
      const now = (values[key] as Float64Array)[lane]!;
      const outcome = one[key]!;
      if (outcome.state === 'known') expect(now).toBeCloseTo(outcome.value, 9);
      else expect(now).toBeNaN();
    }
  });
});

test('a key that no piece before it makes is refused by name', () => {
  expect(() => joinSheets('bad', {}, [{ name: 'one', sheet: area, bind: { d: 'gone' } }])).toThrow(
    "one/d reads 'gone'",
  );
});

/** What is asked back of numbers typed for threads and cuts. */
import { expect, test } from 'vitest';
import { oddWords } from './index.ts';

test('derived: ten times the span is far, a little beyond is a question, within is nothing', () => {
  // Usual is up to 40 m/min.
  expect(oddWords({ rapid: '40 m/min' })).toEqual([]);
  expect(oddWords({ rapid: '41 m/min' })).toMatchObject([{ word: 'rapid', isFar: false }]);
  expect(oddWords({ rapid: '400 m/min' })).toMatchObject([{ isFar: false }]);
  expect(oddWords({ rapid: '401 m/min' })).toMatchObject([{ isFar: true }]);
  // Usual is from 0.5 m/min.
  expect(oddWords({ rapid: '51 mm/min' })).toMatchObject([{ isFar: false }]);
  expect(oddWords({ rapid: '49 mm/min' })).toMatchObject([{ isFar: true }]);
});

test('derived: a speed is asked back in the way it was said', () => {
  expect(oddWords({ speed: '300 r/min' })).toEqual([]);
  expect(oddWords({ speed: '120 m/min' })).toEqual([]);
  expect(oddWords({ speed: '2100 m/min' })[0]!.sentence).toBe(
    'Is the speed really 2100 m/min? Usual is 1 m/min to 2000 m/min.',
  );
  expect(oddWords({ speed: '50000 r/min' })[0]!.sentence).toMatch(/50000 r\/min.*5 r\/min to 40000 r\/min/);
});

test.each(['', 'NaN', '-5 mm', '0 mm', '5 bananas', 'through', 'x'.repeat(5000), '__proto__'])(
  'derived: %s is left to whoever reads it',
  (typed) => {
    expect(oddWords({ length: typed, hole: typed, constructor: typed, __proto__: typed })).toEqual([]);
  },
);

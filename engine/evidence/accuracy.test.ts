import { expect, test } from 'vitest';
import { limitsOf, parseAccuracy } from './accuracy.ts';

/** Half width for a reading of 20 V shown to 0.01 V. */
function half(text: string): number {
  const read = parseAccuracy(text, 'V');
  if (!read.ok) throw new Error(read.problem.message);
  return limitsOf(read.value, 20, 0.01);
}

test.each([
  ['0.5 %', 0.1],
  ['0,5 %', 0.1],
  ['0.5 % + 2 digits', 0.12],
  ['±(0.5 % + 2 digits)', 0.12],
  ['+/-(0.5% rdg + 2 dgt)', 0.12],
  ['0.5 % of reading + 2 counts', 0.12],
  ['1 % + 0.03 V', 0.23],
  ['1 % + 30 mV', 0.23],
  ['0.05 V', 0.05],
  ['0.05', 0.05],
  ['3 digits', 0.03],
  ['0 %', 0],
])('derived: an accuracy of %s', (text, wanted) => {
  expect(half(text)).toBeCloseTo(wanted, 12);
});

test.each([
  'good',
  '',
  '-1 %',
  '1 % - 2 digits',
  '60 %',
  '1 kg',
  '1 % + ',
  '1e400',
  'NaN',
  '0.1 ± 0.1 V',
  '9'.repeat(500),
])('derived: “%s” is no accuracy and is refused with an example', (text) => {
  const read = parseAccuracy(text, 'V');
  expect(read.ok).toBe(false);
  if (!read.ok) expect(read.problem.message).toMatch(/0\.5 % \+ 2 digits/);
});

import { describe, expect, test } from 'vitest';
import { addMoney, compareMoney, type Money, parseMoney, sayMoney } from './money.ts';

const read = (text: string): Money => {
  const found = parseMoney(text);
  if (!found.ok) throw new Error(found.problem.message);
  return found.value;
};

describe('derived: money as people write it', () => {
  test.each([
    ['120 EUR', 'EUR', 120, 120, 120],
    ['€120', 'EUR', 120, 120, 120],
    ['£80–120', 'GBP', 80, 100, 120],
    ['80 to 120 gbp', 'GBP', 80, 100, 120],
    ['80-100-150 €', 'EUR', 80, 100, 150],
    ['$1 250', '$', 1250, 1250, 1250],
    ['100 ± 20 USD', 'USD', 80, 100, 120],
    ['£80 to £120', 'GBP', 80, 100, 120],
    ['12,50 kr', 'KR', 12.5, 12.5, 12.5],
    ['0', null, 0, 0, 0],
    ['nothing', null, 0, 0, 0],
  ])('%s', (text, currency, low, likely, high) => {
    expect(read(text)).toEqual({ text, currency, low, likely, high });
  });

  test.each([
    ['', 'empty'],
    ['120', 'unit-missing'],
    ['abc', 'not-a-number'],
    ['1,250 EUR', 'ambiguous'],
    ['1.250 EUR', 'ambiguous'],
    ['80 EUR to 90 GBP', 'ambiguous'],
    ['120–80 EUR', 'out-of-domain'],
    ['-5 EUR', 'not-a-number'],
    ['1e300 EUR', 'out-of-domain'],
    ['1-2-3-4 EUR', 'not-a-number'],
    ['NaN EUR', 'ambiguous'],
    ['x'.repeat(10_000), 'too-long'],
  ])('%s is refused in a sentence', (text, code) => {
    const found = parseMoney(text);
    expect(found.ok ? 'taken' : found.problem.code).toBe(code);
    if (!found.ok) expect(found.problem.message).toMatch(/[.?]$/);
  });
});

test('derived: sums keep the ends; currencies are never mixed, and nothing is nothing in each', () => {
  expect(addMoney([read('80–120 EUR'), read('10 EUR'), read('0')])).toMatchObject({
    low: 90,
    likely: 110,
    high: 130,
  });
  expect(addMoney([read('80 EUR'), read('80 GBP')])).toBeUndefined();
  expect(addMoney([])).toMatchObject({ currency: null, likely: 0 });
  expect(compareMoney(read('80–120 EUR'), read('130 EUR'))).toBe(-1);
  expect(compareMoney(read('80–120 EUR'), read('110 EUR'))).toBe(0);
  expect(compareMoney(read('80 EUR'), read('90 GBP'))).toBeUndefined();
  expect(compareMoney(read('80 EUR'), read('nothing'))).toBe(1);
  expect(sayMoney(read('1234–5678 EUR'))).toBe('1230 to 5680 EUR, likely 3460');
});

import { describe, expect, test } from 'vitest';
import type { Basis } from '../quantity/types.ts';
import { isToBuy } from './to-buy.ts';
import type { Part } from './types.ts';

const part = (facts: Readonly<Record<string, readonly [string, Basis]>>, more: Partial<Part> = {}): Part => ({
  id: 'a',
  kind: 'drive',
  name: 'a drive',
  facts: Object.fromEntries(
    Object.entries(facts).map(([name, [text, basis]]) => [
      name,
      { value: { kind: name === 'price' ? ('text' as const) : ('quantity' as const), text }, basis },
    ]),
  ),
  ...more,
});
const SHEET = { continuousCurrent: ['15 A', 'datasheet'] } as const;

describe('derived: what is still to be bought', () => {
  test.each<readonly [string, Part, boolean]>([
    ['priced, and nobody looked', part({ price: ['210 EUR', 'told'] }), true],
    [
      'priced, though its plate was read at the seller’s',
      part({ price: ['140 EUR', 'told'], continuousCurrent: ['5 A', 'plate'] }),
      true,
    ],
    ['known from a datasheet alone', part(SHEET), true],
    ['yours already: price 0', part({ ...SHEET, price: ['0', 'told'] }), false],
    ['read off its plate', part({ ...SHEET, peakCurrent: ['20 A', 'plate'] }), false],
    ['measured', part({ ...SHEET, peakCurrent: ['20 A', 'measured'] }), false],
    ['in hand: somebody noted that its condition is not known', part(SHEET, { condition: 'unknown' }), false],
    ['in hand: works', part({ price: ['210 EUR', 'told'] }, { condition: 'works' }), false],
    ['in hand: photographed', part(SHEET, { photos: ['a.jpg'] }), false],
    ['nothing known at all', part({}), false],
    ['only guessed and told', part({ continuousCurrent: ['15 A', 'told'] }), false],
    ['a price that cannot be read counts for nothing', part({ price: ['lots', 'told'] }), false],
  ])('%s', (_, it, expected) => {
    expect(isToBuy(it)).toBe(expected);
  });
});

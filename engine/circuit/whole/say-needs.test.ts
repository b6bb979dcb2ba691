import { expect, test } from 'vitest';
import { sample } from '../../../samples/read.fixture.ts';
import { lookThrough, sayNeeds } from './index.ts';

test('derived: settings go by their names, and what many wires lack is said once', () => {
  expect(sayNeeds(['settings.country'])).toBe('country the machine stands in');
  expect(sayNeeds(['w1.length', 'w2.length', 'w3.length', 'w4.length', 'w5.length'])).toMatch(
    /^.*length.* of w1, w2, w3 and 2 more$/,
  );
  expect(sayNeeds(['w1.length', 'w2.length', 'w3.length', 'w4.length'])).toMatch(/of w1, w2, w3, w4$/);
  expect(sayNeeds(['A1.constructor', 'settings.toString'])).toBe('constructor of A1; toString');
});

test('derived: nothing that a sample waits for is said by its key alone', () => {
  for (const id of ['carriage-works-lathe', 'boatyard-mill'] as const) {
    const needs = lookThrough(sample(id)).findings.flatMap((each) => each.needs ?? []);
    expect(needs.length).toBeGreaterThan(0);
    for (const need of needs) expect(sayNeeds([need]), need).toMatch(/ /);
  }
});

import { expect, test } from 'vitest';
import { sample } from '../../../samples/read.fixture.ts';
import { readWiring } from '../wiring/index.ts';
import { wired } from '../wiring/wired.fixture.ts';
import { lookThrough, sayNeeds } from './index.ts';

test('derived: settings go by their names, and what many wires lack is said once', () => {
  expect(sayNeeds(['settings.country'])).toBe('country the machine stands in');
  expect(sayNeeds(['w1.length', 'w2.length', 'w3.length', 'w4.length', 'w5.length'])).toMatch(
    /^.*length.* of w1, w2, w3 and 2 more$/,
  );
  expect(sayNeeds(['w1.length', 'w2.length', 'w3.length', 'w4.length'])).toMatch(/of w1, w2, w3, w4$/);
  expect(sayNeeds(['A1.constructor', 'settings.toString'])).toBe('constructor of A1; toString');
});

test('derived: one key is said as the thing asks it that is meant', () => {
  const read = readWiring(wired(['X0 mains-inlet', 'G1 supply volts=24_V', 'V1 diode', 'T1 drive'], []));
  expect(sayNeeds(['X0.L1.volts'], read)).toBe('mains voltage, phase to neutral of X0');
  expect(sayNeeds(['G1.L.volts'], read)).toBe('mains voltage it is set for of G1');
  expect(sayNeeds(['T1.DC+.volts'], read)).toBe('voltage it is fed with of T1');
  expect(sayNeeds(['V1.A.volts', 'V1.K.volts'], read)).toBe('reverse voltage it stands of V1');
  expect(sayNeeds(['G1.plus.current'], read)).toBe('current it can give for good of G1');
  expect(sayNeeds(['A1.constructor', 'X0.L1.toString', 'T1.valueOf'], read)).toBe(
    'constructor of A1; toString of X0.L1; valueOf of T1',
  );
});

test('derived: nothing that a sample waits for is said by its key alone', () => {
  for (const id of ['carriage-works-lathe', 'boatyard-mill'] as const) {
    const { findings, read } = lookThrough(sample(id));
    const needs = findings.flatMap((each) => each.needs ?? []);
    expect(needs.length).toBeGreaterThan(0);
    for (const need of needs) {
      expect(sayNeeds([need]), need).toMatch(/ /);
      expect(sayNeeds([need], read), need).toMatch(/ /);
    }
  }
});

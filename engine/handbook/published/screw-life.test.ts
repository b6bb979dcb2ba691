import { expect, test } from 'vitest';
import { screwLife } from '../screw-life.ts';
import { screwLifePreloaded } from '../screw-life-preloaded.ts';
import { holds, work } from './expect.ts';

const three = {
  F1: '3000 N',
  F2: '1200 N',
  F3: '500 N',
  F4: '0 N',
  n1: '300 r/min',
  n2: '800 r/min',
  n3: '2500 r/min',
  n4: '0 r/min',
  q1: '20 %',
  q2: '50 %',
  q3: '30 %',
  q4: '0 %',
  Ca: '25 kN',
  C0a: '60 kN',
  fw: '1',
  fs_min: '2.5',
};

holds('derived', 'three load steps on a 25 kN screw', 'ISO 3408-5 formulas, second calculation', {
  sheet: screwLife,
  given: three,
  expected: {
    n_m: '1210.0000 r/min',
    Fm: '1257.303797 N',
    L10: '7.861390e9 rev',
    Lh: '108283.609 h',
    Fmax: '3000.000 N',
    fs: '20.00000',
    F_fs: '24000.000 N',
  },
});

test('derived: shares may be any weight, and the sign of a load does not count', () => {
  const percent = work(screwLife, three);
  const seconds = work(screwLife, { ...three, F2: '-1200 N', q1: '2', q2: '5', q3: '3', q4: '0' });
  expect(seconds('Fm') / percent('Fm')).toBeCloseTo(1, 12);
  expect(seconds('Lh') / percent('Lh')).toBeCloseTo(1, 12);
});

test('derived: a screw that never turns has no mean load, and says why', () => {
  const still = { ...three, n1: '0 r/min', n2: '0 r/min', n3: '0 r/min' };
  expect(() => work(screwLife, still)('Fm')).toThrow(/mean screw speed/);
});

const pair = { Fpr: '1000 N', Ca: '20 kN', fw: '1', n_m: '500 r/min' };

holds('derived', 'pair preloaded with 1000 N under 1500 N', 'ISO 3408-5 formulas, second calculation', {
  sheet: screwLifePreloaded,
  given: { ...pair, F: '1500 N' },
  expected: { F_1: '1893.117956 N', F_2: '393.117956 N', L: '1.173518e9 rev' },
});

test('derived: at the lift-off load both branches agree, and above it one half carries all', () => {
  const at = work(screwLifePreloaded, { ...pair, F: '2828.42712474 N' });
  expect(at('F_1')).toBeCloseTo(2828.42712474, 5);
  expect(at('F_2')).toBeCloseTo(0, 5);
  const above = work(screwLifePreloaded, { ...pair, F: '4000 N' });
  expect(above('F_2')).toBe(0);
  // One half alone: the plain life formula.
  expect(above('Lh') * ((500 * 2 * Math.PI) / 60)).toBeCloseTo(above('L'), 3);
  expect(above('L') / ((20000 / 4000) ** 3 * 1e6 * 2 * Math.PI)).toBeCloseTo(1, 12);
});

test('derived: without load both halves wear alike, and the pair lives 2^(-9/10) of one', () => {
  const idle = work(screwLifePreloaded, { ...pair, F: '0 N' });
  expect(idle('F_1')).toBeCloseTo(idle('F_2'), 9);
  expect(idle('L') / (2 ** -0.9 * (20000 / 1000) ** 3 * 1e6 * 2 * Math.PI)).toBeCloseTo(1, 12);
});

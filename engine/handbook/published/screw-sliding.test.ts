import { expect, test } from 'vitest';
import { screwSliding } from '../screw-sliding.ts';
import { holds, work } from './expect.ts';

holds(
  'published',
  'two-start trapezoidal screw lifting 300 kN',
  'Bhandari, Design of Machine Elements, chapter 6, as worked in the FOSSEE textbook companion',
  {
    sheet: screwSliding,
    given: {
      d: '100 mm',
      P: '12 mm',
      z: '2',
      mu: '0.15',
      alpha: '15 °',
      mu_c: '0',
      d_c: '0 mm',
      Fa: '300 kN',
    },
    expected: { T_up: '3378.159205 N·m', T_dn: '1030.685630 N·m', eta: '33.921302 %' },
  },
);

const shigley = {
  d: '32 mm',
  P: '4 mm',
  z: '2',
  mu: '0.08',
  alpha: '0 °',
  mu_c: '0.08',
  d_c: '40 mm',
  Fa: '6.4 kN',
};

holds(
  'published',
  'two-start square screw with collar',
  'Shigley, Mechanical Engineering Design, example 8-1 (printed values recalled, recomputed)',
  {
    sheet: screwSliding,
    given: shigley,
    expected: { T_up: '26.18 N·m', T_dn: '9.77 N·m', eta_all: '0.311' },
  },
);

holds('derived', 'the same screw to more digits', 'second calculation in double precision', {
  sheet: screwSliding,
  given: shigley,
  expected: { T_up: '26.176955 N·m', T_dn: '9.774428 N·m', eta_all: '0.3112942' },
});

holds(
  'published',
  'screw clamp, 125 N on a 150 mm handle',
  'Bhandari, Design of Machine Elements, chapter 6, as worked in the FOSSEE textbook companion',
  {
    sheet: screwSliding,
    given: {
      d: '22 mm',
      P: '5 mm',
      z: '1',
      mu: '0.15',
      alpha: '0 °',
      mu_c: '0.17',
      // Uniform wear: the mean of the collar's 55 and 45 mm.
      d_c: '50 mm',
      T: '18.75 N·m',
    },
    expected: { F_T: '2868.610857 N', eta_all: '12.174763 %' },
  },
);

test('derived: the load turns the screw exactly where the self-locking margin is below 1', () => {
  const steep = work(screwSliding, { ...shigley, P: '16 mm', mu_c: '0' });
  expect(steep('lock')).toBeLessThan(1);
  expect(steep('eta_b')).toBeGreaterThan(0);
  expect(steep('T_dn')).toBeLessThan(0);
  const flat = work(screwSliding, { ...shigley, P: '2 mm', mu_c: '0' });
  expect(flat('lock')).toBeGreaterThan(1);
  expect(flat('eta_b')).toBeLessThan(0);
  expect(flat('T_dn')).toBeGreaterThan(0);
});

test('derived: without friction nothing is lost either way', () => {
  const smooth = work(screwSliding, { ...shigley, mu: '0', mu_c: '0' });
  expect(smooth('eta_all')).toBeCloseTo(1, 12);
  expect(smooth('eta_b')).toBeCloseTo(1, 12);
});

test('derived: a thread too steep and rough for any torque has no answer, rather than a negative one', () => {
  const jammed = { ...shigley, P: '60 mm', mu: '1.2' };
  expect(() => work(screwSliding, jammed)('T_up')).toThrow(/room/);
});

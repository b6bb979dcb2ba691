import { expect, test } from 'vitest';
import { belt } from '../belt.ts';
import { bestRatio } from '../best-ratio.ts';
import { gearRatio } from '../gear-ratio.ts';
import { inertia } from '../inertia.ts';
import { reflectedInertia } from '../reflected-inertia.ts';
import { rmsTorque } from '../rms-torque.ts';
import { check, holds, text, work } from './expect.ts';

test('derived: 250 kg on a 32 mm screw of 1 m behind a reduction of 2 (kinetic energy, second calculation)', () => {
  const load = check({
    sheet: inertia,
    given: { m: '250 kg', Ph: '5 mm', d: '32 mm', L: '1 m', rho: '7850 kg/m³' },
    expected: { J_lin: '1.58314349e-4 kg·m²', J_cyl: '8.08108108e-4 kg·m²' },
  });
  check({
    sheet: reflectedInertia,
    given: {
      J_m: '6e-4 kg·m²',
      J_mp: '5e-5 kg·m²',
      J_sp: '4e-4 kg·m²',
      J_s: text(load('J_cyl'), 'kg·m²'),
      J_lin: text(load('J_lin'), 'kg·m²'),
      m_belt: '0 kg',
      r_m: '0 mm',
      i: '2',
    },
    expected: { J_ref: '3.91605614e-4 kg·m²', ratio: '0.65267602' },
  });
});

test('derived: one kinetic energy, whether reckoned at the motor or part by part', () => {
  const i = 2.5;
  const lead = 0.01;
  const motorSpeed = 100;
  const r = work(reflectedInertia, {
    J_m: '6e-4 kg·m²',
    J_mp: '5e-5 kg·m²',
    J_sp: '4e-4 kg·m²',
    J_s: '8e-4 kg·m²',
    J_lin: text(150 * (lead / (2 * Math.PI)) ** 2, 'kg·m²'),
    m_belt: '0.2 kg',
    r_m: '20 mm',
    i: `${i}`,
  });
  const screwSpeed = motorSpeed / i;
  const parts =
    (6e-4 + 5e-5) * motorSpeed ** 2 +
    (4e-4 + 8e-4) * screwSpeed ** 2 +
    150 * ((screwSpeed * lead) / (2 * Math.PI)) ** 2 +
    0.2 * (motorSpeed * 0.02) ** 2;
  expect((r('J_tot') * motorSpeed ** 2) / parts).toBeCloseTo(1, 12);
  const turning = r('J_rot') * screwSpeed ** 2 + 150 * ((screwSpeed * lead) / (2 * Math.PI)) ** 2;
  expect(turning / parts).toBeCloseTo(1, 12);
});

test('derived: a hollow cylinder is the solid one less its bore; a mass on a belt is like one on its pulley’s rim', () => {
  const size = { L: '100 mm', rho: '7850 kg/m³' };
  const outer = work(inertia, { ...size, d: '60 mm', d_i: '40 mm' });
  const bore = work(inertia, { ...size, d: '40 mm' });
  expect(outer('J_hol') / (outer('J_cyl') - bore('J_cyl'))).toBeCloseTo(1, 12);
  expect(outer('m_hol') / (outer('m_cyl') - bore('m_cyl'))).toBeCloseTo(1, 12);
  // A belt pulley of radius r moves its belt by 2πr a turn, as a screw of that lead would.
  const onBelt = work(inertia, { m_b: '12 kg', r: '30 mm', m: '12 kg', Ph: text(2 * Math.PI * 0.03, 'm') });
  expect(onBelt('J_belt') / onBelt('J_lin')).toBeCloseTo(1, 12);
});

const ratio = {
  J_L: '0.02 kg·m²',
  J_M: '5e-4 kg·m²',
  T_L: '4 N·m',
  T_M: '3 N·m',
  alpha: '100 rad/s²',
  n_M: '3000 r/min',
  n_L: '600 r/min',
};

test('derived: best ratios of a loaded axis (second calculation), and no neighbour is better', () => {
  const best = check({
    sheet: bestRatio,
    given: { ...ratio, i: '5' },
    expected: { i_J: '6.32455532', i_a: '7.79690648', alpha_a: '384.767986 rad/s²', i_cap: '5.0000000' },
  });
  expect(best('i_use')).toBe(best('i_cap'));
  for (const factor of [0.98, 1.02]) {
    const near = work(bestRatio, { ...ratio, i: `${best('i_a') * factor}` });
    expect(near('alpha_i')).toBeLessThan(best('alpha_a'));
  }
});

holds('derived', 'best ratio for the smallest motor torque, load torque left out', 'second calculation', {
  sheet: bestRatio,
  given: { ...ratio, T_L: '0 N·m' },
  expected: { i_T: '6.32455532' },
});

holds('derived', 'best ratio for the smallest motor torque', 'second calculation', {
  sheet: bestRatio,
  given: ratio,
  expected: { i_T: '10.95445115', T_T: '1.09544512 N·m' },
});

holds('derived', 'four segments of a cycle', 'copper-loss average, second calculation', {
  sheet: rmsTorque,
  given: {
    T1: '4 N·m',
    T2: '1 N·m',
    T3: '-2.5 N·m',
    T4: '0.5 N·m',
    T5: '0 N·m',
    t1: '0.1 s',
    t2: '0.4 s',
    t3: '0.1 s',
    t4: '0.9 s',
    t5: '0 s',
  },
  expected: { T_rms: '1.37840488 N·m', T_pk: '4.000000 N·m', t: '1.500000 s' },
});

test('derived: a belt runs equally fast over both pulleys and passes on its power', () => {
  const r = work(belt, { z_m: '20 teeth', z_s: '50 teeth', p: '5 mm', n_m: '1500 r/min', T_m: '2 N·m' });
  expect(r('i')).toBe(2.5);
  expect(r('v_b')).toBeCloseTo((r('d_s') / 2) * r('n_s'), 12);
  expect(r('v_b')).toBeCloseTo(2.5, 12);
  expect(r('F_p') * r('v_b')).toBeCloseTo(2 * ((1500 * 2 * Math.PI) / 60), 9);
});

test('derived: the reduction’s loss is on the driving side both ways', () => {
  const reduction = { i: '2', eta_g: '97 %', n_s: '600 r/min' };
  const driving = work(gearRatio, { ...reduction, T_s: '4 N·m', T_in: text(4 / (2 * 0.97), 'N·m') });
  expect(driving('T_m')).toBeCloseTo(4 / 2 / 0.97, 12);
  expect(driving('T_out')).toBeCloseTo(4, 12);
  // Power in times efficiency is power out.
  expect(driving('T_m') * driving('n_m') * 0.97).toBeCloseTo(4 * ((600 * 2 * Math.PI) / 60), 9);
  const braking = work(gearRatio, { ...reduction, T_s: '-4 N·m' });
  expect(braking('T_m')).toBeCloseTo((-4 / 2) * 0.97, 12);
});

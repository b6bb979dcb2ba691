import { expect, test } from 'vitest';
import { backDriving } from '../back-driving.ts';
import { slideForces } from '../slide-forces.ts';
import { check, holds, text, work } from './expect.ts';

const nothingElse = { phi: '90 °', F_n: '0 N', F_seal: '0 N', F_cut: '0 N', m_cb: '0 kg', F_b: '0 N' };
const slope = { ...nothingElse, m: '120 kg', theta: '45 °', mu: '0.1', a: '3 m/s²' };

holds('derived', '120 kg on a 45° slope', 'statics, second calculation', {
  sheet: slideForces,
  given: slope,
  expected: { F_up: '1275.334030 N', F_dn: '-388.909661 N', F_hold: '832.121846 N', F_w: '832.121846 N' },
});

holds('derived', 'vertical head of 200 kg with a 150 kg counterweight', 'statics, second calculation', {
  sheet: slideForces,
  given: { ...nothingElse, m: '200 kg', m_cb: '150 kg', theta: '90 °', mu: '0', a: '2 m/s²', F_seal: '60 N' },
  expected: { F_up: '1250.3325 N' },
});

test('derived: speeding up and slowing down differ by twice the inertia force, up and down by twice the weight', () => {
  const r = work(slideForces, { ...slope, m_cb: '20 kg', F_b: '50 N', F_seal: '30 N', F_n: '400 N' });
  expect(r('F_up') - r('F_up_stop')).toBeCloseTo(2 * 140 * 3, 9);
  expect(r('F_dn') - r('F_dn_stop')).toBeCloseTo(2 * 140 * 3, 9);
  expect(r('F_up_run') - r('F_dn_run')).toBeCloseTo(2 * r('F_g'), 9);
  expect((r('F_up') + r('F_up_stop')) / 2).toBeCloseTo(r('F_up_run'), 9);
});

test('derived: cutting comes on top of running, and the largest force is the largest by size', () => {
  const cutting = work(slideForces, { ...slope, F_cut: '700 N' });
  expect(cutting('F_up_cut') - cutting('F_up_run')).toBeCloseTo(700, 9);
  expect(cutting('F_dn_cut') - cutting('F_dn_run')).toBeCloseTo(700, 9);
  expect(cutting('F_max')).toBe(cutting('F_up_cut'));
  expect(work(slideForces, slope)('F_max')).toBe(work(slideForces, slope)('F_up'));
  // Balanced far beyond its weight, the slide has to be forced down.
  const overbalanced = work(slideForces, { ...slope, F_b: '3000 N' });
  expect(overbalanced('F_max')).toBe(overbalanced('F_dn'));
});

test('derived: a dovetail of 55° wedges by 1 / sin(55°), seals not', () => {
  const flat = work(slideForces, slope);
  const dovetail = work(slideForces, { ...slope, phi: '55 °', F_seal: '30 N' });
  expect((dovetail('F_f') - 30) / flat('F_f')).toBeCloseTo(1 / Math.sin((55 * Math.PI) / 180), 12);
});

test('derived: a balance stronger than the weight still has to be held', () => {
  const r = work(slideForces, { ...slope, F_b: '1000 N' });
  expect(r('F_g')).toBeLessThan(0);
  expect(r('F_hold')).toBeCloseTo(1000 - r('F_w'), 9);
});

test('derived: 90 kg hanging on a screw, from the slide to the drop (statics and Newton, second calculation)', () => {
  const slide = work(slideForces, { ...nothingElse, m: '90 kg', theta: '90 °', mu: '0', a: '0 m/s²' });
  const axis = {
    F_hold: text(slide('F_hold'), 'N'),
    m: '90 kg',
    eta: '0.9',
    i: '1',
    k_br: '1.3',
    T_br: '2 N·m',
    J: '1.2e-3 kg·m²',
    t_d: '60 ms',
  };
  check({
    sheet: backDriving,
    given: { ...axis, Ph: '5 mm', T_f: '0 N·m' },
    expected: {
      T_hold: '0.70234957 N·m',
      T_lift: '0.78038841 N·m',
      T_need: '0.91305444 N·m',
      s_d: '0.80035571 mm',
    },
  });
  check({
    sheet: backDriving,
    given: { ...axis, Ph: '5 mm', T_f: '0.2 N·m' },
    expected: { s_d: '0.572447627 mm' },
  });
  check({
    sheet: backDriving,
    given: { ...axis, Ph: '20 mm', T_f: '0.2 N·m' },
    expected: { s_d: '7.0793205 mm' },
  });
});

const hanging = {
  F_hold: '800 N',
  m: '90 kg',
  Ph: '5 mm',
  eta: '0.9',
  i: '2',
  k_br: '1.5',
  T_br: '1 N·m',
  J: '1.2e-3 kg·m²',
  t_d: '60 ms',
  T_f: '0.1 N·m',
};

test('derived: in the whole drop the weight’s work is what friction and brake take', () => {
  const r = work(backDriving, hanging);
  const turnedWhileFree = r('s_d') / r('r');
  const turnedWhileBraked = r('s_b') / r('r');
  const weight = 800 * r('s');
  const taken = 0.1 * (turnedWhileFree + turnedWhileBraked) + 2 * 1 * turnedWhileBraked;
  expect(taken / weight).toBeCloseTo(1, 12);
});

test('derived: a steady fall covers half its last speed times its time', () => {
  const r = work(backDriving, hanging);
  expect((r('v_d') * 0.06) / 2 / r('s_d')).toBeCloseTo(1, 12);
});

test('derived: friction that holds the load leaves no drop; a brake too weak to hold has no answer', () => {
  const held = work(backDriving, { ...hanging, T_f: '1 N·m' });
  expect(held('s')).toBe(0);
  expect(held('v_d')).toBe(0);
  const weak = work(backDriving, { ...hanging, T_br: '0.2 N·m' });
  expect(() => weak('s')).toThrow(/above zero/);
});

import { expect, test } from 'vitest';
import { evaluate } from '../../sheet/index.ts';
import { dcMotor } from '../dc-motor.ts';
import { stepper } from '../stepper.ts';
import { stepperCurve } from '../stepper-curve.ts';
import { check, holds } from './expect.ts';

const MOTOR = {
  theta_s: '1.8 °',
  Th: '4.5 N·m',
  I: '5.6 A',
  I_peak: '5.6 A',
  R: '0.4 Ω',
  L: '3.5 mH',
  Vs: '68 V',
  J: '7.46e-4 kg·m²',
};
const PHASOR = 'phasor maximisation worked apart; structure as in Acarnley, Stepping Motors, from memory';

holds('derived', 'a 4.5 N·m stepping motor on 68 V at 1200 r/min', PHASOR, {
  sheet: stepper,
  given: { ...MOTOR, w: '1200 r/min' },
  expected: {
    Nr: '50.0000000',
    k: '0.568210806 N·m/A',
    T_i: '3.18198052 N·m',
    T_v: '1.7231576 N·m',
    T_po: '1.72315761 N·m',
    w_c: '68.024839 rad/s',
    P_inf: '216.573492 W',
    emf: '71.403476 V',
    f_res: '87.406147 Hz',
    t_rise: '0.2930896 ms',
  },
});

for (const [w, T] of [
  ['600 r/min', '3.44464 N·m'],
  ['2000 r/min', '1.0340019 N·m'],
  ['3000 r/min', '0.68935695 N·m'],
] as const) {
  holds('derived', `torque the voltage allows at ${w}`, PHASOR, {
    sheet: stepper,
    given: { ...MOTOR, w },
    expected: { T_v: T },
  });
}

holds('derived', 'below the corner the current rules', PHASOR, {
  sheet: stepper,
  given: { ...MOTOR, w: '600 r/min' },
  expected: { T_po: '3.18198052 N·m' },
});

test('derived: at the corner voltage and current allow the same torque (closed circle)', () => {
  const corner = check({ sheet: stepper, given: MOTOR, expected: { w_c: '649.58936 r/min' } })('w_c');
  const at = check({ sheet: stepper, given: { ...MOTOR, w: `${corner} rad/s` }, expected: {} });
  expect(at('T_v')).toBeCloseTo(at('T_i'), 10);
});

test('derived: a supply too low for the current has no corner (limit case)', () => {
  const at = evaluate(stepper, {
    theta_s: Math.PI / 100,
    Th: 4.5,
    I: 5.6,
    I_peak: 5.6,
    R: 0.4,
    L: 3.5e-3,
    Vs: 2,
  });
  expect(at.w_c).toEqual({ state: 'undefined', reason: expect.stringContaining('even at standstill') });
});

test('derived: an axis at 0.1 m/s and 1 m/s² needs a servo, not that stepping motor (benchmark axis, worked apart)', () => {
  const axis = check({
    sheet: dcMotor,
    given: {
      Vbr: '0 V',
      R: '1.2 Ω',
      Kt: '0.35 N·m/A',
      Tf: '0.25 N·m',
      b: '1e-3 N·m·s/rad',
      TL: `${0.00127599088773 * ((2 * Math.PI) / 0.005)} N·m`,
      w_req: '1200 r/min',
    },
    expected: { T_need: '1.97912115 N·m', I_need: '5.6546318 A', V_need: '50.767855 V' },
  });
  const there = check({ sheet: stepper, given: { ...MOTOR, w: '1200 r/min' }, expected: {} });
  expect(0.5 * there('T_po')).toBeLessThan(axis('T_need'));
});

test('derived: a measured curve is read on straight lines and says nothing beyond its ends (second method)', () => {
  const pullOut = { x: [10, 40, 100], y: [3, 2.4, 0.6] };
  const at = (w: number) => evaluate(stepperCurve, { pullOut, w });
  expect(at(10).T_po).toEqual({ state: 'known', value: 3 });
  expect(at(40).T_po).toEqual({ state: 'known', value: expect.closeTo(2.4, 12) });
  expect(at(70).T_po).toEqual({ state: 'known', value: expect.closeTo(1.5, 12) });
  expect(at(100).T_po).toEqual({ state: 'known', value: expect.closeTo(0.6, 12) });
  expect(at(100).w_top).toEqual({ state: 'known', value: 100 });
  for (const w of [9.999, 100.001]) {
    expect(at(w).T_po).toEqual({ state: 'undefined', reason: expect.stringContaining('says nothing about') });
  }
});

import { describe, expect, test } from 'vitest';
import { bestRange } from '../best-range.ts';
import { brakingResistor } from '../braking-resistor.ts';
import { chuckGrip } from '../chuck-grip.ts';
import { driveInput } from '../drive-input.ts';
import { driveMatch } from '../drive-match.ts';
import { gripForCut } from '../grip-for-cut.ts';
import { inductionMotor } from '../induction-motor.ts';
import { rangeSteps } from '../range-steps.ts';
import { motorTorque, rampTime } from '../speed-ramp.ts';
import { spindleAtSpeed } from '../spindle-at-speed.ts';
import { spindleBelt } from '../spindle-belt.ts';
import { spindleCounts } from '../spindle-counts.ts';
import { spindleInertia } from '../spindle-inertia.ts';
import { spindleRunUp } from '../spindle-run-up.ts';
import { spindleStop } from '../spindle-stop.ts';
import { starDelta } from '../star-delta.ts';
import { check, holds, work } from './expect.ts';

const HAND = 'worked apart, with a calculator';
const RPM = Math.PI / 30;

describe('induction motor', () => {
  const plate = { Pr: '2.2 kW', f: '50 Hz', p: '4', n: '1430 r/min', U: '230 V', eta: '82 %', phi: '0.81' };
  holds('derived', 'four poles, 50 Hz, 2.2 kW, 1430 r/min, 230 V in delta', HAND, {
    sheet: inductionMotor,
    given: plate,
    expected: { n_s: '1500.000 r/min', s: '4.6666667 %', T_r: '14.6912255 N·m', I: '8.3144848 A' },
  });
  holds('derived', 'the same at 30 Hz has 138 V and its whole torque', HAND, {
    sheet: inductionMotor,
    given: { ...plate, f_d: '30 Hz' },
    expected: { U_d: '138.0000 V', T_d: '14.6912255 N·m', n_d: '830.000 r/min' },
  });
  holds('derived', 'the same at 75 Hz: power stays, torque falls, the slip in turns stays', HAND, {
    sheet: inductionMotor,
    given: { ...plate, f_d: '75 Hz' },
    expected: { T_d: '9.7941503 N·m', n_d: '2180.000 r/min' },
  });
  test('derived: the pull-out torque falls with the square of the frequency', () => {
    const at = (f_d: string) => work(inductionMotor, { ...plate, k: '2.5', f_d })('T_k');
    expect(at('100 Hz') / at('50 Hz')).toBeCloseTo(1 / 4, 12);
    expect(at('25 Hz')).toBe(at('50 Hz'));
  });
  holds('derived', 'star on the volts of delta leaves a third of torque and starting current', HAND, {
    sheet: starDelta,
    given: { U: '230.940108 V', U_Y: '400 V', T: '30 N·m', I: '45 A' },
    expected: {
      k_Y: '0.3333333',
      k_D: '1.0000000',
      T_Y: '10.000000 N·m',
      I_Y: '15.000000 A',
      U_D: '230.9401 V',
    },
  });
});

describe('torque at the spindle', () => {
  holds('derived', 'pulleys of 75 and 150 mm halve 1500 r/min', HAND, {
    sheet: spindleBelt,
    given: { D_m: '75 mm', D_s: '150 mm', n_m: '1500 r/min' },
    expected: { i: '2.0000', n_s: '750.000 r/min', v: '5.890486 m/s' },
  });
  holds('derived', '0.09 kg·m² behind 2 to 1 and 0.012 kg·m² before it', HAND, {
    sheet: spindleInertia,
    given: {
      J_sp: '0.09 kg·m²',
      J_ch: '0 kg·m²',
      J_w: '0 kg·m²',
      J_b: '0 kg·m²',
      J_m: '0.012 kg·m²',
      J_p: '0 kg·m²',
      i: '2',
    },
    expected: { J_mot: '0.03450000 kg·m²' },
  });
  holds('derived', 'a drive with fewer amperes and fewer volts than the motor', HAND, {
    sheet: driveMatch,
    given: {
      Pr: '2.2 kW',
      n_r: '1430 r/min',
      U_m: '400 V',
      U_d: '230 V',
      I_m: '8.3144848 A',
      I_d: '6 A',
      I_p: '9 A',
    },
    expected: { T_r: '14.6912255 N·m', n_b: '822.2500 r/min', k_c: '0.721632', k_p: '1.082448' },
  });
  const at = {
    T_r: '14.6912255 N·m',
    n_b: '1430 r/min',
    k_c: '1',
    k_p: '1.5',
    k_k: '2.5',
    k_s: '0.75',
    k_f: '0.5',
    n_f: '357.5 r/min',
    n_l: '286 r/min',
    n_h: '2860 r/min',
    i: '2',
    eta: '94 %',
  };
  test('derived: the plateau, half of it while the fan turns slowly, and nothing outside the range', () => {
    const plateau = work(spindleAtSpeed, { ...at, n: '400 r/min' });
    expect(plateau('T_c')).toBeCloseTo(14.6912255 * 2 * 0.94, 6);
    expect(plateau('T_p')).toBeCloseTo(1.5 * 14.6912255 * 2 * 0.94, 6);
    const slow = work(spindleAtSpeed, { ...at, n: '150 r/min' });
    expect(slow('T_c')).toBeCloseTo(14.6912255 * 0.94, 6);
    expect(slow('T_e')).toBeCloseTo(2 * 14.6912255 * 0.94, 6);
    for (const n of ['142 r/min', '1431 r/min']) expect(work(spindleAtSpeed, { ...at, n })('T_p')).toBe(0);
  });
  test('derived: in the field-weakening region power stays, and pull-out holds it down in the end', () => {
    const high = work(spindleAtSpeed, { ...at, n: '1072.5 r/min' });
    // One and a half times the base speed: two thirds of the torque for hours, and there the power of the plate.
    expect(high('T_c')).toBeCloseTo((14.6912255 / 1.5) * 2 * 0.94, 6);
    expect(high('P_c') / (2200 * 0.94)).toBeCloseTo(1, 6);
    // For seconds three quarters of the pull-out torque, which falls with the square: less than 1.5 times the power.
    expect(high('T_p')).toBeCloseTo(((14.6912255 * 0.75 * 2.5) / 2.25) * 2 * 0.94, 6);
  });
  test('derived: the best of the ranges, and steps between ratios in any order', () => {
    const best = { T_1: '3 N·m', T_2: '9 N·m', T_3: '0 N·m', T_4: '1 N·m' };
    const free = work(bestRange, { ...best, T_f: '0 N·m' });
    expect([free('T_b'), free('T')]).toEqual([9, 9]);
    // Drag is taken off once, and never turns a motor backwards.
    expect(work(bestRange, { ...best, T_f: '2 N·m' })('T')).toBe(7);
    expect(work(bestRange, { ...best, T_f: '20 N·m' })('T')).toBe(0);
    const steps = work(rangeSteps, { i_1: '1', i_2: '6', i_3: '0', i_4: '2' });
    expect([steps('i_slow'), steps('i_fast'), steps('step')]).toEqual([6, 1, 3]);
    const one = work(rangeSteps, { i_1: '1.5', i_2: '0', i_3: '0', i_4: '0' });
    expect([one('i_slow'), one('i_fast'), one('step')]).toEqual([1.5, 1.5, 1]);
  });
});

describe('starting and stopping', () => {
  const start = { J: '0.12 kg·m²', T: '22.0368383 N·m', T_k: '1000 N·m', n_b: '1430 r/min', n: '3000 r/min' };
  holds('derived', 'constant torque to 1430, constant power to 3000 r/min', HAND, {
    sheet: spindleRunUp,
    given: { ...start, T_d: '0 N·m' },
    expected: {
      t: ['2.20219785 s', { relative: 1e-7, because: 'the torque is given with nine digits' }],
    },
  });
  test('derived: with drag, against small steps of the equation of motion', () => {
    const t = work(spindleRunUp, { ...start, T_k: '30 N·m', T_d: '1.5 N·m' })('t');
    const torque = motorTorque(22.0368383, 30, 1430 * RPM);
    let [w, time] = [0, 0];
    const dt = 1e-5;
    while (w < 3000 * RPM) {
      // Midpoint rule.
      const half = w + ((torque(w) - 1.5) / 0.12) * (dt / 2);
      w += ((torque(half) - 1.5) / 0.12) * dt;
      time += dt;
    }
    expect(Math.abs(t - time)).toBeLessThan(2e-5);
  });
  test('derived: with more drag than torque it never starts, and says so', () => {
    expect(() => work(spindleRunUp, { ...start, T_d: '23 N·m' })('t')).toThrow('never starts');
    expect(() => work(spindleRunUp, { ...start, T_d: '11 N·m' })('t')).toThrow('before that speed');
  });
  const stop = { J: '0.12 kg·m²', n: '1500 r/min', T_f: '1.5 N·m', T_k: '1000 N·m', n_b: '3000 r/min' };
  test('derived: 1500 r/min, 0.12 kg·m²: 12.57 s alone, 1.396 s braked with 12 N·m (worked apart)', () => {
    check({
      sheet: spindleStop,
      given: { ...stop, T_b: '12 N·m', P_b: '1000000 W' },
      expected: { t_f: '12.566371 s', t_b: '1.3962634 s', E: '1.4804407 kJ', P_1: '1884.9556 W' },
    });
  });
  test('derived: where the power is limited, energy balance with friction left out', () => {
    const t = work(spindleStop, { ...stop, T_f: '0 N·m', T_b: '12 N·m', P_b: '942.4777961 W' })('t_b');
    // Down to half the speed at constant power, then at constant torque.
    const w = 50 * Math.PI;
    const expected = (0.12 * (w * w - (w * w) / 4)) / 2 / 942.4777961 + (0.12 * w) / 2 / 12;
    expect(t).toBeCloseTo(expected, 8);
  });
  test('derived: nothing that brakes never stops it; the drag alone takes its time', () => {
    const given = { ...stop, T_b: '0 N·m', P_b: '1 W' };
    expect(work(spindleStop, given)('t_b')).toBeCloseTo(work(spindleStop, given)('t_f'), 9);
    expect(() => work(spindleStop, { ...given, T_f: '0 N·m' })('t_b')).toThrow('never stops');
  });
  holds('derived', 'its resistor at 390 V', HAND, {
    sheet: brakingResistor,
    given: { V: '390 V', R: '60 Ω', T_b: '12 N·m', n: '1500 r/min', J: '0.12 kg·m²', N: '0.5 1/min' },
    expected: {
      R_max: '80.691556 Ω',
      P_1: '1884.9556 W',
      P_R: '2535.000 W',
      I: '6.50000 A',
      P_mean: '12.337006 W',
    },
  });
  test('derived: a ramp with a corner is the sum of its pieces', () => {
    const torque = motorTorque(10, 1000, 50);
    const whole = rampTime(2, torque, 0, 200, [50]);
    expect(whole).toBeCloseTo(rampTime(2, torque, 0, 50) + rampTime(2, torque, 50, 200), 12);
  });
});

describe('mains, grip and counts', () => {
  holds('derived', '1.5 kW at the spindle on one phase', HAND, {
    sheet: driveInput,
    given: { P: '1.5 kW', eta_g: '94 %', eta_m: '82 %', eta_d: '95 %', k: '0.65', U: '230 V' },
    expected: { P_1: '2.0484527 kW', I_1: '13.70202 A', I_3: '7.910868 A' },
  });
  holds('derived', 'three jaws of 0.8 kg at 55 mm, 1500 r/min (force balance of VDI 3106)', HAND, {
    sheet: chuckGrip,
    given: {
      m: '0.8 kg',
      r: '55 mm',
      z: '3',
      F_0: '30 kN',
      F_z: '6.666666667 kN',
      S_p: '1.5',
      S_z: '1.5',
      n: '1500 r/min',
    },
    expected: { F_c: '3256.9695 N', n_max: '2628.3574 r/min', F_n: '19885.4542 N' },
  });
  holds('derived', 'grip for 1.5 kW at 200 r/min on 40 mm, smooth jaws', HAND, {
    sheet: gripForCut,
    given: { P: '1.5 kW', n: '200 r/min', D: '40 mm', mu: '0.1' },
    expected: { T: '71.619724 N·m', F_z: '35809.862 N' },
  });
  holds('derived', '1024 lines, 1000 r/min, pitch 1.5 mm', HAND, {
    sheet: spindleCounts,
    given: { N: '1024 lines', u: '1', n: '1000 r/min', P: '1.5 mm' },
    expected: { c: '4096.0 counts', q: '0.36621094 µm', f_e: '68.266667 kHz' },
  });
});

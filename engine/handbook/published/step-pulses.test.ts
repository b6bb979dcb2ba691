import { expect, test } from 'vitest';
import { evaluate } from '../../sheet/index.ts';
import { analogueCommand } from '../analogue-command.ts';
import { countsRounding } from '../counts-rounding.ts';
import { stepRate } from '../step-rate.ts';
import { stepTiming } from '../step-timing.ts';
import { check, holds } from './expect.ts';

const PULSES = 'one pulse moves the axis by the resolution';

holds('derived', '6 m/min in steps of 1.25 µm from a control of 20 kHz', PULSES, {
  sheet: stepRate,
  given: { v: '0.1 m/s', res: '1.25 µm', f_ctrl: '20 kHz' },
  expected: { f_step: '80000 Hz', T_step: '12.5 µs', M: '4', res_commanded: '5 µm' },
});

holds('derived', '2.5 µs pulses and gaps', PULSES, {
  sheet: stepRate,
  given: { res: '1.25 µm', t_high: '2.5 µs', t_low: '2.5 µs', t_skew: '0 µs', t_margin: '0 µs' },
  expected: { f_max: '200000 Hz', v_max: '15000 mm/min' },
});

holds('derived', 'the same with opto-coupler and margin', PULSES, {
  sheet: stepRate,
  given: { t_high: '2.5 µs', t_low: '2.5 µs', t_skew: '0.5 µs', t_margin: '0.5 µs' },
  expected: { f_max: '166.66667 kHz' },
});

holds('derived', '18 kHz from a timer of 25 µs', 'pulses begin at ticks', {
  sheet: stepRate,
  given: { v: '18 mm/s', res: '1 µm', Tb: '25 µs' },
  expected: {
    n_short: '2',
    f_short: '20000 Hz',
    f_long: '13333.333 Hz',
    long_share: '22.222222 %',
    f_max_timer: '20000 Hz',
    speed_err: '45 %',
  },
});

test('derived: shorter and longer intervals in their share give the mean interval (conservation)', () => {
  for (const v of [3.1, 7.77, 13.3, 19.99]) {
    const at = check({
      sheet: stepRate,
      given: { v: `${v} mm/s`, res: '1 µm', Tb: '25 µs' },
      expected: {},
    });
    const mean = (1 - at('long_share')) / at('f_short') + at('long_share') / at('f_long');
    expect(mean * v * 1000).toBeCloseTo(1, 9);
  }
});

holds('derived', 'pulse of 5 µs to a drive that wants 2.5 µs', 'an opto-coupler moves one edge', {
  sheet: stepTiming,
  given: {
    t_high: '5 µs',
    t_low: '5 µs',
    t_setup: '10 µs',
    t_hold: '2 µs',
    t_skew: '1 µs',
    need_high: '2.5 µs',
    need_low: '2.5 µs',
    need_setup: '7 µs',
    need_hold: '5 µs',
  },
  expected: {
    m_high: '1.428571',
    m_low: '1.428571',
    m_setup: '1.25',
    m_hold: '0.333333',
    ask_setup: '8.0 µs',
  },
});

holds('derived', '3937.007874 counts/mm in a control of whole numbers', 'worked by hand', {
  sheet: countsRounding,
  given: { cpm: `${(10000 * 2) / 5.08} 1/mm`, step: '1 1/mm', travel: '500 mm' },
  expected: {
    cpm_held: '3937.000000 1/mm',
    err_per_m: '-0.0020000 mm/m',
    err_travel: '-0.0010000 mm',
    err_abs: '0.0010000 mm',
  },
});

holds('derived', 'the same with four decimals', 'worked by hand', {
  sheet: countsRounding,
  given: { cpm: `${(10000 * 2) / 5.08} 1/mm`, step: '0.0001 1/mm', travel: '500 mm' },
  expected: { cpm_held: '3937.0079000 1/mm', err_per_m: '0.0000066 mm/m' },
});

test('derived: an exact control makes no error (limit case)', () => {
  const at = evaluate(countsRounding, { cpm: 3937007.874, step: 0, travel: 0.5 });
  expect(at.err_travel).toEqual({ state: 'known', value: 0 });
});

test('derived: a whole number of counts is held by whole numbers without error (limit case)', () => {
  const at = evaluate(countsRounding, { cpm: 800e3, step: 1e3, travel: 0.5 });
  expect(at.err_travel).toEqual({ state: 'known', value: 0 });
});

holds('derived', '±10 V for 3000 r/min on 16 bits', 'worked by hand', {
  sheet: analogueCommand,
  given: {
    V_full: '10 V',
    n_full: '3000 r/min',
    n_bits: '16',
    V_off: '-5 mV',
    drift: '20 µV/K',
    dTa: '25 K',
    travel_rev: '5 mm',
    Kp: '40 1/s',
    v_rapid: '12 m/min',
  },
  expected: {
    V_step: '0.30517578 mV',
    n_step: '0.091552734 r/min',
    v_step: '0.45776367 mm/min',
    V_off_hot: '5.5 mV',
    v_off: '8.25 mm/min',
    e_off: '3.4375 µm',
    n_rapid: '2400 r/min',
    V_rapid: '8.0 V',
  },
});

import { expect, test } from 'vitest';
import { evaluate } from '../../sheet/index.ts';
import { INSULATION_CLASSES } from '../../tables/insulation-classes.ts';
import { MAGNETS } from '../../tables/magnets.ts';
import { copperHeating } from '../copper-heating.ts';
import { demagnetising } from '../demagnetising.ts';
import { dutyCycle } from '../duty-cycle.ts';
import { motorHeating } from '../motor-heating.ts';
import { motorHeatingTwoBody } from '../motor-heating-two-body.ts';
import { motorTemperature } from '../motor-temperature.ts';
import { rmsCurrent } from '../rms-current.ts';
import { check, holds } from './expect.ts';

const RULE = 'temperature rise by resistance of IEC 60034-1, constant from memory';

holds('derived', 'resistance at 120 °C of 1.2 Ω at 25 °C', RULE, {
  sheet: motorTemperature,
  given: { R1: '1.2 Ω', t1: '25 °C', t2: '120 °C' },
  expected: { R2: '1.63846154 Ω', R2_us: '1.63930636 Ω' },
});

holds('derived', 'winding temperature from 1.200 Ω at 21 °C grown to 1.512 Ω', RULE, {
  sheet: motorTemperature,
  given: { R1: '1.2 Ω', t1: '21 °C', R_warm: '1.512 Ω', ta: '24 °C' },
  expected: { t_w: '87.56 °C', rise: '63.56 K' },
});

test('derived: a ferrite motor of 0.35 N·m/A at 95 °C (typical coefficient, from memory)', () => {
  const ferrite = MAGNETS.find((magnet) => magnet.id === 'ferrite')!;
  check({
    sheet: motorTemperature,
    given: { Kt20: '0.35 N·m/A', aB: `${ferrite.perKelvin} 1/K`, t_m: '95 °C' },
    expected: { Kt: '0.2975 N·m/A' },
  });
});

test('published: highest temperatures of classes A, B, F, H (IEC 60085, from memory)', () => {
  expect(INSULATION_CLASSES.map((each) => [each.id, Math.round(each.highest - 273.15)])).toEqual([
    ['A', 105],
    ['B', 130],
    ['F', 155],
    ['H', 180],
  ]);
});

const ONE_BODY = {
  Rth: '1.6 K/W',
  Rref: '1.2 Ω',
  Tref: '25 °C',
  Ta: '25 °C',
  Tmax: '130 °C',
  tau: '1500 s',
};
const BALANCE = 'energy balance worked apart';

holds('derived', 'continuous current, rise with growing resistance, runaway', BALANCE, {
  sheet: motorHeating,
  given: { ...ONE_BODY, I: '6 A' },
  expected: {
    R_hot: '1.68461538 Ω',
    I_cont: '6.24143248 A',
    dT: '94.1492037 K',
    I_runaway: '11.6368667 A',
  },
});

holds('derived', 'time to 130 °C at 15 A from cold', 'closed form and stepped with growing resistance', {
  sheet: motorHeating,
  given: { ...ONE_BODY, I: '15 A' },
  expected: { t_lim: '285.171599 s', t_lim_exact: '338.078582 s' },
});

test('derived: at its continuous current the winding settles just at its limit (limit case)', () => {
  const I_cont = check({ sheet: motorHeating, given: ONE_BODY, expected: {} })('I_cont');
  const settled = check({ sheet: motorHeating, given: { ...ONE_BODY, I: `${I_cont} A` }, expected: {} });
  expect(settled('T_end')).toBeCloseTo(130 + 273.15, 9);
});

test('derived: above the runaway current there is no settled temperature, below the continuous one no limit (limit cases)', () => {
  const at = (I: string): Record<string, unknown> => {
    const given = { Rth: 1.6, Rref: 1.2, Tref: 298.15, Ta: 298.15, Tmax: 403.15, tau: 1500, I: Number(I) };
    return evaluate(motorHeating, given);
  };
  expect(at('12').dT).toEqual({ state: 'undefined', reason: expect.stringContaining('never settles') });
  expect(at('6').t_lim).toEqual({ state: 'undefined', reason: expect.stringContaining('never reaches') });
  expect(at('6').t_lim_exact).toEqual({
    state: 'undefined',
    reason: expect.stringContaining('never reaches'),
  });
});

test('derived: the exact time agrees with stepping the heat balance (second method: Runge-Kutta)', () => {
  for (const I of [7, 11.6368667, 11.64, 25]) {
    const given = { Rth: 1.6, Rref: 1.2, Tref: 298.15, Ta: 293.15, Tmax: 403.15, tau: 1500, I };
    const result = evaluate(motorHeating, given).t_lim_exact;
    if (result.state !== 'known') throw new Error(JSON.stringify(result));
    const cold = I * I * ((1.2 * (20 + 235)) / 260) * 1.6;
    const rate = (T: number): number => (cold * (1 + T / 255) - T) / 1500;
    let T = 0;
    const h = result.value / 4000;
    for (let n = 0; n < 4000; n++) {
      const k1 = rate(T);
      const k2 = rate(T + (h / 2) * k1);
      const k3 = rate(T + (h / 2) * k2);
      T += (h / 6) * (k1 + 2 * k2 + 2 * k3 + rate(T + h * k3));
    }
    expect(T).toBeCloseTo(110, 7);
  }
});

const TWO_BODY = { Rwh: '0.6 K/W', Rha: '1.0 K/W', Cw: '150 J/K', Ch: '1400 J/K' };

holds('derived', '400 W for a minute in winding and housing', 'matrix exponential', {
  sheet: motorHeatingTwoBody,
  given: { ...TWO_BODY, P: '400 W', t: '60 s', dT: '117.674646 K' },
  expected: {
    tau1: '80.811255 s',
    tau2: '1559.1887 s',
    Tw: '117.67465 K',
    Th: '4.467057 K',
    t_lim: ['60 s', { relative: 1e-8, because: 'the rise handed back has nine digits' }],
  },
});

holds('derived', '60 W for ten minutes in the same motor', 'matrix exponential', {
  sheet: motorHeatingTwoBody,
  given: { ...TWO_BODY, P: '60 W', t: '600 s' },
  expected: { Tw: '50.277932 K' },
});

holds('derived', 'copper at 10 A/mm² with no heat escaping', 'heat made over heat capacity', {
  sheet: copperHeating,
  given: { J_cu: '10 A/mm²', t: '10 s' },
  expected: { rate: '0.49980807 K/s', dT: '4.9980807 K' },
});

const RMS = 'mean of the squares worked apart';

holds('derived', '20 A 0.1 s, 5 A 0.8 s, 15 A 0.1 s, nothing 1 s', RMS, {
  sheet: rmsCurrent,
  given: {
    I_a: '20 A',
    t_a: '0.1 s',
    I_r: '5 A',
    t_r: '0.8 s',
    I_d: '-15 A',
    t_d: '0.1 s',
    I_s: '0 A',
    t_s: '1 s',
  },
  expected: { I_rms: '6.42261629 A', t_cycle: '2.0 s', I_peak: '20 A' },
});

test(`derived: the same as a list of stretches (${RMS})`, () => {
  const duty = { x: [0.1, 0.9, 1.0, 2.0], y: [20, 5, -15, 0] };
  const at = evaluate(dutyCycle, { duty });
  expect(at.I_rms).toEqual({ state: 'known', value: expect.closeTo(6.42261629, 8) });
  expect(at.I_mean).toEqual({ state: 'known', value: expect.closeTo((2 + 4 + 1.5) / 2, 12) });
  expect(at.I_peak).toEqual({ state: 'known', value: 20 });
  const bad = evaluate(dutyCycle, { duty: { x: [0, 1], y: [1, 1] } });
  expect(bad.I_rms).toEqual({ state: 'undefined', reason: expect.stringContaining('after time zero') });
});

holds('derived', 'ampere-turns a magnet stands (invented magnet)', 'load line worked apart', {
  sheet: demagnetising,
  given: { Br: '0.40 T', mur: '1.05', PC: '8', lm: '10 mm', Bk: '0.05 T', F: '0 A' },
  expected: {
    B_m: '0.35359116 T',
    F_max: ['2602.8465 A', { relative: 1e-6, because: 'the magnetic constant was 4π·10⁻⁷ in the print' }],
  },
});

test('derived: at the most ampere-turns the magnet stands just at its knee (closed circle)', () => {
  const magnet = { Br: '0.40 T', mur: '1.05', PC: '8', lm: '10 mm', Bk: '0.05 T' };
  const F = check({ sheet: demagnetising, given: magnet, expected: {} })('F_max');
  const at = check({ sheet: demagnetising, given: { ...magnet, F: `${F} A` }, expected: {} });
  expect(at('B_m')).toBeCloseTo(0.05, 12);
});

holds('derived', 'a motor at 150 rad/s on a reversed bus of 75 V', 'bus and back-EMF add up', {
  sheet: demagnetising,
  given: { Vb: '75 V', Vbr: '2 V', Ke: '0.35 V·s/rad', w: '150 rad/s', R: '1.2 Ω' },
  expected: { I_plug: '104.58333 A' },
});

import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { evaluate } from '../../sheet/index.ts';
import { brakingEnergy } from '../braking-energy.ts';
import { energyReturned, highestPowerReturned } from '../braking-power.ts';
import { busBraking } from '../bus-braking.ts';
import { busExtremes } from '../bus-extremes.ts';
import { discharge } from '../discharge.ts';
import { idealRipple } from '../ideal-ripple.ts';
import { inrush } from '../inrush.ts';
import { rectifier } from '../rectifier.ts';
import { regeneration } from '../regeneration.ts';
import { ripple } from '../ripple.ts';
import { rippleSourceResistance } from '../ripple-source-resistance.ts';
import { transformerRating } from '../transformer-rating.ts';
import { check, holds, type Tolerance } from './expect.ts';

const RECTIFIER = 'bridge charging a capacitor to the peak, worked apart';

holds('derived', 'bus of a 50 V secondary, mains high and low', RECTIFIER, {
  sheet: busExtremes,
  given: {
    Vsec: '50 V',
    reg: '6 %',
    f: '50 Hz',
    C: '22000 µF',
    I: '8 A',
    V_abs: '90 V',
    use: '90 %',
    up: '10 %',
    down: '10 %',
  },
  expected: {
    V_no_load_high: '81.0486507 V',
    V_no_load: '73.5533188 V',
    V_loaded_low_peak: '61.4396103 V',
    V_loaded_low_valley: '58.192167 V',
    Vsec_max: '49.970496 V',
  },
});

const RIPPLE = { f: '50 Hz', C: '22 mF', I: '8 A' };

holds('derived', 'ripple of 8 A on 22 mF', RECTIFIER, {
  sheet: ripple,
  given: { ...RIPPLE, Vp: '68.51067811865 V', dV_want: '2.5 V' },
  expected: {
    dV: '3.26765303 V',
    dV_max: '3.6363636 V',
    V_valley: '65.2430251 V',
    V_mean: '66.9346512 V',
    C_need: '0.032 F',
  },
});

holds('derived', 'the same with the mains 10 % low', RECTIFIER, {
  sheet: ripple,
  given: { ...RIPPLE, Vp: '61.43961030679 V' },
  expected: { dV: '3.2474436 V', V_valley: '58.192167 V', V_mean: '59.876615 V' },
});

test('derived: a capacitor far too small runs empty and is refused (limit case)', () => {
  for (const C of [1e-5, 4e-4]) {
    const at = evaluate(ripple, { f: 50, C, I: 8, Vp: 60 });
    expect(at.dV).toEqual({ state: 'undefined', reason: expect.stringContaining('runs empty') });
  }
  expect(evaluate(ripple, { f: 50, C: 0.022, I: 0, Vp: 60 }).dV).toEqual({
    state: 'known',
    value: expect.closeTo(0, 9),
  });
});

const stepped: Tolerance = { relative: 1e-4, because: 'the printed values were stepped in time' };
const P3 = { E_sec: '50 V', Rs: '0.25 Ω', ...RIPPLE };

holds('derived', 'the same behind 0.25 Ω', 'time stepping to the periodic state', {
  sheet: rippleSourceResistance,
  given: P3,
  expected: {
    V_mean: ['59.261681 V', stepped],
    dV: ['2.5101436 V', stepped],
    I_sec: ['15.306762 A', stepped],
    ratio: ['1.9133452', stepped],
    I_cap: ['13.049787 A', stepped],
    I_sec_peak: ['36.690928 A', stepped],
    VA: ['765.33808 VA', stepped],
    P_dc: ['474.09345 W', stepped],
    utilisation: ['61.945624 %', stepped],
  },
});

holds(
  'published',
  'that current against the rule of 1.8',
  'transformer maker’s application note on rectifiers',
  {
    sheet: rippleSourceResistance,
    given: P3,
    expected: {
      ratio: ['1.8', { absolute: '0.15', because: 'the rule is meant for any bridge with a capacitor' }],
    },
  },
);

test('derived: real power feeds drives, diodes and winding, nothing else (conservation)', () => {
  const at = check({ sheet: rippleSourceResistance, given: P3, expected: {} });
  const lost = 2 * 1.1 * 8 + at('I_sec') ** 2 * 0.25;
  expect(at('P_sec')).toBeCloseTo(at('P_dc') + lost, 6);
  expect(at('I_cap') ** 2 + 8 ** 2).toBeCloseTo(at('I_sec') ** 2, 6);
});

test('derived: with little resistance the bus becomes that of an ideal source (limit case)', () => {
  const real = rectifier(50, 1e-4, 1.1, 50, 22e-3, 8);
  const ideal = idealRipple(50, 22e-3, 8, Math.SQRT2 * 50 - 2.2);
  expect(real.mean).toBeCloseTo(ideal.mean, 2);
  expect(real.valley).toBeCloseTo(ideal.valley, 1);
});

test('derived: a source too weak for the current is refused (limit case)', () => {
  const at = evaluate(rippleSourceResistance, { E_sec: 12, Rs: 5, f: 50, C: 0.01, I: 8 });
  expect(at.V_mean).toEqual({ state: 'undefined', reason: expect.stringContaining('too weak') });
  const dead = evaluate(rippleSourceResistance, { E_sec: 1, Rs: 5, f: 50, C: 0.01, I: 8 });
  expect(dead.V_mean).toEqual({ state: 'undefined', reason: expect.stringContaining('does not even beat') });
});

holds('published', 'rating for 8 A of d.c. from 50 V', 'transformer maker’s application note on rectifiers', {
  sheet: transformerRating,
  given: {
    Vsec: '50 V',
    I_dc: '8 A',
    V_dc: '60.5 V',
    VA_rated: '720 VA',
    P_peak: '900 W',
    P_others: '300 W',
    P_sum: '1800 W',
    share: '60 %',
  },
  expected: { VA: '720 VA', I_dc_max: '8.0 A', Vsec_need: '50.0 V', P_one: '1200 W', P_shared: '1080 W' },
});

holds('derived', 'switching on a 50 V secondary of 0.25 Ω', 'empty capacitor at the peak of the mains', {
  sheet: inrush,
  given: {
    Vsec: '50 V',
    reg: '6 %',
    Rs: '0.25 Ω',
    C: '22 mF',
    V_line: '230 V',
    I_allowed: '20 A',
    S: '1 kVA',
    k_mag: '15',
  },
  expected: {
    I_charge: '291.013275 A',
    V_no_load: '73.553319 V',
    E_cap: '59.510998 J',
    R_soft: '16.2635 Ω',
    I_mag: '92.231319 A',
  },
});

const SAFE = '60 V within 5 s: IEC 60204-1:2016, 6.2.4';

holds('published', 'bleeder for 22 mF at 81 V', SAFE, {
  sheet: discharge,
  given: { V0: '81.048651 V', C: '22 mF', R: '220 Ω', R_leak: '1 kΩ' },
  expected: {
    R_max: ['755.79953 Ω', { relative: 1e-7, because: 'the voltage is given with eight digits' }],
    t_60: '1.4554124 s',
    P: '29.858563 W',
    t_60_leak: ['6.6155108 s', { relative: 1e-7, because: 'the voltage is given with eight digits' }],
  },
});

holds('published', 'bleeder for 4.7 mF at 160 V', SAFE, {
  sheet: discharge,
  given: { V0: '160 V', C: '4.7 mF', R: '1084.6228 Ω', R_leak: '10 kΩ' },
  expected: { R_max: '1084.6228 Ω', P: '23.60268 W', t_60_leak: '46.098975 s' },
});

test(`published: a bus that never exceeds 60 V needs none and no wait (${SAFE})`, () => {
  const at = evaluate(discharge, { V0: 59, C: 0.022, R: 220 });
  expect(at.R_max).toEqual({ state: 'undefined', reason: expect.stringContaining('never exceeds 60 V') });
  expect(at.t_60).toEqual({ state: 'known', value: 0 });
  expect(at.above).toEqual({ state: 'known', value: 0 });
  expect(evaluate(discharge, { V0: 61.5 }).above).toEqual({ state: 'known', value: 1.5 });
});

const AXIS = {
  J: '0.00127599088773 kg·m²',
  Tc: '0.25 N·m',
  b: '1e-3 N·m·s/rad',
  Kt: '0.35 N·m/A',
  R: '1.2 Ω',
  w1: `${(0.12 * 2 * Math.PI) / 0.005} rad/s`,
  alpha: `${(2 * 2 * Math.PI) / 0.005} rad/s²`,
  C: '22 mF',
  V1: '75 V',
  eta: '80 %',
  V_on: '82 V',
  I_switch_max: '15 A',
  R_brake: '12 Ω',
  t_cycle: '4 s',
};

holds('derived', 'an axis that stops from 0.12 m/s at 2 m/s²', 'bus power added up over the stop', {
  sheet: regeneration,
  given: AXIS,
  expected: {
    E_kin: '14.5077411 J',
    V2: '81.7319304 V',
    E_ret: '8.5278389 J',
    V2_exact: '80.001613 V',
    T_m: '2.8061184 N·m',
    I_m: '8.0174812 A',
    P_bus: '346.01668 W',
    P_bus_peak: '346.01668 W',
    R_brake_min: '5.4666667 Ω',
    R_brake_max: '19.432589 Ω',
    P_brake: '560.33333 W',
    t_dec: '0.06 s',
    P_average: '2.9015482 W',
  },
});

holds('derived', 'a spindle of 0.12 kg·m² from 1500 r/min on 1 mF', 'energy balance', {
  sheet: regeneration,
  given: { J: '0.12 kg·m²', w1: '1500 r/min', C: '1 mF', V1: '325 V', eta: '80 %' },
  expected: { E_kin: '1480.4407 J', V2: '1573.0003 V' },
});

holds('derived', 'the same axis by its share alone', 'the sheet of regeneration', {
  sheet: brakingEnergy,
  given: { J: AXIS.J, w1: AXIS.w1, alpha: AXIS.alpha, eta: AXIS.eta, T_dn: '0.3 N·m', T_f: '0.1 N·m' },
  expected: { E_kin: '14.5077411 J', E_sink: '0 J', E_back: '11.6061929 J' },
});

holds('published', 'a capacitor of 22 mF that takes it', 'energy of a capacitor, C·V²/2', {
  sheet: busBraking,
  given: { E: '11.60619288 J', C: '22 mF', V1: '75 V', V_on: '82 V', R: '12 Ω' },
  // 22 mF from 75 to 82 V take 12.089 J: all of it, and the dump stays off.
  expected: { V2: '81.7319304 V', E_cap: '12.089 J', E_dump: '0 J', P_dump: '560.33333 W' },
});

test('derived: a slide that sinks by its own weight gives back what it loses in height, motion and all', () => {
  // 80 kg straight down at 0.2 m/s, slowed at 0.5 m/s², nothing lost: m·v²/2 and m·g·s over s = v²/2a.
  const [m, g, v, a, r] = [80, 9.80665, 0.2, 0.5, 0.005 / (2 * Math.PI)];
  const at = evaluate(brakingEnergy, {
    J: m * r * r,
    w1: v / r,
    alpha: a / r,
    T_dn: -m * g * r,
    T_f: 0,
    eta: 1,
  });
  const height = (v * v) / (2 * a);
  expect(at.E_back.state === 'known' && at.E_back.value).toBeCloseTo((m * v * v) / 2 + m * g * height, 9);
  // By hand 1.6 J and 31.4 J: the weight counts twenty times the motion.
  expect(at.E_sink.state === 'known' && at.E_sink.value).toBeCloseTo(31.38, 2);
  // Power falls evenly from its first moment to nothing: half of it over the time to stop is the energy.
  const [power, energy] = [at.P_back, at.E_back].map((each) => (each.state === 'known' ? each.value : 0));
  expect((power! * (v / a)) / 2).toBeCloseTo(energy!, 9);
});

test('derived: two axes at once lift the bus as one of their joint energy, and more than either', () => {
  const after = (E: number) => {
    const { V2 } = evaluate(busBraking, { E, C: 0.03, V1: 88.3893 });
    return V2.state === 'known' ? V2.value : Number.NaN;
  };
  expect(after(0.8 * 12.06)).toBeCloseTo(92.0, 1);
  expect(after(0.8 * 10.34)).toBeCloseTo(91.5, 1);
  expect(after(0.8 * (12.06 + 10.34))).toBeCloseTo(94.9, 1);
  // Order does not matter: the second finds the bus where the first left it.
  const first = after(0.8 * 12.06);
  const { V2 } = evaluate(busBraking, { E: 0.8 * 10.34, C: 0.03, V1: first });
  expect(V2.state === 'known' && V2.value).toBeCloseTo(after(0.8 * 22.4), 9);
});

test('derived: where friction stops quicker than asked nothing comes back (limit case)', () => {
  const at = evaluate(regeneration, {
    J: 0.001,
    Tc: 5,
    b: 0,
    Kt: 0.35,
    R: 1.2,
    w1: 100,
    alpha: 100,
    V_on: 82,
  });
  expect(at.E_ret).toEqual({ state: 'known', value: 0 });
  expect(at.P_bus_peak).toEqual({ state: 'known', value: 0 });
  expect(at.R_brake_max).toEqual({
    state: 'undefined',
    reason: expect.stringContaining('nothing comes back'),
  });
});

const SCRIPT = fileURLToPath(new URL('../../../tests/outside/supply.py', import.meta.url));
const KEPT = SCRIPT.replace(/py$/, 'json');

interface Outside {
  readonly ideal: readonly {
    given: Record<'f' | 'C' | 'I' | 'Vp', number>;
    result: Record<'valley' | 'mean', number>;
  }[];
  readonly source: readonly {
    given: Record<'E' | 'Rs' | 'Vd' | 'f' | 'C' | 'I', number>;
    result: Record<'mean' | 'valley' | 'ripple' | 'secondary' | 'peak' | 'capacitor' | 'power', number>;
  }[];
  readonly braking: readonly {
    given: Record<'J' | 'alpha' | 'Tc' | 'b' | 'Kt' | 'R' | 'w1', number>;
    result: Record<'energy' | 'peak', number>;
  }[];
}

/** 1e-6 leaves room for the tolerances of the outside solvers and their grid. */
const near = (value: number, outside: number): void =>
  expect(Math.abs(value - outside)).toBeLessThanOrEqual(1e-6 * Math.abs(outside) + 1e-12);

function agrees(outside: Outside): void {
  for (const { given: g, result } of outside.ideal) {
    const own = idealRipple(g.f, g.C, g.I, g.Vp);
    near(own.valley, result.valley);
    near(own.mean, result.mean);
  }
  for (const { given: g, result } of outside.source) {
    const own = rectifier(g.E, g.Rs, g.Vd, g.f, g.C, g.I);
    near(own.mean, result.mean);
    near(own.valley, result.valley);
    near(own.high - own.valley, result.ripple);
    near(own.secondaryRms, result.secondary);
    near(own.secondaryPeak, result.peak);
    near(own.capacitorRms, result.capacitor);
    near(own.power, result.power);
  }
  for (const { given: g, result } of outside.braking) {
    near(energyReturned([g.J, g.alpha, g.Tc, g.b, g.Kt, g.R], g.w1), result.energy);
    near(highestPowerReturned([g.J, g.alpha, g.Tc, g.b, g.Kt, g.R], g.w1), result.peak);
  }
}

test('derived: ripple and braking agree with kept results of numpy and scipy (second method)', () => {
  const outside = JSON.parse(readFileSync(KEPT, 'utf8')) as Outside;
  expect([outside.ideal.length, outside.source.length, outside.braking.length].every((n) => n > 2)).toBe(
    true,
  );
  agrees(outside);
});

const hasScipy = spawnSync('/usr/bin/python3', ['-c', 'import numpy, scipy']).status === 0;

test.skipIf(!hasScipy)(
  'derived: ripple and braking agree with numpy and scipy run again (second method; skipped where /usr/bin/python3 has no scipy)',
  { timeout: 60_000 },
  () => {
    const run = spawnSync('/usr/bin/python3', [SCRIPT], { encoding: 'utf8' });
    expect(run.stderr).toBe('');
    agrees(JSON.parse(run.stdout) as Outside);
  },
);

import { expect, test } from 'vitest';
import { parseQuantity } from '../../quantity/index.ts';
import { brushlessConstants } from '../brushless-constants.ts';
import { busCurrent } from '../bus-current.ts';
import { dcMotor } from '../dc-motor.ts';
import { motorTimeConstants } from '../motor-time-constants.ts';
import { check, holds, text } from './expect.ts';

const DEFINITION = 'definitions of inch, pound and standard gravity';

const CONVERSIONS: readonly (readonly [from: string, unit: string, value: number])[] = [
  ['36.65 V/krpm', 'V·s/rad', 0.34998172],
  ['0.0075 lbf·in·s²', 'kg·m²', 0.000847386218],
  ['0.0123 kgf·cm·s²', 'kg·m²', 0.00120621795],
  ['49.561588 ozf·in/A', 'N·m/A', 0.34998172],
  ['3.0975992 lbf·in/A', 'N·m/A', 0.34998172],
];

for (const [from, unit, value] of CONVERSIONS) {
  // 5e-8 covers the nine printed digits of either side.
  test(`derived: ${from} in ${unit} (${DEFINITION})`, () => {
    const parsed = parseQuantity(from, unit);
    expect(parsed.ok && Math.abs(parsed.value.value / value - 1)).toBeLessThan(5e-8);
  });
}

const POWER = 'power balance of a three-phase motor';

holds('derived', 'a brushless motor of 60 V r.m.s. between leads at 1000 r/min', POWER, {
  sheet: brushlessConstants,
  given: { Ke_ll_rms: '60 V/krpm', I_rms: '10 A', f: '50.6 Hz', w: '1012 r/min' },
  expected: {
    Kt_rms: '0.992392012 N·m/A',
    Kt_pk: '0.701727121 N·m/A',
    Kt_six: '0.773764877 N·m/A',
    dip: '13.39746 %',
    p: '3.000',
    T: '9.92392012 N·m',
  },
});

const M3 = {
  Vb: '75 V',
  duty: '100 %',
  Vbr: '2 V',
  R: '1.2 Ω',
  Kt: '0.35 N·m/A',
  Tf: '0.12 N·m',
  b: '2e-4 N·m·s/rad',
  TL: '2 N·m',
  Ilim: '20 A',
};
const LINE = 'd.c. machine with constant flux, worked apart';

holds('derived', 'speed, current and efficiency of a loaded motor on 75 V', LINE, {
  sheet: dcMotor,
  given: M3,
  expected: {
    w: '187.436858 rad/s',
    I: '6.16424963 A',
    w_0: '1976.6126 r/min',
    I_0: '0.46113736 A',
    I_stall: '60.833333 A',
    w_knee: '1336.9015 r/min',
    T_knee: '6.852 N·m',
    P_out: '374.87372 W',
    P_in: '462.31872 W',
    eta: '81.085558 %',
  },
});

test('derived: at its own speed the line needs just the volts there are, and gives just the load (closed circle)', () => {
  const line = check({ sheet: dcMotor, given: M3, expected: {} });
  const back = check({ sheet: dcMotor, given: { ...M3, w_req: text(line('w'), 'rad/s') }, expected: {} });
  expect(back('V_need')).toBeCloseTo(75, 9);
  expect(back('T_av')).toBeCloseTo(2, 9);
  expect(back('I_need')).toBeCloseTo(line('I'), 9);
});

test('derived: below the knee the current limit rules, above it the voltage (limit cases)', () => {
  const at = (w_req: string) => check({ sheet: dcMotor, given: { ...M3, w_req }, expected: {} });
  expect(at('139 rad/s')('I_av')).toBe(20);
  expect(at('141 rad/s')('I_av')).toBeCloseTo((73 - 0.35 * 141) / 1.2, 12);
  expect(at('300 rad/s')('T_av')).toBeLessThan(0);
});

holds('derived', 'electrical and mechanical time constant, swinging poles', 'roots worked apart', {
  sheet: motorTimeConstants,
  given: { R: '1.2 Ω', L: '3 mH', J: '8e-4 kg·m²', Kt: '0.35 N·m/A' },
  expected: {
    te: '0.0025 s',
    tm: '0.00783673469 s',
    p_slow: '-200.000000 1/s',
    p_fast: '-200.000000 1/s',
    w_osc: '105.079335 rad/s',
  },
});

test('derived: creeping poles solve te·tm·s² + tm·s + 1 = 0 (put back into their equation)', () => {
  const at = check({
    sheet: motorTimeConstants,
    given: { R: '1.2 Ω', L: '3 mH', J: '0.00127599088773 kg·m²', Kt: '0.35 N·m/A' },
    expected: { tm: '0.0124995026 s', w_osc: '0 rad/s' },
  });
  for (const s of [at('p_slow'), at('p_fast')]) {
    expect(at('te') * at('tm') * s * s + at('tm') * s + 1).toBeCloseTo(0, 12);
  }
  expect(at('p_slow')).toBeGreaterThan(at('p_fast'));
  expect(at('zeta')).toBeGreaterThan(1);
});

holds('derived', 'bus current of an axis at 10 A', 'power balance', {
  sheet: busCurrent,
  given: { T: '3.5 N·m', w: '150 rad/s', Kt: '0.35 N·m/A', R: '1.2 Ω', Vbr: '0 V', Vb: '75 V', eta: '100 %' },
  expected: { I: '10.0000000 A', I_bus: '8.60000000 A' },
});

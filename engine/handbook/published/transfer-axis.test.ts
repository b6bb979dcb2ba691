/**
 * A complete example worked end to end: THK Ball Screw General Catalog, "Examples of Selecting a Ball Screw:
 * High-Speed Transfer Equipment (Horizontal Use)". Each row is held twice: against the figure printed in the
 * catalogue, with the reason for its tolerance, and against a second calculation from the unrounded inputs to its
 * last digit. Friction 0.003, seal drag 15 N, 8 cycles a minute, 171 000 h, 1305 N·mm and 2180 r/min are recalled
 * from memory; the other printed figures were found transcribed in public.
 */
import { describe, expect, test } from 'vitest';
import { accelerationTorque } from '../acceleration-torque.ts';
import { inertia } from '../inertia.ts';
import { moveTrapezoidal } from '../move-trapezoidal.ts';
import { reflectedInertia } from '../reflected-inertia.ts';
import { rmsTorque } from '../rms-torque.ts';
import { screwLife } from '../screw-life.ts';
import { screwSpeed } from '../screw-speed.ts';
import { screwTorque } from '../screw-torque.ts';
import { slideForces } from '../slide-forces.ts';
import { whirlShortcut } from '../whirl-shortcut.ts';
import { check, type Tolerance, text, work } from './expect.ts';

const CATALOGUE = 'THK Ball Screw General Catalog, high-speed transfer equipment';
const lead = '40 mm';
const acceleration = text(1 / 0.15, 'm/s²');

/** The catalogue rounds on its way; one unit of its last printed digit is allowed. */
const lastDigit = (absolute: string): Tolerance => ({
  absolute,
  because: 'the catalogue cuts or rounds intermediate results',
});

const slide = () =>
  work(slideForces, {
    m: '80 kg',
    theta: '0 °',
    a: acceleration,
    // The catalogue takes 9.8 for gravity, which enters through friction alone.
    mu: `${(0.003 * 9.8) / 9.80665}`,
    phi: '90 °',
    F_n: '0 N',
    F_seal: '15 N',
    F_cut: '0 N',
    m_cb: '0 kg',
    F_b: '0 N',
  });

const move = () => work(moveTrapezoidal, { D: '1000 mm', v: '1 m/s', a: acceleration, t_dwell: '2.6 s' });

/** One direction of load over the whole to and fro of 7.5 s: the way back runs without load in this direction. */
const oneDirection = (accelerating: string, steady: string, decelerating: string) => {
  const ramp = '750 r/min';
  const cycle = 60 / 8;
  const wayBackTime = cycle - 0.15 - 0.85 - 0.15;
  return {
    F1: accelerating,
    F2: steady,
    F3: decelerating,
    F4: '0 N',
    n1: ramp,
    n2: '1500 r/min',
    n3: ramp,
    n4: text((2 * Math.PI * (1 / 0.04)) / wayBackTime, 'rad/s'),
    q1: '0.15',
    q2: '0.85',
    q3: '0.15',
    q4: `${wayBackTime}`,
    Ca: '5.4 kN',
    C0a: '13.6 kN',
    fw: '1.5',
    fs_min: '2.5',
  };
};

const runningTorque = () =>
  work(screwTorque, { Fa: text(slide()('F_up_run'), 'N'), Ph: lead, eta: '0.9' })('T');

const screwInertia = () => work(inertia, { J_k: '1.23e-3 kg·cm²', L_k: '1 mm', L: '1200 mm' })('J_len');

const atMotor = () =>
  work(reflectedInertia, {
    J_m: '1e-3 kg·m²',
    J_mp: '0 kg·m²',
    J_sp: '0 kg·m²',
    J_s: text(screwInertia(), 'kg·m²'),
    J_lin: text(work(inertia, { m: '80 kg', Ph: lead })('J_lin'), 'kg·m²'),
    m_belt: '0 kg',
    r_m: '0 mm',
    i: '1',
  });

const motor = () =>
  work(accelerationTorque, {
    J_tot: text(atMotor()('J_tot'), 'kg·m²'),
    a: acceleration,
    Ph: lead,
    i: '1',
    T_run: text(runningTorque(), 'N·m'),
  });

const effective = (up: string, run: string, stop: string) => ({
  T1: up,
  T2: run,
  T3: stop,
  T4: '0 N·m',
  T5: '0 N·m',
  t1: '0.15 s',
  t2: '0.85 s',
  t3: '0.15 s',
  t4: '2.6 s',
  t5: '0 s',
});

/** One row of the example: what is worked out (SI), and what is printed and what is exact, with units of `unit`. */
function row(
  name: string,
  value: () => number,
  unit: number,
  printed: [number, number],
  exact: string,
): void {
  test(`published: ${name} (${CATALOGUE})`, () => {
    expect(Math.abs(value() / unit - printed[0])).toBeLessThanOrEqual(printed[1]);
  });
  test(`derived: ${name} from the unrounded inputs (second calculation)`, () => {
    expect(value() / unit).toBeCloseTo(Number(exact), exact.split('.')[1]?.length ?? 0);
  });
}

const N = 1;
const MM = 1e-3;
const NMM = 1e-3;
const RPM = (2 * Math.PI) / 60;

describe('axial forces: the catalogue cuts to whole newtons, and to tens where it is above 100', () => {
  row('550 N gaining speed', () => slide()('F_up'), N, [550, 1], '550.6853');
  row('17 N running', () => slide()('F_up_run'), N, [17, 0.5], '17.3520');
  row('-516 N slowing down', () => slide()('F_up_stop'), N, [-516, 0.5], '-515.9813');
});

describe('the move', () => {
  row('75 mm to gain speed', () => move()('d_acc'), MM, [75, 0.5], '75.0000');
  row('850 mm at full speed', () => move()('v_pk') * move()('tc'), MM, [850, 0.5], '850.0000');
  row('cycle of 3.75 s each way', () => move()('T_cyc'), 1, [3.75, 0.005], '3.7500');
  row(
    '1500 r/min at 1 m/s',
    () => work(screwSpeed, { Ph: lead, v_set: '1 m/s' })('n_set'),
    RPM,
    [1500, 0.5],
    '1500.0000',
  );
});

test(`published: mean load 225 N each direction, mean speed 400 r/min, thrust 5440 N (${CATALOGUE})`, () => {
  const f = slide();
  const [up, run, stop] = [f('F_up'), f('F_up_run'), f('F_up_stop')].map((value) => text(value, 'N'));
  for (const forces of [
    [up!, run!, stop!],
    [stop!, run!, up!],
  ] as const) {
    check({
      sheet: screwLife,
      given: oneDirection(...forces),
      expected: { Fm: '225 N', n_m: '400 r/min', F_fs: '5440 N' },
    });
    check({ sheet: screwLife, given: oneDirection(...forces), expected: { Fm: '225.1678 N' } });
  }
});

test(`published: life 4.1·10⁹ turns and 171 000 h with the mean load rounded to 225 N (${CATALOGUE})`, () => {
  const rounded = { ...oneDirection('225 N', '225 N', '225 N'), F4: '225 N' };
  check({
    sheet: screwLife,
    given: rounded,
    expected: {
      L10: '4.1e9 rev',
      Lh: ['171000 h', { absolute: '500 h', because: 'printed to whole thousands' }],
    },
  });
  check({ sheet: screwLife, given: rounded, expected: { L10: '4.0960e9 rev', Lh: '170666.67 h' } });
});

test(`published: allowed speed 2180 r/min over 1100 mm (${CATALOGUE})`, () => {
  const given = { f: '15.1', d1: '17.5 mm', L: '1100 mm' };
  check({ sheet: whirlShortcut, given, expected: { n_allow: ['2180 r/min', lastDigit('10 r/min')] } });
  check({ sheet: whirlShortcut, given, expected: { n_allow: '2183.88 r/min' } });
});

describe('inertia', () => {
  row('screw 1.48e-4 kg·m²', screwInertia, 1e-4, [1.48, 0.005], '1.4760');
  row('slide and screw 3.39e-3 kg·m²', () => atMotor()('J_ref'), 1e-3, [3.39, 0.005], '3.389878');

  test('derived: 1.23e-3 kg·cm²/mm is the inertia of the 20 mm outside diameter in steel', () => {
    const solid = work(inertia, { d: '20 mm', L: '1 mm', rho: '7850 kg/m³' });
    expect(solid('J_cyl') / 1e-7).toBeCloseTo(1.2331, 4);
  });
});

describe('torque: the catalogue carries 120 N·mm and 1050 rad/s² on, so later figures differ by up to 0.4 %', () => {
  row('friction 120 N·mm', runningTorque, NMM, [120, 5], '122.7403');
  row('1050 rad/s²', () => motor()('alpha'), 1, [1050, 5], '1047.1976');
  row('4.61 N·m to gain speed', () => motor()('T_a'), 1, [4.61, 0.004 * 4.61], '4.597069');
  row('4730 N·mm gaining speed', () => motor()('T_up'), NMM, [4730, 0.004 * 4730], '4719.810');
  row('-4490 N·mm slowing down', () => motor()('T_stop'), NMM, [-4490, 0.004 * 4490], '-4474.329');
  row(
    'effective torque 1305 N·mm',
    () =>
      work(
        rmsTorque,
        effective(text(motor()('T_up'), 'N·m'), text(runningTorque(), 'N·m'), text(motor()('T_stop'), 'N·m')),
      )('T_rms'),
    NMM,
    [1305, 0.004 * 1305],
    '1302.023',
  );
});

test(`published: effective torque 1305 N·mm from the printed torques (${CATALOGUE})`, () => {
  const given = effective('4730 N·mm', '120 N·mm', '-4490 N·mm');
  check({ sheet: rmsTorque, given, expected: { T_rms: ['1305 N·mm', lastDigit('1 N·mm')] } });
  check({ sheet: rmsTorque, given, expected: { T_rms: '1305.597 N·mm' } });
});

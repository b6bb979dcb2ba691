/** Wires, breakers, cabinets: a worked reference of electrical engineering for machine tools, double precision. */
import { breaker } from '../breaker.ts';
import { cabinetHeat } from '../cabinet-heat.ts';
import { conductorCapacity } from '../conductor-capacity.ts';
import { conductorDrop } from '../conductor-drop.ts';
import { conductorProtective } from '../conductor-protective.ts';
import { controlTransformer } from '../control-transformer.ts';
import { holds, type Tolerance } from './expect.ts';

const DIGITS: Tolerance = { relative: 5e-8, because: 'eight digits were printed' };

holds('published', '2.5 mm² B2, 50 °C, four circuits', 'IEC 60204-1 Tables 6, D.1, D.2 (W-1)', {
  sheet: conductorCapacity,
  given: { I_table: '17.4 A', k_t: '0.82', k_g: '0.65' },
  expected: { I_z: '9.2742 A' },
});

holds('published', '20 m of 1.5 mm² at 10 A and 70 °C', 'IEC 60028 (W-2)', {
  sheet: conductorDrop,
  given: { l: '20 m', A: '1.5 mm²', I: '10 A', t: '70 °C', extra: '1', V: '230 V', pf: '0.85' },
  expected: {
    dV: ['5.5011494 V', DIGITS],
    share: ['2.391804 %', { relative: 5e-7, because: 'seven digits were printed' }],
    dV_three: ['4.0495149 V', DIGITS],
  },
});

holds('published', 'fault of 1000 A for 0.1 s, and what 1.5 mm² withstands', 'IEC 60364-5-54 (W-3)', {
  sheet: conductorProtective,
  given: { I: '1000 A', t: '0.1 s', k2: '13225 A²·s/mm⁴', A: '1.5 mm²' },
  expected: { A_need: ['2.7498067 mm²', DIGITS], let_through: '29756.25 A²·s' },
});

holds('published', 'bonding: 10 m of 2.5 mm² at 10 A', 'IEC 60028 and Ohm’s law', {
  sheet: conductorProtective,
  given: { l: '10 m', A: '2.5 mm²', I_test: '10 A' },
  expected: {
    R: ['0.068965517 Ω', DIGITS],
    V_test: ['0.6896552 V', { relative: 1e-7, because: 'seven digits were printed' }],
  },
});

holds('published', 'C10 on 230 V with 1.5 mm²', 'IEC 60898-1 (W-4)', {
  sheet: breaker,
  given: { I_n: '10 A', m_never: '5', m_surely: '10', U0: '230 V', A: '1.5 mm²', I_inrush: '92.231319 A' },
  expected: {
    Z_s: '2.3 Ω',
    l_max: ['66.895111 m', DIGITS],
    I_stays: ['70.7107 A', { relative: 1e-6, because: 'six digits were printed' }],
  },
});

holds('published', 'D10: 141.421 A peak, 1.15 Ω', 'IEC 60898-1 (W-4)', {
  sheet: breaker,
  given: { I_n: '10 A', m_never: '10', m_surely: '20', U0: '230 V' },
  expected: { Z_s: '1.15 Ω', I_stays: ['141.421 A', { relative: 5e-6, because: 'six digits were printed' }] },
});

holds('published', '0.8 × 0.6 × 0.25 m on a wall, 120 W', 'VDE 0660-500 (W-6)', {
  sheet: cabinetHeat,
  given: { H: '0.8 m', W: '0.6 m', D: '0.25 m', P: '120 W', k: '5.5 W/(m²·K)' },
  expected: { A_wall: '1.242 m²', A_free: '1.434 m²', dT_wall: ['17.566974 K', DIGITS] },
});

holds('published', 'the same with 400 W and 15 K allowed', 'VDE 0660-500 (W-6)', {
  sheet: cabinetHeat,
  given: {
    H: '0.8 m',
    W: '0.6 m',
    D: '0.25 m',
    P: '400 W',
    k: '5.5 W/(m²·K)',
    dT_want: '15 K',
    k_air: '3.1 m³·K/(h·W)',
  },
  expected: { Q_wall: '297.535 W', V_wall: ['61.490567 m³/h', DIGITS] },
});

holds('published', 'four contactors of 8 VA, 70 VA pulling in, 10 VA of lamps', 'sum at pull-in (W-5)', {
  sheet: controlTransformer,
  given: { S_hold: '32 VA', S_lamps: '10 VA', S_one: '8 VA', S_pull: '70 VA' },
  expected: { S: '42 VA', S_short: '104 VA' },
});

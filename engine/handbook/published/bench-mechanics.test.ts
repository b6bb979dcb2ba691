/** Bench tests of slides, screws and counting: worked examples computed apart in double precision. */
import { benchBacklash } from '../bench-backlash.ts';
import { benchCounting } from '../bench-counting.ts';
import { benchMains } from '../bench-mains.ts';
import { benchPull } from '../bench-pull.ts';
import { benchRunOut } from '../bench-run-out.ts';
import { benchStiffness } from '../bench-stiffness.ts';
import { benchTravel } from '../bench-travel.ts';
import { benchWeight } from '../bench-weight.ts';
import { holds, type Tolerance } from './expect.ts';

const DIGITS: Tolerance = { relative: 5e-8, because: 'eight or more digits were printed' };
const STATICS = 'statics, worked apart';

holds('derived', '0.85 kg on a radius of 40 mm', STATICS, {
  sheet: benchWeight,
  given: { m: '0.850 kg', r: '40 mm' },
  expected: { T: '0.3334261 N·m' },
});

holds('derived', 'a weight of 2 kg falls one metre in 1.6 s', 'Newton’s second law, worked apart', {
  sheet: benchWeight,
  given: { m: '2 kg', r: '30 mm', h: '1 m', t: '1.6 s', Tf: '0.12 N·m' },
  expected: { a: '0.7812500 m/s²', J: ['0.016186522 kg·m²', DIGITS] },
});

holds('derived', 'friction along a screw of 5 mm lead', STATICS, {
  sheet: benchWeight,
  given: { T_one: '0.6 N·m', T_other: '0.6 N·m', Ph: '5 mm', eta: '90 %' },
  expected: { T_friction: '0.600 N·m', T_bias: '0.000 N·m', F_axial: '678.584013 N' },
});

holds('derived', 'spring scale: pulley, slide up and down', STATICS, {
  sheet: benchPull,
  given: { F: '38 N', r: '25.5 mm', F_up: '210 N', F_down: '90 N' },
  expected: { T: '0.9690 N·m', F_friction: '150.0 N', F_weight: '60.0 N' },
});

holds('derived', 'tension of a belt that sounds at 85 Hz', 'stretched string, worked apart', {
  sheet: benchPull,
  given: { m_b: '0.060 kg/m', L: '250 mm', f: '85 Hz' },
  expected: { S: '108.3750 N' },
});

holds('derived', 'friction and weight from motor current', STATICS, {
  sheet: benchPull,
  given: { Kt: '0.45 N·m/A', I_up: '2.1 A', I_down: '-1.3 A' },
  expected: { T_friction: '0.7650 N·m', T_weight: '0.1800 N·m' },
});

holds('derived', '3997 counts where there should be 4000', 'travel of one count, worked apart', {
  sheet: benchCounting,
  given: { C: '3997 counts', N: '1', lines: '1000 lines', Ph: '5 mm' },
  expected: { lost: '-3.0 counts', travel: '-3.75 µm', lines_found: '999.25 lines' },
});

holds('derived', 'three pole pairs: 50.6 Hz at 1012 r/min', 'definition of pole pairs', {
  sheet: benchCounting,
  given: { f: '50.6 Hz', w: '1012 r/min', cycles: '60', N: '20' },
  expected: { p_speed: '3.000', p_turns: '3.000' },
});

holds('derived', 'twenty turns of a screw of five threads an inch', 'definition of the lead', {
  sheet: benchTravel,
  given: { x: '4 in', N: '20', phi: '0 °' },
  expected: { Ph: '5.0800 mm' },
});

holds('derived', 'lost motion of the slide less thrust bearing and belt', 'difference of readings, by hand', {
  sheet: benchBacklash,
  given: {
    a: '41.2 µm',
    b: '0.3 µm',
    s: '0.25 mm',
    r: '100 mm',
    Ph: '5 mm',
    B_total: '41 µm',
    B_thrust: '12 µm',
    B_turn: '2 µm',
    B_bracket: '3 µm',
    B_edge: '55 µm',
  },
  expected: { B: '40.90 µm', B_arm: '1.9894368 µm', B_nut: '24.00 µm', B_way: '14.00 µm' },
});

holds('derived', 'a housing that gives 8 µm under 1200 N, with play of 12 µm', 'statics, by hand', {
  sheet: benchStiffness,
  given: {
    P: '120 N',
    n: '10',
    s_push: '0.007 µm/N',
    s_pull: '0.006 µm/N',
    x_push: '5 µm',
    x_pull: '-7 µm',
    s: '0.0066666667 µm/N',
  },
  expected: { F: '1200.0 N', s_both: '0.006500 µm/N', play: '12.00 µm', k: '150.0 N/µm' },
});

holds('derived', 'a socket that sags from 233 V to 226 V at 14 A', 'Ohm’s law, by hand', {
  sheet: benchMains,
  given: {
    V0: '233 V',
    V1: '226 V',
    I: '14 A',
    V_low: '221 V',
    R_mains: '0.5 Ω',
    I_most: '20 A',
    V_rated: '230 V',
    V_read: '226 V',
  },
  expected: { R: '0.500 Ω', V_worst: '211.0 V', sag: '3.004 %', off: '-1.739 %' },
});

holds('derived', 'a spindle that swings 10 µm near and 40 µm 300 mm out', 'geometry, by hand', {
  sheet: benchRunOut,
  given: { high: '0.012 mm', low: '0.002 mm', s_near: '10 µm', s_far: '40 µm', L: '300 mm' },
  expected: { swing: '10.0 µm', off: '5.0 µm', tilt: '17.19 arcsec', tilt_least: '10.31 arcsec' },
});

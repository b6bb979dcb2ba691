/** Bench tests of motors: worked examples computed apart in double precision, by least squares and closed forms. */
import { benchBackEmf } from '../bench-back-emf.ts';
import { benchCoastDown } from '../bench-coast-down.ts';
import { benchCoil } from '../bench-coil.ts';
import { benchInductance } from '../bench-inductance.ts';
import { benchInsulation } from '../bench-insulation.ts';
import { benchLever } from '../bench-lever.ts';
import { benchMagnet } from '../bench-magnet.ts';
import { benchNoLoad } from '../bench-no-load.ts';
import { benchResistance } from '../bench-resistance.ts';
import { benchResolver } from '../bench-resolver.ts';
import { benchSpindleStop } from '../bench-spindle-stop.ts';
import { benchTacho } from '../bench-tacho.ts';
import { holds, type Tolerance } from './expect.ts';

const DIGITS: Tolerance = { relative: 5e-8, because: 'eight or more digits were printed' };

holds('derived', 'two currents tell copper from brushes', 'Ohm’s law, worked apart', {
  sheet: benchResistance,
  given: { V1: '3.15 V', I1: '1.90 A', V2: '9.10 V', I2: '7.50 A' },
  expected: { R12: ['1.0625 Ω', DIGITS], Vbr: ['1.13125 V', DIGITS] },
});

holds('derived', 'spread of twelve places of a commutator', 'definition, worked apart', {
  sheet: benchResistance,
  given: { R_most: '1.326 Ω', R_least: '1.294 Ω', R_mean: '1.309 Ω' },
  expected: { spread: ['2.4446142 %', DIGITS] },
});

holds('derived', 'a motor spun both ways at 1012 r/min', 'definition of the constant, worked apart', {
  sheet: benchBackEmf,
  given: {
    V: '36.3 V',
    w: '1012 r/min',
    t: '20 °C',
    aB: '-0.002 1/K',
    V_cw: '36.42 V',
    V_ccw: '36.18 V',
    K: '35.869565 V/krpm',
    K_plate: '36.65 V/krpm',
  },
  expected: {
    Ke: ['0.34252912 V·s/rad', DIGITS],
    Ke20: ['35.869565 V/krpm', DIGITS],
    asymmetry: '0.661157 %',
    ratio: ['97.870574 %', DIGITS],
  },
});

holds('derived', 'no-load speed of a motor on 24 V', 'd.c. machine with constant flux, worked apart', {
  sheet: benchNoLoad,
  given: { V: '24 V', Vbr: '2 V', I0: '0.42 A', R: '1.309 Ω', Kt: '0.34252912 N·m/A' },
  expected: { w0: ['598.00613 r/min', DIGITS] },
});

const ODE = 'first-order differential equation in closed form, worked apart';

holds('derived', 'time and turns of a coast-down from 2000 r/min', ODE, {
  sheet: benchCoastDown,
  given: {
    w0: '2000 r/min',
    w1: '0 r/min',
    t: '1.202 s',
    Tc: '0.12 N·m',
    b: '2e-4 N·m·s/rad',
    J_known: '8e-4 kg·m²',
  },
  expected: { t_stop: '1.19764956 s', theta: '18.966225 rev', J: ['0.00080290598 kg·m²', DIGITS] },
});

holds('derived', 'steady friction alone would stop it later', ODE, {
  sheet: benchCoastDown,
  given: { w0: '2000 r/min', w1: '0 r/min', t: '1.3962634 s', Tc: '0.12 N·m' },
  expected: { J_steady: ['8e-4 kg·m²', { relative: 5e-8, because: 'the time has eight digits' }] },
});

holds('derived', 'timed to half speed the inertia is the same', ODE, {
  sheet: benchCoastDown,
  given: { w0: '2000 r/min', w1: '1000 r/min', t: '0.554167329 s', Tc: '0.12 N·m', b: '2e-4 N·m·s/rad' },
  expected: { J: ['8e-4 kg·m²', { relative: 2e-9, because: 'the time has nine digits' }] },
});

holds('derived', 'a disc added to the shaft', 'Newton, two inertias and the same friction, worked apart', {
  sheet: benchCoastDown,
  given: { m: '1 kg', r: '50 mm', J_a: '0.00125 kg·m²', a1: '162.0 rad/s²', a2: '63.2 rad/s²' },
  expected: { J_disc: '0.00125 kg·m²', J_slows: ['0.00079959514 kg·m²', DIGITS] },
});

holds('derived', 'a shaft of 0.012 kg·m² from 150 rad/s', ODE, {
  sheet: benchCoastDown,
  given: {
    w0: '150 rad/s',
    Tc: '0.35 N·m',
    b: '0.0012 N·m·s/rad',
    J_known: '0.012 kg·m²',
    J_a: '0.004 kg·m²',
    t1: '4.14943852 s',
    t2: '5.53258469 s',
  },
  expected: {
    t_stop: '4.14943852 s',
    theta: '289.747098 rad',
    J_times: ['0.012 kg·m²', { relative: 2e-8, because: 'the difference of the times has nine digits' }],
  },
});

holds('derived', 'a shaft of 0.012 kg·m² slows to 69.94 rad/s in two seconds', ODE, {
  sheet: benchCoastDown,
  given: { w0: '150 rad/s', w1: '69.9394159 rad/s', t: '2 s', Tc: '0.35 N·m', b: '0.0012 N·m·s/rad' },
  expected: { J: ['0.012 kg·m²', { relative: 2e-9, because: 'the speed has nine digits' }] },
});

holds('derived', 'lever, locked current', 'statics and Ohm’s law, worked apart', {
  sheet: benchLever,
  given: {
    F: '13.75 N',
    r: '250 mm',
    I: '10.00 A',
    V: '2.40 V',
    Vbr: '0 V',
    R: '1.309 Ω',
    R_lead: '0.020 Ω',
  },
  expected: { Kt: '0.34375 N·m/A', I_locked: ['1.8058691 A', DIGITS] },
});

holds('derived', 'torque constant by lever against the spin test', 'E_n of two results, worked apart', {
  sheet: benchMagnet,
  given: {
    Ke: '0.342529117 V·s/rad',
    Kt: '0.34375 N·m/A',
    U_e: '0.00285656534 V·s/rad',
    U_t: '0.00558842 N·m/A',
  },
  // U_t was printed to six digits, and the difference of the two constants has lost two.
  expected: { En: ['0.194526505', { relative: 1e-5, because: 'inputs of six digits' }] },
});

holds('derived', 'nine tenths of the magnet is 23 % more heat', 'heat in proportion to current squared', {
  sheet: benchMagnet,
  given: { Ke: '0.315 V·s/rad', K_stated: '0.35 V·s/rad', t: '20 °C', aB: '-0.002 1/K' },
  expected: { ratio_e: '90.00 %', more_heat: '23 %', more_current: '111.1 %' },
});

holds('derived', '180 MΩ at 18 °C', 'halving with each 10 K, IEEE 43 from memory, worked apart', {
  sheet: benchInsulation,
  given: { R: '180 MΩ', t: '18 °C' },
  expected: { R40: ['39.1747753 MΩ', DIGITS] },
});

holds(
  'derived',
  'a resolver fed with 4 V',
  'resolver format of the Analog Devices AD2S1205 data sheet, worked apart',
  {
    sheet: benchResolver,
    given: { Ve: '4.000 V', Vs: '1.286 V', Vc: '-1.531 V', delta: '1 %' },
    expected: { TR: '0.499859793', theta: '139.970618 °', error: '0.2864789 °' },
  },
);

holds('derived', 'inductance at 50 Hz', 'impedance of a coil, worked apart', {
  sheet: benchInductance,
  given: { V: '6.31 V', I: '3.74 A', R: '1.309 Ω', f: '50 Hz' },
  expected: { Z: '1.6871658 Ω', L: ['3.38823994 mH', DIGITS] },
});

holds('derived', 'a brake coil of 38.4 Ω on 24 V', 'Ohm’s law', {
  sheet: benchCoil,
  given: { V: '24 V', R: '38.4 Ω' },
  expected: { I: '0.625 A', P: '15.0 W' },
});

holds('derived', 'a tachogenerator both ways at 1012 r/min', 'definition, worked apart', {
  sheet: benchTacho,
  given: { V: '7.04 V', w: '1012 r/min', V_pp: '0.21 V' },
  expected: { Kg: '6.9565217 V/krpm', ripple: '2.98295 %' },
});

holds(
  'derived',
  'a ferrite motor whose plate speaks of 95 °C',
  'magnet strength in proportion, worked apart',
  {
    sheet: benchMagnet,
    given: { Ke: '0.35 V·s/rad', K_stated: '0.2975 V·s/rad', t: '95 °C', aB: '-0.002 1/K' },
    expected: { K_plate: '0.350 V·s/rad', ratio_e: '100.00 %' },
  },
);

holds('derived', 'delay of a spindle drive from two stops', 'line through two points, worked apart', {
  sheet: benchSpindleStop,
  given: {
    N: '84',
    f: '240 Hz',
    t_0: '30 ms',
    t_lamp: '12 ms',
    s: '0.01 s²/rad',
    n: '600 r/min',
    n1: '100 r/min',
    n2: '300 r/min',
    t1: '0.1 s',
    t2: '0.24 s',
  },
  expected: {
    t: ['0.35 s', DIGITS],
    t_two: ['30 ms', DIGITS],
    t_d: ['42 ms', DIGITS],
    a: ['100 rad/s²', DIGITS],
    turned: ['0.42 rev', DIGITS],
  },
});

import { cutThreadMilling } from '../cut-thread-milling.ts';
import { tapDepth } from '../tap-depth.ts';
import { tapStop } from '../tap-stop.ts';
import { tapTorque } from '../tap-torque.ts';
import { tapTorqueSimple } from '../tap-torque-simple.ts';
import { threadPass } from '../thread-pass.ts';
import { threadPassVariant } from '../thread-pass-variant.ts';
import { threadRunIn } from '../thread-run-in.ts';
import { threadSpeed } from '../thread-speed.ts';
import { threadStarts } from '../thread-starts.ts';
import { holds } from './expect.ts';

const depths = [0.32532, 0.46008, 0.56348, 0.65065, 0.72744, 0.79687, 0.86072, 0.92015];
for (const [at, depth] of depths.entries())
  holds('derived', `pass ${at + 1} of 8 of M10`, 'depth goes with the square root of the pass', {
    sheet: threadPass,
    given: { a_tot: '0.92015195 mm', N: '8', i: `${at + 1}`, w: '0 mm', a: '30 deg', gamma: '29 deg' },
    expected: { a_i: `${depth.toFixed(5)} mm` },
  });
holds(
  'derived',
  'a flat tip: the last pass ends at the depth, the first takes its share of the area',
  'w a + t a² = A / N',
  {
    sheet: threadPass,
    given: { a_tot: '4 mm', N: '4', i: '4', w: '2 mm', a: '15 deg', gamma: '0 deg' },
    expected: { a_i: '4.000000 mm', A: '12.287187 mm²', A_i: '3.0717968 mm²', dz: '0.000000 mm' },
  },
);

for (const [at, printed] of ['0.23', '0.42', '0.59', '0.73', '0.84', '0.94'].entries())
  holds(
    'published',
    `pass ${at + 1} of 6 of the tool makers’ series, recalled`,
    'two tool makers’ threading sections',
    {
      sheet: threadPassVariant,
      given: { a_tot: '0.94 mm', N: '6', i: `${at + 1}` },
      expected: { a_i: `${printed} mm` },
    },
  );

const runIn = { n: '500 r/min', Ph: '2 mm', Kv: '30 1/s', e: '1 %', a: '500 mm/s²' };
holds('derived', 'run-in at 500 r/min', 'closed form, checked by stepping through time', {
  sheet: threadRunIn,
  given: runIn,
  expected: {
    t_step: '0.15350567 s',
    L_step: '2.0084279 mm',
    t_s: '0.17154983 s',
    L_in: '2.0313861 mm',
    x_lag: '0.5555556 mm',
  },
});
holds('derived', 'run-in at 1000 r/min', 'closed form, checked by stepping through time', {
  sheet: threadRunIn,
  given: { ...runIn, n: '1000 r/min' },
  expected: { L_in: '4.1962328 mm' },
});
holds('derived', 'run-in of 1.5 mm at 1000 r/min, 1 m/s², gain 40', 'closed form, second calculation', {
  sheet: threadRunIn,
  given: { n: '1000 r/min', Ph: '1.5 mm', Kv: '40 1/s', e: '1 %', a: '1 m/s²' },
  expected: { V: '1500.000 mm/min', L_in: '2.285309 mm', x_lag: '0.625000 mm', d_n: '6.25000 µm' },
});

holds('derived', 'speed limits', 'counting', {
  sheet: threadSpeed,
  given: {
    v: '3000 mm/min',
    Ph: '2 mm',
    k: '90 %',
    N: '1024 lines',
    f: '100 kHz',
    n: '1000 r/min',
    dt: '1 ms',
  },
  expected: {
    n_axis: '1350.0000 r/min',
    n_line: '5859.3750 r/min',
    n_max: '1350.0000 r/min',
    scatter: '33.33333 µm',
    t_index: '14.64844 µs',
    grain: '0.48828125 µm',
  },
});

holds('derived', 'second of two starts', 'half a turn, or one pitch', {
  sheet: threadStarts,
  given: { P: '7 mm', z: '2', j: '2' },
  expected: { phi: '180.0000 °', dz: '7.0000 mm', Ph: '14.0000 mm' },
});

const stop = { J: '0.015 kg·m²', T: '15 N·m', n_b: '1000 r/min', P: '1.5 mm', t_d: '10 ms', d: '1 mm' };
holds('derived', 'a tap stopped at constant torque', 'kinematics', {
  sheet: tapStop,
  given: { ...stop, n: '1000 r/min' },
  expected: { t: '0.10471976 s', theta: '0.87266463 rev', x: '1.3089969 mm', x_d: '0.250000 mm' },
});
holds(
  'derived',
  'a tap stopped from above the base speed',
  'kinematics at constant power, then constant torque',
  {
    sheet: tapStop,
    given: { ...stop, n: '2000 r/min' },
    expected: { theta: '4.9450995 rev', x: '7.4176493 mm' },
  },
);
holds(
  'derived',
  'the highest speed for an overrun gives that overrun back, above the base speed',
  'the two formulas undo each other',
  {
    sheet: tapStop,
    given: { ...stop, n: '2000 r/min', d: '7.4176493 mm' },
    expected: { n_max: '2000.0000 r/min' },
  },
);
holds('derived', 'the same below the base speed', 'the two formulas undo each other', {
  sheet: tapStop,
  given: { ...stop, n: '800 r/min', d: `${1.3089969 * 0.64} mm` },
  expected: { n_max: '800.0000 r/min' },
});
holds('derived', 'an overrun of 0.4 s to a stand at 1 mm pitch', 'mean speed times time', {
  sheet: tapStop,
  // Torque that stops 0.015 kg·m² from 1000 r/min in 0.4 s.
  given: {
    J: '0.015 kg·m²',
    T: `${(0.015 * 1000 * Math.PI) / 30 / 0.4} N·m`,
    n_b: '1000 r/min',
    n: '1000 r/min',
    P: '1 mm',
    t_d: '0 ms',
    d: '1 mm',
  },
  expected: { t: '0.4000000 s', x: '3.3333333 mm' },
});
holds('derived', 'depth to drill, and axis and spindle out of step', 'sums', {
  sheet: tapDepth,
  given: {
    L: '20 mm',
    P: '1.5 mm',
    c: '3',
    x: '1.3089969 mm',
    chips: '1 mm',
    n: '600 r/min',
    Kz: '30 1/s',
    Ks: '25 1/s',
  },
  expected: { e: '-0.100000 mm', L_hole: '26.9089969 mm', float: '1.508997 mm' },
});
holds('derived', 'the same with axis and spindle in step', 'sums', {
  sheet: tapDepth,
  given: {
    L: '20 mm',
    P: '1.5 mm',
    c: '3',
    x: '1.3089969 mm',
    chips: '1 mm',
    n: '600 r/min',
    Kz: '30 1/s',
    Ks: '30 1/s',
  },
  expected: { L_hole: '26.80900 mm' },
});

holds(
  'derived',
  'M10 spiral flute tap in C45, first formula',
  'a tap maker’s catalogue: formula and factors; arithmetic ours',
  {
    sheet: tapTorque,
    given: { d: '10 mm', D0: '8.5 mm', alpha: '30 deg', kt: '3900 N/mm²', K: '1.15', n: '400 r/min' },
    expected: { T: '6.5544591 N·m' },
  },
);
holds(
  'derived',
  'M10 in structural steel, second formula',
  'a tap maker’s page: formula and factors; arithmetic ours',
  {
    sheet: tapTorqueSimple,
    given: { d: '10 mm', P: '1.5 mm', kt: '2500 N/mm²', n: '400 r/min' },
    expected: { T: '7.03125 N·m', Pc: '0.2945243 kW' },
  },
);

// Tool of 8.2 mm with 3 teeth, 250 m/min: 9709 r/min; on the contour 2622 mm/min, of the centre point 472 mm/min.
holds(
  'published',
  'M10 milled inside: feed on the contour and of the tool’s centre',
  'Widia, general catalogue 2017, programming instructions for a thread mill, example M10-6H',
  {
    sheet: cutThreadMilling,
    given: {
      s: '-1',
      d_w: '10 mm',
      d_b: '8.5 mm',
      D_c: '8.2 mm',
      z: '3 teeth',
      f_z: '0.09 mm',
      n: '9709 r/min',
      P_h: '1.5 mm',
      alpha: '30 deg',
      m: '1',
    },
    expected: {
      v_w: [
        '2622 mm/min',
        { absolute: '1 mm/min', because: 'worked there with a speed before it was rounded' },
      ],
      v: '472 mm/min',
      // Half the diameters apart: (10 − 8.2) ∕ 2.
      R: '0.9 mm',
    },
  },
);

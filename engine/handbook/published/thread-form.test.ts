import { threadForm55 } from '../thread-form-55.ts';
import { threadForm60 } from '../thread-form-60.ts';
import { threadFormTrapezoidal } from '../thread-form-trapezoidal.ts';
import { threadHelix } from '../thread-helix.ts';
import { threadNpt } from '../thread-npt.ts';
import { threadTapHole } from '../thread-tap-hole.ts';
import { threadTaper } from '../thread-taper.ts';
import { threadWires } from '../thread-wires.ts';
import { holds } from './expect.ts';

const publicTable = 'a public thread table to ISO 724';
/** [thread, d, P, d2, d3] in mm as printed. */
for (const [name, d, P, d2, d3] of [
  ['M6', '6', '1', '5.350', '4.773'],
  ['M8', '8', '1.25', '7.188', '6.466'],
] as const)
  holds('published', name, publicTable, {
    sheet: threadForm60,
    given: { d: `${d} mm`, P: `${P} mm` },
    expected: { d2: `${d2} mm`, d3: `${d3} mm` },
  });
holds('published', 'M10', 'an online calculation to DIN 13', {
  sheet: threadForm60,
  given: { d: '10 mm', P: '1.5 mm' },
  expected: { H: '1.299038 mm', d2: '9.026 mm', D1: '8.376 mm', d3: '8.160 mm', h3: '0.920 mm' },
});
holds('published', 'M20, recalled and recomputed', 'ISO 724, from memory', {
  sheet: threadForm60,
  given: { d: '20 mm', P: '2.5 mm' },
  expected: { d2: '18.376 mm', D1: '17.294 mm', d3: '16.933 mm' },
});
holds('published', '1/4-20 UNC', 'a public Unified thread table', {
  sheet: threadForm60,
  given: { d: '0.25 in', P: '0.05 in' },
  expected: { d2: '0.2175 in', d3: '0.1887 in' },
});
holds('published', '1/2-13 UNC', 'a public Unified thread table', {
  sheet: threadForm60,
  given: { d: '0.5 in', P: `${1 / 13} in` },
  expected: { d2: '0.4500 in', d3: '0.4056 in' },
});
holds('published', '1/4-28 UNF in millimetres', 'a tap maker’s user guide', {
  sheet: threadForm60,
  given: { d: '6.35 mm', P: `${25.4 / 28} mm` },
  expected: {
    d2: '5.761 mm',
    d3: '5.237 mm',
    D1: ['5.367 mm', { absolute: '0.001 mm', because: 'the guide rounds this one down' }],
  },
});

/** Threads per inch, major, effective and minor diameter in inches, as the table prints them. */
const WHITWORTH = [
  ['1/8 BSW', 40, 0.125, '0.1090', '0.0930'],
  ['3/16 BSW', 24, 0.1875, '0.1608', '0.1341'],
  ['1/4 BSW', 20, 0.25, '0.2180', '0.1860'],
  ['5/16 BSW', 18, 0.3125, '0.2769', '0.2414'],
  ['3/8 BSW', 16, 0.375, '0.3350', '0.2950'],
  ['7/16 BSW', 14, 0.4375, '0.3918', '0.3460'],
  ['1/2 BSW', 12, 0.5, '0.4466', '0.3933'],
  ['9/16 BSW', 12, 0.5625, '0.5091', '0.4558'],
  ['5/8 BSW', 11, 0.625, '0.5668', '0.5086'],
  ['3/4 BSW', 10, 0.75, '0.6860', '0.6219'],
  ['7/8 BSW', 9, 0.875, '0.8039', '0.7327'],
  ['1 BSW', 8, 1, '0.9200', '0.8399'],
  ['1 1/8 BSW', 7, 1.125, '1.0335', '0.9420'],
  ['1 1/4 BSW', 7, 1.25, '1.1585', '1.0670'],
  ['1 1/2 BSW', 6, 1.5, '1.3933', '1.2866'],
  ['1 3/4 BSW', 5, 1.75, '1.6219', '1.4939'],
  ['2 BSW', 4.5, 2, '1.8577', '1.7154'],
] as const;
const digit = (text: string) =>
  [
    text,
    { absolute: '0.0001 in', because: 'the table cuts digits off here and there instead of rounding' },
  ] as const;
for (const [name, tpi, d, d2, d1] of WHITWORTH)
  holds('published', name, 'threading tables for Whitworth threads, an old-engine club’s page, chart 1', {
    sheet: threadForm55,
    given: { d: `${d} in`, P: `${1 / tpi} in` },
    expected: { d2: digit(`${d2} in`), d1: digit(`${d1} in`) },
  });
for (const [size, major, pitch, minor] of [
  ['1/4', '13.157', '12.301', '11.445'],
  ['3/8', '16.662', '15.806', '14.950'],
] as const)
  holds('published', `R ${size} at the gauge plane`, 'Mechanical Engineer’s Pocket Book, 4.1.38', {
    sheet: threadForm55,
    given: { d: `${major} mm`, P: `${25.4 / 19} mm` },
    expected: { d2: `${pitch} mm`, d1: `${minor} mm` },
  });

/** d, P, clearance, d2, D4, d3, D1 in mm as printed. */
const TRAPEZOIDAL = [
  [8, 1.5, 0.15, '7.250', '8.300', '6.200', '6.500'],
  [10, 2, 0.25, '9.000', '10.500', '7.500', '8.000'],
  [11, 3, 0.25, '9.500', '11.500', '7.500', '8.000'],
  [12, 3, 0.25, '10.500', '12.500', '8.500', '9.000'],
  [14, 3, 0.25, '12.500', '14.500', '10.500', '11.000'],
  [16, 2, 0.25, '15.000', '16.500', '13.500', '14.000'],
  [42, 7, 0.5, '38.500', '43.000', '34.000', '35.000'],
  [44, 12, 0.5, '38.000', '45.000', '31.000', '32.000'],
  [46, 8, 0.5, '42.000', '47.000', '37.000', '38.000'],
  [48, 8, 0.5, '44.000', '49.000', '39.000', '40.000'],
] as const;
for (const [d, P, ac, d2, D4, d3, D1] of TRAPEZOIDAL)
  holds('published', `Tr ${d}x${P}`, 'table to ISO 2904:1977 on an engineering reference site', {
    sheet: threadFormTrapezoidal,
    given: { d: `${d} mm`, P: `${P} mm`, ac: `${ac} mm` },
    expected: { d2: `${d2} mm`, D4: `${D4} mm`, d3: `${d3} mm`, D1: `${D1} mm` },
  });

/** Size, threads per inch, outside diameter, L1, E1, L2, h in inches as printed. */
const NPT = [
  ['1/8', 27, 0.405, 0.1615, '0.37360', '0.2639', '0.02963'],
  ['1/4', 18, 0.54, 0.2278, '0.49163', '0.4018', '0.04444'],
  ['3/8', 18, 0.675, 0.24, '0.62701', '0.4078', '0.04444'],
  ['1/2', 14, 0.84, 0.32, '0.77843', '0.5337', '0.05714'],
  ['3/4', 14, 1.05, 0.339, '0.98887', '0.5457', '0.05714'],
  ['1', 11.5, 1.315, 0.4, '1.23863', '0.6828', '0.06957'],
  ['1 1/4', 11.5, 1.66, 0.42, '1.58338', '0.7068', '0.06957'],
  ['1 1/2', 11.5, 1.9, 0.42, '1.82234', '0.7235', '0.06957'],
  ['2', 11.5, 2.375, 0.436, '2.29627', '0.7565', '0.06957'],
  ['2 1/2', 8, 2.875, 0.682, '2.76215', '1.1375', '0.10000'],
  ['3', 8, 3.5, 0.766, '3.38850', '1.2000', '0.10000'],
  ['3 1/2', 8, 4, 0.821, '3.88881', '1.2500', '0.10000'],
  ['4', 8, 4.5, 0.844, '4.38712', '1.3000', '0.10000'],
] as const;
for (const [size, tpi, D, L1, E1, L2, h] of NPT)
  holds('published', `NPT ${size}`, 'table of ASME B1.20.1 basic dimensions reprinted by a pipe supplier', {
    sheet: threadNpt,
    given: { D: `${D} in`, P: `${1 / tpi} in`, L1: `${L1} in` },
    expected: {
      E1: [
        `${E1} in`,
        { absolute: '0.00003 in', because: 'the table rounds the hand-tight length to a thousandth' },
      ],
      L2: `${L2} in`,
      h: `${h} in`,
    },
  });

holds('derived', 'taper of 1 in 16', 'atan(1/32)', {
  sheet: threadTaper,
  given: { t: '0.0625', d: '20.955 mm', Lg: '8.2 mm', L: '13.2 mm', P: '1.8142857 mm' },
  expected: { half: '1.7899106 °', d_end: '20.4425 mm', dx_turn: '0.05669643 mm', d_big: '21.26750 mm' },
});
holds('derived', 'M10 over wires', 'geometry, second calculation', {
  sheet: threadWires,
  given: { d2: '9.0257209 mm', P: '1.5 mm', a: '30 deg', w: '0.8660254 mm' },
  expected: { w_best: '0.8660254 mm', M: '10.32476 mm' },
});
holds('derived', 'BSW 1/4-20 over wires', 'geometry, second calculation', {
  sheet: threadWires,
  given: { d2: '0.21798363 in', P: '0.05 in', a: '27.5 deg', w: '0.02818455 in' },
  expected: { w_best: '0.02818455 in', M: '0.2591824 in' },
});
holds('derived', 'slope of Tr 40x14 (P7)', 'one turn unrolled: atan(14 / (π 36.5))', {
  sheet: threadHelix,
  given: { P: '7 mm', z: '2', d2: '36.5 mm', d1: '32 mm', c: '3 deg' },
  expected: { Ph: '14.0000 mm', beta: '6.96087 °', lead_side: '10.92805 °' },
});
holds(
  'derived',
  'M10 in a hole of 8.5 mm, both ways of counting',
  'a hand calculation: 1.5 / 1.623798, 1.5 / 1.9485',
  {
    sheet: threadTapHole,
    given: { d: '10 mm', H1: '0.8118988 mm', P: '1.5 mm', D0: '8.5 mm' },
    expected: { share: '92.3760 %', share_old: '76.982 %', D_cut: '8.5000 mm', D_form: '9.2500 mm' },
  },
);

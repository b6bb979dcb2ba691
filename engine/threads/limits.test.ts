import { describe, expect, test } from 'vitest';
import { FUNDAMENTAL_DEVIATIONS } from '../tables/thread-metric-tolerance.ts';
import { PAIRS, PITCHES, T_D, T_D1, T_D2, T_D2_BOLT } from './iso-965.fixture.ts';
import { limitsOf } from './limits.ts';
import { metricTolerance } from './limits-metric.ts';
import { parseThread } from './parse.ts';
import type { Limits } from './types.ts';

const thread = (text: string) => {
  const read = parseThread(text);
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
};
const limits = (text: string, className: string): Limits => {
  const found = limitsOf(thread(text), className);
  if (!found.ok) throw new Error(found.problem.message);
  return found.value[0]!;
};
const value = (of: Limits, key: string, end: 'low' | 'high', unit: number): number =>
  of.rows.find((row) => row.key === key)![end]! / unit;

describe('ISO 965-1 tables', () => {
  const tables = [
    ['D1', T_D1],
    ['d', T_D],
  ] as const;
  for (const [which, table] of tables)
    for (const [grade, row] of Object.entries(table))
      test(`published: tolerance of ${which}, grade ${grade} (ISO 965-1:1998 as transcribed in public source)`, () => {
        for (const [at, printed] of row.entries())
          if (printed !== null)
            expect(
              Math.round(metricTolerance(which, Number(grade), PITCHES[at]!, 10)! * 1e6),
              `pitch ${PITCHES[at]}`,
            ).toBe(printed);
      });
  for (const [which, table] of [
    ['D2', T_D2],
    ['d2', T_D2_BOLT],
  ] as const)
    for (const [grade, row] of Object.entries(table))
      test(`published: tolerance of ${which}, grade ${grade} (ISO 965-1:1998 as transcribed in public source)`, () => {
        for (const [at, printed] of row.entries())
          if (printed !== null)
            expect(
              Math.round(metricTolerance(which, Number(grade), PAIRS[at]![1], PAIRS[at]![0])! * 1e6),
              PAIRS[at]!.join('x'),
            ).toBe(printed);
      });
});

test('derived: the gaps of position g stay within three micrometres of 15 + 11 P, from which the standard rounds them', () => {
  for (const [P, g] of FUNDAMENTAL_DEVIATIONS)
    expect(Math.abs(g - (15 + 11 * P)), `${P}`).toBeLessThanOrEqual(3.1);
});

/** Outside max and min, pitch max and min, minor max (flat) and min (rounded), mm, class 6g. */
const BOLTS = `M1.6 1.581 1.496 1.354 1.291 1.202 1.075
M2x0.25 1.982 1.915 1.820 1.764 1.711 1.610
M2 1.981 1.886 1.721 1.654 1.548 1.408
M2.5x0.35 2.481 2.396 2.254 2.191 2.102 1.998
M2.5 2.480 2.380 2.188 2.117 1.993 1.840
M3x0.35 2.981 2.896 2.754 2.687 2.602 2.471
M3 2.980 2.874 2.655 2.580 2.438 2.272
M3.5 3.479 3.354 3.089 3.004 2.829 2.634
M4x0.5 3.980 3.874 3.655 3.580 3.439 3.272
M4 3.978 3.838 3.523 3.433 3.220 3.002
M5 4.976 4.826 4.456 4.361 4.110 3.868
M6x0.75 5.978 5.838 5.491 5.391 5.166 4.929
M6 5.974 5.794 5.324 5.212 4.891 4.596
M7 6.974 6.794 6.324 6.212 5.891 5.596
M8x1 7.974 7.794 7.324 7.212 6.891 6.596
M8 7.972 7.760 7.160 7.042 6.619 6.272
M9 8.972 8.760 8.160 8.042 7.619 7.272
M10x0.75 9.978 9.838 9.491 9.391 9.166 8.929
M10x1 9.974 9.794 9.324 9.212 8.891 8.596
M10x1.25 9.972 9.760 9.160 9.042 8.619 8.272
M10 9.968 9.732 8.994 8.862 8.344 7.938`;
for (const line of BOLTS.split('\n')) {
  const [name, ...printed] = line.split(' ');
  test(`published: ${name} 6g (metric external thread chart to ASME B1.13M, an engineering calculator’s page and a machining company’s page)`, () => {
    const found = limits(name!, '6g');
    const pairs = [
      ['d', 'high'],
      ['d', 'low'],
      ['d2', 'high'],
      ['d2', 'low'],
      ['d3', 'high'],
      ['d3', 'low'],
    ] as const;
    for (const [at, [key, end]] of pairs.entries()) {
      // The chart takes the minor diameter of M2.5x0.35 with a larger root radius and rounds twice here and there.
      const room = key === 'd3' ? (name === 'M2.5x0.35' ? 0.025 : 0.0016) : 0.00051;
      expect(
        Math.abs(value(found, key, end, 1e-3) - Number(printed[at])),
        `${key} ${end}`,
      ).toBeLessThanOrEqual(room);
    }
  });
}
for (const [name, className, d2high, d2low] of [
  ['M4', '6h', 3.545, 3.455],
  ['M4', '4g6g', 3.523, 3.467],
  ['M5', '4g6g', 4.456, 4.396],
  ['M3', '6h', 2.675, 2.6],
  ['M2', '4g6g', 1.721, 1.679],
] as const)
  test(`published: ${name} ${className} (metric external thread chart to ASME B1.13M)`, () => {
    const found = limits(name, className);
    expect(value(found, 'd2', 'high', 1e-3)).toBeCloseTo(d2high, 3);
    expect(value(found, 'd2', 'low', 1e-3)).toBeCloseTo(d2low, 3);
  });

/** Bore min and max, pitch min and max, mm, class 6H. */
const NUTS = `M9x1.25 7.647 7.912 8.188 8.348
M9x0.75 8.188 8.378 8.513 8.645
M10 8.376 8.676 9.026 9.206
M10x1.25 8.647 8.912 9.188 9.348
M10x1 8.917 9.153 9.350 9.500
M10x0.75 9.188 9.378 9.513 9.645
M11x1 9.917 10.153 10.350 10.500
M12 10.106 10.441 10.863 11.063
M12x1.5 10.376 10.676 11.026 11.216
M12x1.25 10.647 10.912 11.188 11.368
M12x1 10.917 11.153 11.350 11.510
M14 11.835 12.210 12.701 12.913
M14x1.5 12.376 12.676 13.026 13.216`;
for (const line of NUTS.split('\n')) {
  const [name, ...printed] = line.split(' ');
  test(`published: ${name} 6H (metric internal thread chart to ASME B1.13M)`, () => {
    const found = limits(name!, '6H');
    for (const [at, [key, end]] of (
      [
        ['D1', 'low'],
        ['D1', 'high'],
        ['D2', 'low'],
        ['D2', 'high'],
      ] as const
    ).entries())
      expect(
        Math.abs(value(found, key, end, 1e-3) - Number(printed[at])),
        `${key} ${end}`,
      ).toBeLessThanOrEqual(0.00051);
  });
}

/** Class, outside max, min, pitch max, min, root; or for nuts bore max, min, pitch max, min. Inches. */
const UNIFIED = `#0-80 UNF|2A|0.0595 0.0563 0.0514 0.0496 0.0446
#0-80 UNF|3A|0.0600 0.0568 0.0519 0.0506 0.0451
#0-80 UNF|2B|0.0514 0.0465 0.0542 0.0519
#0-80 UNF|3B|0.0514 0.0465 0.0536 0.0519
#1-64 UNC|2A|0.0724 0.0686 0.0623 0.0603 0.0538
#1-64 UNC|3A|0.0730 0.0692 0.0629 0.0614 0.0544
#1-64 UNC|2B|0.0623 0.0561 0.0655 0.0629
#1-64 UNC|3B|0.0623 0.0561 0.0648 0.0629
#1-72 UNF|2A|0.0724 0.0689 0.0634 0.0615 0.0559
#1-72 UNF|2B|0.0635 0.0580 0.0665 0.0640
#1-72 UNF|3B|0.0635 0.0580 0.0659 0.0640
#2-56 UNC|2A|0.0854 0.0813 0.0738 0.0717 0.0642
#2-56 UNC|3A|0.0860 0.0819 0.0744 0.0728 0.0648
#2-56 UNC|2B|0.0737 0.0667 0.0772 0.0744
#2-56 UNC|3B|0.0737 0.0667 0.0765 0.0744
#2-64 UNF|2A|0.0854 0.0816 0.0753 0.0733 0.0668
#2-64 UNF|2B|0.0753 0.0691 0.0786 0.0759
#3-48 UNC|2A|0.0983 0.0938 0.0848 0.0825 0.0734
1/4-20 UNC|2A|0.2489 0.2408 0.2164 0.2127
6-12 UN|2A|5.9979 5.9865 5.9438 5.9369 5.8987
6-12 UN|3A|6.0000 5.9886 5.9459 5.9407 5.9008
6-12 UN|2B|5.928 5.910 5.9549 5.9459
6-12 UN|3B|5.9198 5.9100 5.9526 5.9459
6-16 UN|2A|5.9981 5.9887 5.9575 5.9513 5.9236
6-16 UN|3A|6.0000 5.9906 5.9594 5.9547 5.9255
6-16 UN|2B|5.946 5.932 5.9675 5.9594
6-16 UN|3B|5.9408 5.9320 5.9655 5.9594
6-10 UNS|2A|5.9978 5.9849 5.9328 5.9254 5.8788
6-10 UNS|2B|5.913 5.892 5.9446 5.9350
1/4-20 UNC|2B|0.207 0.196 0.2224 0.2175
5/16-18 UNC|2B|0.265 0.252 0.2817 0.2764
3/8-16 UNC|2B|0.321 0.307 0.3401 0.3344
7/16-14 UNC|2B|0.376 0.360 0.3972 0.3911
5/8-11 UNC|2B|0.546 0.527 0.5732 0.5660
3/4-10 UNC|2B|0.663 0.642 0.6927 0.6850
7/8-9 UNC|2B|0.778 0.755 0.8110 0.8028
1-8 UNC|2B|0.890 0.865 0.9276 0.9188
1 1/4-7 UNC|2B|1.123 1.095 1.1668 1.1572
#6-32 UNC|2B|0.114 0.104 0.1214 0.1177
#8-32 UNC|2B|0.139 0.130 0.1475 0.1437
#10-24 UNC|2B|0.156 0.145 0.1672 0.1629
#12-24 UNC|2B|0.181 0.171 0.1933 0.1889
1 3/4-5 UNC|2B|1.568 1.534 1.6317 1.6201
2-4.5 UNC|2B|1.795 1.759 1.8681 1.8557
3-4 UNC|2B|2.767 2.729 2.8515 2.8376`;
for (const line of UNIFIED.split('\n')) {
  const [name, className, printed] = line.split('|') as [string, string, string];
  test(`published: ${name} ${className} (ASME B1.1 limits as printed in Machinery’s Handbook, 27th edition, and on two public table pages)`, () => {
    const found = limits(name, className);
    const inside = className.endsWith('B');
    const pairs = inside
      ? ([
          ['D1', 'high'],
          ['D1', 'low'],
          ['D2', 'high'],
          ['D2', 'low'],
        ] as const)
      : ([
          ['d', 'high'],
          ['d', 'low'],
          ['d2', 'high'],
          ['d2', 'low'],
          ['d3', 'high'],
        ] as const);
    for (const [at, text] of printed.split(' ').entries()) {
      const [key, end] = pairs[at]!;
      // The table’s root diameters wander by one in the last digit.
      const half = (key === 'd3' ? 1 : 0.5) * 10 ** -(text.split('.')[1]?.length ?? 0);
      expect(
        Math.abs(value(found, key, end, 0.0254) - Number(text)),
        `${key} ${end} ${text}`,
      ).toBeLessThanOrEqual(half * 1.001);
    }
  });
}

/** Outside max min, pitch max min, root max min; then bore min max, pitch min max. 7e and 7H, mm. */
const TRAPEZOIDAL = `Tr 8x1.5|8 7.85 7.183 7.013 6.2 5.921|6.5 6.69 7.25 7.474
Tr 10x2|10 9.82 8.929 8.739 7.5 7.191|8 8.236 9 9.25
Tr 12x3|12 11.764 10.415 10.191 8.5 8.135|9 9.315 10.5 10.8
Tr 14x3|14 13.764 12.415 12.191 10.5 10.135|11 11.315 12.5 12.8
Tr 16x4|16 15.7 13.905 13.64 11.5 11.074|12 12.375 14 14.355
Tr 20x4|20 19.7 17.905 17.64 15.5 15.074|16 16.375 18 18.355
Tr 22x5|22 21.665 19.394 19.114 16.5 16.044|17 17.45 19.5 19.875
Tr 24x5|24 23.665 21.394 21.094 18.5 18.019|19 19.45 21.5 21.9
Tr 28x5|28 27.665 25.394 25.094 22.5 22.019|23 23.45 25.5 25.9
Tr 30x10|30 29.47 24.85 24.45 19 18.35|20 20.71 25 25.53
Tr 40x7|40 39.575 36.375 36.02 32 31.431|33 33.56 36.5 36.975
Tr 40x3|40 39.764 38.415 38.165 36.5 36.103|37 37.315 38.5 38.835
Tr 48x8|48 47.55 43.868 43.468 39 38.368|40 40.63 44 44.53
Tr 60x9|60 59.5 55.36 54.935 50 49.329|51 51.67 55.5 56.06
Tr 80x10|80 79.47 74.85 74.425 69 68.319|70 70.71 75 75.56`;
for (const line of TRAPEZOIDAL.split('\n')) {
  const [name, bolt, nut] = line.split('|') as [string, string, string];
  // The chart's rows for a pitch of 6 mm carry the tolerances of 7 mm, so none of them stands here.
  test(`published: ${name} 7e and 7H (a published chart of limits of trapezoidal threads, kept by a web archive)`, () => {
    const sides = [
      [
        limits(name, '7e'),
        bolt,
        [
          ['d', 'high'],
          ['d', 'low'],
          ['d2', 'high'],
          ['d2', 'low'],
          ['d3', 'high'],
          ['d3', 'low'],
        ],
      ],
      [
        limits(name, '7H'),
        nut,
        [
          ['D1', 'low'],
          ['D1', 'high'],
          ['D2', 'low'],
          ['D2', 'high'],
        ],
      ],
    ] as const;
    for (const [found, printed, pairs] of sides)
      for (const [at, text] of printed.split(' ').entries()) {
        const [key, end] = pairs[at]! as [string, 'low' | 'high'];
        expect(Math.abs(value(found, key, end, 1e-3) - Number(text)), `${key} ${end}`).toBeLessThanOrEqual(
          0.00051,
        );
      }
  });
}

describe('several starts of a trapezoidal thread', () => {
  const width = (text: string, className: string, key: string): number => {
    const row = limits(text, className).rows.find((each) => each.key === key)!;
    return row.high! - row.low!;
  };

  // ISO 2903, from memory: no published table of the factors was at hand.
  test.each([
    ['Tr 40x7', 1],
    ['Tr 40x14 (P7)', 1.12],
    ['Tr 40x21 (P7)', 1.25],
    ['Tr 40x28 (P7)', 1.4],
    ['Tr 40x35 (P7)', 1.6],
    ['Tr 40x42 (P7)', 1.6],
  ])('derived: %s has %f times the tolerance of the pitch diameter, to a micrometre', (text, factor) => {
    for (const [className, key] of [
      ['7e', 'd2'],
      ['8e', 'd2'],
      ['7H', 'D2'],
    ] as const)
      expect(Math.abs(width(text, className, key) - factor * width('Tr 40x7', className, key))).toBeLessThan(
        0.51e-6,
      );
    // Crest and bore stay what they are.
    expect(width(text, '7e', 'd')).toBeCloseTo(width('Tr 40x7', '7e', 'd'), 9);
    expect(width(text, '7H', 'D1')).toBeCloseTo(width('Tr 40x7', '7H', 'D1'), 9);
  });

  test('what is from memory says so, and says the factor in words', () => {
    const two = limits('Tr 40x14 (P7)', '7e');
    expect(two.status).toBe('from memory');
    expect(two.note).toMatch(/With 2 starts .* 1\.12 times/);
    expect(limits('Tr 40x7', '7e').note).not.toMatch(/starts/);
  });
});

test('published: G 1/2 A, B and its nut (ISO 228-1 as a published thread data chart gives it)', () => {
  const a = limits('G 1/2', 'A');
  expect(value(a, 'd2', 'low', 1e-3)).toBeCloseTo(19.793 - 0.142, 3);
  expect(value(limits('G 1/2', 'B'), 'd2', 'low', 1e-3)).toBeCloseTo(19.793 - 0.284, 3);
  expect(value(a, 'd', 'low', 1e-3)).toBeCloseTo(20.955 - 0.284, 3);
  const both = limitsOf(thread('G 1/2'));
  if (!both.ok) throw new Error(both.problem.message);
  // The chart takes the depth of thread rounded to 1.162 mm, twice.
  expect(Math.abs(value(both.value[1]!, 'D1', 'high', 1e-3) - (18.631 + 0.541))).toBeLessThanOrEqual(0.001);
});

test.each([
  ['M10', '9z'],
  ['M10', '6e4h'],
  ['M10', '6E'],
  ['M10', '9H'],
  ['M10', 'nonsense'],
  ['M10', 'x'.repeat(100_000)],
  ['1/4-20 UNC', '4A'],
  ['G 1/2', 'C'],
  ['5/16 BSW', 'tight'],
  ['1/2-14 NPT', 'A'],
  ['Tr 20x4', '6g'],
])('derived: class of %s that is not one is refused', (name, className) => {
  const found = limitsOf(thread(name), className);
  if (found.ok) throw new Error('taken');
  expect(found.problem.message).toMatch(/\.$/);
  expect(found.problem.message.length).toBeLessThan(400);
});

test('derived: of every thread, each low limit lies below its high one, and bolt and nut have no overlap', () => {
  for (const name of [
    'M3',
    'M10',
    'M24x2',
    'M64',
    '1/4-20 UNC',
    '1-12 UNF',
    '5/16 BSW',
    '3/8 BSF',
    'G 1/2',
    'Tr 40x7',
    'M10x1.12',
  ]) {
    const found = limitsOf(thread(name));
    if (!found.ok) throw new Error(found.problem.message);
    for (const { rows } of found.value)
      for (const { low, high } of rows)
        if (low !== undefined && high !== undefined) expect(low, name).toBeLessThan(high);
    const [bolt, nut] = found.value;
    expect(bolt!.rows.find(({ key }) => key === 'd2')!.high!, name).toBeLessThanOrEqual(
      nut!.rows.find(({ key }) => key === 'D2')!.low! + 1e-9,
    );
  }
});

import { expect, test } from 'vitest';
import { PIPE_SIZES } from '../tables/thread-pipe.ts';
import { basicSizes, drillsFor, limitsOf, parseThread, taperLengths } from './index.ts';

const thread = (text: string) => {
  const read = parseThread(text);
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
};

/** Size, pitch diameter, minor diameter in mm as printed. */
const PRINTED = `1/16 7.142 6.561
1/8 9.147 8.566
1/4 12.301 11.445
3/8 15.806 14.950
1/2 19.793 18.631
5/8 21.749 20.587
3/4 25.279 24.117
7/8 29.039 27.877
1 31.770 30.291
1 1/8 36.418 34.939
1 1/4 40.431 38.952
1 1/2 46.324 44.845
1 3/4 52.267 50.788
2 58.135 56.656
2 1/4 64.231 62.752
2 1/2 73.705 72.226
3 86.405 84.926
4 111.551 110.072
6 162.351 160.872`;
for (const line of PRINTED.split('\n')) {
  const [, size, d2, d1] = /^(.+) (\S+) (\S+)$/.exec(line)!;
  test(`published: G ${size} (ISO 228-1 as a published thread data chart gives it)`, () => {
    const basic = basicSizes(thread(`G ${size}`));
    // The chart rounds the depth of thread to a micrometre and takes it off twice.
    expect(Math.abs(basic.pitchDiameter * 1e3 - Number(d2))).toBeLessThanOrEqual(0.0011);
    expect(Math.abs(basic.root * 1e3 - Number(d1))).toBeLessThanOrEqual(0.0021);
  });
}

/** Gauge length and drills for a taper and a parallel thread, mm. */
for (const [size, gauge, rp, g] of [
  ['1/8', 4, 8.6, 8.8],
  ['1/4', 6, 11.5, 11.8],
  ['3/8', 6.4, 15, 15.25],
  ['1/2', 8.2, 18.75, 19],
  ['3/4', 9.5, 24.25, 24.5],
  ['1', 10.4, 30.4, 30.75],
  ['2', 15.9, 56.75, 57],
] as const)
  test(`published: gauge length and drills of R and G ${size} (a public table of pipe thread sizes)`, () => {
    const taper = thread(`R ${size}`);
    expect(taperLengths(taper)!.gauge * 1e3).toBeCloseTo(gauge, 9);
    expect(drillsFor(taper)[0]!.diameter * 1e3).toBeCloseTo(rp, 9);
    expect(drillsFor(thread(`G ${size}`))[0]!.diameter * 1e3).toBeCloseTo(g, 9);
  });

test('derived: every drill for a parallel pipe thread leaves at least half of the thread and fits its bore or is close', () => {
  for (const { size, drillG } of PIPE_SIZES) {
    if (drillG === undefined) continue;
    const [drill] = drillsFor(thread(`G ${size}`));
    expect(drill!.share).toBeGreaterThan(0.5);
    expect(drill!.share).toBeLessThan(1.001);
  }
});

test('published: NPT drills (a public table of NPT threads)', () => {
  expect(drillsFor(thread('1/8-27 NPT'))[0]!.name).toBe('R');
  expect(drillsFor(thread('1/2-14 NPT'))[0]!.name).toBe('23/32 in');
  expect(drillsFor(thread('1-11.5 NPT'))[0]!.diameter / 0.0254).toBeCloseTo(1 + 5 / 32, 9);
});

/** Tapping drill and share of thread: the table says 77 to 87 %. */
for (const [size, drill] of [
  ['1/4', 5.1],
  ['5/16', 6.5],
  ['1/2', 10.5],
  ['5/8', 13.5],
  ['7/8', 19.25],
  ['1', 22],
] as const)
  test(`published: tapping drill of ${size} BSW, 77 to 87 % of the thread (BS 1157:1975 as an engineering reference page prints it)`, () => {
    const [found] = drillsFor(thread(`${size} BSW`));
    expect(found!.diameter * 1e3).toBeCloseTo(drill, 9);
    expect(found!.share! * 100).toBeGreaterThanOrEqual(76.5);
    expect(found!.share! * 100).toBeLessThanOrEqual(87.5);
  });

test('derived: an NPT thread is held by its gauge plane, one turn either way', () => {
  const found = limitsOf(thread('1/2-14 NPT'));
  if (!found.ok) throw new Error(found.problem.message);
  expect(found.value[0]!.rows[0]!.high! * 1e3).toBeCloseTo(25.4 / 14, 9);
  expect(found.value[0]!.status).toBe('from memory');
});

/**
 * Size, gauge length, useful thread beyond the gauge plane, tolerance of its place outside and inside; mm as printed, the
 * gauge lengths by two digits more than ISO has.
 */
const JIS = `1/16 3.97 2.5 0.91 1.13
1/8 3.97 2.5 0.91 1.13
1/4 6.01 3.7 1.34 1.67
3/8 6.35 3.7 1.34 1.67
1/2 8.16 5 1.81 2.27
3/4 9.53 5 1.81 2.27
1 10.39 6.4 2.31 2.89
1 1/4 12.70 6.4 2.31 2.89
1 1/2 12.70 6.4 2.31 2.89
2 15.88 7.5 2.31 2.89
2 1/2 17.46 9.2 3.46 3.46
3 20.64 9.2 3.46 3.46
4 25.40 10.4 3.46 3.46
5 28.58 11.5 3.46 3.46
6 28.58 11.5 3.46 3.46`;

test.each(JIS.split('\n').map((line) => /^(.*) (\S+) (\S+) (\S+) (\S+)$/.exec(line)!.slice(1) as string[]))(
  'published: lengths and gauge plane of R %s (JIS B 0203:1999, the counterpart of ISO 7-1:1994, table 1 as a fitting maker’s and a pipe tool maker’s catalogue reprint it)',
  (size, gauge, beyond, outside, inside) => {
    const lengths = taperLengths(thread(`R ${size}`))!;
    // ISO rounds the gauge lengths to a tenth.
    expect(Math.abs(lengths.gauge * 1e3 - Number(gauge))).toBeLessThanOrEqual(0.05 + 1e-9);
    expect((lengths.useful - lengths.gauge) * 1e3).toBeCloseTo(Number(beyond), 9);
    for (const [name, printed] of [
      ['R', outside],
      ['Rc', inside],
    ]) {
      const found = limitsOf(thread(`${name} ${size}`));
      if (!found.ok) throw new Error(found.problem.message);
      const { high, low } = found.value[0]!.rows[0]!;
      expect(Math.abs(high! * 1e3 - Number(printed))).toBeLessThanOrEqual(0.005);
      expect(low).toBe(-high!);
    }
  },
);

/** BSF threads and classes of Whitworth threads against printed tables. */
import { expect, test } from 'vitest';
import { basicSizes } from './dimensions.ts';
import { drillsFor } from './drills.ts';
import { limitsOf } from './limits.ts';
import { parseThread } from './parse.ts';

const INCH = 0.0254;
function thread(name: string) {
  const read = parseThread(name);
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
}

/**
 * Core diameters as an old-motorcycle dealer's page of British thread sizes prints them under 'drill', inches to three
 * places. Three of its rows start from the outside diameter rounded to three places, so they may be off by one more half.
 */
test.each([
  ['3/16', 32, 0.148, true],
  ['7/32', 28, 0.173, false],
  ['1/4', 26, 0.201, false],
  ['5/16', 22, 0.254, false],
  ['3/8', 20, 0.311, false],
  ['7/16', 18, 0.366, true],
  ['1/2', 16, 0.42, false],
  ['9/16', 16, 0.483, true],
  ['5/8', 14, 0.534, false],
  ['3/4', 12, 0.643, false],
  ['7/8', 11, 0.759, false],
] as const)(
  'published: core of %s BSF (a dealer’s page of British thread sizes)',
  (size, tpi, core, isRounded) => {
    const found = thread(`${size} BSF`);
    expect(found.threadsPerInch).toBe(tpi);
    const off = Math.abs(basicSizes(found).root / INCH - core);
    expect(off).toBeLessThanOrEqual(isRounded ? 0.001 : 0.00051);
  },
);

/** Threads per inch and tapping drills: a public encyclopaedia's table of BSF sizes. */
test.each([
  ['3/8', 20, 8.2],
  ['7/16', 18, 9.7],
  ['5/8', 14, 14],
  ['11/16', 14, 15.5],
  ['3/4', 12, 16.75],
  ['1', 10, 22.75],
  ['1 1/4', 9, 28.75],
  ['1 1/2', 8, 34.5],
] as const)(
  'published: tapping drill of %s BSF, three quarters of the thread or more',
  (size, tpi, drill) => {
    const found = thread(`${size} BSF`);
    expect(found.threadsPerInch).toBe(tpi);
    const [one] = drillsFor(found);
    expect(one!.diameter * 1e3).toBeCloseTo(drill, 9);
    expect(one!.share!).toBeGreaterThan(0.74);
    expect(one!.share!).toBeLessThan(1);
  },
);

/** Gauge lengths of taper pipe threads, mm (a public encyclopaedia's table of British pipe threads). */
test.each([
  ['1/8', 4],
  ['1/4', 6],
  ['3/8', 6.4],
  ['1/2', 8.2],
  ['3/4', 9.5],
  ['1', 10.4],
  ['1 1/4', 12.7],
  ['1 1/2', 12.7],
  ['2', 15.9],
  ['2 1/2', 17.5],
  ['3', 20.6],
] as const)('published: gauge length of R %s', async (size, length) => {
  const { taperLengths } = await import('./dimensions.ts');
  expect(taperLengths(thread(`R ${size}`))!.gauge * 1e3).toBeCloseTo(length, 9);
});

/** Tolerance zones of bolts, medium 100, close 66 2/3, free 150 (a tap maker's technical pages on the Whitworth system). */
test('published: close is two thirds of medium and free one and a half times it', () => {
  const width = (className: string): number => {
    const found = limitsOf(thread('1/2 BSW'), className);
    if (!found.ok) throw new Error(found.problem.message);
    const row = found.value[0]!.rows.find(({ key }) => key === 'd2')!;
    return row.high! - row.low!;
  };
  expect(width('close') / width('medium')).toBeCloseTo(2 / 3, 6);
  expect(width('free') / width('medium')).toBeCloseTo(1.5, 6);
});

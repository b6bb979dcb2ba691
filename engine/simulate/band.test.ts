import { expect, test } from 'vitest';
import { AX1, cascade, changed } from './axis.fixture.ts';
import { band } from './band.ts';
import { BandMaker, joinBands } from './index.ts';

const model = changed(AX1, {
  ...cascade({ sample: 2e-4, positionGain: 40 }),
  slide: { coulomb: 200, staticFriction: 260, fallSpeed: 0.002 },
  feedback: { countsPerTurn: 4000 },
  drive: { currentLimit: 20 },
  supply: { voltage: 75 },
});
const spread = [
  { path: 'slide.mass', share: 0.3, form: 'normal' },
  { path: 'slide.coulomb', share: 0.4, form: 'even' },
] as const;
const move = { kind: 'rapid', distance: 0.004, speed: 0.05, acceleration: 1, jerk: 0 } as const;

function part(first: number, n: number) {
  const maker = new BandMaker(model, spread, move, n, 11, {}, first);
  while (!maker.finished) maker.piece();
  return maker.finish();
}

test('derived: a band made in parts of unequal size is the band made at once, number for number', () => {
  const whole = band(model, spread, move, 60, 11);
  const parts = [part(0, 5), part(5, 34), part(39, 21)];
  const joined = joinBands(parts);
  expect(joined).toEqual(whole);
  // The mean of the parts' own lines, which was taken once, is another line altogether.
  const mean = (key: 'low' | 'high', at: number): number =>
    parts.reduce((sum, each) => sum + each[key][at]! * each.runs, 0) / 60;
  const off = whole.high.map((value, at) => Math.abs(value - mean('high', at)));
  const width = Math.max(...whole.high.map((value, at) => value - whole.low[at]!));
  expect(Math.max(...off)).toBeGreaterThan(0.01 * width);
});

test('derived: at each time the lines stand where so many of the runs lie below', () => {
  const { low, middle, high, drawn, runs, time } = band(model, spread, move, 60, 3);
  for (const at of [40, 150, 250]) {
    const values = Array.from({ length: runs }, (_, run) => drawn[run * time.length + at]!);
    const below = (level: number): number => values.filter((value) => value < level).length / runs;
    expect(Math.abs(below(low[at]!) - 0.05)).toBeLessThan(0.02);
    expect(Math.abs(below(middle[at]!) - 0.5)).toBeLessThan(0.02);
    expect(Math.abs(below(high[at]!) - 0.95)).toBeLessThan(0.02);
  }
});

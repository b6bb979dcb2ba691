import { expect, test } from 'vitest';
import { heightOf, type Points } from './line.ts';

type Pairs = readonly (readonly [number, number])[];
const PAIRS: Points<Pairs> = {
  count: ({ length }) => length,
  x: (line, at) => line[at]![0],
  y: (line, at) => line[at]![1],
};
const LINE: Pairs = [
  [0, 10],
  [2, 6],
  [3, 6],
  [7, -2],
];

test('derived: its own height at every point, the mean half way between', () => {
  for (const [x, y] of LINE) expect(heightOf(PAIRS, LINE, x, 'nothing')).toBe(y);
  for (let at = 1; at < LINE.length; at++) {
    const [[x0, y0], [x1, y1]] = [LINE[at - 1]!, LINE[at]!];
    expect(heightOf(PAIRS, LINE, (x0 + x1) / 2, 'level')).toBeCloseTo((y0 + y1) / 2, 12);
  }
});

test('derived: beyond its ends it stays level or says nothing, as asked; no points and no number say nothing', () => {
  expect([-1, 8].map((x) => heightOf(PAIRS, LINE, x, 'level'))).toEqual([10, -2]);
  for (const x of [-1e-9, 7.001, Number.NaN]) expect(heightOf(PAIRS, LINE, x, 'nothing')).toBeNaN();
  expect(heightOf(PAIRS, [], 1, 'level')).toBeNaN();
  expect(heightOf(PAIRS, [[2, 5]], 2, 'nothing')).toBe(5);
});

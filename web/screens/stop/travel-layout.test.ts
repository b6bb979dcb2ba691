/** Labels of a travel that do not run into each other, its end zones, and its scale. */
import { expect, test } from 'vitest';
import type { AxisDistances, Mark } from '../../../engine/circuit/stop/index.ts';
import { barLength, endZones, hangLabels, type LabelAsked } from './travel-layout.ts';

function clear(asked: readonly LabelAsked[], width: number): void {
  const places = hangLabels(asked, width);
  const box = (n: number) => {
    const { x, width: own } = asked[n]!;
    const from = places[n]!.anchor === 'start' ? x : x - own;
    return [from, from + own] as const;
  };
  for (const i of asked.keys()) {
    const [from, to] = box(i);
    expect(from).toBeGreaterThanOrEqual(-1e-9);
    expect(to).toBeLessThanOrEqual(width + 1e-9);
    for (const j of asked.keys()) {
      if (i === j) continue;
      const [start, end] = box(j);
      if (places[i]!.row === places[j]!.row) expect(from >= end || start >= to, `${i} over ${j}`).toBe(true);
      // The line of j goes down to its own row.
      const crosses = asked[j]!.x > from && asked[j]!.x < to && places[j]!.row > places[i]!.row;
      expect(crosses, `line of ${j} through ${i}`).toBe(false);
    }
  }
}

test('derived: no label covers another, none is cut, and no line goes through one, wherever the marks stand', () => {
  let seed = 7;
  const random = () => {
    seed = (seed * 16807) % 2147483647;
    return seed / 2147483647;
  };
  for (let turn = 0; turn < 1000; turn++) {
    const width = 480 + random() * 600;
    const asked = Array.from({ length: 1 + Math.floor(random() * 7) }, () => ({
      x: 14 + random() * (width - 28),
      width: 60 + random() * 55,
    })).sort((a, b) => a.x - b.x);
    clear(asked, width);
  }
  // A phone: an end with its five marks.
  for (const xs of [
    [30, 60, 75, 190],
    [30, 44, 60, 75, 300],
    [14, 150, 270, 290, 316],
  ])
    clear(
      xs.map((x) => ({ x, width: 105 })),
      330,
    );
  // All at one place, and towards each other from both ends of a phone.
  clear(
    [
      { x: 100, width: 110 },
      { x: 200, width: 110 },
    ],
    330,
  );
  clear(
    Array.from({ length: 5 }, () => ({ x: 150, width: 120 })),
    300,
  );
});

const mark = (id: Mark['id'], at: number): Mark => ({
  id,
  name: id,
  at,
  needed: undefined,
  reserve: 1,
  says: '',
});
const axis = (runOn: number | undefined, ...marks: readonly Mark[]): AxisDistances => ({
  motion: 'X',
  runOn,
  drops: false,
  time: 1,
  after: '',
  travel: 0.54,
  needs: [],
  marks: [mark('hard-low', 0), ...marks, mark('hard-high', 0.54)],
});

test('derived: an end zone reaches from behind the hard stop past its innermost mark; a home near it belongs to it', () => {
  const { low, high } = endZones(
    axis(
      0.0227,
      mark('limit-low', 0.04),
      mark('soft-low', 0.045),
      mark('home', 0.47),
      mark('limit-high', 0.48),
    ),
  );
  expect(low!.from).toBeLessThan(0);
  expect(low!.to).toBeGreaterThan(0.045);
  expect(low!.to).toBeLessThan(0.06);
  expect(high!.from).toBeLessThan(0.47);
  expect(high!.to).toBeGreaterThan(0.54);
  // The run-on is to be seen whole, unless it is most of the travel.
  expect(endZones(axis(0.09, mark('limit-low', 0.04))).low!.to).toBeGreaterThan(0.09);
  expect(endZones(axis(0.5, mark('limit-low', 0.04))).low!.to).toBeLessThan(0.06);
  expect(endZones(axis(Number.POSITIVE_INFINITY, mark('limit-low', 0.04))).low!.to).toBeLessThan(0.06);
});

test('derived: without marks at an end, or with marks far from it, nothing is drawn larger', () => {
  expect(endZones(axis(0.01))).toEqual({ low: undefined, high: undefined });
  expect(endZones(axis(0.01, mark('limit-low', 0.3))).low).toBeUndefined();
});

test.each([
  [0.0045, 0.001],
  [0.1, 0.02],
  [0.21, 0.05],
  [1.3, 0.2],
])('derived: the bar of %f m is a round length, %f m', (length, bar) => {
  expect(barLength({ from: 0, to: length })).toBeCloseTo(bar, 12);
});

import { describe, expect, test } from 'vitest';
import {
  chiSquareProbability,
  type Distribution,
  normalProbability,
  normals,
  samples,
  standardOf,
  studentProbability,
  students,
  uniforms,
} from './index.ts';

const N = 200_000;
const filled = (fill: (into: Float64Array) => void, n = N): Float64Array => {
  const out = new Float64Array(n);
  fill(out);
  return out;
};
/** Chance of a χ² at least this far from even counts: neither too uneven nor too even. */
function evenness(values: Float64Array, cells: number): number {
  const counts = new Float64Array(cells);
  for (const v of values) counts[Math.floor(v * cells)]!++;
  const each = values.length / cells;
  return chiSquareProbability(
    counts.reduce((sum, c) => sum + (c - each) ** 2 / each, 0),
    cells - 1,
  );
}
const isEven = (values: Float64Array, cells = 256): void => {
  const p = evenness(values, cells);
  expect(p).toBeGreaterThan(0.001);
  expect(p).toBeLessThan(0.999);
};

describe('derived: uniform numbers', () => {
  test('the same seed gives the same, another seed or stream others', () => {
    const one = filled(uniforms(7), 100);
    expect(filled(uniforms(7), 100)).toEqual(one);
    for (const other of [uniforms(8), uniforms(7, 1), uniforms(-7), uniforms(7 + 2 ** 40)])
      expect(filled(other, 100).filter((v, i) => v === one[i]).length).toBe(0);
    const fill = uniforms(7);
    const halves = [...filled(fill, 50), ...filled(fill, 50)];
    expect(halves).toEqual([...one]);
    expect(() => uniforms(0.5)).toThrow(/whole numbers/);
    expect(() => uniforms(Number.NaN)).toThrow(/whole numbers/);
  });

  test('spread evenly, strictly inside 0 to 1, for many seeds; pairs, low digits and neighbouring seeds too', () => {
    for (const seed of [0, 1, 2, 3, 12345, -1, 2 ** 31, 2 ** 45]) {
      const u = filled(uniforms(seed));
      expect(u.every((v) => v > 0 && v < 1)).toBe(true);
      isEven(u);
      // The digits behind the first thousand million.
      isEven(u.map((v) => (v * 2 ** 30) % 1));
      // Two in a row make a place on a square of 16 × 16.
      isEven(u.subarray(1).map((v, i) => (Math.floor(v * 16) + u[i]!) / 16));
      const next = filled(uniforms(seed + 1));
      isEven(u.map((v, i) => (v + next[i]!) % 1));
      const stream = filled(uniforms(seed, 1));
      isEven(u.map((v, i) => (Math.floor(v * 16) + stream[i]!) / 16));
    }
    // The first number of each of many seeds.
    isEven(Float64Array.from({ length: 50_000 }, (_, seed) => filled(uniforms(seed), 1)[0]!));
  });
});

test('derived: normal and Student numbers turn into even ones by their own probability', () => {
  for (const seed of [1, 2, 3]) {
    isEven(filled(normals(seed), 50_000).map(normalProbability));
    for (const freedom of [0.7, 1, 2.5, 9])
      isEven(
        filled(students(freedom, seed), 20_000).map((t) => studentProbability(t, freedom)),
        64,
      );
  }
  expect(() => students(0, 1)).toThrow(/above 0/);
});

const CASES: readonly (readonly [Distribution, number, (x: number) => number])[] = [
  [{ kind: 'normal', centre: 0, standard: 1 }, 1, normalProbability],
  [{ kind: 'rectangular', centre: 0, half: 1 }, 1 / Math.sqrt(3), (x) => (x + 1) / 2],
  [
    { kind: 'triangular', centre: 0, half: 1 },
    1 / Math.sqrt(6),
    (x) => (x < 0 ? (1 + x) ** 2 / 2 : 1 - (1 - x) ** 2 / 2),
  ],
  [{ kind: 'arcsine', centre: 0, half: 1 }, Math.SQRT1_2, (x) => 0.5 + Math.asin(x) / Math.PI],
  [
    { kind: 'trapezoid', centre: 0, half: 1, top: 0.5 },
    Math.sqrt(1.25 / 6),
    // Height 2/3 over ±½, falling to ±1.
    (x) => {
      const tail = (2 / 3) * (1 - Math.abs(x)) ** 2;
      if (Math.abs(x) > 0.5) return x < 0 ? tail : 1 - tail;
      return 0.5 + (2 / 3) * x;
    },
  ],
  [{ kind: 'trapezoid', centre: 0, half: 1, top: 1 }, 1 / Math.sqrt(3), (x) => (x + 1) / 2],
  [
    { kind: 'student', centre: 0, scale: 1, freedom: 10 },
    Math.sqrt(10 / 8),
    (x) => studentProbability(x, 10),
  ],
];

test.each(CASES)('derived: samples of %o have its shape and standard uncertainty', (d, standard, below) => {
  expect(standardOf(d)).toBeCloseTo(standard, 14);
  const x = filled(samples(d, 5), 100_000);
  isEven(x.map(below), 64);
  const variance = x.reduce((sum, v) => sum + v * v, 0) / x.length;
  expect(Math.sqrt(variance) / standard).toBeGreaterThan(0.985);
  expect(Math.sqrt(variance) / standard).toBeLessThan(1.015);
  // Centre and width carry over.
  const key = d.kind === 'normal' ? 'standard' : d.kind === 'student' ? 'scale' : 'half';
  const moved = filled(samples({ ...d, centre: 10, [key]: 3 } as Distribution, 5), 100);
  for (let i = 0; i < 100; i++) expect(moved[i]!).toBeCloseTo(10 + 3 * x[i]!, 12);
});

test('derived: distributions that cannot be are refused', () => {
  const bad: Distribution[] = [
    { kind: 'normal', centre: Number.NaN, standard: 1 },
    { kind: 'rectangular', centre: 0, half: -1 },
    { kind: 'trapezoid', centre: 0, half: 1, top: 2 },
    { kind: 'student', centre: 0, scale: 1, freedom: 0 },
  ];
  for (const d of bad) {
    expect(() => standardOf(d)).toThrow(RangeError);
    expect(() => samples(d, 1)).toThrow(RangeError);
  }
  expect(standardOf({ kind: 'student', centre: 0, scale: 1, freedom: 2 })).toBe(Number.POSITIVE_INFINITY);
  expect(standardOf({ kind: 'student', centre: 0, scale: 0, freedom: 2 })).toBe(0);
});

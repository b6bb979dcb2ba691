import { describe, expect, test } from 'vitest';
import { Factors, fewestNeighbours } from './linear.ts';

/** A cabinet's shape: a supply's rail that feeds cells of a few nodes each, all back on one return. */
function cells(count: number): readonly (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [[0, 1]];
  for (let n = 0; n < count; n++) {
    const first = 2 + 5 * n;
    pairs.push([0, first], [first, first + 1], [first + 1, first + 2], [first + 2, 1]);
    pairs.push([first, first + 3], [first + 3, first + 4], [first + 4, 1], [first + 1, first + 4]);
  }
  return pairs;
}

function factored(count: number) {
  const [n, pairs] = [2 + 5 * count, cells(count)];
  const place = new Int32Array(n);
  fewestNeighbours(n, pairs).forEach((unknown, at) => {
    place[unknown] = at;
  });
  const moved = pairs.map(([a, b]) => [place[a]!, place[b]!] as const);
  const factors = new Factors(n, moved);
  for (let k = 0; k < n; k++) factors.matrix[factors.slot(k, k)] = 1e-3;
  moved.forEach(([a, b], k) => {
    const g = 1 + (k % 7);
    for (const at of [a, b]) factors.matrix[factors.slot(at, at)]! += g;
    factors.matrix[factors.slot(a, b)]! -= g;
    factors.matrix[factors.slot(b, a)]! -= g;
  });
  expect(factors.factor()).toBe(-1);
  return { n, factors };
}

describe('factors of few entries', () => {
  test('derived: the answer put back into the equations gives the right-hand side', () => {
    const { n, factors } = factored(40);
    const right = Float64Array.from({ length: n }, (_, k) => Math.sin(k + 1));
    const x = right.slice();
    factors.solve(x);
    for (let row = 0; row < n; row++) {
      let sum = 0;
      for (let column = 0; column < n; column++) {
        const at = factors.find(row, column);
        if (at >= 0) sum += factors.matrix[at]! * x[column]!;
      }
      expect(sum).toBeCloseTo(right[row]!, 9);
    }
  });
  test('derived: ten times the cells are ten times the work, not a thousand times', () => {
    const [small, large] = [factored(50).factors.work, factored(500).factors.work];
    expect(large / small).toBeGreaterThan(8);
    expect(large / small).toBeLessThan(12);
  });
  test('derived: rows change places where the diagonal is empty; an empty column is told by its number', () => {
    const factors = new Factors(2, [[0, 1]]);
    factors.matrix[factors.slot(0, 1)] = 2;
    factors.matrix[factors.slot(1, 0)] = 4;
    expect(factors.factor()).toBe(-1);
    const x = Float64Array.of(6, 8);
    factors.solve(x);
    expect([...x]).toEqual([2, 3]);
    factors.matrix.fill(0);
    factors.matrix[factors.slot(0, 0)] = 1;
    expect(factors.factor()).toBe(1);
    expect(() => new Factors(3, []).slot(0, 2)).toThrow(/row 0, column 2/);
  });
});

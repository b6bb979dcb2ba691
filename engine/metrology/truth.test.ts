/** Readings made by hand around a known truth: the stated intervals must hold it as often as they say. */
import { describe, expect, test } from 'vitest';
import { combine, coverage, fitLine, normals, studentProbability, summarise, uniforms } from './index.ts';

const SEEDS = 6000;

/** Four standard deviations of the count: fails for a rate 1.2 % off, by chance once in sixteen thousand – and seeds are fixed. */
const holds = (hits: number, rate: number, trials = SEEDS): void =>
  expect(Math.abs(hits / trials - rate), `${hits} of ${trials}`).toBeLessThan(
    4 * Math.sqrt((rate * (1 - rate)) / trials),
  );

const drawn = (n: number, seed: number, stream = 0): Float64Array => {
  const z = new Float64Array(n);
  normals(seed, stream)(z);
  return z;
};

const rateOf = (covers: (seed: number) => boolean): number => {
  let hits = 0;
  for (let seed = 0; seed < SEEDS; seed++) if (covers(seed)) hits++;
  return hits;
};

const TRUTH = 41.14;

describe('derived: intervals hold the truth at the rate they state', () => {
  test.each([2, 3, 5, 10])('mean of %d readings', (n) => {
    const inside = (factor: (freedom: number) => number): number =>
      rateOf((seed) => {
        const own = summarise([...drawn(n, seed)].map((z) => TRUTH + 0.6 * z));
        return Math.abs(own.mean - TRUTH) <= factor(own.freedom) * own.standard;
      });
    const t = coverage(n - 1);
    holds(
      inside(() => t),
      0.95,
    );
    const t99 = coverage(n - 1, 0.99);
    holds(
      inside(() => t99),
      0.99,
    );
    // With the normal factor in place of t it is held too seldom, by as much as theory says: the test can fail.
    const seldom = 2 * studentProbability(coverage(Number.POSITIVE_INFINITY), n - 1) - 1;
    const wrong = inside(() => coverage(Number.POSITIVE_INFINITY));
    holds(wrong, seldom);
    expect(wrong / SEEDS).toBeLessThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / SEEDS));
  });

  test('two inputs put together: five readings times a slope, and an instrument off by up to its limit', () => {
    const half = 1.2;
    const hits = rateOf((seed) => {
      const u = new Float64Array(1);
      uniforms(seed, 1)(u);
      const off = half * (2 * u[0]! - 1);
      const readings = summarise([...drawn(5, seed)].map((z) => TRUTH + z));
      const own = combine([
        {
          name: 'readings',
          standard: readings.standard,
          slope: 2,
          freedom: readings.freedom,
          kind: 'readings',
        },
        {
          name: 'instrument',
          standard: half / Math.sqrt(3),
          slope: 1,
          freedom: Number.POSITIVE_INFINITY,
          kind: 'instrument',
        },
      ]);
      return Math.abs(2 * readings.mean + off - 2 * TRUTH) <= own.expanded;
    });
    // Welch–Satterthwaite is an approximation, cut down to whole degrees of freedom: a little more than stated is right.
    expect(hits / SEEDS).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / SEEDS));
    expect(hits / SEEDS).toBeLessThan(0.97);
  });

  test('two sets of readings of different size', () => {
    const hits = rateOf((seed) => {
      const a = summarise([...drawn(4, seed, 0)].map((z) => 10 + z));
      const b = summarise([...drawn(12, seed, 1)].map((z) => 3 + 2 * z));
      const own = combine([
        { name: 'a', standard: a.standard, slope: 1, freedom: a.freedom, kind: 'readings' },
        { name: 'b', standard: b.standard, slope: -1, freedom: b.freedom, kind: 'readings' },
      ]);
      return Math.abs(a.mean - b.mean - 7) <= own.expanded;
    });
    expect(hits / SEEDS).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / SEEDS));
    expect(hits / SEEDS).toBeLessThan(0.97);
  });

  test('a line through six points, beyond them', () => {
    const x = [0, 1, 2, 3, 4, 5];
    const t = coverage(4);
    const hits = rateOf((seed) => {
      const z = drawn(6, seed);
      const fit = fitLine(
        x,
        x.map((v, i) => 1 + 0.5 * v + 0.2 * z[i]!),
      );
      if (!fit.ok) throw new Error(fit.problem.message);
      const { value, standard } = fit.value.at(8);
      return Math.abs(value - 5) <= t * standard;
    });
    holds(hits, 0.95);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Component, combine, neighbourCorrelation, summarise } from './index.ts';
import { LOTTERY, MAVRO, MICHELSO, pairs } from './nist-data.ts';

const close = (own: number, other: number, relative: number): void =>
  expect(Math.abs(own - other), `${own} against ${other}`).toBeLessThanOrEqual(relative * Math.abs(other));

describe('published: NIST StRD, univariate summary statistics', () => {
  test.each([
    ['NumAcc1', [10000001, 10000003, 10000002], 10000002, 1, -0.5, 1e-12],
    ['NumAcc2', pairs(1.2, 1.1, 1.3), 1.2, 0.1, -0.999, 1e-12],
    // The data themselves, rounded to doubles, have a deviation of 0.10000000003492 and 0.10000000055879.
    ['NumAcc3', pairs(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, -0.999, 1e-9],
    ['NumAcc4', pairs(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, -0.999, 1e-8],
    ['Lottery', LOTTERY, 518.95871559633, 291.699727470969, -0.120948622967393, 1e-12],
    ['Mavro', MAVRO, 2.001856, 0.000429123454003053, 0.937989183438248, 1e-10],
    ['Michelso', MICHELSO, 299.8524, 0.0790105478190518, 0.535199668621283, 1e-10],
  ] as const)('%s', (_, data, mean, deviation, neighbours, relative) => {
    const own = summarise(data);
    close(own.mean, mean, 2e-15);
    close(own.deviation, deviation, relative);
    close(own.standard, deviation / Math.sqrt(data.length), relative);
    close(neighbourCorrelation(data), neighbours, relative);
    expect(own.freedom).toBe(data.length - 1);
  });

  test('the representation error of NumAcc3 and NumAcc4 is met to its last digits', () => {
    close(summarise(pairs(1000000.2, 1000000.1, 1000000.3)).deviation, 0.10000000003492, 1e-13);
    close(summarise(pairs(10000000.2, 10000000.1, 10000000.3)).deviation, 0.10000000055879, 1e-13);
  });
});

describe('derived: summaries', () => {
  test('five backlash readings by hand', () => {
    const own = summarise([1, 2, 3, 4, 5]);
    expect(own).toEqual({
      n: 5,
      mean: 3,
      deviation: Math.sqrt(2.5),
      standard: Math.sqrt(2.5) / Math.sqrt(5),
      freedom: 4,
      least: 1,
      most: 5,
    });
    expect(summarise([7])).toEqual({
      n: 1,
      mean: 7,
      deviation: 0,
      standard: 0,
      freedom: 0,
      least: 7,
      most: 7,
    });
  });

  test('equal readings have no spread; shifting and scaling carry over', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 40 }),
        fc.integer({ min: -20, max: 20 }),
        (values, power) => {
          const one = summarise(values);
          const scaled = summarise(values.map((v) => v * 2 ** power));
          expect(scaled.mean).toBe(one.mean * 2 ** power);
          expect(scaled.deviation).toBe(one.deviation * 2 ** power);
          const moved = summarise(values.map((v) => v + 2 ** 20));
          expect(Math.abs(moved.deviation - one.deviation)).toBeLessThanOrEqual(1e-12 * 1000);
          expect(summarise(values.map(() => 0.1)).deviation).toBe(0);
          expect(summarise(values.map(() => 0.1)).mean).toBe(0.1);
        },
      ),
    );
  });

  test('readings at the edge of what a computer can hold stay finite; what is no number is named', () => {
    const wide = summarise([1e300, -1e300, 1e300]);
    expect(Number.isFinite(wide.mean) && Number.isFinite(wide.deviation)).toBe(true);
    close(summarise([5e-324, 5e-324]).mean, 5e-324, 0);
    expect(() => summarise([1e308])).toThrow(/Reading 1 is not a finite number/);
    expect(neighbourCorrelation([3, 3, 3])).toBe(0);
    expect(() => neighbourCorrelation([1])).toThrow(/At least two/);
    expect(() => summarise([])).toThrow(/At least one reading/);
    expect(() => summarise([1, Number.NaN])).toThrow(/Reading 2 is not a finite number/);
  });
});

const part = (standard: number, freedom: number, slope = 1): Component => ({
  name: `part of ${standard}`,
  standard,
  slope,
  freedom,
  kind: 'readings',
});

describe('derived: doubts put together', () => {
  test('three parts by hand: u, degrees of freedom 8.78 cut to 8, U at 95 %', () => {
    const own = combine([part(0.8, 4), part(0.5, 9), part(0.3, Number.POSITIVE_INFINITY)]);
    close(own.standard, 0.989949494, 1e-9);
    close(own.freedom, 8.7832537, 1e-8);
    close(own.expanded, 2.28282763, 2e-9);
    expect(own.parts.reduce((sum, p) => sum + p.share, 0)).toBeCloseTo(1, 14);
    close(own.parts[0]!.share, 0.64 / 0.98, 1e-14);
  });

  test('one part alone keeps its degrees of freedom, though the division rounds', () => {
    for (let freedom = 1; freedom < 60; freedom++) {
      const own = combine([part(0.1 * freedom, freedom, 1 / 3)]);
      expect(own.factor).toBe(combine([part(1, freedom)]).factor);
    }
  });

  test('fully correlated parts add, opposite ones cancel, and none makes a doubt out of nothing', () => {
    const both = [part(3, 10), part(4, 5)];
    expect(combine(both).standard).toBe(5);
    close(combine(both, () => 1).standard, 7, 1e-15);
    close(combine(both, () => -1).standard, 1, 1e-15);
    expect(combine(both, () => 1).freedom).toBeCloseTo(5, 12);
    expect(combine([part(2, 5, 3), part(3, 5, -2)], () => 1).standard).toBe(0);
    expect(combine([]).standard).toBe(0);
    expect(combine([part(0, 0)])).toMatchObject({
      standard: 0,
      expanded: 0,
      freedom: Number.POSITIVE_INFINITY,
    });
  });

  test('very small and very large doubts neither vanish nor overflow', () => {
    close(combine([part(3e-120, 4), part(4e-120, 4)]).standard, 5e-120, 1e-15);
    close(combine([part(3e120, 4), part(4e120, 4)]).freedom, 625 / (81 / 4 + 256 / 4), 1e-14);
  });

  test('what cannot be is refused by name', () => {
    expect(() => combine([part(-1, 4)])).toThrow(/standard uncertainty of “part of -1”/);
    expect(() => combine([part(Number.NaN, 4)])).toThrow(/standard uncertainty/);
    expect(() => combine([part(1, 0)])).toThrow(/degrees of freedom of “part of 1”/);
    expect(() => combine([part(1, 4, Number.NaN)])).toThrow(/slope/);
    expect(() => combine([part(1, 4), part(1, 4)], () => 1.2)).toThrow(/from −1 to 1/);
    expect(() => combine([part(1, 4), part(1, 4), part(1, 4)], () => -1)).toThrow(/contradict/);
  });
});

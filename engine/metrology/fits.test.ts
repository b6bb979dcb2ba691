import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Result } from '../quantity/index.ts';
import { fitCurve, fitLine, fitLinear, fitPolynomial, type Model } from './index.ts';
import { ECKERLE4, MISRA1A, NORRIS } from './nist-data.ts';

const got = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};
const close = (own: number, other: number, relative: number): void =>
  expect(Math.abs(own - other), `${own} against ${other}`).toBeLessThanOrEqual(relative * Math.abs(other));
const xs = (data: readonly (readonly [number, number])[]): number[] => data.map(([x]) => x);
const ys = (data: readonly (readonly [number, number])[]): number[] => data.map(([, y]) => y);

test('published: straight line (NIST StRD, Norris)', () => {
  const own = got(fitLine(xs(NORRIS), ys(NORRIS)));
  close(own.parameters[0]!, -0.262323073774029, 1e-12);
  close(own.parameters[1]!, 1.00211681802045, 1e-13);
  close(own.standards[0]!, 0.232818234301152, 1e-12);
  close(own.standards[1]!, 0.429796848199937e-3, 1e-12);
  close(own.deviation, 0.884796396144373, 1e-12);
  close(own.residualSquares, 26.6173985294224, 1e-12);
  close(own.rSquared, 0.999993745883712, 1e-14);
  expect(own.freedom).toBe(34);
});

test('published: calibration line of a thermometer, with its uncertainty beyond the readings (JCGM 100:2008, H.3)', () => {
  const t = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
  const b = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
  const own = got(
    fitLine(
      t.map((v) => v - 20),
      b,
    ),
  );
  const near = (value: number, printed: number, half: number): void =>
    expect(Math.abs(value - printed)).toBeLessThanOrEqual(half);
  near(own.parameters[0]!, -0.1712, 0.00005);
  near(own.standards[0]!, 0.0029, 0.00005);
  near(own.parameters[1]!, 0.00218, 0.000005);
  near(own.standards[1]!, 0.00067, 0.000005);
  near(own.deviation, 0.0035, 0.00005);
  near(own.residualSquares, 0.000110096583, 0.5e-12);
  near(own.covariance[0]![1]! / (own.standards[0]! * own.standards[1]!), -0.93, 0.0005);
  const at30 = own.at(10);
  near(at30.value, -0.1494, 0.00005);
  near(at30.standard, 0.0041, 0.00005);
  close(at30.standard, 0.004138596, 1e-6);
  // The line of the temperatures themselves is the same line.
  const far = got(fitLine(t, b)).at(30);
  close(far.value, at30.value, 1e-12);
  close(far.standard, at30.standard, 1e-12);
});

const misra: Model = ([b1, b2], x) => b1! * (1 - Math.exp(-b2! * x));
const eckerle: Model = ([b1, b2, b3], x) => (b1! / b2!) * Math.exp(-0.5 * ((x - b3!) / b2!) ** 2);

describe('published: curves (NIST StRD, nonlinear regression)', () => {
  test.each([
    ['start 1', [500, 0.0001]],
    ['start 2', [250, 0.0005]],
  ])('Misra1a from %s', (_, start) => {
    const own = got(fitCurve(misra, xs(MISRA1A), ys(MISRA1A), start));
    close(own.parameters[0]!, 238.94212918, 5e-10);
    close(own.parameters[1]!, 5.5015643181e-4, 5e-10);
    close(own.standards[0]!, 2.7070075241, 1e-8);
    close(own.standards[1]!, 7.2668688436e-6, 1e-8);
    close(own.residualSquares, 0.12455138894, 1e-10);
    close(own.deviation, 0.1018787633, 1e-10);
    expect(own.freedom).toBe(12);
  });

  test.each([
    ['start 1', [1, 10, 500]],
    ['start 2', [1.5, 5, 450]],
  ])('Eckerle4 from %s', (_, start) => {
    const own = got(fitCurve(eckerle, xs(ECKERLE4), ys(ECKERLE4), start));
    const printed = [1.5543827178, 4.0888321754, 451.54121844];
    const deviations = [1.5408051163e-2, 4.6803020753e-2, 4.6800518816e-2];
    for (const [j, value] of printed.entries()) {
      close(own.parameters[j]!, value, 5e-10);
      close(own.standards[j]!, deviations[j]!, 1e-8);
    }
    close(own.residualSquares, 1.4635887487e-3, 1e-10);
    close(own.deviation, 6.7629245447e-3, 1e-10);
    expect(own.freedom).toBe(32);
  });
});

describe('derived: lines and polynomials', () => {
  test('readings on a polynomial give it back, at any distance from zero', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 2, maxLength: 5 }),
        fc.constantFrom(0, 50, -1000),
        (wanted, offset) => {
          const x = Array.from({ length: 12 }, (_, i) => offset + i);
          const value = (v: number): number => wanted.reduceRight((sum, c) => sum * v + c, 0);
          const own = got(fitPolynomial(x, x.map(value), wanted.length - 1));
          const size = Math.max(...x.map((v) => Math.abs(value(v))), 1);
          for (const v of x)
            expect(Math.abs(own.at(v + 0.5).value - value(v + 0.5))).toBeLessThan(1e-11 * size);
          if (offset === 0)
            for (const [k, c] of wanted.entries()) expect(own.parameters[k]!).toBeCloseTo(c, 8);
        },
      ),
    );
  });

  test('a line through the origin: slope Σxy/Σx², its uncertainty s/√Σx²', () => {
    const [x, y] = [
      [1, 2, 4],
      [2.1, 3.9, 8.1],
    ];
    const own = got(fitLine(x, y, { throughOrigin: true }));
    close(own.parameters[1]!, 42.3 / 21, 1e-14);
    const rss = y.reduce((sum, v, i) => sum + (v - (42.3 / 21) * x[i]!) ** 2, 0);
    close(own.standards[1]!, Math.sqrt(rss / 2 / 21), 1e-12);
    expect(own.parameters[0]).toBe(0);
    expect(own.standards[0]).toBe(0);
    close(own.rSquared, 1 - rss / y.reduce((sum, v) => sum + v * v, 0), 1e-14);
    expect(own.at(0)).toEqual({ value: 0, standard: 0 });
  });

  test('residuals stand square on every column, whatever the units of the parameters', () => {
    const columns = [
      [1, 1, 1, 1, 1],
      [1e-9, 3e-9, 2e-9, 7e-9, 5e-9],
      [4e8, 1e8, 9e8, 2e8, 3e8],
    ];
    const y = [1, 5, 2, 4, 3];
    const own = got(fitLinear(columns, y));
    for (const column of columns) {
      const dot = column.reduce((sum, c, i) => sum + c * own.residuals[i]!, 0);
      const length = Math.sqrt(column.reduce((sum, c) => sum + c * c, 0));
      expect(Math.abs(dot) / length).toBeLessThan(1e-14);
    }
  });

  test('exactly as many readings as unknowns: the fit goes through them and claims no freedom', () => {
    const own = got(fitLine([0, 1], [5, 7]));
    expect(own.parameters[1]).toBeCloseTo(2, 14);
    expect(own).toMatchObject({ freedom: 0, deviation: 0 });
  });

  test.each([
    ['one place', fitLine([2, 2, 2], [1, 2, 3]), /1 different place; .* at least 2/],
    ['too few', fitLine([1], [1]), /1 reading cannot settle 2 unknowns/],
    ['uneven', fitLine([1, 2], [1]), /differ in length/],
    ['not a number', fitLine([1, 2], [1, Number.NaN]), /Reading 2/],
    ['huge', fitLine([1, 1e200], [1, 2]), /Reading 2/],
    ['a degree that is none', fitPolynomial([1, 2, 3], [1, 2, 3], 1.5), /whole number from 1 to 8/],
    ['nothing', fitLinear([], [1]), /at least one unknown/],
    [
      'columns that repeat',
      fitLinear(
        [
          [1, 2, 3],
          [2, 4, 6],
        ],
        [1, 2, 3],
      ),
      /cannot tell unknown 2/,
    ],
  ] as const)('%s is refused in words', (_, result, words) => {
    expect(result.ok ? '' : result.problem.message).toMatch(words);
  });
});

describe('derived: curves', () => {
  test('a straight line by the curve’s way agrees with the line (second method)', () => {
    const line = got(fitLine(xs(NORRIS), ys(NORRIS)));
    const curve = got(fitCurve(([a, b], x) => a! + b! * x, xs(NORRIS), ys(NORRIS), [1, 0.1]));
    for (const j of [0, 1]) {
      const away = Math.abs(curve.parameters[j]! - line.parameters[j]!);
      expect(away).toBeLessThan(1e-8 * line.standards[j]!);
      close(curve.standards[j]!, line.standards[j]!, 1e-7);
    }
  });

  test('exact and numeric slopes lead to the same parameters', () => {
    const exact = got(
      fitCurve(misra, xs(MISRA1A), ys(MISRA1A), [500, 0.0001], {
        slopes: ([b1, b2], x) => [1 - Math.exp(-b2! * x), b1! * x * Math.exp(-b2! * x)],
      }),
    );
    close(exact.parameters[0]!, 238.94212918, 5e-10);
    close(exact.standards[1]!, 7.2668688436e-6, 1e-10);
  });

  test('readings without scatter are met exactly', () => {
    const x = [0, 1, 2, 3, 4, 5];
    const own = got(
      fitCurve(
        misra,
        x,
        x.map((v) => misra([3, 0.4], v)),
        [1, 1],
      ),
    );
    close(own.parameters[0]!, 3, 1e-9);
    close(own.parameters[1]!, 0.4, 1e-9);
  });

  test('what cannot be settled is said', () => {
    const twice = fitCurve(([a, b], x) => a! * b! * x, [1, 2, 3], [2, 4, 6.1], [1, 1]);
    expect(twice.ok ? '' : twice.problem.message).toMatch(/do not settle unknown 2/);
    const none = fitCurve(([a], x) => Math.log(a! * x), [1, 2], [0, 1], [-1]);
    expect(none.ok ? '' : none.problem.message).toMatch(/no value at one of the readings/);
    const short = fitCurve(eckerle, xs(ECKERLE4), ys(ECKERLE4), [1, 10, 500], { most: 2 });
    expect(short.ok ? '' : short.problem.message).toMatch(/No best fit was found in 2 steps/);
    const away = fitCurve(misra, [1, 2], [1, 2], [Number.POSITIVE_INFINITY, 1]);
    expect(away.ok).toBe(false);
  });
});

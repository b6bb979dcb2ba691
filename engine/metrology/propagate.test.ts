import { describe, expect, test } from 'vitest';
import {
  combine,
  correlationOf,
  coverage,
  type Formula,
  type Input,
  propagate,
  propagateTogether,
  standardOf,
  summarise,
} from './index.ts';

const close = (own: number, other: number, relative: number): void =>
  expect(Math.abs(own - other), `${own} against ${other}`).toBeLessThanOrEqual(relative * Math.abs(other));
const printed = (own: number, value: number, half: number): void =>
  expect(Math.abs(own - value), `${own} against ${value}`).toBeLessThanOrEqual(half);

const input = (name: string, value: number, standard: number, freedom = Number.POSITIVE_INFINITY): Input => ({
  name,
  value,
  standard,
  freedom,
  kind: freedom === Number.POSITIVE_INFINITY ? 'tolerance' : 'readings',
});
const rectangle = (half: number): number => standardOf({ kind: 'rectangular', centre: 0, half });

describe('end gauge of 50 mm against a standard', () => {
  // Lengths in nanometres, temperatures in kelvin.
  const length: Formula = ([ls, d, alpha, theta, dAlpha, dTheta]) =>
    ls! + d! - ls! * (dAlpha! * theta! + alpha! * dTheta!);
  const difference = combine(
    [
      { name: 'repeatability', standard: 5.8, freedom: 24 },
      { name: 'comparator, random', standard: 3.9, freedom: 5 },
      { name: 'comparator, systematic', standard: 6.7, freedom: 8 },
    ].map((c) => ({ ...c, slope: 1, kind: 'instrument' as const })),
  );
  const swing = standardOf({ kind: 'arcsine', centre: 0, half: 0.5 });
  const inputs = [
    input('standard', 50_000_623, 25, 18),
    input('difference', 215, difference.standard, difference.freedom),
    input('expansion', 11.5e-6, rectangle(2e-6)),
    input('temperature', -0.1, Math.hypot(0.2, swing)),
    input('expansion difference', 0, rectangle(1e-6), 50),
    input('temperature difference', 0, rectangle(0.05), 2),
  ];
  const first = propagate(length, inputs);

  test('published: length, u, degrees of freedom, expanded (JCGM 100:2008, H.1)', () => {
    printed(difference.standard, 9.7, 0.05);
    // Printed 25.6 from u rounded to 9.7; its fourth power makes that 0.6 % more.
    printed(difference.freedom, 25.6, 0.16);
    printed(first.value, 50_000_838, 0.5);
    printed(first.standard, 32, 0.5);
    printed(first.standard ** 2, 1002, 1);
    expect(Math.floor(first.freedom)).toBe(16);
    printed(coverage(16, 0.99), 2.92, 0.005);
    // Printed 93 from u rounded up to 32: 2.92 × 32; unrounded 92.48.
    printed(coverage(16, 0.99) * first.standard, 93, 1);
  });

  test('derived: unrounded', () => {
    close(first.standard, 31.663879, 1e-7);
    close(first.freedom, 16.75243, 1e-4);
    close(coverage(16, 0.99) * first.standard, 92.48328, 1e-7);
    close(Math.abs(first.parts[4]!.slope * first.parts[4]!.standard), 2.886787, 1e-6);
    close(Math.abs(first.parts[5]!.slope * first.parts[5]!.standard), 16.599027, 1e-6);
  });

  test('published: with the terms of second order 34 nm (JCGM 100:2008, H.1.7)', () => {
    const second = propagate(length, inputs, { secondOrder: true });
    printed(second.standard, 34, 0.5);
    printed(second.standard, 33.806545, 1e-4);
    close(second.curvature, 11.726186 ** 2 + 1.666687 ** 2, 1e-5);
  });
});

describe('resistance, reactance and impedance measured together', () => {
  const V = [5.007, 4.994, 5.005, 4.99, 4.999];
  const I = [19.663, 19.639, 19.64, 19.685, 19.678].map((mA) => mA / 1000);
  const phi = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const lists = [V, I, phi];
  const inputs = lists.map((values, i): Input => {
    const { mean, standard, freedom } = summarise(values);
    return input(['V', 'I', 'φ'][i]!, mean, standard, freedom);
  });
  const r = (i: number, j: number): number => correlationOf(lists[i]!, lists[j]!);
  const formulas: Formula[] = [
    ([v, i, f]) => (v! / i!) * Math.cos(f!),
    ([v, i, f]) => (v! / i!) * Math.sin(f!),
    ([v, i]) => v! / i!,
  ];
  const own = propagateTogether(formulas, inputs, r);

  test('published: values, doubts and correlations (JCGM 100:2008, H.2)', () => {
    printed(r(0, 1), -0.36, 0.005);
    printed(r(0, 2), 0.86, 0.005);
    printed(r(1, 2), -0.65, 0.005);
    printed(own.values[0]!, 127.732, 0.0005);
    printed(own.values[1]!, 219.847, 0.0005);
    printed(own.values[2]!, 254.26, 0.0005);
    printed(own.standards[0]!, 0.071, 0.0005);
    // Printed 0.295, worked from rounded intermediate values.
    printed(own.standards[1]!, 0.295, 0.001);
    printed(own.standards[2]!, 0.236, 0.0005);
    printed(own.correlations[0]![1]!, -0.588, 0.0005);
    printed(own.correlations[0]![2]!, -0.485, 0.0005);
    printed(own.correlations[1]![2]!, 0.993, 0.0006);
  });

  test('derived: unrounded, and by one formula at a time (second method); five readings leave four degrees of freedom', () => {
    close(own.standards[0]!, 0.07107141, 1e-6);
    close(own.standards[1]!, 0.29558168, 1e-6);
    close(own.standards[2]!, 0.23633613, 1e-6);
    close(own.correlations[0]![1]!, -0.5884298, 1e-6);
    for (const [k, formula] of formulas.entries()) {
      const alone = propagate(formula, inputs, { correlation: r });
      close(alone.standard, own.standards[k]!, 1e-12);
      close(alone.freedom, 4, 1e-12);
      // Each set of readings worked through by itself is the other way the guide gives; it bends a little.
      const each = summarise(V.map((v, i) => formula([v, I[i]!, phi[i]!])));
      close(each.standard, alone.standard, 0.005);
    }
  });

  test('derived: without the correlations another doubt comes out', () => {
    const apart = propagateTogether(formulas, inputs);
    close(apart.standards[0]!, 0.19454, 1e-4);
    close(apart.standards[1]!, 0.20091, 1e-4);
    close(apart.standards[2]!, 0.20408, 1e-4);
  });
});

test('derived: workshop budget of a 300 mm travel against gauge blocks and an indicator (JCGM 100:2008 arithmetic)', () => {
  // All in µm; the angle between block and travel is uniform within ±2 mrad.
  const L = 300_000;
  const cosine = (theta: number): number => (L * theta * theta) / 2;
  const parts = [
    { name: 'repeatability', standard: 1.2 / Math.sqrt(5), freedom: 4, kind: 'readings' as const },
    { name: 'indicator', standard: rectangle(0.5), kind: 'resolution' as const },
    { name: 'gauge blocks', standard: 0.6 / 2, kind: 'instrument' as const },
    { name: 'scale against blocks', standard: rectangle(1) * 11.5e-6 * L, kind: 'tolerance' as const },
    { name: 'expansion difference', standard: rectangle(1e-6) * 5 * L, kind: 'tolerance' as const },
    { name: 'cosine', standard: cosine(2e-3) * Math.sqrt(1 / 5 - 1 / 9), kind: 'guess' as const },
  ].map((c) => ({ freedom: Number.POSITIVE_INFINITY, ...c, slope: 1 }));
  const shown = [0.536656, 0.288675, 0.3, 1.991858, 0.866025, 0.178885];
  for (const [i, value] of shown.entries()) printed(parts[i]!.standard, value, 0.5e-6);
  const own = combine(parts);
  close(own.standard, 2.282725, 1e-8);
  close(own.freedom, 1309.45, 1e-5);
  close(2 * own.standard, 4.56545, 1e-8);
  close(own.factor, coverage(1309), 1e-12);
  expect(own.parts.reduce((a, b) => (a.share > b.share ? a : b)).name).toBe('scale against blocks');
});

describe('published: mass calibration, first and second order (JCGM 101:2008, 9.3)', () => {
  const inputs = [
    input('reference', 100_000, 0.05),
    input('added', 1.234, 0.02),
    input('air', 1.2, rectangle(0.1)),
    input('weight', 8000, rectangle(1000)),
    input('reference density', 8000, rectangle(50)),
  ];
  const mass: Formula = ([m, dm, a, w, r]) => (m! + dm!) * (1 + (a! - 1.2) * (1 / w! - 1 / r!)) - 100_000;

  test('first order', () => {
    const own = propagate(mass, inputs);
    printed(own.value, 1.234, 0.00005);
    printed(own.standard, 0.0539, 0.00005);
    printed(own.value - own.expanded, 1.1285, 0.00006);
    printed(own.value + own.expanded, 1.3395, 0.00006);
  });

  test('second order', () => {
    const own = propagate(mass, inputs, { secondOrder: true });
    printed(own.standard, 0.075, 0.00005);
    close(own.standard, 0.0749635, 1e-5);
  });
});

describe('derived: slopes', () => {
  test('numeric slopes are those of calculus', () => {
    const inputs = [input('a', 3, 0.01), input('b', -2, 0), input('c', 0, 1e-3), input('d', 1e-9, 1e-12)];
    const own = propagate(([a, b, c, d]) => a! ** 3 * b! + Math.sin(c!) + 1e9 * d!, inputs);
    for (const [i, exact] of [-54, 27, 1, 1e9].entries()) close(own.parts[i]!.slope, exact, 1e-9);
    const told = propagate(([a]) => a! ** 2, [input('a', 3, 0.1)], { slopes: [6] });
    close(told.standard, 0.6, 1e-15);
  });

  test('at the edge of where a formula holds the slope is taken from the inside', () => {
    close(
      propagate(([a]) => (a! < 0 ? Number.NaN : 2 * a! + a! ** 2), [input('a', 0, 0.1)]).parts[0]!.slope,
      2,
      1e-9,
    );
    close(propagate(([a]) => (a! > 1 ? Number.NaN : a! ** 2), [input('a', 1, 0.1)]).parts[0]!.slope, 2, 1e-9);
  });

  test('what has no value is refused, naming the input', () => {
    expect(() => propagate(() => Number.NaN, [input('a', 0, 1)])).toThrow(/no value at the estimates/);
    expect(() => propagate(([a]) => (a === 0 ? 1 : Number.NaN), [input('gap', 0, 1)])).toThrow(
      /beside .*“gap”/,
    );
  });

  test('correlation of lists', () => {
    close(correlationOf([1, 2, 3], [2, 4, 6]), 1, 1e-15);
    close(correlationOf([1, 2, 3], [3, 2, 1]), -1, 1e-15);
    expect(correlationOf([1, 1], [1, 2])).toBe(0);
    expect(() => correlationOf([1], [1])).toThrow(/at least two/);
  });
});

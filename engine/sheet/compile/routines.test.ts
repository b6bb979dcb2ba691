import { describe, expect, test } from 'vitest';
import { roundHalfAway } from '../arithmetic.ts';
import { defineSheet, formula, input, lanes } from '../index.ts';

/** Seeded numbers from 0 to 1 (a 32-bit mixing step, only for tests). */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
}

const source = 'test';
const one = (expression: string) =>
  defineSheet({
    id: 'routine',
    title: 'routine',
    about: 'one function',
    symbols: { x: input('x', '1'), y: input('y', '1'), f: formula('f', '1', expression, source) },
  });

/** Distance in units of the last place of the wanted value. */
function ulps(got: number, wanted: number): number {
  if (Object.is(got, wanted) || got === wanted) return 0;
  if (Number.isNaN(got) && !Number.isFinite(wanted)) return 0;
  const place = 2 ** (Math.floor(Math.log2(Math.max(Math.abs(wanted), 2.2250738585072014e-308))) - 52);
  return Math.abs(got - wanted) / place;
}

interface Case {
  readonly expression: string;
  readonly math: (x: number, y: number) => number;
  readonly x: readonly [number, number];
  readonly y?: readonly [number, number];
  readonly ulps: number;
}

const CASES: readonly Case[] = [
  { expression: 'exp(x)', math: Math.exp, x: [-745, 710], ulps: 2 },
  { expression: 'exp(x)', math: Math.exp, x: [-1, 1], ulps: 2 },
  { expression: 'ln(x)', math: Math.log, x: [0, 3], ulps: 1 },
  { expression: 'ln(x)', math: Math.log, x: [0, 1e300], ulps: 1 },
  { expression: 'log10(x)', math: Math.log10, x: [0, 1e6], ulps: 2.5 },
  { expression: 'sin(x)', math: Math.sin, x: [-7, 7], ulps: 2 },
  { expression: 'sin(x)', math: Math.sin, x: [-2e6, 2e6], ulps: 2 },
  { expression: 'cos(x)', math: Math.cos, x: [-7, 7], ulps: 2 },
  { expression: 'cos(x)', math: Math.cos, x: [-2e6, 2e6], ulps: 2 },
  { expression: 'tan(x)', math: Math.tan, x: [-7, 7], ulps: 3 },
  { expression: 'tan(x)', math: Math.tan, x: [-2e6, 2e6], ulps: 3 },
  { expression: 'asin(x)', math: Math.asin, x: [-1.1, 1.1], ulps: 3 },
  { expression: 'acos(x)', math: Math.acos, x: [-1.1, 1.1], ulps: 3 },
  { expression: 'atan(x)', math: Math.atan, x: [-5, 5], ulps: 2 },
  { expression: 'atan2(y, x)', math: (x, y) => Math.atan2(y, x), x: [-5, 5], y: [-5, 5], ulps: 3 },
  { expression: 'x ^ y', math: (x, y) => x ** y, x: [0, 50], y: [-9, 9], ulps: 8 },
  { expression: 'x ^ (1 / 3)', math: (x) => x ** (1 / 3), x: [0, 1e9], ulps: 2 },
  { expression: 'x ^ 0.7', math: (x) => x ** 0.7, x: [-2, 2], ulps: 2 },
  { expression: 'x ^ (-10 / 9)', math: (x) => x ** (-10 / 9), x: [-2, 2], ulps: 3 },
  { expression: 'x ^ 9', math: (x) => x ** 9, x: [-2, 2], ulps: 8 },
  { expression: 'x ^ -2.5', math: (x) => x ** -2.5, x: [0, 10], ulps: 3 },
  { expression: 'x ^ 7', math: (x) => x ** 7, x: [-10, 10], ulps: 5 },
  { expression: 'round(x)', math: roundHalfAway, x: [-5, 5], ulps: 0 },
  {
    expression: 'sign(x) * floor(x) + ceil(x)',
    math: (x) => Math.sign(x) * Math.floor(x) + Math.ceil(x),
    x: [-5, 5],
    ulps: 0,
  },
];

const SPECIAL = [
  0,
  -0,
  1,
  -1,
  0.5,
  -0.5,
  1.5,
  2.5,
  -2.5,
  Math.PI,
  Math.PI / 2,
  3.141592653589793e5,
  1e-320,
  1e-200,
  1e300,
  -1e300,
];

describe('derived: routines against JavaScript’s own functions', () => {
  for (const { expression, math, x, y = [0, 1], ulps: most } of CASES) {
    test(`derived: ${expression} for x from ${x[0]} to ${x[1]} within ${most} units of the last place`, () => {
      const next = random(20240607);
      const count = 40_000;
      const xs = Float64Array.from({ length: count }, () => x[0] + (x[1] - x[0]) * next());
      const ys = Float64Array.from({ length: count }, () => y[0] + (y[1] - y[0]) * next());
      xs.set(SPECIAL);
      const sheet = one(expression);
      const got = lanes(sheet, { x: xs, y: ys }, count).values.f as Float64Array;
      let worst = 0;
      let at = 0;
      for (let lane = 0; lane < count; lane++) {
        const wanted = math(xs[lane]!, ys[lane]!);
        const off = ulps(got[lane]!, Number.isFinite(wanted) ? wanted : Number.NaN);
        if (!(off <= worst)) [worst, at] = [off, lane];
      }
      if (process.env.SHOW)
        console.log(expression, x, worst, xs[at], ys[at], got[at], math(xs[at]!, ys[at]!));
      expect(worst, `x = ${xs[at]}, y = ${ys[at]}: ${got[at]}`).toBeLessThanOrEqual(most);
    });
  }
});

/**
 * Transcendental functions as graphs of primitive operations on pairs of lanes.
 *
 * Arguments are finite or NaN. A NaN stays one. Where a fast form does not hold (huge angles,
 * overflow, subnormal numbers) a guard says so, and JavaScript's own function takes over. Coefficients: exp, tan, atan from S. L. Moshier's Cephes; ln from
 * Sun's fdlibm; the sine from a minimax fit on ±π/2. The tests hold each against JavaScript's Math.
 */
import { bitsOf, type Graph } from './graph.ts';

/** 1.5·2⁵²: added to a small number it rounds it to a whole one, which then stands in the lowest bits. */
export const ROUNDER = 6755399441055744;

type Routine = (g: Graph, x: number) => number;

export const exp: Routine = (g, x) => {
  const biased = g.constant(ROUNDER + 1023);
  const shifted = g.make('add', g.make('mul', x, g.constant(Math.LOG2E)), biased);
  const n = g.make('sub', shifted, biased);
  const r = lessProduct(g, lessProduct(g, x, n, 6.93145751953125e-1), n, 1.4286068203094173e-6);
  const fast = g.make('mul', exponentialNearZero(g, r), g.shift('left', 52, shifted));
  return g.guard('exp', fast, g.make('gt', g.make('abs', x), g.constant(708)), x);
};

/** e^r for r within half a ln 2 of zero. */
export function exponentialNearZero(g: Graph, r: number): number {
  const z = g.make('mul', r, r);
  const p = g.make('mul', r, g.polynomial(z, [1.0, 0.030299440770744195, 0.00012617719307481058]));
  const q = g.polynomial(z, [2.0, 0.22726554820815503, 0.002524483403496841, 3.0019850513866446e-6]);
  const half = g.make('div', p, g.make('sub', q, p));
  return g.make('add', g.constant(1), g.make('add', half, half));
}

/** x − n·part. */
const lessProduct = (g: Graph, x: number, n: number, part: number): number =>
  g.make('sub', x, g.make('mul', n, g.constant(part)));

/** Splits a positive normal number into 2^k·m with m from √½ to √2. */
export function split(g: Graph, x: number): { k: number; m: number } {
  const low = bitsOf(Math.SQRT1_2) & 0xffffffff_00000000n;
  const raised = g.make('integerAdd', x, g.bits(bitsOf(1) - low));
  const exponent = g.make('or', g.shift('right', 52, raised), g.bits(bitsOf(2 ** 52)));
  const k = g.make('sub', exponent, g.constant(2 ** 52 + 1023));
  const fraction = g.make('and', raised, g.bits(0x000fffff_ffffffffn));
  return { k, m: g.make('integerAdd', fraction, g.bits(low)) };
}

/** ln(m) = f − correction for m from √½ to √2, f = m − 1. */
function logarithmParts(g: Graph, m: number) {
  const f = g.make('sub', m, g.constant(1));
  const s = g.make('div', f, g.make('add', f, g.constant(2)));
  const z = g.make('mul', s, s);
  const w = g.make('mul', z, z);
  const even = g.make(
    'mul',
    w,
    g.polynomial(w, [0.3999999999940942, 0.22222198432149784, 0.15313837699209373]),
  );
  const odd = g.make(
    'mul',
    z,
    g.polynomial(w, [0.6666666666666735, 0.2857142874366239, 0.1818357216161805, 0.14798198605116586]),
  );
  const half = g.make('mul', g.make('mul', f, f), g.constant(0.5));
  const small = g.make('mul', s, g.make('add', half, g.make('add', even, odd)));
  return { f, half, small };
}

/** ln(m) for m from √½ to √2. */
export function logarithmNearOne(g: Graph, m: number): number {
  const { f, half, small } = logarithmParts(g, m);
  return g.make('sub', f, g.make('sub', half, small));
}

export const SMALLEST_NORMAL = 2.2250738585072014e-308;

/** `value` where x is above zero, NaN elsewhere. */
export const onlyAboveZero = (g: Graph, value: number, x: number): number =>
  g.make('or', value, g.make('not', g.make('gt', x, g.constant(0))));

/** Above zero, but too small for its bits to be taken apart. */
export const isSubnormal = (g: Graph, x: number): number =>
  g.make('and', g.make('gt', x, g.constant(0)), g.make('lt', x, g.constant(SMALLEST_NORMAL)));

export const ln: Routine = (g, x) => {
  const { k, m } = split(g, x);
  const { f, half, small } = logarithmParts(g, m);
  const low = g.make('add', small, g.make('mul', k, g.constant(1.9082149292705877e-10)));
  const rest = g.make('sub', g.make('sub', half, low), f);
  const fast = g.make('sub', g.make('mul', k, g.constant(0.6931471803691238)), rest);
  return g.guard('log', onlyAboveZero(g, fast, x), isSubnormal(g, x), x);
};

export const log10: Routine = (g, x) => {
  const { k, m } = split(g, x);
  const low = g.make(
    'add',
    g.make('mul', logarithmNearOne(g, m), g.constant(Math.LOG10E)),
    g.make('mul', k, g.constant(3.694239077158931e-13)),
  );
  const fast = g.make('add', low, g.make('mul', k, g.constant(0.30102999566361177)));
  return g.guard('log10', onlyAboveZero(g, fast, x), isSubnormal(g, x), x);
};

/** π in three parts, of which n times the first two is exact for n below 2²⁰. */
const PI = [3.1415926534682512, 1.2154201012607932e-10, 4.044532497591901e-21] as const;
const LARGEST_ANGLE = 1e6;

function lessTurns(g: Graph, x: number, n: number, share: number): number {
  return PI.reduce((rest, part) => lessProduct(g, rest, n, part * share), x);
}

/** sin r for r from −π/2 to π/2, with `sign` flipping it where its top bit is set. */
function sineOf(g: Graph, r: number, sign: number): number {
  const z = g.make('mul', r, r);
  const p = g.polynomial(z, SINE);
  return g.make('xor', g.make('add', r, g.make('mul', r, g.make('mul', z, p))), sign);
}

const SINE = [
  -0.16666666666666666, 0.00833333333333333, -0.00019841269841269616, 2.7557319223919875e-6,
  -2.5052108376350205e-8, 1.605904306056645e-10, -7.647122191181588e-13, 2.810099727108632e-15,
  -7.972559550090379e-18,
];

export const sin: Routine = (g, x) => {
  const shifted = g.make('add', g.make('mul', x, g.constant(1 / Math.PI)), g.constant(ROUNDER));
  const n = g.make('sub', shifted, g.constant(ROUNDER));
  const fast = sineOf(g, lessTurns(g, x, n, 1), g.shift('left', 63, shifted));
  return g.markTame(g.guard('sin', fast, beyondAngle(g, x), x));
};

/** cos x = (−1)ʰ·sin((h + ½)π − x). */
export const cos: Routine = (g, x) => {
  const turned = g.make('sub', g.make('mul', x, g.constant(1 / Math.PI)), g.constant(0.5));
  const shifted = g.make('add', turned, g.constant(ROUNDER));
  const n = g.make('add', g.make('sub', shifted, g.constant(ROUNDER)), g.constant(0.5));
  const [first, ...rest] = PI.map((part) => g.make('mul', n, g.constant(part)));
  const r = rest.reduce((sum, part) => g.make('add', sum, part), g.make('sub', first!, x));
  const fast = sineOf(g, r, g.shift('left', 63, shifted));
  return g.markTame(g.guard('cos', fast, beyondAngle(g, x), x));
};

const beyondAngle = (g: Graph, x: number): number =>
  g.make('gt', g.make('abs', x), g.constant(LARGEST_ANGLE));

export const tan: Routine = (g, x) => {
  const shifted = g.make('add', g.make('mul', x, g.constant(2 / Math.PI)), g.constant(ROUNDER));
  const n = g.make('sub', shifted, g.constant(ROUNDER));
  const r = lessTurns(g, x, n, 0.5);
  const z = g.make('mul', r, r);
  const p = g.polynomial(z, [-17956525.197648488, 1153516.6483858742, -13093.693918138373]);
  const q = g.polynomial(
    z,
    [-53869575.592945464, 25008380.18233579, -1320892.3444021097, 13681.296347069296, 1],
  );
  const high = g.make('mul', r, g.make('add', q, g.make('mul', z, p)));
  const odd = g.make('integerNegate', g.make('and', shifted, g.bits(1n)));
  const top = g.make('select', g.make('neg', q), high, odd);
  const bottom = g.make('select', high, q, odd);
  return g.guard('tan', g.make('div', top, bottom), beyondAngle(g, x), x);
};

const TAN_3_8_PI = 2.414213562373095;
const BELOW_HALF_PI = 6.123233995736766e-17;

/** Angle of a ratio that is not negative; infinity gives a right angle. */
function angleOf(g: Graph, a: number): number {
  // About 0, 45 or 90 degrees: atan a = n·45° + atan t, with t = a, (a − 1)/(a + 1) or −1/a.
  const big = g.make('gt', a, g.constant(TAN_3_8_PI));
  const middle = g.make('gt', a, g.constant(0.66));
  const one = g.constant(1);
  const stepped = g.make('and', middle, one);
  const n = g.make('add', stepped, g.make('and', big, one));
  const top = g.make('select', g.constant(-1), g.make('sub', a, stepped), big);
  const bottom = g.make('select', a, g.make('add', one, g.make('and', middle, a)), big);
  const t = g.make('div', top, bottom);
  const z = g.make('mul', t, t);
  const p = g.polynomial(
    z,
    [-64.85021904942025, -122.88666844901361, -75.00855792314705, -16.157537187333652, -0.8750608600031904],
  );
  const q = g.polynomial(
    z,
    [194.5506571482614, 485.3903996359137, 432.88106049129027, 165.02700983169885, 24.858464901423062, 1],
  );
  const curved = g.make('add', g.make('mul', t, g.make('div', g.make('mul', z, p), q)), t);
  const below = g.make('mul', n, g.constant(BELOW_HALF_PI / 2));
  return g.make('add', g.make('mul', n, g.constant(Math.PI / 4)), g.make('add', curved, below));
}

const signOf = (g: Graph, x: number): number => g.make('and', x, g.constant(-0));

export const atan: Routine = (g, x) => g.markTame(g.make('or', angleOf(g, g.make('abs', x)), signOf(g, x)));

export const asin: Routine = (g, x) => {
  const one = g.constant(1);
  const across = g.make('sqrt', g.make('mul', g.make('sub', one, x), g.make('add', one, x)));
  return g.markTame(g.make('or', angleOf(g, g.make('div', g.make('abs', x), across)), signOf(g, x)));
};

export const acos: Routine = (g, x) => {
  const one = g.constant(1);
  const half = angleOf(g, g.make('sqrt', g.make('div', g.make('sub', one, x), g.make('add', one, x))));
  return g.markTame(g.make('add', half, half));
};

export function atan2(g: Graph, y: number, x: number): number {
  const up = g.make('abs', y);
  const across = g.make('abs', x);
  const steep = g.make('gt', up, across);
  const most = g.make('select', up, across, steep);
  const ratio = g.make('div', g.make('select', across, up, steep), most);
  // Both zero: the ratio is 0/0, the angle 0 (or π where x is −0).
  const flat = g.make('andnot', ratio, g.make('eq', g.make('add', up, across), g.constant(0)));
  const low = angleOf(g, flat);
  const turned = g.make('select', g.make('sub', g.constant(Math.PI / 2), low), low, steep);
  const left = g.make('lt', g.make('or', signOf(g, x), g.constant(1)), g.constant(0));
  const whole = g.make('select', g.make('sub', g.constant(Math.PI), turned), turned, left);
  return g.markTame(g.make('or', whole, signOf(g, y)));
}

/** Halves away from zero: the whole part, and one more where half or more is left. */
export const round: Routine = (g, x) => {
  const whole = g.make('trunc', x);
  const left = g.make('abs', g.make('sub', x, whole));
  const one = g.make('or', signOf(g, x), g.constant(1));
  return g.make('add', whole, g.make('and', one, g.make('ge', left, g.constant(0.5))));
};

/** −1, 0 or 1; NaN stays. */
export const sign: Routine = (g, x) => {
  const one = g.make('or', signOf(g, x), g.constant(1));
  return g.make('select', one, x, g.make('gt', g.make('abs', x), g.constant(0)));
};

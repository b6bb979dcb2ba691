/** Powers: whole and half ones by multiplication and roots, any other by Sun's fdlibm method in two parts. */
import type { Graph } from './graph.ts';
import { ROUNDER } from './routines.ts';

const LARGEST_WHOLE = 8;

export function power(g: Graph, x: number, y: number): number {
  const exponent = g.constantValue(y);
  if (exponent !== undefined) {
    const short = fixedPower(g, x, exponent);
    if (short !== undefined) return short;
  }
  return generalPower(g, x, y);
}

function fixedPower(g: Graph, x: number, exponent: number): number | undefined {
  const size = Math.abs(exponent);
  const quarters = size * 4;
  if (size > LARGEST_WHOLE || !Number.isInteger(quarters)) return undefined;
  if (size === 0) return g.make('add', g.constant(1), g.make('sub', x, x));
  const whole = Math.floor(size);
  const factors: number[] = [];
  let square = x;
  for (let bits = whole; bits > 0; bits >>= 1) {
    if (bits & 1) factors.push(square);
    if (bits > 1) square = g.make('mul', square, square);
  }
  const rest = quarters - whole * 4;
  if (rest) {
    const root = g.make('sqrt', x);
    const fourth = g.make('sqrt', root);
    factors.push(rest === 2 ? root : rest === 1 ? fourth : g.make('mul', root, fourth));
  }
  const product = factors.reduce((a, b) => g.make('mul', a, b));
  return exponent > 0 ? product : g.make('div', g.constant(1), product);
}

const HIGH_WORD = 0xffffffff_00000000n;

/** For x above zero; anything else, and results near the ends of the range, go to JavaScript. */
function generalPower(g: Graph, x: number, y: number): number {
  const log = logarithm2(g, x);
  const y1 = top(g, y);
  const low = g.make('add', g.make('mul', g.make('sub', y, y1), log.high), g.make('mul', y, log.low));
  const high = g.make('mul', y1, log.high);
  const fast = exponential2(g, high, low);
  const notNormal = g.make('lt', x, g.constant(2.2250738585072014e-308));
  const outOfRange = g.make('gt', g.make('abs', g.make('add', high, low)), g.constant(1020));
  return g.guard('pow', g.keepVoid(fast, x), g.make('or', notNormal, outOfRange), x, y);
}

const top = (g: Graph, x: number): number => g.make('and', x, g.bits(HIGH_WORD));

/** log₂ x as a sum of two numbers. */
function logarithm2(g: Graph, x: number): { high: number; low: number } {
  const one = g.constant(1);
  const biased = g.make('or', g.shift('right', 52, x), g.constant(2 ** 52));
  const exponent = g.make('sub', biased, g.constant(2 ** 52 + 1023));
  const mantissa = g.make('or', g.make('and', x, g.bits(0x000fffff_ffffffffn)), one);
  // From 1 to √1.5 about 1, to √3 about 1.5, above about 1 of the next power of two.
  const above = g.make('gt', mantissa, g.constant(1.2247447967529297));
  const far = g.make('ge', mantissa, g.constant(1.732050895690918));
  const middle = g.make('andnot', above, far);
  const a = g.make('select', g.make('mul', mantissa, g.constant(0.5)), mantissa, far);
  const n = g.make('add', exponent, g.make('and', far, one));
  const about = g.make('select', g.constant(1.5), one, middle);

  const u = g.make('sub', a, about);
  const sum = g.make('add', a, about);
  const v = g.make('div', one, sum);
  const s = g.make('mul', u, v);
  const sHigh = top(g, s);
  const tHigh = top(g, sum);
  const tLow = g.make('sub', a, g.make('sub', tHigh, about));
  const sLow = g.make(
    'mul',
    v,
    g.make('sub', g.make('sub', u, g.make('mul', sHigh, tHigh)), g.make('mul', sHigh, tLow)),
  );
  const s2 = g.make('mul', s, s);
  const series = g.polynomial(
    s2,
    [
      0.5999999999999946, 0.4285714285785502, 0.33333332981837743, 0.272728123808534, 0.23066074577556175,
      0.20697501780033842,
    ],
  );
  const r = g.make(
    'add',
    g.make('mul', g.make('mul', s2, s2), series),
    g.make('mul', sLow, g.make('add', sHigh, s)),
  );
  const square = g.make('mul', sHigh, sHigh);
  const three = g.constant(3);
  const cubeHigh = top(g, g.make('add', g.make('add', three, square), r));
  const cubeLow = g.make('sub', r, g.make('sub', g.make('sub', cubeHigh, three), square));
  const uu = g.make('mul', sHigh, cubeHigh);
  const vv = g.make('add', g.make('mul', sLow, cubeHigh), g.make('mul', cubeLow, s));
  const pHigh = top(g, g.make('add', uu, vv));
  const pLow = g.make('sub', vv, g.make('sub', pHigh, uu));
  const zHigh = g.make('mul', g.constant(0.9617967009544373), pHigh);
  const zLow = g.make(
    'add',
    g.make(
      'add',
      g.make('mul', g.constant(-7.028461650952758e-9), pHigh),
      g.make('mul', pLow, g.constant(0.9617966939259756)),
    ),
    g.make('and', middle, g.constant(1.350039202129749e-8)),
  );
  const aboutHigh = g.make('and', middle, g.constant(0.5849624872207642));
  const high = top(g, g.make('add', g.make('add', g.make('add', zHigh, zLow), aboutHigh), n));
  const taken = g.make('sub', g.make('sub', g.make('sub', high, n), aboutHigh), zHigh);
  return { high, low: g.make('sub', zLow, taken) };
}

/** 2 to the power of high + low. */
function exponential2(g: Graph, high: number, low: number): number {
  const biased = g.constant(ROUNDER + 1023);
  const shifted = g.make('add', g.make('add', high, low), biased);
  const n = g.make('sub', shifted, biased);
  const rest = g.make('sub', high, n);
  const t = top(g, g.make('add', low, rest));
  const u = g.make('mul', t, g.constant(0.6931471824645996));
  const v = g.make(
    'add',
    g.make('mul', g.make('sub', low, g.make('sub', t, rest)), g.constant(Math.LN2)),
    g.make('mul', t, g.constant(-1.904654299957768e-9)),
  );
  const z = g.make('add', u, v);
  const w = g.make('sub', v, g.make('sub', z, u));
  const z2 = g.make('mul', z, z);
  const series = g.polynomial(
    z2,
    [
      0.16666666666666602, -0.0027777777777015593, 6.613756321437934e-5, -1.6533902205465252e-6,
      4.1381367970572385e-8,
    ],
  );
  const t1 = g.make('sub', z, g.make('mul', z2, series));
  const r = g.make(
    'sub',
    g.make('div', g.make('mul', z, t1), g.make('sub', t1, g.constant(2))),
    g.make('add', w, g.make('mul', z, w)),
  );
  const grown = g.make('sub', g.constant(1), g.make('sub', r, z));
  return g.make('mul', grown, g.shift('left', 52, shifted));
}

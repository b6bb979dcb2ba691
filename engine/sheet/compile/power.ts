/** Powers: whole and quarter ones by multiplication and roots, any other by a logarithm and an exponential. */
import type { Graph } from './graph.ts';
import {
  exponentialNearZero,
  isSubnormal,
  logarithmNearOne,
  onlyAboveZero,
  ROUNDER,
  SMALLEST_NORMAL,
  split,
} from './routines.ts';

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

/** Leaves room for a product with an exponent of two, eleven bits long, to be exact. */
const FORTY_TWO_BITS = 0xffffffff_fffff800n;
const LARGEST_SHARE = 4;
const LARGEST_EXPONENT = 1020;

/**
 * With x = 2^k·m, m from √½ to √2: x^y = 2^(y·k)·e^(y·ln m). The product y·k is kept in two parts, so that only the
 * share of m is rounded: good to a few units of the last place while |y·ln m| is small. Anything else goes to
 * JavaScript, and so does x not above zero where y may be whole.
 */
function generalPower(g: Graph, x: number, y: number): number {
  const { k, m } = split(g, x);
  const share = g.make('mul', y, logarithmNearOne(g, m));
  const yTop = g.make('and', y, g.bits(FORTY_TWO_BITS));
  const yRest = g.make('sub', y, yTop);
  const whole = g.make('mul', yTop, k);
  const exponent = g.make('add', whole, g.make('mul', share, g.constant(Math.LOG2E)));
  const biased = g.constant(ROUNDER + 1023);
  const shifted = g.make('add', exponent, biased);
  const n = g.make('sub', shifted, biased);
  const left = g.make('add', g.make('sub', whole, n), g.make('mul', yRest, k));
  const r = g.make('add', g.make('mul', left, g.constant(Math.LN2)), share);
  const fast = g.make('mul', exponentialNearZero(g, r), g.shift('left', 52, shifted));

  const outOfRange = g.make('gt', g.make('abs', exponent), g.constant(LARGEST_EXPONENT));
  const tooLarge = g.make('gt', g.make('abs', share), g.constant(LARGEST_SHARE));
  const beyond = g.make('or', outOfRange, tooLarge);
  const fixed = g.constantValue(y);
  if (fixed === undefined || Number.isInteger(fixed)) {
    const notNormal = g.make('lt', x, g.constant(SMALLEST_NORMAL));
    return g.guard('pow', g.keepVoid(fast, x), g.make('or', notNormal, beyond), x, y);
  }
  // A power that is not whole has no answer below zero; at zero it is zero, or a division by it.
  const above = g.make('gt', x, g.constant(0));
  const lawful =
    fixed > 0
      ? g.make('or', g.make('and', fast, above), g.make('not', g.make('ge', x, g.constant(0))))
      : onlyAboveZero(g, fast, x);
  const fails = g.make('or', isSubnormal(g, x), g.make('and', beyond, above));
  return g.guard('pow', lawful, fails, x, y);
}

/** Normal, Student t and χ² probabilities and the values that bound them, to about twelve digits. */
import type { LnParts } from './gamma.ts';
import { lnGamma, lnGammaRatio, stirlingRest } from './gamma.ts';

/** From here on Student's t is worked out from the normal distribution. */
const MANY = 1e6;

function want(condition: boolean, message: string): void {
  if (!condition) throw new RangeError(message);
}

/** ln of the probability inside ±t and of that outside, for t > 0. */
function lnNormal(t: number): LnParts {
  return lnGammaRatio(0.5, (t * t) / 2);
}

/** ln [Γ(a + ½) / Γ(a)]. */
function lnHalfStep(a: number): number {
  if (a < 10) return lnGamma(a + 0.5) - lnGamma(a);
  return 0.5 * Math.log(a) + a * Math.log1p(0.5 / a) - 0.5 + stirlingRest(a + 0.5) - stirlingRest(a);
}

/** Continued fraction of the incomplete beta function (Abramowitz and Stegun 26.5.8), by Lentz's way. */
function betaFraction(a: number, b: number, x: number): number {
  const tiny = 1e-300;
  const guarded = (v: number): number => (Math.abs(v) < tiny ? tiny : v);
  let c = 1;
  let d = 1 / guarded(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / guarded(1 + even * d);
    c = guarded(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / guarded(1 + odd * d);
    c = guarded(1 + odd / c);
    const change = d * c;
    h *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return h;
}

const complement = (ln: number): number =>
  ln >= 0 ? Number.NEGATIVE_INFINITY : ln < -0.7 ? Math.log1p(-Math.exp(ln)) : Math.log(-Math.expm1(ln));

/** ln of the probability of Student's t inside ±t and of that outside, for t > 0. */
function lnStudent(t: number, freedom: number): LnParts {
  const a = freedom / 2;
  const ratio = (t / freedom) * t;
  const lnOut = -Math.log1p(ratio);
  const lnIn = ratio > 1 ? -Math.log1p(1 / ratio) : Math.log(ratio) + lnOut;
  const front = a * lnOut + 0.5 * lnIn + lnHalfStep(a) - 0.5 * Math.log(Math.PI);
  const outside = Math.exp(lnOut);
  if (outside < (a + 1) / (a + 2.5)) {
    const upper = Math.min(0, front + Math.log(betaFraction(a, 0.5, outside) / a));
    return { upper, lower: complement(upper) };
  }
  const lower = Math.min(0, front + Math.log(betaFraction(0.5, a, Math.exp(lnIn)) * 2));
  return { lower, upper: complement(lower) };
}

/** Finds u where the rising (or, with `falling`, falling) function reaches `target`: secant steps kept inside a bracket. */
function solve(of: (u: number) => number, target: number, start: number, falling: boolean): number {
  const f = (u: number): number => (falling ? target - of(u) : of(u) - target);
  let low = start - 1;
  let high = start + 1;
  let [fLow, fHigh] = [f(low), f(high)];
  for (let step = 2; fLow > 0 && low > -700; step *= 2) {
    [high, fHigh] = [low, fLow];
    low = Math.max(-700, low - step);
    fLow = f(low);
  }
  for (let step = 2; fHigh < 0 && high < 700; step *= 2) {
    [low, fLow] = [high, fHigh];
    high = Math.min(700, high + step);
    fHigh = f(high);
  }
  // Ridders' method (1979): exact for an exponential, never outside the bracket.
  let previous = Number.NaN;
  for (let k = 0; k < 200; k++) {
    const middle = (low + high) / 2;
    const fMiddle = f(middle);
    const root = Math.sqrt(fMiddle * fMiddle - fLow * fHigh);
    const bend = root > 0 && Number.isFinite(root) ? (fMiddle * Math.sign(fLow - fHigh)) / root : 0;
    const next = Math.min(high, Math.max(low, middle + (middle - low) * bend));
    const fNext = f(next);
    if (fNext === 0 || Math.abs(next - previous) <= 4e-16 * Math.max(1, Math.abs(next))) return next;
    previous = next;
    const [l, r] = next < middle ? [next, middle] : [middle, next];
    const [fl, fr] = next < middle ? [fNext, fMiddle] : [fMiddle, fNext];
    if (fl >= 0) [high, fHigh] = [l, fl];
    else if (fr <= 0) [low, fLow] = [r, fr];
    else {
      [low, fLow] = [l, fl];
      [high, fHigh] = [r, fr];
    }
    if (high - low <= 4e-16 * Math.max(1, Math.abs(high))) return high;
  }
  return previous;
}

/** t with the given probability inside ±t and outside it; the smaller of the two sets the target, so that far tails stay exact. */
function symmetric(parts: (t: number) => LnParts, inside: number, outside: number): number {
  if (inside === 0) return 0;
  const u =
    outside < 0.5
      ? solve((u) => parts(Math.exp(u)).upper, Math.log(outside), 0.5, true)
      : solve((u) => parts(Math.exp(u)).lower, Math.log(inside), -0.5, false);
  return Math.exp(u);
}

/** Student's t from the normal value for very many degrees of freedom (Abramowitz and Stegun 26.7.5). */
function fromNormal(z: number, v: number): number {
  const z2 = z * z;
  const g1 = (z * (z2 + 1)) / 4;
  const g2 = (z * ((5 * z2 + 16) * z2 + 3)) / 96;
  return z + (g1 + g2 / v) / v;
}

function studentBound(inside: number, outside: number, freedom: number): number {
  want(freedom > 0, `Degrees of freedom must be above 0, not ${freedom}.`);
  if (freedom >= MANY) {
    const z = symmetric(lnNormal, inside, outside);
    return freedom === Number.POSITIVE_INFINITY ? z : fromNormal(z, freedom);
  }
  return symmetric((t) => lnStudent(t, freedom), inside, outside);
}

/**
 * Coverage factor: how many standard uncertainties either side hold the truth with the probability `level` (0.95),
 * when the standard uncertainty itself rests on `freedom` degrees of freedom (above 0, `Infinity` for perfectly known).
 * The two-sided quantile of Student's t. Throws RangeError outside these.
 */
export function coverage(freedom: number, level = 0.95): number {
  want(level >= 0 && level < 1, `A coverage level lies from 0 to below 1, not ${level}.`);
  return studentBound(level, 1 - level, freedom);
}

/** The value that Student's t stays below with the probability p, 0 < p < 1. */
export function studentQuantile(p: number, freedom: number): number {
  want(p > 0 && p < 1, `A probability lies between 0 and 1, not ${p}.`);
  const tail = Math.min(p, 1 - p);
  const t = studentBound(Math.abs(2 * p - 1), 2 * tail, freedom);
  return p < 0.5 ? -t : t;
}

/** The probability that Student's t is below `t`. */
export function studentProbability(t: number, freedom: number): number {
  want(freedom > 0, `Degrees of freedom must be above 0, not ${freedom}.`);
  if (t === 0) return 0.5;
  const outside = Math.exp(
    (freedom === Number.POSITIVE_INFINITY ? lnNormal(Math.abs(t)) : lnStudent(Math.abs(t), freedom)).upper,
  );
  return t < 0 ? outside / 2 : 1 - outside / 2;
}

/** The value that a normal variable of mean 0 and deviation 1 stays below with the probability p. */
export const normalQuantile = (p: number): number => studentQuantile(p, Number.POSITIVE_INFINITY);

/** The probability that a normal variable of mean 0 and deviation 1 is below `z`. */
export const normalProbability = (z: number): number => studentProbability(z, Number.POSITIVE_INFINITY);

/** The probability that χ² with `freedom` degrees of freedom is below x. */
export function chiSquareProbability(x: number, freedom: number): number {
  want(freedom > 0 && freedom < Number.POSITIVE_INFINITY, `Degrees of freedom must be above 0 and finite.`);
  return x <= 0 ? 0 : Math.exp(lnGammaRatio(freedom / 2, x / 2).lower);
}

/** The value that χ² with `freedom` degrees of freedom stays below with the probability p, 0 < p < 1. */
export function chiSquareQuantile(p: number, freedom: number): number {
  want(p > 0 && p < 1, `A probability lies between 0 and 1, not ${p}.`);
  want(freedom > 0 && freedom < Number.POSITIVE_INFINITY, `Degrees of freedom must be above 0 and finite.`);
  const parts = (u: number): LnParts => lnGammaRatio(freedom / 2, Math.exp(u) / 2);
  const start = Math.log(freedom);
  const u =
    p < 0.5
      ? solve((u) => parts(u).lower, Math.log(p), start, false)
      : solve((u) => parts(u).upper, Math.log1p(-p), start, true);
  return Math.exp(u);
}

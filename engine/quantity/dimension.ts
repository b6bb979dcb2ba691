/** Arithmetic of dimensions, with what is tallied (angle, lines, counts …) carried along. */
import type { Dimension, Tally } from './types.ts';

export const PLAIN: Dimension = { m: 0, kg: 0, s: 0, A: 0, K: 0, tally: 'none', tallyPower: 0 };

/** A dimension from the exponents that are not zero. */
export function dimension(parts: Partial<Dimension>): Dimension {
  return { ...PLAIN, ...parts };
}

const BASE = ['m', 'kg', 's', 'A', 'K'] as const;

type Tallies = Partial<Record<Tally, number>>;

function tallies(d: Dimension): Tallies {
  const out: Tallies = {};
  if (d.tally !== 'none') out[d.tally] = d.tallyPower;
  if (d.anglePower) out.angle = (out.angle ?? 0) + d.anglePower;
  return out;
}

/** Exponents like 0.1 + 0.2 come from roots of roots; a billionth is far below any that is meant. */
const tidy = (exponent: number): number => {
  const rounded = Math.round(exponent * 1e9) / 1e9;
  return rounded === 0 ? 0 : rounded;
};

function build(base: Pick<Dimension, (typeof BASE)[number]>, counted: Tallies): Dimension {
  const numbers = { m: tidy(base.m), kg: tidy(base.kg), s: tidy(base.s), A: tidy(base.A), K: tidy(base.K) };
  const angle = tidy(counted.angle ?? 0);
  const others = (Object.keys(counted) as Tally[]).filter((t) => t !== 'angle' && tidy(counted[t]!) !== 0);
  // Two things counted at once (counts per line) are a plain ratio: the type keeps one, and angle beside it.
  const [only] = others;
  if (others.length === 1 && only) {
    const main = { ...numbers, tally: only, tallyPower: tidy(counted[only]!) };
    return angle === 0 ? main : { ...main, anglePower: angle };
  }
  return angle === 0
    ? { ...numbers, tally: 'none', tallyPower: 0 }
    : { ...numbers, tally: 'angle', tallyPower: angle };
}

/** The product of dimensions, each raised to its exponent. All at once, since two tallies in a partial product would be lost. */
export function productOf(terms: readonly (readonly [of: Dimension, exponent: number])[]): Dimension {
  const base = { m: 0, kg: 0, s: 0, A: 0, K: 0 };
  const counted: Tallies = {};
  for (const [d, exponent] of terms) {
    for (const unit of BASE) base[unit] += d[unit] * exponent;
    for (const [t, p] of Object.entries(tallies(d)) as [Tally, number][])
      counted[t] = (counted[t] ?? 0) + p * exponent;
  }
  return build(base, counted);
}

export const multiply = (a: Dimension, b: Dimension): Dimension =>
  productOf([
    [a, 1],
    [b, 1],
  ]);
export const divide = (a: Dimension, b: Dimension): Dimension =>
  productOf([
    [a, 1],
    [b, -1],
  ]);
export const power = (a: Dimension, exponent: number): Dimension => productOf([[a, exponent]]);

/** The dimension as formulas see it: tallies are plain numbers. */
export const plain = (d: Dimension): Dimension => build(d, {});

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-8;

const sameBase = (a: Dimension, b: Dimension): boolean => BASE.every((unit) => near(a[unit], b[unit]));

/** Whether two dimensions are the same; with `loose`, tallies count as plain numbers. */
export function sameDimension(a: Dimension, b: Dimension, loose = false): boolean {
  if (!sameBase(a, b)) return false;
  if (loose) return true;
  return (
    a.tally === b.tally && near(a.tallyPower, b.tallyPower) && near(a.anglePower ?? 0, b.anglePower ?? 0)
  );
}

export const equal = (a: Dimension, b: Dimension): boolean => sameDimension(a, b);

/** One text for one dimension, for use as a key. */
export function dimensionKey(d: Dimension): string {
  return [d.m, d.kg, d.s, d.A, d.K, d.tally, d.tallyPower, d.anglePower ?? 0].join(' ');
}

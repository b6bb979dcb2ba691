/** Sums of ranges: each amount drawn from a triangle over its range, apart from the others. */
import { simulate } from '../metrology/monte-carlo.ts';
import type { Money } from '../quantity/index.ts';

const TRIALS = 20_000;
/** The same amounts give the same sums on every computer. */
const SEED = 1;

/** Rising sums of all amounts with the share added; undefined where they cannot be drawn. */
export function sums(lines: readonly Money[], contingency: number): readonly number[] | undefined {
  const drawn = lines.filter(({ low, high }) => high > low);
  const fixed = lines.reduce((sum, { low, high, likely }) => sum + (high > low ? 0 : likely), 0);
  if (drawn.length === 0) return [fixed * (1 + contingency)];
  const run = simulate({
    inputs: drawn.map(() => ({ kind: 'rectangular', centre: 0.5, half: 0.5 })),
    formula: (u) => (1 + contingency) * drawn.reduce((sum, money, i) => sum + triangle(money, u[i]!), fixed),
    seed: SEED,
    trials: TRIALS,
  });
  return run.ok ? [...run.value.sorted] : undefined;
}

/** The value below which a share of a triangle lies. */
export function triangle(
  { low, likely, high }: Pick<Money, 'low' | 'likely' | 'high'>,
  share: number,
): number {
  const span = high - low;
  if (!(span > 0)) return likely;
  const corner = (likely - low) / span;
  return share < corner
    ? low + Math.sqrt(share * span * (likely - low))
    : high - Math.sqrt((1 - share) * span * (high - likely));
}

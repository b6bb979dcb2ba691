/** Where a fact comes from, and what its ± then means. */
import type { Basis, Quantity } from './types.ts';
import { BASES } from './types.ts';

export const isBasis = (text: unknown): text is Basis => (BASES as readonly unknown[]).includes(text);

/** The weakest of the bases; `measured`, the strongest, when none is given. */
export function weakest(...bases: readonly Basis[]): Basis {
  return BASES[Math.max(0, ...bases.map((b) => BASES.indexOf(b)))]!;
}

/**
 * Standard uncertainty in SI: of the spread where the text says what its ± is. Otherwise by the basis: a ± that was measured is an expanded uncertainty with k = 2 (JCGM 100:2008, 6.3; clause from memory);
 * any other ± is a limit within which every value is equally likely, so half/√3 (JCGM 100:2008, 4.3.7).
 */
export function standardUncertainty(quantity: Pick<Quantity, 'half' | 'spread'>, basis: Basis): number {
  if (quantity.spread) return quantity.spread.standard;
  return basis === 'measured' ? quantity.half / 2 : quantity.half / Math.sqrt(3);
}

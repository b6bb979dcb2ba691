/** The one order of chains, so that taking a chain out and putting it back changes nothing. */
import type { Chain } from './types.ts';

const USUAL = 'XYZABCUVW';

/** X, Y, Z, then the rotary A, B, C, then U, V, W (the axis letters of ISO 841), then the rest by name. */
export function compareChainIds(a: string, b: string): number {
  const rank = (id: string) => (USUAL.includes(id.charAt(0)) ? USUAL.indexOf(id.charAt(0)) : USUAL.length);
  return rank(a) - rank(b) || (a < b ? -1 : a > b ? 1 : 0);
}

export const inOrder = (chains: readonly Chain[]): readonly Chain[] =>
  [...chains].sort((a, b) => compareChainIds(a.id, b.id));

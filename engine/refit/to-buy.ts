/** Whether a part is still to be bought: nothing to look at, and nothing to test, before it is there. */

import { parseMoney } from '../quantity/index.ts';
import { own } from '../quantity/own.ts';
import type { Part } from './types.ts';

/** What it costs tells nothing of where it is, so these facts count for no sign that somebody had it in hand. */
const MONEY = new Set(['price', 'priceNew', 'repairCost', 'adaptCost']);

/**
 * A part whose condition nobody noted counts as still to be bought where getting it costs something, or where all that is
 * known of it comes from paper and some of that from a datasheet. A noted condition, a photo, or a price of 0 (it is
 * yours already) says otherwise, and without a price so does anything read off its plate or measured.
 */
export function isToBuy(part: Part): boolean {
  if (part.condition !== undefined || (part.photos?.length ?? 0) > 0) return false;
  const price = own(part.facts, 'price');
  const read = price?.value.kind === 'text' ? parseMoney(price.value.text) : undefined;
  if (read?.ok) return read.value.high > 0;
  const bases = Object.entries(part.facts).flatMap(([name, { basis }]) => (MONEY.has(name) ? [] : [basis]));
  return bases.includes('datasheet') && !bases.includes('plate') && !bases.includes('measured');
}

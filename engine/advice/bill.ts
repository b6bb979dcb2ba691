/** What a choice of parts costs, item by item; only what is entered, never converted between currencies. */
import { factSpec } from '../parts/index.ts';
import { addMoney } from '../quantity/index.ts';
import type { Refit } from '../refit/types.ts';
import { moneyOf } from './part-facts.ts';
import type { Bill, Cost } from './types.ts';

export interface Bought {
  readonly chain: string | null;
  readonly place: string;
  readonly part: string;
  /** Costs beside the price that are sure to come, so that they are 'not known' rather than left out. */
  readonly asks?: readonly string[];
}

export function billOf(refit: Refit, parts: readonly Bought[]): Bill {
  const items: Cost[] = [];
  for (const { chain, place, part, asks = [] } of parts) {
    const has = refit.parts[part];
    for (const fact of ['price', 'repairCost', 'adaptCost']) {
      const known = moneyOf(has, fact);
      if (!known && fact !== 'price' && !asks.includes(fact)) continue;
      const spec = factSpec(place, fact);
      if (!spec) continue;
      const at = [chain, `${place}@${part}`].filter((step) => step !== null).join('.');
      items.push({
        path: `${at}.${fact}`,
        name: `${has?.name ?? part}: ${spec.name}`,
        ...(known ? { money: known } : {}),
      });
    }
  }
  const known = items.flatMap(({ money }) => money ?? []);
  const total = known.length > 0 ? addMoney(known) : undefined;
  return {
    items,
    ...(total ? { total } : {}),
    complete: known.length === items.length && total !== undefined,
  };
}

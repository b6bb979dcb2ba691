/** One line a kind of cost: what was entered, else what the parts cost together, else what is usual. */
import { factSpec } from '../parts/index.ts';
import { addMoney, type Money, sayMoney } from '../quantity/index.ts';
import { everyPlace } from '../refit/place.ts';
import type { Part, Refit } from '../refit/types.ts';
import type { MachineState } from './machine-state.ts';
import { moneyOf } from './part-facts.ts';
import { type CostItem, USUAL_CURRENCIES, usualRange } from './usual-costs.ts';

export interface CostLine {
  readonly id: string;
  /** Path to set it by. */
  readonly path: string;
  readonly name: string;
  /** Absent while it is not known, and there is no usual value in this currency. */
  readonly money?: Money;
  /** `entered` for the job, added from the prices of `parts`, only `usual`, or `none`. */
  readonly from: 'entered' | 'parts' | 'usual' | 'none';
  /** Rests on a guess: a usual value, or one entered as a guess. */
  readonly guess: boolean;
}

export function lineOf(
  refit: Refit,
  state: MachineState,
  job: Part | undefined,
  item: CostItem,
  currency: string | undefined,
): CostLine {
  const spec = factSpec('job', item.id)!;
  const base = { id: item.id, path: `job.${item.id}`, name: spec.name };
  const entered = moneyOf(job, item.id);
  if (entered)
    return { ...base, money: entered, from: 'entered', guess: job?.facts[item.id]?.basis === 'guess' };
  const parts = item.parts ? fromParts(refit, item.parts) : undefined;
  if (parts) return { ...base, ...parts, from: 'parts' };
  const wear = item.wear ? state[item.wear] : 'worn';
  if (wear === 'good')
    return {
      ...base,
      from: 'usual',
      guess: false,
      money: { text: '0', currency: null, low: 0, likely: 0, high: 0 },
    };
  if (currency === undefined || !USUAL_CURRENCIES.has(currency))
    return { ...base, from: 'none', guess: false };
  const [low, likely, high] = usualRange(item, state.weight);
  // While nobody has looked, it may be nothing and it may be all.
  const range = wear === undefined ? { low: 0, likely: likely / 2, high } : { low, likely, high };
  return {
    ...base,
    from: 'usual',
    guess: true,
    money: { ...range, currency, text: sayMoney({ ...range, currency }) },
  };
}

/** What the chosen parts of these places cost together, where every one has its price. */
function fromParts(refit: Refit, places: readonly string[]): { money: Money; guess: boolean } | undefined {
  const all: Money[] = [];
  let guess = false;
  for (const { name, place } of everyPlace(refit)) {
    const part = places.includes(name) && place.chosen ? refit.parts[place.chosen] : undefined;
    if (!part) continue;
    const price = moneyOf(part, 'price');
    if (!price) return undefined;
    for (const fact of ['price', 'repairCost', 'adaptCost']) {
      const money = moneyOf(part, fact);
      if (!money) continue;
      all.push(money);
      guess ||= part.facts[fact]?.basis === 'guess';
    }
  }
  const money = all.length > 0 ? addMoney(all) : undefined;
  return money ? { money, guess } : undefined;
}

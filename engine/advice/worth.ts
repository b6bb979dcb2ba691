/** Is it worth it: what may stop it, what it may cost as a range, and what a working machine is worth to the person. */
import { POLICY } from '../checks/policies.ts';
import { factSpec } from '../parts/index.ts';
import { type Money, parseQuantity, sayMoney } from '../quantity/index.ts';
import type { Part, Refit } from '../refit/types.ts';
import { type CostLine, lineOf } from './cost-lines.ts';
import { machineState } from './machine-state.ts';
import { moneyOf } from './part-facts.ts';
import { type Stopper, showstoppers } from './showstoppers.ts';
import { sums } from './sum-of-ranges.ts';
import { COST_ITEMS } from './usual-costs.ts';

export interface Total {
  /** One in ten is below, half are, one in ten is above. With what is added for the forgotten. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface Worth {
  readonly currency: string | undefined;
  readonly stoppers: readonly Stopper[];
  readonly lines: readonly CostLine[];
  readonly asked?: Money;
  readonly worth?: Money;
  /** What it takes beside the price asked; absent while nothing is known. */
  readonly total?: Total;
  /** Share added for what was forgotten. */
  readonly contingency: number;
  /** Chance that price and costs together stay below what it is worth. */
  readonly chance?: number;
  /** Share of the likely total that rests on guesses. */
  readonly guessed: number;
  readonly answer: 'stop' | 'worth' | 'not-worth' | 'close' | 'open';
  readonly sentence: string;
  readonly doubt: readonly string[];
}

/** A verdict on more guesses than this would be a guess itself. */
const MOST_GUESSED = 0.25;
const SURE = 0.8;

export function worthOf(refit: Refit): Worth {
  const state = machineState(refit);
  const stoppers = showstoppers(state);
  const job = chosen(refit, 'job');
  const asked = moneyOf(job, 'asked');
  const worth = moneyOf(job, 'worth');
  const currency = currencyOf(refit, [worth, asked]);
  const doubt: string[] = [];
  const lines = COST_ITEMS.map((item) => lineOf(refit, state, job, item, currency));
  const mixed = [asked, worth, ...lines.map(({ money }) => money)].some(
    (money) => money && money.currency !== null && money.currency !== currency,
  );
  const contingency = policyValue(refit, 'contingency');
  const base = {
    currency,
    stoppers,
    lines,
    contingency,
    ...(asked ? { asked } : {}),
    ...(worth ? { worth } : {}),
  };
  const known = lines.flatMap(({ money }) => money ?? []);
  const likely = known.reduce((sum, money) => sum + money.likely, 0);
  const guessedMoney = lines.reduce((sum, { guess, money }) => sum + (guess ? (money?.likely ?? 0) : 0), 0);
  const guessed = likely > 0 ? guessedMoney / likely : 0;
  const bare = lines.filter(({ from }) => from === 'none').map(({ name }) => name);
  const guesses = lines.filter(({ guess }) => guess).map(({ name }) => name);
  if (guesses.length > 0)
    doubt.push(
      `Only guessed: ${guesses.join(', ')}. They make up ${Math.round(100 * guessed)} % of the likely total.`,
    );
  if (bare.length > 0) doubt.push(`Not known at all, and not in the sum: ${bare.join(', ')}.`);
  if (!asked) doubt.push('The price asked for the machine is not entered; the sum is without it.');
  const stop = stoppers.filter(({ level }) => level === 'stops');
  const open = stoppers.filter(({ level }) => level === 'unknown');
  if (open.length > 0)
    doubt.push(`May still stop it: ${open.map(({ title }) => title.toLowerCase()).join(', ')}.`);
  const answer = (is: Worth['answer'], sentence: string, more: Partial<Worth> = {}): Worth => ({
    ...base,
    guessed,
    answer: stop.length > 0 ? 'stop' : is,
    sentence:
      stop.length > 0
        ? `Not as it stands: ${stop.map(({ title }) => title.toLowerCase()).join(', ')}. Settle that before you count money.`
        : sentence,
    doubt,
    ...more,
  });
  if (mixed)
    return answer('open', 'Prices stand in different currencies and are not added. Write them all in one.');
  if (known.length === 0 || currency === undefined)
    return answer(
      'open',
      'Nothing is known of its cost yet. Enter the price asked or what it is worth to you first: they say in which currency to reckon.',
    );

  const sorted = sums(known, contingency);
  if (!sorted) return answer('open', 'The sums cannot be worked out from these amounts.');
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  const total: Total = { low: at(0.1), middle: at(0.5), high: at(0.9) };
  const says = sayMoney({ currency, low: total.low, likely: total.middle, high: total.high });
  if (!worth)
    return answer(
      'open',
      `It may take ${says}, beside the price. ${guessed > MOST_GUESSED ? 'Most of that is usual values nobody has confirmed. ' : ''}Say what a working one is worth to you, and it can be compared.`,
      { total },
    );

  const price = asked?.likely ?? 0;
  const chance =
    sorted.reduce((count, sum) => count + (sum + price <= worth.likely ? 1 : 0), 0) / sorted.length;
  const compared = `It may take ${says}${price > 0 ? `, and ${sayMoney(asked!)} to get it` : ''}, against ${sayMoney(worth)} it is worth to you.`;
  // What is known for certain may be enough for a no, whatever the guesses turn out to be.
  const sureLow = lines.reduce((sum, { guess, money }) => sum + (guess ? 0 : (money?.low ?? 0)), 0);
  if (sureLow + (asked?.low ?? 0) > worth.high)
    return answer('not-worth', `${compared} What is known of it alone comes to more.`, { total, chance });
  if (guessed > MOST_GUESSED || bare.length > 0)
    return answer(
      'open',
      `${compared} Too much of that is guessed to say yes or no: confirm the largest guesses first.`,
      { total, chance },
    );
  if (open.length > 0)
    return answer('open', `${compared} What could still stop it has to be known first.`, { total, chance });
  if (chance >= SURE)
    return answer('worth', `${compared} It is worth it in ${Math.round(100 * chance)} cases of a hundred.`, {
      total,
      chance,
    });
  if (chance <= 1 - SURE)
    return answer(
      'not-worth',
      `${compared} It costs more in ${Math.round(100 * (1 - chance))} cases of a hundred.`,
      { total, chance },
    );
  return answer(
    'close',
    `${compared} That is close: it is worth it in ${Math.round(100 * chance)} cases of a hundred.`,
    { total, chance },
  );
}

const chosen = (refit: Refit, place: string): Part | undefined => {
  const id = refit.places[place]?.chosen;
  return id ? refit.parts[id] : undefined;
};

/** The currency of what was entered first: worth, price, then any cost. */
function currencyOf(refit: Refit, first: readonly (Money | undefined)[]): string | undefined {
  const all = [...first];
  for (const part of Object.values(refit.parts))
    for (const fact of Object.keys(part.facts)) if (isMoney(part, fact)) all.push(moneyOf(part, fact));
  return all.find((money) => money?.currency)?.currency ?? undefined;
}

function isMoney(part: Part, fact: string): boolean {
  const place = part.kind === 'job' ? 'job' : part.kind;
  const spec = factSpec(place, fact);
  return spec?.kind === 'text' && spec.of === 'money';
}

function policyValue(refit: Refit, id: string): number {
  const policy = POLICY.get(id)!;
  const own = refit.policies[id];
  const read = own === undefined ? undefined : parseQuantity(own, policy.unit);
  if (read?.ok && read.value.value >= 0 && read.value.value <= 1) return read.value.value;
  return Number(policy.usual);
}

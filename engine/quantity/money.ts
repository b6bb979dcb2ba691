/** Money as people write it: '120 EUR', '£80–120', '80–100–150 €', '100 ± 20 USD', 'nothing'. Never converted. */
import { readNumber } from './number.ts';
import { ok, type Result, refuse } from './types.ts';

export interface Money {
  readonly text: string;
  /** As typed, in capitals; € is EUR and £ is GBP. Null for nothing, which is nothing in every currency. */
  readonly currency: string | null;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

const LONGEST = 80;
const MOST = 1e9;
const LIKE = 'Write it like 120 EUR, 80–120 EUR, or low–likely–high: 80–100–150 EUR.';
const CURRENCY = /[€£$¥₹₽]|(?<!\p{L})(?!e[+-]?\d)\p{L}{1,4}(?!\p{L})/giu;
const SAME: Readonly<Record<string, string>> = { '€': 'EUR', '£': 'GBP' };
/** One mark before three digits: a thousand, or a decimal of three places? */
const EITHER = /^\d{1,3}[.,]\d{3}$/;

const bad = (message: string): Result<never> => refuse({ code: 'not-a-number', message });

function amount(piece: string): Result<number> {
  const text = piece.trim();
  if (EITHER.test(text)) {
    const plain = text.replace(/[.,]/, '');
    return refuse({
      code: 'ambiguous',
      message: `“${text}” can be ${plain} or ${text.replace(',', '.')}; write ${plain} without a mark, or fewer decimals.`,
    });
  }
  const read = readNumber(text, 0);
  if (!read.ok) return bad(`“${text.slice(0, 30)}” is no amount of money. ${LIKE}`);
  if (read.value.end !== text.length) return bad(`“${text.slice(0, 30)}” is no amount of money. ${LIKE}`);
  if (read.value.value < 0)
    return refuse({ code: 'out-of-domain', message: 'Money must not be below zero.' });
  if (read.value.value > MOST)
    return refuse({ code: 'out-of-domain', message: 'That is more than a thousand million; is it right?' });
  return ok(read.value.value);
}

/** Reads a price or a range of prices. Refuses what has no currency, two currencies, or limits in the wrong order. */
export function parseMoney(text: string): Result<Money> {
  const typed = text.trim();
  if (typed === '') return refuse({ code: 'empty', message: `No amount was given. ${LIKE}` });
  if (typed.length > LONGEST)
    return refuse({
      code: 'too-long',
      message: `An amount of money has at most ${LONGEST} characters. ${LIKE}`,
    });
  if (/^(0+([.,]0+)?|nothing|free|none)$/i.test(typed))
    return ok({ text: typed, currency: null, low: 0, likely: 0, high: 0 });
  const plain = typed.replace(/\s+to\s+/gi, '–');
  const marks = new Set((plain.match(CURRENCY) ?? []).map((mark) => SAME[mark] ?? mark.toUpperCase()));
  const [currency, other] = marks;
  if (currency === undefined)
    return refuse({
      code: 'unit-missing',
      message: `“${typed.slice(0, 40)}” has no currency. ${LIKE}`,
    });
  if (other !== undefined)
    return refuse({
      code: 'ambiguous',
      message: `“${typed.slice(0, 40)}” names more than one currency (${[...marks].slice(0, 3).join(', ')}). ${LIKE}`,
    });
  const bare = plain.replace(CURRENCY, ' ').trim();
  const doubt = bare.split('±');
  if (doubt.length === 2) {
    const middle = amount(doubt[0]!);
    if (!middle.ok) return middle;
    const half = amount(doubt[1]!);
    if (!half.ok) return half;
    const low = Math.max(0, middle.value - half.value);
    return ok({ text: typed, currency, low, likely: middle.value, high: middle.value + half.value });
  }
  const values: number[] = [];
  for (const piece of bare.split(/\s*[–—-]\s*/)) {
    const read = amount(piece);
    if (!read.ok) return read;
    values.push(read.value);
  }
  if (values.length > 3) return bad(`“${typed.slice(0, 40)}” has more than three amounts. ${LIKE}`);
  const low = values[0]!;
  const high = values.at(-1)!;
  const likely = values.length === 3 ? values[1]! : (low + high) / 2;
  if (!(low <= likely && likely <= high))
    return refuse({
      code: 'out-of-domain',
      message: `“${typed.slice(0, 40)}” does not rise; write the lowest first: low–likely–high.`,
    });
  return ok({ text: typed, currency, low, likely, high });
}

/** Sums, or undefined where two currencies meet. Ends add to ends: the range holds whatever happens. */
export function addMoney(all: readonly Money[]): Money | undefined {
  const currency = all.find((each) => each.currency !== null)?.currency ?? null;
  if (all.some((each) => each.currency !== null && each.currency !== currency)) return undefined;
  const sum = (key: 'low' | 'likely' | 'high'): number => all.reduce((total, each) => total + each[key], 0);
  const total = { currency, low: sum('low'), likely: sum('likely'), high: sum('high') };
  return { ...total, text: sayMoney(total) };
}

/** Two figures of a large amount, all of a small one: a price is never known better. */
const round = (value: number): string => {
  const step = value >= 10_000 ? 100 : value >= 1000 ? 10 : 1;
  return String(Math.round(value / step) * step);
};

/** '120 EUR', '80 to 150 EUR, likely 100'. */
export function sayMoney({ currency, low, likely, high }: Omit<Money, 'text'>): string {
  if (currency === null) return 'nothing';
  const [l, m, h] = [round(low), round(likely), round(high)];
  return l === h ? `${m} ${currency}` : `${l} to ${h} ${currency}, likely ${m}`;
}

/** Below zero when `a` is surely less than `b`, above when surely more, 0 while they overlap; undefined across currencies. */
export function compareMoney(a: Money, b: Money): number | undefined {
  if (a.currency !== null && b.currency !== null && a.currency !== b.currency) return undefined;
  return a.high < b.low ? -1 : a.low > b.high ? 1 : 0;
}

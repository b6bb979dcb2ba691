/**
 * Values that carry where their doubt comes from, through the formulas of the handbook's sheets.
 * To first order by the sheet's exact slopes; where a formula bends within the doubt, the doubt is widened by the bend.
 */
import { type Component, combine, summarise } from '../metrology/index.ts';
import { gradient, type Sheet } from '../sheet/index.ts';
import { type Estimate, type Part, Senseless, type Source } from './types.ts';

/** A number without doubt: a count, a number of turns. */
export const exact = (value: number): Estimate => ({ value, parts: [] });

export const estimate = (value: number, ...parts: readonly Part[]): Estimate => ({ value, parts });

/** One standard uncertainty (SI) of something that is in doubt by itself. */
export const doubtOf = (source: Omit<Source, 'freedom'> & { freedom?: number }, amount: number): Part => ({
  freedom: Number.POSITIVE_INFINITY,
  ...source,
  amount,
});

/** Sum of estimates times factors; what hangs on the same source adds with its sign. */
export function weigh(terms: readonly (readonly [factor: number, of: Estimate])[]): Estimate {
  const parts = new Map<string, Part>();
  let value = 0;
  for (const [factor, of] of terms) {
    value += factor * of.value;
    for (const part of of.parts) {
      const amount = (parts.get(part.id)?.amount ?? 0) + factor * part.amount;
      parts.set(part.id, { ...part, amount });
    }
  }
  return { value, parts: [...parts.values()].filter(({ amount }) => amount !== 0) };
}

export const minus = (a: Estimate, b: Estimate): Estimate =>
  weigh([
    [1, a],
    [-1, b],
  ]);

/** Standard uncertainty, SI. */
export const standardOf = ({ parts }: Estimate): number => Math.hypot(...parts.map(({ amount }) => amount));

/**
 * The mean of repeated values. Their scatter becomes a source of its own; what they share (the same meter) stays what it is,
 * since more readings do not make a wrong meter right. A single value has no scatter to tell.
 */
export function meanOf(values: readonly Estimate[], name: string): Estimate {
  const { n, mean, standard, freedom } = summarise(values.map(({ value }) => value));
  const shared = weigh(values.map((each) => [1 / n, each])).parts.filter(({ kind }) => kind !== 'resolution');
  const digits = weigh(values.map((each) => [1 / n, each])).parts.filter(({ kind }) => kind === 'resolution');
  if (n === 1) return { value: mean, parts: [...shared, ...digits] };
  const scatter: Part = { id: `scatter:${name}`, name, kind: 'readings', freedom, amount: standard };
  // Where readings jump by more than their last digit, the scatter has the digit in it already.
  const digit = Math.hypot(...digits.map(({ amount }) => amount));
  return {
    value: mean,
    parts: [...shared, ...(standard > digit ? [] : digits), ...(standard > 0 ? [scatter] : [])],
  };
}

/** Below this share of the first-order doubt a bend of the formula is not worth a line. */
const BEND = 0.05;

/**
 * A sheet's answer for inputs with doubt. Throws Senseless where these inputs have no answer, or their doubt is so large that
 * within it there would be none.
 */
export function through<K extends string>(
  sheet: Sheet<K>,
  key: K,
  given: Readonly<Partial<Record<K, Estimate>>>,
): Estimate {
  const entries = Object.entries(given) as [K, Estimate][];
  const values = Object.fromEntries(entries.map(([k, { value }]) => [k, value])) as Partial<
    Record<K, number>
  >;
  const { outcomes, partials } = gradient<K>(sheet, values);
  const outcome = outcomes[key];
  const name = sheet.symbols[key].name;
  if (outcome.state === 'undefined')
    throw new Senseless(key, `The ${name} cannot be worked out: ${outcome.reason}.`);
  if (outcome.state === 'missing')
    throw new TypeError(`${sheet.id}.${key} needs ${outcome.needs.join(', ')}`);
  const slopes = (partials[key] ?? {}) as Readonly<Partial<Record<K, number>>>;
  const first = weigh(
    entries.flatMap(([k, each]) => {
      const slope = slopes[k];
      return slope === undefined || slope === 0 ? [] : [[slope, { value: 0, parts: each.parts }] as const];
    }),
  );
  const bend = bendOf(sheet, key, values, entries, outcome.value, name);
  const straight = standardOf(first);
  const bent: Part[] =
    bend > BEND * straight
      ? [
          doubtOf(
            { id: `bend:${sheet.id}.${key}`, name: 'the formula is not straight here', kind: 'tolerance' },
            bend,
          ),
        ]
      : [];
  return { value: outcome.value, parts: [...first.parts, ...bent] };
}

/** Standard uncertainty of the second-order terms, for normal inputs |f''| u² / √2 each (JCGM 100:2008, 5.1.2 note). */
function bendOf<K extends string>(
  sheet: Sheet<K>,
  key: K,
  values: Partial<Record<K, number>>,
  entries: readonly [K, Estimate][],
  middle: number,
  name: string,
): number {
  const ids = new Set(entries.flatMap(([, { parts }]) => parts.map(({ id }) => id)));
  const bends: number[] = [];
  for (const id of ids) {
    const moved = (sign: number): number => {
      const at = Object.fromEntries(
        entries.map(([k, { value, parts }]) => [
          k,
          value + sign * (parts.find((part) => part.id === id)?.amount ?? 0),
        ]),
      ) as Partial<Record<K, number>>;
      const { outcomes } = gradient<K>(sheet, { ...values, ...at }, []);
      const outcome = outcomes[key];
      if (outcome.state === 'known') return outcome.value;
      throw new Senseless(
        key,
        `The doubt is as large as the thing itself: within it the ${name} would have no answer. Take more readings, or a better instrument.`,
      );
    };
    bends.push((moved(1) + moved(-1) - 2 * middle) / Math.SQRT2);
  }
  return Math.hypot(...bends);
}

/** The budget of an estimate by metrology's rules. What bears the same name (each row's last digit) is one line of it. */
export function budgetOf({ parts }: Estimate): ReturnType<typeof combine> {
  const lines = new Map<string, Component>();
  for (const { id, name, kind, freedom, amount } of parts) {
    // Sources with few degrees of freedom stay apart, since each counts with its own.
    const key = Number.isFinite(freedom) ? id : `${kind}: ${name}`;
    const line = lines.get(key);
    if (line) lines.set(key, { ...line, standard: Math.hypot(line.standard, amount), slope: 1 });
    else lines.set(key, { name, kind, freedom, standard: Math.abs(amount), slope: Math.sign(amount) });
  }
  return combine([...lines.values()]);
}

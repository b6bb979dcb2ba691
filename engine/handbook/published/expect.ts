/** States published check values: given texts with units, expected texts with a tolerance and a source. */
import { expect, test } from 'vitest';
import { parseQuantity } from '../../quantity/index.ts';
import type { Quantity } from '../../quantity/types.ts';
import { evaluate } from '../../sheet/index.ts';
import type { Sheet } from '../../sheet/types.ts';

/** `relative` or `absolute` (a text with unit) always comes with the reason why it is not half the last printed digit. */
export type Tolerance =
  | 'half the last digit'
  | { readonly relative: number; readonly because: string }
  | { readonly absolute: string; readonly because: string };

export interface Case<K extends string> {
  readonly sheet: Sheet<K>;
  readonly given: Readonly<Partial<Record<K, string>>>;
  /** Value as printed, or that with a tolerance of its own. */
  readonly expected: Readonly<Partial<Record<K, string | readonly [text: string, tolerance: Tolerance]>>>;
}

export type Origin = 'published' | 'derived';

/** One test: origin and source stand in its title. */
export function holds<K extends string>(origin: Origin, title: string, source: string, one: Case<K>): void {
  test(`${origin}: ${title} (${source})`, () => {
    check(one);
  });
}

/** A result in SI; fails the test when it is undefined or missing. */
export type Results<K extends string> = (key: K) => number;

/** Compares every expected value and returns all results in SI, to be handed on to the next sheet. */
export function check<K extends string>({ sheet, given, expected }: Case<K>): Results<K> {
  const results = work(sheet, given);
  for (const key of keysOf(expected)) {
    const entry = expected[key]!;
    const [text, tolerance] = typeof entry === 'string' ? ([entry, 'half the last digit'] as const) : entry;
    const printed = quantity(text, sheet.symbols[key].unit);
    const value = results(key);
    const room = roomOf(text, printed, tolerance);
    expect(
      Math.abs(value - printed.value),
      `${sheet.id}.${key}: ${value} against ${text} = ${printed.value}, ± ${room} (SI)`,
    ).toBeLessThanOrEqual(room);
  }
  return results;
}

/** Works a sheet out from texts. */
export function work<K extends string>(
  sheet: Sheet<K>,
  given: Readonly<Partial<Record<K, string>>>,
): Results<K> {
  const si: Partial<Record<K, number>> = {};
  for (const key of keysOf(given)) si[key] = quantity(given[key]!, sheet.symbols[key].unit).value;
  const outcomes = evaluate(sheet, si);
  return (key) => {
    const outcome = outcomes[key];
    if (outcome.state === 'known') return outcome.value;
    throw new Error(
      `${sheet.id}.${key}: ${outcome.state === 'missing' ? `needs ${outcome.needs.join(', ')}` : outcome.reason}`,
    );
  };
}

/** A result in SI as a text that reads back exactly, for the next sheet. `unit` is an SI unit. */
export const text = (value: number, unit: string): string => `${value} ${unit}`;

function keysOf<K extends string>(of: Readonly<Partial<Record<K, unknown>>>): K[] {
  return Object.keys(of) as K[];
}

function quantity(of: string, unit: string): Quantity {
  const parsed = parseQuantity(of, unit);
  if (!parsed.ok) throw new Error(`'${of}' cannot be read: ${parsed.problem.message}`);
  return parsed.value;
}

function roomOf(printedText: string, printed: Quantity, tolerance: Tolerance): number {
  if (tolerance === 'half the last digit') return halfLastDigit(printedText) * printed.unit.scale;
  if ('relative' in tolerance) return tolerance.relative * Math.abs(printed.value);
  return quantity(tolerance.absolute, printed.unit.symbol).value;
}

/** Half of the last digit as printed: '-516 N' → 0.5, '1.230e-3' → 5e-7. A hair is added for binary rounding. */
export function halfLastDigit(printedText: string): number {
  const match = /^[-−]?\d+(?:\.(\d+))?(?:e([-+]?\d+))?/i.exec(printedText.trim());
  if (!match) throw new Error(`'${printedText}' does not begin with a number`);
  const power = Number(match[2] ?? 0) - (match[1]?.length ?? 0);
  return 0.5 * 10 ** power * (1 + 1e-9);
}

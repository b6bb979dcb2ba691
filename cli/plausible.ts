/** Numbers so far outside what is plausible that a slip of the keyboard is likelier than the thing. */
import { factSpec } from '../engine/parts/index.ts';
import { formatQuantity, parseQuantity } from '../engine/quantity/index.ts';
import type { Change, Refit } from '../engine/refit/index.ts';
import { readFact } from '../engine/refit/read-fact.ts';
import { target } from '../engine/refit/set.ts';
import { Refusal } from './refusal.ts';

/** Times beyond the plausible span; below that a person is only asked. A habit, no source. */
const FAR = 1000;

export type Span = readonly [low: string, high: string];

/** Whether a value in SI lies a thousand times above a span written as a person would. */
export function isFarAbove(value: number, span: Span, unit: string): boolean {
  const ends = span.map((each) => parseQuantity(each, unit));
  const sizes = ends.map((each) => (each.ok ? Math.abs(each.value.value) : Number.NaN));
  return Math.abs(value) > FAR * Math.max(...sizes);
}

/** Whether it lies a thousand times outside, above or below; nought is never too small. */
export function isFarOut(value: number, span: Span, unit: string): boolean {
  if (isFarAbove(value, span, unit)) return true;
  const least = parseQuantity(span[0], unit);
  return least.ok && value !== 0 && Math.abs(value) < least.value.value / FAR;
}

/** What is wrong with it and what would be plausible, without a full stop. */
export const sayFarOut = (name: string, value: number, span: Span, unit: string): string =>
  `${formatQuantity(value, unit)} is more than a thousand times outside what is plausible for the ${name}: ${span[0]} to ${span[1]}. Look for a slip in the number or its unit`;

/** Refuses a fact that is set far outside its plausible span, with what would be plausible. */
export function refuseFarOut(refit: Refit, at: string, changes: readonly Change[]): void {
  const where = target(refit, at);
  if (!where.ok) return;
  for (const change of changes) {
    if (change.do !== 'fact' || !change.new) continue;
    const spec = factSpec(where.value.place, change.fact);
    if (spec?.kind !== 'quantity') continue;
    const read = readFact(spec, change.new.value);
    if (!read.ok || read.value.kind !== 'quantity') continue;
    const { value } = read.value;
    if (isFarOut(value, spec.plausible, spec.unit))
      throw new Refusal(
        `${at}: ${sayFarOut(spec.name, value, spec.plausible, spec.unit)}. Nothing was recorded; if it is right all the same, add --anyway.`,
      );
  }
}

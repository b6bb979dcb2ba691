/** Numbers so far outside what is plausible that a slip of the keyboard is likelier than the thing. */
import { factSpec } from '../engine/parts/index.ts';
import { formatQuantity, parseQuantity } from '../engine/quantity/index.ts';
import type { Change, Refit } from '../engine/refit/index.ts';
import { readFact } from '../engine/refit/read-fact.ts';
import { target } from '../engine/refit/set.ts';
import { Refusal } from './refusal.ts';

/** Times beyond the plausible span; below that a person is only asked. A habit, no source. */
const FAR = 1000;

type Span = readonly [low: string, high: string];

/** Whether a value in SI lies a thousand times beyond a span written as a person would; nought is never too small. */
export function isFarOut(value: number, [low, high]: Span, unit: string): boolean {
  const [least, most] = [parseQuantity(low, unit), parseQuantity(high, unit)];
  if (!least.ok || !most.ok) return false;
  const size = Math.abs(value);
  return (
    size > FAR * Math.max(Math.abs(least.value.value), Math.abs(most.value.value)) ||
    (size > 0 && least.value.value > 0 && size < least.value.value / FAR)
  );
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

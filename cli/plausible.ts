/** Numbers so far outside what is plausible that a slip of the keyboard is likelier than the thing. */
import { factSpec } from '../engine/parts/index.ts';
import { isFarOut, sayFarOut } from '../engine/quantity/plausible.ts';
import type { Change, Refit } from '../engine/refit/index.ts';
import { readFact } from '../engine/refit/read-fact.ts';
import { target } from '../engine/refit/set.ts';
import { Refusal } from './refusal.ts';

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

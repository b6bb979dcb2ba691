import { expect, test } from 'vitest';
import { parseQuantity } from '../quantity/index.ts';
import { EXAMPLES } from './examples.ts';
import { PLACES, type PlaceId } from './index.ts';
import type { FactSpec } from './types.ts';

/** What a field would take the text for, SI. */
function read(text: string, spec: FactSpec & { kind: 'quantity' }): number {
  const of = spec.of === undefined ? {} : { of: spec.of };
  const got = parseQuantity(text, { unit: spec.unit, ...of });
  if (!got.ok) throw new Error(`${spec.name}: ${got.problem.message}`);
  return got.value.value;
}

test('derived: every number that is asked for has an example, and each reads as that fact, within what is usual and off its ends', () => {
  for (const [place, { facts }] of Object.entries(PLACES)) {
    const examples = EXAMPLES[place as PlaceId] ?? {};
    for (const [name, spec] of Object.entries<FactSpec>(facts)) {
      if (spec.kind !== 'quantity') continue;
      const text = examples[name];
      expect(text, `${place}.${name}`).toBeDefined();
      const value = read(text!, spec);
      const [low, high] = spec.plausible.map((each) => read(each, spec)) as [number, number];
      expect(value, `${place}.${name}`).toBeGreaterThan(
        low - 1e-12 - (spec.unit === '1' || low === value ? 1e-9 + low * 1e-9 : 0),
      );
      expect(value, `${place}.${name}`).toBeLessThanOrEqual(high);
    }
    // No example of a fact that is not there.
    for (const name of Object.keys(examples)) expect(Object.keys(facts), place).toContain(name);
  }
});

import { describe, expect, test } from 'vitest';
import { SAMPLES } from '../../samples/index.ts';
import { entries, sample, smaller, without } from '../../samples/read.fixture.ts';
import { assess } from './assess.ts';
import { withFact } from './change.ts';
import { compare } from './compare.ts';
import { normalBelow } from './normal.ts';
import { type Known, NOTHING } from './value.ts';

/** To ten digits: the same formula run by another route may differ in the last bits of a double. */
const digits = (value: unknown): string =>
  JSON.stringify(value, (_, each) => (typeof each === 'number' ? each.toPrecision(10) : each), 1);

describe.each(SAMPLES)('derived: $id, one edit after another', ({ id }) => {
  const refit = sample(id);
  const first = assess(refit);

  test('without an edit nothing is worked out again and every finding is the same object', () => {
    const again = assess(refit, { previous: first });
    expect(again.recomputed).toEqual([]);
    again.findings.forEach((finding, k) => {
      expect(finding).toBe(first.findings[k]);
    });
  });

  test.each(entries(refit).map((entry) => [entry.path, entry] as const))('%s', (path, entry) => {
    for (const edited of [smaller(refit, entry), without(refit, entry)]) {
      if (!edited) continue;
      const step = assess(edited, { previous: first });
      const fresh = assess(edited);
      expect(digits(step.findings)).toEqual(digits(fresh.findings));
      expect(step.notAsked).toEqual(fresh.notAsked);
      // Only a working that rests on the fact, or did, is worked out again.
      for (const key of step.recomputed) {
        const inputs = [first, step].flatMap((each) => [...each.worked.get(key)!.inputs.values()]);
        const touched = inputs.some((value) => 'facts' in value && value.facts.has(path));
        expect(touched, `${key} after ${path}`).toBe(true);
      }
      const back = assess(refit, { previous: step });
      expect(digits(back.findings)).toEqual(digits(first.findings));
    }
  });
});

const known = (value: number, doubt: Record<string, number>): Known => ({
  state: 'known',
  value,
  doubt: new Map(Object.entries(doubt)),
  facts: NOTHING,
  policies: NOTHING,
  basis: 'measured',
});

test('derived: a fact that stands in demand and capacity alike cancels', () => {
  const shared = compare(known(10, { lead: 1 }), known(12, { lead: 1.2 }), 1);
  expect(shared.range![0]).toBeCloseTo(1.2, 12);
  expect(shared.range![1]).toBeCloseTo(1.2, 12);
  expect(shared.chance).toBe(1);
  const apart = compare(known(10, { lead: 1 }), known(12, { root: 1.2 }), 1);
  expect(apart.chance).toBeCloseTo(normalBelow(2 / Math.hypot(1, 1.2)), 12);
  expect(apart.verdict).toBe('tight');
  const against = compare(known(10, { lead: 1 }), known(12, { lead: -1.2 }), 1);
  expect(against.chance).toBeCloseTo(normalBelow(2 / 2.2), 12);
});

test('derived: at margin 1 the chance is even', () => {
  expect(compare(known(10, { a: 0.5 }), known(10, { b: 0.3 }), 1.1).chance).toBeCloseTo(0.5, 12);
  const lathe = sample('carriage-works-lathe');
  const atLimit = withFact(lathe, 'X.motor.topSpeed', { kind: 'quantity', text: '1800 ± 50 r/min' });
  const finding = assess(atLimit).findings.find((each) => each.id === 'X.top-speed')!;
  expect(finding.margin).toBeCloseTo(1, 9);
  expect(finding.chance).toBeCloseTo(0.5, 6);
});

test('published: normal distribution, Abramowitz and Stegun, table 26.1', () => {
  // Fifteen decimals are tabled for x up to 2.99, ten and more beyond; the tolerance allows for rounding of doubles.
  for (const [x, p] of [
    [1, 0.84134474606854],
    [1.96, 0.9750021048517795],
    [3, 0.9986501019683699],
  ] as const) {
    expect(Math.abs(normalBelow(x) - p)).toBeLessThan(5e-15);
    expect(Math.abs(normalBelow(-x) - (1 - p))).toBeLessThan(5e-15);
  }
});

test('derived: both forms of the normal distribution meet, and its tails add to one', () => {
  // Midpoint sums of the density, 20000 strips from far out.
  for (const x of [0.3, 2.4, 3.5, 3.6, 4.2]) {
    let sum = 0;
    const width = (12 - x) / 20000;
    for (let k = 0; k < 20000; k++) sum += Math.exp(-((x + (k + 0.5) * width) ** 2) / 2) * width;
    const tail = sum / Math.sqrt(2 * Math.PI);
    expect(Math.abs(normalBelow(-x) / tail - 1)).toBeLessThan(1e-6);
    expect(normalBelow(x) + normalBelow(-x)).toBeCloseTo(1, 14);
  }
});

test('derived: a policy that changes a verdict changes the finding, though its sentence stays', () => {
  const refit = sample('boatyard-mill');
  const first = assess(refit);
  const strict = { ...refit, policies: { ...refit.policies, 'margin-exact': '1.5' } };
  const step = assess(strict, { previous: first });
  expect(first.findings.find((each) => each.id === 'X.control-pulses')!.verdict).toBe('fits');
  expect(step.findings.find((each) => each.id === 'X.control-pulses')!.verdict).toBe('tight');
  expect(digits(step.findings)).toEqual(digits(assess(strict).findings));
});

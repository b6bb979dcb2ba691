/** Chances by drawing, held against slopes where the sums are linear, and against closed forms where they are not. */
import { expect, test } from 'vitest';
import { SAMPLES } from '../../samples/index.ts';
import { sample } from '../../samples/read.fixture.ts';
import { applyEdit } from '../refit/edit.ts';
import type { Refit } from '../refit/types.ts';
import { assess } from './assess.ts';
import { setPath } from './set-policy.ts';
import { nth, seekSpread, spread } from './spread.ts';

function set(refit: Refit, path: string, text: string, basis: 'measured' | 'guess' = 'measured'): Refit {
  const change = setPath(refit, path, text, { basis });
  if (!change.ok) throw new Error(change.problem.message);
  const edited = applyEdit(refit, { changes: change.value.changes });
  if (!edited.ok) throw new Error(edited.problem.message);
  return edited.value;
}
const find = (refit: Refit, id: string, drawn = true) => {
  const first = assess(refit);
  const after = drawn ? assess(refit, { previous: first, spread: spread(first, { lanes: 40_000 }) }) : first;
  return after.findings.find((finding) => finding.id === id)!;
};

const LINEAR = 'X.bus-high';
const lathe = sample('carriage-works-lathe');

test('derived: where demand and capacity are linear, drawing and slopes give the same chance (normal)', () => {
  // Pulses asked for are exact, and what the drive takes is a plain fact.
  const id = 'X.drive-pulses';
  const asked = find(lathe, id, false).asked!.value;
  for (const [middle, half] of [
    [1.01, 0.02],
    [1.05, 0.1],
  ] as const) {
    const text = `${(asked * middle) / 1000} ± ${(asked * half) / 1000} kHz`;
    const refit = set(lathe, 'X.drive.highestPulseRate', text);
    const [slopes, drawn] = [find(refit, id, false), find(refit, id)];
    expect(drawn.chance!, text).toBeCloseTo(slopes.chance!, 2);
    expect(drawn.marginRange![0]).toBeCloseTo(slopes.marginRange![0], 2);
  }
});

test('derived: limits without a word are evenly likely, so half of them lie below the middle and none outside', () => {
  const limit = find(lathe, LINEAR, false).asked!.value;
  const refit = set(lathe, 'X.drive.highestVoltage', `${(limit * 1.05).toFixed(4)} V ± 10 % tolerance`);
  // From −10 to +10 % about 1.05: below 1 with a chance of (1 − 0.945)/0.21.
  expect(find(refit, LINEAR).chance!).toBeCloseTo(1 - (1 - 0.945) / 0.21, 2);
});

test.each(SAMPLES.map(({ id }) => id))(
  'derived: drawing changes no number that is not in doubt (%s)',
  (id) => {
    const first = assess(sample(id));
    const drawn = spread(first);
    const after = assess(first.refit, { previous: first, spread: drawn });
    for (const [at, before] of first.findings.entries()) {
      const now = after.findings[at]!;
      expect(now.margin).toBe(before.margin);
      expect(now.asked).toEqual(before.asked);
      if (!drawn.findings.has(before.id)) expect(now).toBe(before);
    }
    for (const { chance, range, without } of drawn.findings.values()) {
      expect(chance).toBeGreaterThanOrEqual(0);
      expect(chance).toBeLessThanOrEqual(1);
      expect(range[0]).toBeLessThanOrEqual(range[1]);
      expect(without).toBeLessThan(0.5);
    }
  },
);

test('the same seed gives the same chances, another nearly the same, and progress rises', () => {
  const first = assess(lathe);
  expect(spread(first)).toEqual(spread(first));
  const [one, other] = [spread(first, { seed: 1 }), spread(first, { seed: 2 })];
  for (const [id, { chance }] of one.findings)
    expect(Math.abs(chance - other.findings.get(id)!.chance), id).toBeLessThan(0.03);
  const steps = [...seekSpread(first, { lanes: 10_000 })];
  expect(steps.length).toBeGreaterThan(2);
  expect(steps.every((step, at) => step > (steps[at - 1] ?? 0) && step < 1)).toBe(true);
});

test('a guess without a ± is in doubt by the habit, and with a ± by that', () => {
  const limit = find(lathe, LINEAR, false).asked!.value;
  const bare = find(set(lathe, 'X.drive.highestVoltage', `${(limit * 1.05).toFixed(4)} V`, 'guess'), LINEAR);
  // ± 30 % evenly likely about 1.05.
  expect(bare.chance!).toBeCloseTo(1 - (1 - 0.735) / 0.63, 1);
  expect(bare.verdict).toBe('tight');
  expect(bare.policies).toContain('guess-doubt');
  expect(bare.doubts?.[0]).toMatchObject({ source: 'X.drive.highestVoltage' });
  const given = find(
    set(lathe, 'X.drive.highestVoltage', `${(limit * 1.5).toFixed(4)} V ± 1 %`, 'guess'),
    LINEAR,
  );
  expect(given.chance!).toBe(1);
  expect(given.policies).not.toContain('guess-doubt');
});

test('derived: the k-th smallest against sorting', () => {
  const values = Float64Array.from({ length: 1001 }, (_, at) => Math.sin(at * at) * (at % 7 === 0 ? 0 : 1));
  const sorted = Float64Array.from(values).sort();
  for (const k of [0, 25, 500, 975, 1000]) expect(nth(Float64Array.from(values), k)).toBe(sorted[k]);
});

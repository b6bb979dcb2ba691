import { describe, expect, test } from 'vitest';
import { assess } from '../assess/index.ts';
import { factSpec } from '../parts/index.ts';
import { blankRefit } from '../refit/blank.ts';
import { undoOf } from '../refit/edit.ts';
import { applyEdit, type Refit } from '../refit/index.ts';
import { oddity, readFact } from '../refit/read-fact.ts';
import { having, sample } from './advice.fixture.ts';
import { emptyDuties, guessedDuties, proposeDuty, SIZES, type Size, sizeByWeight } from './duty.ts';

const blank = (machine: Refit['machine'], ...axes: string[]): Refit => {
  const made = blankRefit({ id: 'a', name: 'A', machine, axes });
  if (!made.ok) throw new Error(made.problem.message);
  return made.value;
};
const MACHINES = [blank('lathe', 'X', 'Z'), blank('mill', 'X', 'Y', 'Z'), blank('other', 'X', 'Y', 'Z')];
const sizes = Object.keys(SIZES) as Size[];

describe.each(MACHINES.map((refit) => [refit.machine, refit] as const))('%s', (_, refit) => {
  test.each(sizes)(
    'derived: %s: every proposed fact reads, is plausible, is a guess, and comes in one edit that undoes',
    (size) => {
      const { facts, changes } = proposeDuty(refit, size);
      expect(facts.length).toBe(refit.chains.length * 11);
      for (const { path, text, source } of facts) {
        const [place, fact] = path.split('.').slice(-2) as [string, string];
        const spec = factSpec(place, fact)!;
        const read = readFact(
          spec,
          spec.kind === 'choice' ? { kind: 'choice', option: text } : { kind: 'quantity', text },
        );
        expect(read.ok, path).toBe(true);
        if (read.ok) expect(oddity(spec, read.value), path).toBeUndefined();
        expect(source.length).toBeGreaterThan(5);
      }
      const after = applyEdit(refit, { changes });
      if (!after.ok) throw new Error(after.problem.message);
      for (const change of changes) if (change.do === 'fact') expect(change.new?.basis).toBe('guess');
      expect(guessedDuties(after.value)).toHaveLength(refit.chains.length * 10);
      expect(emptyDuties(after.value)).toEqual([]);
      const edit = { number: 1, who: 'a', when: '2024-01-01', basedOn: 0, changes, says: '' };
      const undone = applyEdit(
        after.value,
        undoOf(edit, { number: 2, who: 'a', when: '2024-01-02', basedOn: 1 }),
      );
      expect(undone.ok && undone.value).toEqual(refit);
    },
  );

  test('derived: a larger machine is never asked less force, pace or mass', () => {
    const value = (size: Size, path: string): number =>
      Number.parseFloat(proposeDuty(refit, size).facts.find((each) => each.path === path)!.text);
    for (const { id } of refit.chains)
      for (const fact of ['duty.rapid', 'duty.cutForce', 'duty.hoursWanted', 'slide.mass'])
        for (const [small, large] of [
          ['bench', 'small'],
          ['small', 'medium'],
        ] as const)
          expect(value(small, `${id}.${fact}`)).toBeLessThan(value(large, `${id}.${fact}`) + 1e-9);
  });
});

test('derived: nothing entered is written over, and a full duty leaves nothing to propose for it', () => {
  const own = having(MACHINES[0]!, { 'X.duty.rapid': '2.2 m/min' });
  expect(proposeDuty(own, 'small').facts.map(({ path }) => path)).not.toContain('X.duty.rapid');
  expect(proposeDuty(sample('carriage-works-lathe'), 'medium').facts).toEqual([]);
  expect(emptyDuties(MACHINES[0]!)).toEqual(['X', 'Z']);
});

test('derived: findings that rest on the proposal say that they are guesses', () => {
  const refit = having(MACHINES[1]!, {
    'X.screw.type': 'ball',
    'X.screw.root': '17 mm',
    'X.screw.freeLength': '600 mm',
    'X.screw.ends': 'fixed-supported',
    'X.screw.pitch': '5 mm',
    'X.screw.starts': '1',
    'X.screw.driven': 'screw',
    'X.screw.ballCircle': '20 mm',
  });
  const applied = applyEdit(refit, { changes: proposeDuty(refit, 'small').changes });
  if (!applied.ok) throw new Error(applied.problem.message);
  const whirl = assess(applied.value).findings.find(({ id }) => id === 'X.whirl')!;
  expect(whirl.verdict).not.toBe('unknown');
  expect(whirl.guesses).toContain('X.duty.rapid');
});

test('published: mains of 50 Hz and of 60 Hz (IEC 60038, from memory); unknown where neither is known', () => {
  const mains = (facts: Record<string, string>) =>
    proposeDuty(having(MACHINES[0]!, facts), 'bench').facts.find(({ path }) => path === 'site.mains')?.text;
  expect(mains({ 'site.frequency': '50 Hz' })).toBe('230 V');
  expect(mains({ 'site.frequency': '60 Hz' })).toBe('120 V');
  expect(mains({})).toBeUndefined();
  expect(proposeDuty(MACHINES[0]!, 'bench').notes.join(' ')).toContain('depend on where you are');
});

test('derived: the size by weight, and an axis nothing usual is known of', () => {
  expect(sizeByWeight(MACHINES[0]!)).toBeUndefined();
  for (const [weight, size] of [
    ['120 kg', 'bench'],
    ['700 kg', 'small'],
    ['2 t', 'medium'],
  ] as const)
    expect(sizeByWeight(having(MACHINES[0]!, { 'job.weight': weight }))).toBe(size);
  const rotary = proposeDuty(blank('mill', 'A'), 'small');
  expect(rotary.facts).toEqual([]);
  expect(rotary.notes[0]).toContain('axis A');
});

test('derived: a lathe’s cutting force is depth × feed × 2000 N/mm² × 0.4', () => {
  for (const size of sizes)
    for (const { path, text, source } of proposeDuty(MACHINES[0]!, size).facts) {
      if (!path.endsWith('cutForce')) continue;
      const [, depth, feed] = /([\d.]+) mm deep at ([\d.]+) mm/.exec(source)!;
      expect(Number.parseFloat(text)).toBeCloseTo(Number(depth) * Number(feed) * 2000 * 0.4, 6);
    }
});

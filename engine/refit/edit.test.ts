import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { conflictOf } from './conflict.ts';
import { applyEdit, foldEdits, undoOf, unfoldEdits } from './edit.ts';
import { readRefit } from './read.ts';
import { edit, factsOf, refits, SAMPLE, someChange } from './sample.fixture.ts';
import type { Change, Edit, Fact, Refit } from './types.ts';
import { writeRefit } from './write.ts';

const apply = (refit: Refit, ...changes: Change[]): Refit => {
  const after = applyEdit(refit, { changes });
  if (!after.ok) throw new Error(after.problem.message);
  return after.value;
};
const refusal = (refit: Refit, ...changes: Change[]) => {
  const after = applyEdit(refit, { changes });
  if (after.ok) throw new Error('accepted');
  return after.problem;
};
const fact = (text: string): Fact => ({ value: { kind: 'quantity', text }, basis: 'measured' });
const resistance = SAMPLE.parts['x-motor']!.facts.resistance!;
const setResistance = (old: Fact | null, now: Fact | null): Change => ({
  do: 'fact',
  part: 'x-motor',
  fact: 'resistance',
  old,
  new: now,
});

describe('applying and undoing', () => {
  test('derived: an edit and its undoing leave what was there, whatever was changed', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(
        refits,
        fc.array(fc.tuple(fc.nat(200), factsOf), { minLength: 1, maxLength: 6 }),
        (refit, picks) => {
          const before = structuredClone(refit);
          let state = refit;
          const changes = picks.map(([pick, value]) => {
            const change = someChange(state, pick, value);
            kinds.add(change.do);
            state = apply(state, change);
            return change;
          });
          const done = edit(1, changes);
          const after = apply(refit, ...changes);
          expect(after).toEqual(state);
          expect(refit).toEqual(before);
          expect(apply(after, ...undoOf(done, { ...done, number: 2 }).changes)).toEqual(before);
          expect(unfoldEdits(after, [done])).toEqual({ ok: true, value: before });
          expect(readRefit(writeRefit(after))).toEqual({ ok: true, value: after });
        },
      ),
      { numRuns: 400, seed: 11 },
    );
    expect([...kinds].sort()).toEqual([
      'auxiliary',
      'cable',
      'chain',
      'device',
      'evidence',
      'fact',
      'keep',
      'machine',
      'part',
      'place',
      'policy',
      'stop',
      'survey',
      'tag',
      'title',
      'wire',
      'wiring-setting',
      'work',
    ]);
  });

  test('derived: undoing an undoing is the edit again', () => {
    const first = edit(1, [
      setResistance(resistance, fact('1.4 ohm')),
      { do: 'machine', old: 'lathe', new: 'mill' },
    ]);
    const second = undoOf(first, { number: 2, who: 'bench', when: first.when, basedOn: 1 });
    expect(undoOf(second, { ...first, number: 3 }).changes).toEqual(first.changes);
    expect(second.says).toBe('Undone: edit 1 (a change)');
  });

  test('derived: what an edit leaves alone is shared, not copied', () => {
    const after = apply(SAMPLE, setResistance(resistance, null));
    expect(after.parts['x-screw']).toBe(SAMPLE.parts['x-screw']);
    expect(after.chains).toBe(SAMPLE.chains);
    expect(after.parts['x-motor']!.facts.type).toBe(SAMPLE.parts['x-motor']!.facts.type);
    expect(after.parts['x-motor']!.facts).not.toHaveProperty('resistance');
  });

  test('derived: ten thousand edits fold, and unfold to the start', () => {
    const edits: Edit[] = [];
    let now: Fact = resistance;
    for (let number = 1; number <= 10_000; number++) {
      const next = fact(`${number} mohm`);
      edits.push(edit(number, [setResistance(now, next)]));
      now = next;
    }
    const end = foldEdits(SAMPLE, edits);
    expect(end).toEqual({ ok: true, value: apply(SAMPLE, setResistance(resistance, fact('10000 mohm'))) });
    expect(end.ok && unfoldEdits(end.value, edits)).toEqual({ ok: true, value: SAMPLE });
    const gap = foldEdits(
      SAMPLE,
      edits.filter(({ number }) => number !== 5000),
    );
    expect(gap.ok ? '' : gap.problem.message).toBe('Edit 5001: it does not follow the number before.');
    const twice = foldEdits(SAMPLE, [edits[0]!, { ...edits[0]!, number: 2 }]);
    expect(twice.ok ? '' : twice.problem.message).toMatch(
      /^Edit 2: x-motor: resistance is now 1 mohm \(measured\)/,
    );
  });
});

describe('conflicts say what is there now', () => {
  test('derived: facts are the same when their values are, whatever the order of their fields', () => {
    const { value, basis, note, evidence } = resistance;
    const turned = { evidence: evidence!, note: note!, basis, value };
    expect(applyEdit(SAMPLE, { changes: [setResistance(turned, null)] }).ok).toBe(true);
    expect(refusal(SAMPLE, setResistance({ value, basis }, null)).message).toMatch(/is now 1.32 ± 0.06 ohm/);
  });

  test.each<[string, Change, string]>([
    ['fact', setResistance(fact('1.3 ohm'), fact('1.4 ohm')), '1.32 ± 0.06 ohm (measured)'],
    ['fact thought absent', setResistance(null, fact('1.4 ohm')), '1.32 ± 0.06 ohm (measured)'],
    ['fact named like a method', { ...setResistance(fact('1'), null), fact: 'valueOf' } as Change, 'nothing'],
    ['part', { do: 'part', id: 'x-motor', old: null, new: null }, "'Old X motor' with 3 facts"],
    ['part gone', { do: 'part', id: 'lost', old: SAMPLE.parts['x-motor']!, new: null }, 'not there'],
    ['place', { do: 'place', chain: 'X', place: 'screw', old: null, new: null }, 'x-screw, of 1 options'],
    [
      'place of the machine',
      { do: 'place', chain: null, place: 'supply', old: null, new: null },
      'not known yet, of 0 options',
    ],
    ['chain', { do: 'chain', id: 'Z', old: null, new: null }, 'there with 1 places'],
    ['policy', { do: 'policy', policy: 'screw.whirl', old: null, new: '70 %' }, '80 %'],
    [
      'policy thought changed',
      { do: 'policy', policy: 'tight', old: '1.2', new: null },
      'at its usual value',
    ],
    ['machine', { do: 'machine', old: 'mill', new: 'other' }, 'lathe'],
    [
      'evidence',
      { do: 'evidence', id: 'e-1', old: null, new: null },
      "3 readings, 1 set aside, 'The clip slipped once.'",
    ],
    [
      'tag',
      { do: 'tag', id: 't-1', old: null, new: null },
      'Old X motor, U to X drive, U1, tagged at both ends',
    ],
    ['thing to keep', { do: 'keep', id: 'offsets', old: null, new: null }, 'still to do'],
    ['survey', { do: 'survey', id: 'coolant', old: null, new: null }, "works, 1 answered, 'Smells.'"],
    ['stop circuit', { do: 'stop', old: null, new: null }, '3 elements, 1 wire'],
    ['work', { do: 'work', id: 'collar', old: null, new: null }, 'Collar'],
    ['auxiliary', { do: 'auxiliary', id: 'turret', old: null, new: null }, 'Turret'],
    ['device', { do: 'device', id: 'PS1', old: null, new: null }, 'Control supply'],
    ['wire', { do: 'wire', id: 'w1', old: null, new: null }, 'PS1.+24V to K1.A1'],
    ['cable', { do: 'cable', id: 'W3', old: null, new: null }, 'To the door'],
    ['wiring answer', { do: 'wiring-setting', setting: 'country', old: null, new: null }, 'other'],
    ['tag gone', { do: 'tag', id: 'constructor', old: SAMPLE.tags['t-1']!, new: null }, 'not there'],
    [
      'title',
      { do: 'title', old: { name: 'x', about: '' }, new: { name: 'y', about: '' } },
      "'Old lathe', 'Came without its cabinet. The slides are good.'",
    ],
  ])('derived: %s', (_what, change, now) => {
    const problem = refusal(SAMPLE, change);
    expect(conflictOf(problem)).toEqual({ now, change });
    expect(problem.message).toContain(`is now ${now}, which is not what this edit was made from`);
  });
});

describe('what would no longer hold together is refused', () => {
  const motor = SAMPLE.parts['x-motor-new']!;
  const place = SAMPLE.chains[0]!.places.motor!;
  const without = { options: ['x-motor'], chosen: 'x-motor' };
  test('derived: a part that is still an option cannot go, with its place it can', () => {
    const gone: Change = { do: 'part', id: motor.id, old: motor, new: null };
    expect(conflictOf(refusal(SAMPLE, gone))).toBeUndefined();
    expect(refusal(SAMPLE, gone).where).toBe('chains[0].places.motor.options[1]');
    const out: Change = { do: 'place', chain: 'X', place: 'motor', old: place, new: without };
    expect(apply(SAMPLE, gone, out).parts).not.toHaveProperty(motor.id);
  });

  test.each<[string, Change, RegExp]>([
    ['a fact of no part', { ...setResistance(null, fact('1')), part: 'lost' } as Change, /no part 'lost'/],
    [
      'a fact of a method',
      { ...setResistance(null, fact('1')), part: 'toString' } as Change,
      /no part 'toString'/,
    ],
    ['a place of no axis', { do: 'place', chain: 'Y', place: 'motor', old: null, new: without }, /no axis Y/],
    ['a part under another name', { do: 'part', id: 'new', old: null, new: motor }, /must be 'new'/],
    [
      'an axis under another name',
      { do: 'chain', id: 'Y', old: null, new: { id: 'W', kind: 'axis', places: {} } },
      /keeps its name/,
    ],
    [
      'a fact from a measurement there is not',
      setResistance(resistance, { ...fact('1.4 ohm'), evidence: 'e-2' }),
      /parts.x-motor.facts.resistance.evidence must name a measurement/,
    ],
    [
      'a wire under another name',
      { do: 'wire', id: 'w2', old: null, new: SAMPLE.wiring.wires.w1! },
      /wiring.wires.w2.id must be 'w2'/,
    ],
    [
      'a measurement that a fact came from, taken out',
      { do: 'evidence', id: 'e-1', old: SAMPLE.evidence['e-1']!, new: null },
      /must name a measurement of this refit; 'e-1' is none/,
    ],
    [
      'a wire from an element there is not',
      {
        do: 'stop',
        old: SAMPLE.stop,
        new: { ...SAMPLE.stop!, wires: { w1: { id: 'w1', from: 'S9.1', to: 'K1.A1', cable: '' } } },
      },
      /stop.wires.w1.from must begin with an element of the circuit; 'S9' is none/,
    ],
    [
      'a motion without its drive',
      {
        do: 'stop',
        old: SAMPLE.stop,
        new: { ...SAMPLE.stop!, motions: { X: { ...SAMPLE.stop!.motions.X!, drive: 'constructor' } } },
      },
      /stop.motions.X.drive must be an element/,
    ],
    [
      'a tag under another name',
      { do: 'tag', id: 't-2', old: null, new: SAMPLE.tags['t-1']! },
      /must be 't-2'/,
    ],
    [
      'an option in two places',
      { do: 'place', chain: 'Z', place: 'motor', old: SAMPLE.chains[1]!.places.motor!, new: without },
      /already an option/,
    ],
  ])('derived: %s', (_what, change, message) => {
    expect(refusal(SAMPLE, change).message).toMatch(message);
  });

  test('derived: more facts, places, chains or policies than a file can hold', () => {
    const changes = (n: number, one: (i: number) => Change) => Array.from({ length: n }, (_, i) => one(i));
    expect(
      refusal(
        SAMPLE,
        ...changes(201, (i) => ({ ...setResistance(null, fact('1')), fact: `f${i}` }) as Change),
      ).message,
    ).toBe('parts.x-motor.facts can hold at most 200.');
    expect(
      refusal(
        SAMPLE,
        ...changes(61, (i) => ({
          do: 'place',
          chain: 'Z',
          place: `p${i}`,
          old: null,
          new: { options: [], chosen: null },
        })),
      ).message,
    ).toBe('places can hold at most 60.');
    expect(
      refusal(
        SAMPLE,
        ...changes(12, (i) => ({
          do: 'chain',
          id: `Q${i}`,
          old: null,
          new: { id: `Q${i}`, kind: 'axis', places: {} },
        })),
      ).message,
    ).toBe('chains can hold at most 12.');
    const keep = SAMPLE.keeps.offsets!;
    expect(
      refusal(
        SAMPLE,
        ...changes(200, (i) => ({ do: 'keep', id: `k${i}`, old: null, new: { ...keep, id: `k${i}` } })),
      ).message,
    ).toBe('keeps can hold at most 200.');
    expect(
      refusal(SAMPLE, ...changes(300, (i) => ({ do: 'policy', policy: `p${i}`, old: null, new: '1' })))
        .message,
    ).toBe('policies can hold at most 300.');
  });
});

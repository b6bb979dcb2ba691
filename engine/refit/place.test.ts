import { describe, expect, test } from 'vitest';
import type { PartKind } from '../parts/types.ts';
import { chosenPart, findFact, pathOf, refitNamer, resolvePath } from './place.ts';
import { SAMPLE } from './sample.fixture.ts';
import { sayChange, sayChanges } from './say.ts';
import type { Change, Fact } from './types.ts';

const KINDS: Record<string, PartKind> = {
  motor: {
    id: 'motor',
    name: 'motor',
    about: '',
    facts: {
      resistance: {
        kind: 'quantity',
        name: 'winding resistance',
        unit: 'ohm',
        domain: 'positive',
        plausible: ['0.1 ohm', '100 ohm'],
        findOut: '',
        trouble: 2,
      },
      inertia: {
        kind: 'quantity',
        name: 'rotor inertia',
        unit: 'kg·m²',
        domain: 'positive',
        plausible: ['1e-6 kg·m²', '1 kg·m²'],
        findOut: '',
        trouble: 3,
      },
    },
  },
};

describe('paths', () => {
  test('derived: lead to the part that is chosen', () => {
    expect(findFact(SAMPLE, 'X.motor.resistance')).toBe(SAMPLE.parts['x-motor']!.facts.resistance);
    expect(findFact(SAMPLE, 'x.Motor.RESISTANCE')).toBe(SAMPLE.parts['x-motor']!.facts.resistance);
    expect(findFact(SAMPLE, 'site.mains')).toBe(SAMPLE.parts.workshop!.facts.mains);
    expect(findFact(SAMPLE, 'machine.site.mains')).toBe(SAMPLE.parts.workshop!.facts.mains);
    expect(findFact(SAMPLE, 'X.motor.inertia')).toBeNull();
    expect(resolvePath(SAMPLE, 'X.motor.inertia', KINDS)).toEqual({
      ok: true,
      value: { chain: 'X', place: 'motor', part: SAMPLE.parts['x-motor'], fact: 'inertia' },
    });
    expect(chosenPart(SAMPLE, 'X', 'reduction')).toBeNull();
    expect(chosenPart(SAMPLE, 'X', 'toString')).toBeNull();
    expect([pathOf('X', 'motor', 'inertia'), pathOf(null, 'site', 'mains')]).toEqual([
      'X.motor.inertia',
      'site.mains',
    ]);
  });

  test.each([
    ['X.moter.resistance', 'did you mean X.motor.resistance?'],
    ['X.motor.resistence', 'did you mean X.motor.resistance?'],
    ['sites.mains', 'did you mean site.mains?'],
    ['Y.motor.resistance', 'There is no axis called'],
    ['X.motor.constructor', 'There is no fact of X.motor (motor) called'],
    ['X.gibberish-here.resistance', 'there are motor, screw, reduction.'],
    ['X.reduction.ratio', 'Nothing is fitted at X.reduction'],
    ['Z.motor.resistance', 'not decided yet which part fills Z.motor'],
    ['X.motor', 'write axis, place and fact'],
    ['', 'is no path to a fact'],
    ['a.b.c.d', 'is no path to a fact'],
    ['.'.repeat(1_000_000), 'is no path to a fact'],
    ['__proto__.x', 'There is no place called'],
  ])('derived: %.40s is refused with a hint', (text, hint) => {
    const found = resolvePath(SAMPLE, text, KINDS);
    expect(found.ok ? '' : found.problem.message).toContain(hint);
    expect(found.ok ? '' : found.problem.message.length).toBeLessThan(300);
  });
});

describe('changes in words', () => {
  const namer = refitNamer(SAMPLE, KINDS);
  const old = SAMPLE.parts['x-motor']!.facts.resistance!;
  const now: Fact = { value: { kind: 'quantity', text: '1.4 ohm' }, basis: 'told' };
  const motor = SAMPLE.chains[0]!.places.motor!;
  test.each<[string, Change]>([
    [
      'X motor: winding resistance 1.4 ohm (told)',
      { do: 'fact', part: 'x-motor', fact: 'resistance', old, new: now },
    ],
    [
      'X motor: winding resistance taken out (was 1.32 ± 0.06 ohm (measured))',
      { do: 'fact', part: 'x-motor', fact: 'resistance', old, new: null },
    ],
    [
      'Motor from the shelf (option for X motor): rotor inertia 1.4 ohm (told)',
      { do: 'fact', part: 'x-motor-new', fact: 'inertia', old: null, new: now },
    ],
    [
      'site: phases one, three (guess)',
      {
        do: 'fact',
        part: 'workshop',
        fact: 'phases',
        old: null,
        new: SAMPLE.parts.workshop!.facts.phases!,
      },
    ],
    [
      "motor 'Old X motor' taken out",
      { do: 'part', id: 'x-motor', old: SAMPLE.parts['x-motor']!, new: null },
    ],
    ["motor 'Old X motor' added", { do: 'part', id: 'x-motor', old: null, new: SAMPLE.parts['x-motor']! }],
    [
      'X motor: nothing fitted',
      { do: 'place', chain: 'X', place: 'motor', old: motor, new: { ...motor, chosen: 'none' } },
    ],
    [
      'X motor: option Motor from the shelf (option for X motor) taken out',
      {
        do: 'place',
        chain: 'X',
        place: 'motor',
        old: motor,
        new: { options: ['x-motor'], chosen: 'x-motor' },
      },
    ],
    ['axis Z taken out', { do: 'chain', id: 'Z', old: SAMPLE.chains[1]!, new: null }],
    ['policy tight: back to its usual value', { do: 'policy', policy: 'tight', old: '1.2', new: null }],
    [
      'X screw: condition dead, photo taken out',
      {
        do: 'part',
        id: 'x-screw',
        old: SAMPLE.parts['x-screw']!,
        new: { ...SAMPLE.parts['x-screw']!, condition: 'dead', photos: [] },
      },
    ],
    [
      "measurement four-wire on X motor: 3 readings, 1 set aside, 'The clip slipped once.'",
      { do: 'evidence', id: 'e-1', old: null, new: SAMPLE.evidence['e-1']! },
    ],
    [
      'tag 12: Old X motor, U to not traced yet, tagged at one end',
      {
        do: 'tag',
        id: 't-1',
        old: SAMPLE.tags['t-1']!,
        new: { ...SAMPLE.tags['t-1']!, there: '', state: 'one-end' },
      },
    ],
    ['tag 12: taken out', { do: 'tag', id: 't-1', old: SAMPLE.tags['t-1']!, new: null }],
    [
      'to keep: Tool offsets: kept',
      { do: 'keep', id: 'offsets', old: null, new: { ...SAMPLE.keeps.offsets!, state: 'kept' } },
    ],
    [
      "coolant: works, 1 answered, 'Smells.'",
      { do: 'survey', id: 'coolant', old: null, new: SAMPLE.survey.coolant! },
    ],
    [
      'stop circuit: K1 taken out, D1 changed, K2 added, wire w1 taken out, answers changed',
      {
        do: 'stop',
        old: SAMPLE.stop,
        new: {
          ...SAMPLE.stop!,
          elements: {
            F1: SAMPLE.stop!.elements.F1!,
            D1: { ...SAMPLE.stop!.elements.D1!, name: 'Drive' },
            K2: { ...SAMPLE.stop!.elements.K1!, id: 'K2' },
          },
          wires: {},
          settings: {},
        },
      },
    ],
    ['stop circuit: drawn by hand, 3 elements, 1 wire', { do: 'stop', old: null, new: SAMPLE.stop }],
    ['stop circuit: taken out', { do: 'stop', old: SAMPLE.stop, new: null }],
    ['kind of machine: mill', { do: 'machine', old: 'lathe', new: 'mill' }],
    ["name: 'B' (was 'A')", { do: 'title', old: { name: 'A', about: '' }, new: { name: 'B', about: '' } }],
  ])('derived: %s', (words, change) => {
    expect(sayChange(change, namer)).toBe(words);
  });

  test('derived: many changes are counted, not listed', () => {
    const change: Change = { do: 'machine', old: 'lathe', new: 'mill' };
    expect(sayChanges([change, change])).toBe('kind of machine: mill; kind of machine: mill');
    expect(sayChanges(Array.from({ length: 1000 }, () => change))).toMatch(/; and 996 more changes$/);
  });
});

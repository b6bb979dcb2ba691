/** A small invented refit and generators of others, for the tests of this room. */
import fc from 'fast-check';
import { BASES } from '../quantity/types.ts';
import { compareChainIds } from './order.ts';
import type {
  Chain,
  Change,
  Edit,
  Fact,
  FactValue,
  Part,
  Place,
  Refit,
  StopCircuit,
  Wiring,
} from './types.ts';

const quantity = (text: string): FactValue => ({ kind: 'quantity', text });

export const SAMPLE: Refit = {
  format: 'fettle-refit',
  version: 5,
  id: 'old-lathe',
  name: 'Old lathe',
  about: 'Came without its cabinet.\nThe slides are good.',
  machine: 'lathe',
  places: { site: { options: ['workshop'], chosen: 'workshop' }, supply: { options: [], chosen: null } },
  chains: [
    {
      id: 'X',
      kind: 'axis',
      places: {
        motor: { options: ['x-motor', 'x-motor-new'], chosen: 'x-motor' },
        screw: { options: ['x-screw'], chosen: 'x-screw' },
        reduction: { options: [], chosen: 'none' },
      },
    },
    { id: 'Z', kind: 'axis', places: { motor: { options: [], chosen: null } } },
  ],
  parts: {
    'x-motor': {
      id: 'x-motor',
      kind: 'motor',
      name: 'Old X motor',
      facts: {
        resistance: {
          value: quantity('1.32 ± 0.06 ohm'),
          basis: 'measured',
          note: 'Four wires, cold.',
          evidence: 'e-1',
        },
        type: { value: { kind: 'choice', option: 'brushed' }, basis: 'plate' },
        torque: {
          value: { kind: 'curve', text: '1.1 N·m at 300 r/min; 0.8 N·m at 600 r/min' },
          basis: 'datasheet',
        },
      },
    },
    'x-motor-new': { id: 'x-motor-new', kind: 'motor', name: 'Motor from the shelf', facts: {} },
    'x-screw': {
      id: 'x-screw',
      kind: 'screw',
      name: 'X screw',
      facts: { lead: { value: quantity('5 mm'), basis: 'told' } },
      condition: 'worn',
      notes: 'Grease like tar.\nThe nut is tight.',
      photos: ['screw-1.jpg'],
    },
    workshop: {
      id: 'workshop',
      kind: 'site',
      name: 'Workshop',
      facts: {
        mains: { value: quantity('230 V'), basis: 'guess' },
        phases: { value: { kind: 'choices', options: ['one', 'three'] }, basis: 'guess' },
        notes: { value: { kind: 'text', text: 'Damp in winter' }, basis: 'told' },
      },
    },
  },
  policies: { 'screw.whirl': '80 %' },
  evidence: {
    'e-1': {
      id: 'e-1',
      method: 'four-wire',
      part: 'x-motor',
      given: { leads: '20 °C' },
      readings: { volts: ['1.31', '1.33', '9.9'], amps: ['1', '1', '1'] },
      aside: [2],
      note: 'The clip slipped once.',
      when: '2026-03-01T18:30:00Z',
      photos: [],
    },
  },
  tags: {
    't-1': {
      id: 't-1',
      tag: '12',
      cable: 'W4',
      here: 'Old X motor, U',
      there: 'X drive, U1',
      otherTag: '12',
      colour: 'brown',
      signal: 'motor phase',
      note: '',
      photos: [],
      state: 'both-ends',
    },
  },
  keeps: { offsets: { id: 'offsets', what: 'Tool offsets', state: 'to-do', note: '', photos: [] } },
  survey: {
    coolant: {
      id: 'coolant',
      state: 'works',
      note: 'Smells.',
      photos: ['pump.png'],
      answers: { supply: '400 V, three phases' },
    },
  },
  stop: {
    pattern: null,
    note: 'As found.',
    elements: {
      F1: { id: 'F1', kind: 'fuse', name: 'Control fuse', settings: {} },
      K1: { id: 'K1', kind: 'contactor', name: '', settings: { 'drop-out': '30 ms' } },
      D1: { id: 'D1', kind: 'drive', name: 'X drive', settings: {} },
    },
    wires: { w1: { id: 'w1', from: 'F1.2', to: 'K1.A1', cable: 'W3' } },
    motions: {
      X: { id: 'X', kind: 'axis', name: 'X', drive: 'D1', brake: null, settings: { speed: '6 m/min' } },
    },
    settings: { 'zero-earthed': 'yes' },
  },
  work: {
    collar: {
      id: 'collar',
      kind: 'thread',
      name: 'Collar',
      settings: { thread: 'M20x1.5', length: '18 mm' },
    },
  },
  auxiliaries: { turret: { id: 'turret', kind: 'turret', name: 'Turret', settings: { positions: '8' } } },
  wiring: {
    devices: {
      PS1: {
        id: 'PS1',
        kind: 'supply-24',
        name: 'Control supply',
        part: null,
        where: 'cabinet',
        settings: { current: '5 A' },
        terminals: { '+24V': { kind: 'supply-plus', name: 'plus', settings: { volts: '24 V' } } },
        pins: { '+24V': { photo: 'supply.jpg', x: 0.25, y: 0.5 } },
      },
    },
    wires: {
      w1: { id: 'w1', from: 'PS1.+24V', to: 'K1.A1', cable: 'W3', settings: { colour: 'dark blue' } },
    },
    cables: { W3: { id: 'W3', name: 'To the door', settings: { length: '2 m' } } },
    settings: { country: 'other' },
  },
};

export const edit = (number: number, changes: readonly Change[], extra: Partial<Edit> = {}): Edit => ({
  number,
  who: 'bench',
  when: '2026-03-01T18:30:00Z',
  basedOn: number - 1,
  changes,
  says: 'a change',
  ...extra,
});

const ids = fc
  .stringMatching(/^[a-zA-Z0-9][a-zA-Z0-9-]{0,12}$/)
  .filter((id) => !(id in Object.prototype) && id !== 'none' && id !== 'prototype');
const texts = fc
  .string({ unit: 'grapheme', maxLength: 40 })
  .map((text) => text.replace(/[\p{Cc}\p{Surrogate}]/gu, '').slice(0, 120))
  .filter((text) => !/\p{Surrogate}/u.test(text));
const names = texts.filter((text) => text.length > 0);

const values: fc.Arbitrary<FactValue> = fc.oneof(
  fc.record({ kind: fc.constant('quantity' as const), text: texts }),
  fc.record({ kind: fc.constant('choice' as const), option: ids }),
  fc.record({ kind: fc.constant('choices' as const), options: fc.array(ids, { maxLength: 4 }) }),
  fc.record({ kind: fc.constant('text' as const), text: texts.map((text) => `${text}\n${text}`) }),
  fc.record({ kind: fc.constant('curve' as const), text: texts }),
);
export const factsOf: fc.Arbitrary<Fact> = fc.record(
  { value: values, basis: fc.constantFrom(...BASES), note: texts },
  { requiredKeys: ['value', 'basis'] },
);
const facts = fc.dictionary(ids, factsOf, { maxKeys: 4, noNullPrototype: true });
const chainIds = fc.constantFrom('X', 'Y', 'Z', 'A', 'B', 'C1', 'U', 'W', 'S', 'Q2');

const photoNames = fc.uniqueArray(
  fc.nat(30).map((n) => `p-${n}.jpg`),
  { maxLength: 3 },
);
const evidences = fc.record({
  id: ids,
  method: ids,
  part: fc.option(ids, { nil: null }),
  given: fc.dictionary(ids, texts, { maxKeys: 2, noNullPrototype: true }),
  readings: fc.dictionary(ids, fc.array(texts, { maxLength: 3 }), { maxKeys: 2, noNullPrototype: true }),
  aside: fc.uniqueArray(fc.nat(20), { maxLength: 3 }),
  note: texts,
  when: fc.constantFrom('2026-03-01', '2026-03-01T18:30:00Z'),
  photos: photoNames,
});
const tagsOf = fc.record({
  id: ids,
  tag: texts,
  cable: texts,
  here: texts,
  there: texts,
  otherTag: texts,
  colour: texts,
  signal: texts,
  note: texts,
  photos: photoNames,
  state: fc.constantFrom('untagged' as const, 'one-end' as const, 'both-ends' as const),
});
const keepsOf = fc.record({
  id: ids,
  what: names,
  state: fc.constantFrom('to-do' as const, 'kept' as const, 'not-there' as const),
  note: texts,
  photos: photoNames,
});
const conditions = fc.constantFrom('works' as const, 'worn' as const, 'dead' as const, 'unknown' as const);
const surveyItems = fc.record({
  id: ids,
  state: fc.oneof(conditions, fc.constant('none' as const)),
  note: texts,
  photos: photoNames,
  answers: fc.dictionary(ids, texts, { maxKeys: 2, noNullPrototype: true }),
});
const byId = <T extends { id: string }>(things: fc.Arbitrary<T>) =>
  fc
    .uniqueArray(things, { selector: ({ id }) => id, maxLength: 3 })
    .map((list) => Object.fromEntries(list.map((each): [string, T] => [each.id, each])));

const elementNames = ['K1', 'K2', 'S1', 'D1'] as const;
const settingsOf = fc.dictionary(ids, texts, { maxKeys: 2, noNullPrototype: true });
const terminals = fc.constantFrom(...elementNames).map((each) => `${each}.A1`);
const stops: fc.Arbitrary<StopCircuit> = fc.record({
  pattern: fc.option(ids, { nil: null }),
  note: texts,
  elements: fc
    .tuple(
      ...elementNames.map((each) =>
        fc.record({ id: fc.constant(each), kind: ids, name: texts, settings: settingsOf }),
      ),
    )
    .map((list) => Object.fromEntries(list.map((each) => [each.id, each]))),
  wires: byId(fc.record({ id: ids, from: terminals, to: terminals, cable: texts })),
  motions: byId(
    fc.record({
      id: ids,
      kind: fc.constantFrom('axis' as const, 'spindle' as const),
      name: names,
      drive: fc.constantFrom(...elementNames),
      brake: fc.option(fc.constantFrom(...elementNames), { nil: null }),
      settings: settingsOf,
    }),
  ),
  settings: settingsOf,
});

const marks = fc.constantFrom('A1', '+24V', '0V', 'X1:3', '/A', '-');
const wirings: fc.Arbitrary<Wiring> = fc.record({
  devices: byId(
    fc.record({
      id: ids,
      kind: ids,
      name: texts,
      part: fc.option(ids, { nil: null }),
      where: texts,
      settings: settingsOf,
      terminals: fc.dictionary(marks, fc.record({ kind: ids, name: texts, settings: settingsOf }), {
        maxKeys: 2,
        noNullPrototype: true,
      }),
      pins: fc.dictionary(
        marks,
        fc.record({
          photo: fc.constant('p.jpg'),
          x: fc.constantFrom(0, 0.25, 1),
          y: fc.constantFrom(0, 0.5, 1),
        }),
        { maxKeys: 2, noNullPrototype: true },
      ),
    }),
  ),
  wires: byId(
    fc.record({
      id: ids,
      from: marks.map((mark) => `K1.${mark}`),
      to: marks.map((mark) => `K2.${mark}`),
      cable: fc.option(ids, { nil: null }),
      settings: settingsOf,
    }),
  ),
  cables: byId(fc.record({ id: ids, name: texts, settings: settingsOf })),
  settings: settingsOf,
});
const works = fc.record({
  id: ids,
  kind: fc.constantFrom('cut' as const, 'thread' as const, 'tap' as const),
  name: texts,
  settings: settingsOf,
});

/** Whole refits whose references hold: parts are dealt out over the places. */
export const refits: fc.Arbitrary<Refit> = fc
  .record({
    id: ids,
    name: names,
    about: texts,
    machine: fc.constantFrom('lathe' as const, 'mill' as const, 'other' as const),
    parts: fc.uniqueArray(
      fc.record(
        { id: ids, kind: ids, name: names, facts, condition: conditions, notes: texts, photos: photoNames },
        { requiredKeys: ['id', 'kind', 'name', 'facts'] },
      ),
      {
        selector: (p) => p.id,
        maxLength: 8,
      },
    ),
    evidence: byId(evidences),
    tags: byId(tagsOf),
    keeps: byId(keepsOf),
    survey: byId(surveyItems),
    stop: fc.option(stops, { nil: null }),
    work: byId(works),
    auxiliaries: byId(fc.record({ id: ids, kind: ids, name: texts, settings: settingsOf })),
    wiring: wirings,
    chains: fc.uniqueArray(chainIds, { maxLength: 5 }),
    slots: fc.array(fc.record({ chain: fc.nat(5), place: ids, take: fc.nat(3), pick: fc.nat(5) }), {
      maxLength: 6,
    }),
    policies: fc.dictionary(ids, texts, { maxKeys: 3, noNullPrototype: true }),
  })
  .map(({ parts, chains, slots, ...rest }) => {
    const free = parts.map(({ id }) => id);
    const places: Record<string, Place>[] = [{}, ...chains.map(() => ({}))];
    for (const slot of slots) {
      const room = places[slot.chain % places.length]!;
      if (Object.hasOwn(room, slot.place)) continue;
      const options = free.splice(0, slot.take);
      room[slot.place] = { options, chosen: [...options, 'none', null][slot.pick % (options.length + 2)]! };
    }
    const ordered = chains
      .map((id, index): Chain => ({ id, kind: id === 'S' ? 'spindle' : 'axis', places: places[index + 1]! }))
      .sort((a, b) => compareChainIds(a.id, b.id));
    return {
      format: 'fettle-refit',
      version: 5,
      ...rest,
      places: places[0]!,
      chains: ordered,
      parts: Object.fromEntries(parts.map((part): [string, Part] => [part.id, part])),
    } satisfies Refit;
  });

/** A change that fits the refit, of the kind that `pick` falls on. */
export function someChange(refit: Refit, pick: number, fact: Fact): Change {
  const parts = Object.values(refit.parts);
  const part = parts[pick % Math.max(1, parts.length)];
  const chain = refit.chains[pick % Math.max(1, refit.chains.length)];
  const title = { name: refit.name, about: refit.about };
  switch (pick % 23) {
    case 0:
    case 1:
      if (part)
        return { do: 'fact', part: part.id, fact: 'entered', old: part.facts.entered ?? null, new: fact };
      break;
    case 2: {
      const [name, old] = part ? (Object.entries(part.facts)[0] ?? []) : [];
      if (part && name && old) return { do: 'fact', part: part.id, fact: name, old, new: null };
      break;
    }
    case 3: {
      const id = `added-${pick}`;
      const old = refit.parts[id] ?? null;
      return { do: 'part', id, old, new: { id, kind: 'motor', name: 'Added', facts: { entered: fact } } };
    }
    case 4: {
      const used = new Set(
        [refit.places, ...refit.chains.map((c) => c.places)]
          .flatMap((p) => Object.values(p))
          .flatMap((p) => p.options),
      );
      const loose = parts.find(({ id }) => !used.has(id));
      if (loose) return { do: 'part', id: loose.id, old: loose, new: null };
      break;
    }
    case 5:
      if (chain) return { do: 'chain', id: chain.id, old: chain, new: null };
      break;
    case 6:
      if (refit.chains.every(({ id }) => id !== 'V'))
        return {
          do: 'chain',
          id: 'V',
          old: null,
          new: { id: 'V', kind: 'axis', places: { motor: { options: [], chosen: null } } },
        };
      break;
    case 7:
      return {
        do: 'place',
        chain: null,
        place: 'spare',
        old: refit.places.spare ?? null,
        new: pick % 2 ? { options: [], chosen: 'none' } : null,
      };
    case 8: {
      const [name, old] = chain ? (Object.entries(chain.places)[0] ?? []) : [];
      if (chain && name && old)
        return {
          do: 'place',
          chain: chain.id,
          place: name,
          old,
          new: { options: old.options, chosen: old.chosen === 'none' ? null : 'none' },
        };
      break;
    }
    case 9:
      return {
        do: 'policy',
        policy: 'tight',
        old: refit.policies.tight ?? null,
        new: pick % 2 ? `${pick} %` : null,
      };
    case 10: {
      const old = Object.values(refit.tags)[0];
      const id = old?.id ?? 't-9';
      const made = { ...SAMPLE.tags['t-1']!, id, note: `Note ${pick}` };
      return { do: 'tag', id, old: old ?? null, new: pick % 3 ? made : null };
    }
    case 11: {
      const old = refit.keeps['k-9'] ?? null;
      return { do: 'keep', id: 'k-9', old, new: { ...SAMPLE.keeps.offsets!, id: 'k-9', state: 'kept' } };
    }
    case 12: {
      const old = Object.values(refit.survey)[0];
      const id = old?.id ?? 'coolant';
      const made = { ...SAMPLE.survey.coolant!, id, state: 'worn' as const };
      return { do: 'survey', id, old: old ?? null, new: pick % 3 ? made : null };
    }
    case 13: {
      const old = refit.evidence['e-9'] ?? null;
      return { do: 'evidence', id: 'e-9', old, new: { ...SAMPLE.evidence['e-1']!, id: 'e-9' } };
    }
    case 15:
      return {
        do: 'stop',
        old: refit.stop,
        new: pick % 3 ? { ...(refit.stop ?? SAMPLE.stop!), note: `Note ${pick}` } : null,
      };
    case 17: {
      const old = refit.work.collar ?? null;
      return { do: 'work', id: 'collar', old, new: pick % 3 ? SAMPLE.work.collar! : null };
    }
    case 18: {
      const old = refit.auxiliaries.turret ?? null;
      return { do: 'auxiliary', id: 'turret', old, new: pick % 3 ? SAMPLE.auxiliaries.turret! : null };
    }
    case 19: {
      const old = refit.wiring.devices.PS1 ?? null;
      return { do: 'device', id: 'PS1', old, new: pick % 3 ? SAMPLE.wiring.devices.PS1! : null };
    }
    case 20: {
      const old = refit.wiring.wires.w1 ?? null;
      return { do: 'wire', id: 'w1', old, new: pick % 3 ? SAMPLE.wiring.wires.w1! : null };
    }
    case 21: {
      const old = refit.wiring.cables.W3 ?? null;
      return { do: 'cable', id: 'W3', old, new: pick % 3 ? SAMPLE.wiring.cables.W3! : null };
    }
    case 22: {
      const old = refit.wiring.settings.country ?? null;
      return { do: 'wiring-setting', setting: 'country', old, new: pick % 3 ? `Country ${pick}` : null };
    }
    case 14:
      if (part)
        return { do: 'part', id: part.id, old: part, new: { ...part, condition: 'dead', photos: ['p.png'] } };
      break;
  }
  return pick % 2
    ? { do: 'title', old: title, new: { name: `Machine ${pick}`, about: 'Changed' } }
    : { do: 'machine', old: refit.machine, new: 'mill' };
}

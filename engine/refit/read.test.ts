import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readEdits, readRefit } from './read.ts';
import { edit, refits, SAMPLE } from './sample.fixture.ts';
import type { Refit } from './types.ts';
import { upgrade } from './upgrade.ts';
import { writeEdits, writeRefit } from './write.ts';

const problemOf = (text: string, kinds?: readonly string[]) => {
  const read = readRefit(text, kinds);
  if (read.ok) throw new Error(`accepted: ${text.slice(0, 80)}`);
  return read.problem;
};
const broken = (path: readonly (string | number)[], value: unknown): string => {
  const copy = structuredClone(SAMPLE) as unknown;
  let at = copy as Record<string | number, unknown>;
  for (const step of path.slice(0, -1)) at = at[step] as Record<string | number, unknown>;
  at[path.at(-1)!] = value;
  return JSON.stringify(copy);
};

/** What version 4 brought, with nothing in it. */
const NOTHING_OF_FOUR = {
  work: {},
  auxiliaries: {},
  wiring: { devices: {}, wires: {}, cables: {}, settings: {} },
};
const threeOf = ({ work: _w, auxiliaries: _a, wiring: _i, ...three }: Refit) => three;

describe('writing and reading', () => {
  test('derived: reading what was written gives the same refit', () => {
    fc.assert(
      fc.property(refits, (refit) => {
        const read = readRefit(writeRefit(refit));
        expect(read).toEqual({ ok: true, value: refit });
      }),
      { numRuns: 300, seed: 7 },
    );
  });

  test('derived: the text does not depend on the order in which names were entered', () => {
    const reversed = { ...SAMPLE, parts: Object.fromEntries(Object.entries(SAMPLE.parts).reverse()) };
    expect(writeRefit(reversed)).toBe(writeRefit(SAMPLE));
  });

  test('derived: chains come in their usual order whatever the order in the file', () => {
    const read = readRefit(JSON.stringify({ ...SAMPLE, chains: [...SAMPLE.chains].reverse() }));
    expect(read.ok && read.value.chains.map(({ id }) => id)).toEqual(['X', 'Z']);
  });

  test('derived: edits written and read are the same', () => {
    const edits = [3, 4, 5].map((number) => edit(number, [{ do: 'machine', old: 'lathe', new: 'mill' }]));
    expect(readEdits(writeEdits(edits))).toEqual({ ok: true, value: edits });
  });
});

describe('what is no JSON, or no plain JSON', () => {
  test.each([
    ['', 'line 1, column 1'],
    ['{"a": 1,\n  "b": }', 'line 2, column 8'],
    ['{"a": 01}', 'line 1, column 8'],
    ['[1, 2,]', 'line 1, column 7'],
    ['{} // done', 'line 1, column 4'],
    ["{'a': 1}", 'line 1, column 2'],
    ['{"a": NaN}', 'line 1, column 7'],
    ['{"a": "\u0000"}', 'line 1, column 7'],
    ['{"a": 1} x', 'line 1, column 10'],
  ])('derived: %j is refused at %s', (text, where) => {
    expect(problemOf(text)).toMatchObject({ where, code: 'malformed' });
  });

  test('derived: nesting that would exhaust a parser is refused before parsing, with its place', () => {
    expect(problemOf('['.repeat(1_000_000)).where).toBe('line 1, column 25');
    expect(problemOf(`{"a":\n${'{"a":'.repeat(400_000)}`).message).toMatch(/nested more than 24 levels/);
    expect(problemOf(`{"format": "${'[{'.repeat(100)}"}`).where).toBe('format');
  });

  test('derived: a repeated name is refused where it stands', () => {
    const text = writeRefit(SAMPLE).replace('"basis": "plate"', '"basis": "plate", "basis": "guess"');
    expect(problemOf(text)).toMatchObject({ where: 'parts.x-motor.facts.type.basis' });
    expect(problemOf(text).message).toMatch(/line \d+, column \d+: .* stands there twice/);
  });

  test.each(['__proto__', 'constructor', 'prototype', 'toString', '\\u005f_proto__'])(
    'derived: the name %s is refused wherever it stands',
    (key) => {
      for (const text of [
        `{"${key}": 1}`,
        writeRefit(SAMPLE).replace('"x-motor-new": {', `"${key}": {`),
        writeRefit(SAMPLE).replace('"resistance": {', `"${key}": {`),
      ])
        expect(problemOf(text).message).toMatch(/programs keep for themselves/);
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    },
  );

  test('derived: a file above five megabytes is refused without being read', () => {
    expect(problemOf(`"${'x'.repeat(5_000_000)}"`)).toMatchObject({ code: 'too-long' });
  });
});

describe('a wrong shape is refused with its path', () => {
  const leaves: [path: (string | number)[], value: unknown][] = [];
  const walk = (value: unknown, path: (string | number)[]) => {
    leaves.push([path, value]);
    if (typeof value === 'object' && value !== null)
      for (const [key, inner] of Object.entries(value))
        walk(inner, [...path, Array.isArray(value) ? Number(key) : key]);
  };
  walk(SAMPLE, []);
  const MAY_BE_EMPTY = new Set(
    'chosen facts policies options places chains evidence tags keeps survey photos given readings aside answers stop pattern brake elements wires motions settings work auxiliaries devices cables cable terminals pins'.split(
      ' ',
    ),
  );
  const MAY_BE_MISSING = new Set(['note', 'evidence', 'condition', 'notes', 'photos']);
  const asText = (path: readonly (string | number)[]) =>
    path.reduce<string>(
      (text, step) =>
        typeof step === 'number' ? `${text}[${step}]` : text === '' ? step : `${text}.${step}`,
      '',
    );

  test('derived: every value of a sample replaced by seven wrong ones', () => {
    expect(leaves.length).toBeGreaterThan(70);
    for (const [path, value] of leaves) {
      if (path.length === 0) continue;
      for (const wrong of [42, true, null, [], {}, 'x'.repeat(1_000_000), { kind: 'quantity', text: 1 }]) {
        const text = broken(path, wrong);
        const read = readRefit(text);
        const shown = `${asText(path)} = ${JSON.stringify(wrong).slice(0, 30)}`;
        if (read.ok) {
          // 42 is a position as good as any other.
          if (path.at(-2) === 'aside' && wrong === 42) continue;
          // Only an emptied container, or an unknown choice, is still a refit.
          const last = String(path.at(-1));
          expect(MAY_BE_EMPTY.has(last) || path.at(-2) === 'readings' || last === 'part', shown).toBe(true);
          expect(JSON.stringify(wrong), shown).toMatch(/^(null|\[\]|\{\})$/);
        } else {
          const { where = '' } = read.problem;
          // Emptying a list may only show where something else refers to it.
          const referred = read.problem.code === 'unknown-name';
          expect(
            referred || where.startsWith(asText(path)) || path.at(-1) === 'kind',
            `${shown}: ${read.problem.message}`,
          ).toBe(true);
          expect(read.problem.message.length, shown).toBeLessThan(500);
        }
      }
      expect(value).toBeDefined();
    }
  }, 120_000);

  test('derived: every field left out, and one too many put in', () => {
    for (const [path, value] of leaves) {
      if (typeof value !== 'object' || value === null || Array.isArray(value)) continue;
      const text = broken([...path, 'surplus-field'], 1);
      expect(problemOf(text).where, text.slice(0, 40)).toContain('surplus-field');
      for (const key of Object.keys(value)) {
        const read = readRefit(broken([...path, key], undefined));
        if (!read.ok)
          expect(read.problem.message).toMatch(
            /missing|must name a (part|measurement)|an element of the circuit|(format|version) must be/,
          );
        else expect(MAY_BE_MISSING.has(key) || MAY_BE_EMPTY.has(String(path.at(-1))), key).toBe(true);
      }
    }
  });

  test.each([
    [
      ['parts', 'x-motor', 'facts', 'type', 'basis'],
      'gues',
      "parts.x-motor.facts.type.basis must be one of measured, datasheet, plate, handbook, told, guess (it is 'gues').",
    ],
    [
      ['parts', 'x-screw', 'photos', 0],
      '../plate.jpg',
      /^parts.x-screw.photos\[0\] must be the name of a photo, like plate-1.jpg/,
    ],
    [['parts', 'x-screw', 'photos'], ['a.png', 'a.png'], 'parts.x-screw.photos must name each photo once.'],
    [['evidence', 'e-1', 'when'], 'yesterday', /^evidence.e-1.when must be a date like '2026-03-01'/],
    [['evidence', 'e-1', 'aside', 0], -1, 'evidence.e-1.aside[0] must be at least 0.'],
    [['evidence', 'e-1', 'readings', 'volts'], Array(5001).fill('1'), /must be at most 5000 long/],
    [['tags', 't-1', 'here'], 'a\nb', /^tags.t-1.here must be one line/],
    [['stop', 'wires', 'w1', 'to'], 'K1', /^stop.wires.w1.to must be a terminal: an element, a dot/],
    [['stop', 'motions', 'X', 'kind'], 'door', /^stop.motions.X.kind must be one of axis, spindle/],
    [['stop', 'elements', 'K1', 'id'], 'K2', /must be 'K1', the name it stands under/],
    [['survey', 'coolant', 'state'], 'fine', /^survey.coolant.state must be one of works, worn, dead/],
    [['survey', 'coolant', 'answers'], { constructor: 'x' }, /programs keep for themselves/],
    [['machine'], undefined, 'machine is missing; it must be one of lathe, mill, other.'],
    [
      ['chains', 0, 'id'],
      'axis x',
      "chains[0].id must be a capital letter, with up to three capitals or digits after it, like 'X' or 'A1' (it is 'axis x').",
    ],
    [
      ['parts', 'x-motor', 'facts', 'type', 'value', 'kind'],
      'number',
      "parts.x-motor.facts.type.value.kind must be one of quantity, choice, choices, text, curve (it is 'number').",
    ],
    [['name'], '', 'name must not be empty.'],
    [['name'], 'a\u001b[2Jb', "name must be one line without control characters (it is 'a?[2Jb')."],
    [['about'], 'half \ud800', "about must be text without control characters (it is 'half ?')."],
    [['about'], 'x'.repeat(2001), 'about must be at most 2000 characters long.'],
    [['chains'], 5, 'chains must be a list in [ ], not a number.'],
  ] as const)('derived: in words, %j', (path, value, message) => {
    const said = problemOf(broken(path, value)).message;
    if (typeof message === 'string') expect(said).toBe(message);
    else expect(said).toMatch(message);
  });

  test('derived: more than the most of anything', () => {
    const parts = Object.fromEntries(
      Array.from({ length: 2001 }, (_, n) => [
        `p${n}`,
        { id: `p${n}`, kind: 'motor', name: 'one', facts: {} },
      ]),
    );
    expect(problemOf(JSON.stringify({ ...SAMPLE, chains: [], places: {}, parts })).message).toBe(
      'parts must hold at most 2000 parts.',
    );
    const chains = Array.from({ length: 13 }, (_, n) => ({ id: `A${n}`, kind: 'axis', places: {} }));
    expect(problemOf(JSON.stringify({ ...SAMPLE, chains })).message).toBe('chains must be at most 12 long.');
  });
});

describe('references', () => {
  const replaced = (change: (copy: Refit & { [key: string]: never }) => void): string => {
    const copy = structuredClone(SAMPLE) as Refit & { [key: string]: never };
    change(copy);
    return JSON.stringify(copy);
  };
  test.each([
    [
      'an option that is no part',
      broken(['chains', 0, 'places', 'motor', 'options', 1], 'lost'),
      'chains[0].places.motor.options[1]',
    ],
    [
      'an option named like a method',
      broken(['chains', 0, 'places', 'motor', 'options', 1], 'valueOf'),
      'chains[0].places.motor.options[1]',
    ],
    [
      'a chosen part that is no option',
      broken(['chains', 0, 'places', 'motor', 'chosen'], 'x-screw'),
      'chains[0].places.motor.chosen',
    ],
    [
      'a part that is an option twice',
      broken(['places', 'supply', 'options'], ['x-screw']),
      'chains[0].places.screw.options[0]',
    ],
    ['two chains of one name', broken(['chains', 1, 'id'], 'X'), 'chains[1].id'],
    ['a part under another name', broken(['parts', 'x-screw', 'id'], 'y-screw'), 'parts.x-screw.id'],
    [
      "a part called 'none'",
      replaced((copy) => Object.assign(copy.parts, { none: { ...copy.parts['x-screw'], id: 'none' } })),
      'parts.none.id',
    ],
  ])('derived: %s', (_what, text, where) => {
    expect(problemOf(text)).toMatchObject({ where });
  });

  test('derived: kinds are held against those there are', () => {
    expect(problemOf(writeRefit(SAMPLE), ['motor', 'site']).message).toBe(
      'parts.x-screw.kind must be a known kind of part: motor, site.',
    );
    expect(readRefit(writeRefit(SAMPLE), ['motor', 'site', 'screw']).ok).toBe(true);
  });
});

describe('formats of other versions', () => {
  test('derived: a newer version is refused in words', () => {
    expect(problemOf(broken(['version'], 6)).message).toMatch(/written by a newer Fettle \(version 6/);
    expect(problemOf(broken(['version'], '1')).where).toBe('version');
    expect(problemOf('{"version": 1}').where).toBe('format');
    expect(problemOf('[]').message).toBe('the whole must be an object in { }.');
  });

  test('derived: version 1 comes up to today’s with nothing surveyed and no stop circuit, and what had no survey goes back to the same text', () => {
    const { evidence: _e, tags: _t, keeps: _k, survey: _s, stop: _c, ...one } = threeOf(SAMPLE);
    const plain = (value: unknown) =>
      JSON.parse(
        JSON.stringify(value, (key, each) =>
          ['evidence', 'condition', 'notes', 'photos'].includes(key) && typeof each !== 'object'
            ? undefined
            : key === 'photos'
              ? undefined
              : each,
        ),
      );
    const old = plain({ ...one, version: 1 });
    const read = readRefit(JSON.stringify(old));
    if (!read.ok) throw new Error(read.problem.message);
    const empty = { evidence: {}, tags: {}, keeps: {}, survey: {}, stop: null, ...NOTHING_OF_FOUR };
    expect(read.value).toMatchObject({ version: 5, ...empty });
    // Writing today's format and taking the new and empty fields away again gives the old document.
    const { evidence, tags, keeps, survey, stop, work, auxiliaries, wiring, ...back } = JSON.parse(
      writeRefit(read.value),
    );
    expect({ evidence, tags, keeps, survey, stop, work, auxiliaries, wiring }).toEqual(empty);
    expect({ ...back, version: 1 }).toEqual(old);
    expect(readRefit(writeRefit(read.value))).toEqual(read);
  });

  test('derived: version 2 comes up without a stop circuit and goes back to the same text', () => {
    const { stop: _c, ...two } = threeOf(SAMPLE);
    const old = { ...two, version: 2 };
    const read = readRefit(JSON.stringify(old));
    if (!read.ok) throw new Error(read.problem.message);
    expect(read.value).toEqual({ ...SAMPLE, stop: null, ...NOTHING_OF_FOUR });
    const { stop, ...back } = JSON.parse(writeRefit(read.value));
    expect(stop).toBeNull();
    expect({ ...threeOf(back), version: 2 }).toEqual(old);
  });

  test('derived: version 3 comes up without work, auxiliaries and wiring and goes back to the same text', () => {
    const old = { ...threeOf(SAMPLE), version: 3 };
    const read = readRefit(JSON.stringify(old));
    if (!read.ok) throw new Error(read.problem.message);
    expect(read.value).toEqual({ ...SAMPLE, ...NOTHING_OF_FOUR });
    expect({ ...threeOf(JSON.parse(writeRefit(read.value))), version: 3 }).toEqual(old);
  });

  test('derived: older versions climb one step at a time', () => {
    const steps = {
      1: ({ title, ...rest }: Readonly<Record<string, unknown>>) => ({ ...rest, name: title }),
      2: (document: Readonly<Record<string, unknown>>) => ({ ...document, machine: 'other' }),
    };
    const old = { format: 'fettle-refit', version: 1, title: 'Old' };
    expect(upgrade(old, steps, 3)).toEqual({
      ok: true,
      value: { format: 'fettle-refit', version: 3, name: 'Old', machine: 'other' },
    });
    expect(old.version).toBe(1);
    expect(upgrade({ ...old, version: 2 }, steps, 3)).toMatchObject({
      value: { title: 'Old', machine: 'other' },
    });
    expect(upgrade(old, { 2: steps[2] }, 3)).toMatchObject({
      problem: { message: 'version 1 of the format is no longer read.' },
    });
  });
});

describe('edits.jsonl', () => {
  const line = (number: number) =>
    JSON.stringify(edit(number, [{ do: 'machine', old: 'lathe', new: 'mill' }]));
  test.each([
    [
      `${line(1)}\n{"number": 2,}`,
      'edits.jsonl line 2 is not JSON: it cannot be read from line 1, column 14.',
    ],
    [`${line(1)}\n\n${line(3)}`, 'edits.jsonl line 3: number must be 2, one more than the edit before.'],
    [
      line(1).replace('"mill"', '"boat"'),
      "edits.jsonl line 1: changes[0].new must be one of lathe, mill, other (it is 'boat').",
    ],
    [line(1).replace('2026-03-01', '2026-13-01'), /line 1: when must be a date and time like/],
    [
      line(1).replace('"do":"machine"', '"do":"explode"'),
      /line 1: changes\[0\].do must be one of fact, part, place/,
    ],
    [
      line(1).replace('"who"', '"__proto__":{},"who"'),
      /edits.jsonl line 1, line 1, column .*__proto__ is a name/,
    ],
  ])('derived: %j', (text, message) => {
    const read = readEdits(text);
    expect(read.ok ? 'accepted' : read.problem.message).toMatch(message);
  });
});

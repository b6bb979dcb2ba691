import { describe, expect, test } from 'vitest';
import type { Edit } from '../engine/refit/index.ts';
import { factChange, measured, type Trial, told, trial } from './server.fixture.ts';

const edit = (on: Trial, id: string, basedOn: number, changes: unknown[], who = 'Anna') =>
  on.call('POST', `/api/refits/${id}/edits`, { json: { who, basedOn, changes } });

describe('what a survey finds', () => {
  test('derived: is kept, said in words, undone, and refused where it makes no sense', async () => {
    const on = await trial();
    const id = await on.lathe();
    const found = { id: 'coolant', state: 'works', note: '', photos: [], answers: { supply: '400 V' } };
    const change = { do: 'survey', id: 'coolant', old: null, new: found };
    const said = await edit(on, id, 0, [change]);
    expect([said.status, said.json.edit?.says]).toEqual([201, 'coolant: works, 1 answered']);
    const gone = await on.call('POST', `/api/refits/${id}/undo`, { json: { who: 'Anna', number: 1 } });
    expect(gone.status).toBe(201);
    expect((await on.open(id)).refit.survey).toEqual({});
    const evidence = {
      ...{ id: 'e-1', method: 'four-wire', part: 'lost', given: {}, readings: {}, aside: [], note: '' },
      ...{ when: '2026-03-01', photos: [] },
    };
    const cases: [Record<string, unknown>, string, string][] = [
      [{ ...found, answers: { supply: '4 kg' } }, 'survey', 'changes[0].new.answers.supply'],
      [{ ...found, id: 'radio' }, 'survey', 'changes[0].new.id'],
      [evidence, 'evidence', 'changes[0].new.part'],
    ];
    for (const [thing, what, where] of cases) {
      const refused = await edit(on, id, 2, [{ do: what, id: thing.id, old: null, new: thing }]);
      expect([refused.status, refused.json.problem.where]).toEqual([422, where]);
    }
    const met = await edit(on, id, 0, [change]);
    expect([met.status, met.json.now]).toEqual([409, 'not there']);
  });
});

describe('a stop circuit', () => {
  test('derived: is kept whole, said in words, undone, and refused with the place of what cannot be', async () => {
    const on = await trial();
    const id = await on.lathe();
    const empty = { pattern: null, note: '', elements: {}, wires: {}, motions: {}, settings: {} };
    const circuit = (settings: object) => ({
      ...empty,
      elements: { K1: { id: 'K1', kind: 'contactor', name: '', settings } },
    });
    const change = (settings: object) => ({ do: 'stop', old: null, new: circuit(settings) });
    const refused = await edit(on, id, 0, [change({ 'drop-out': '5 kg' })]);
    expect([refused.status, refused.json.problem.where]).toEqual([
      422,
      'changes[0].new.elements.K1.settings.drop-out',
    ]);
    const said = await edit(on, id, 0, [change({ 'drop-out': '30 ms' })]);
    expect([said.status, said.json.edit?.says]).toEqual([
      201,
      'stop circuit: drawn by hand, 1 element, 0 wires',
    ]);
    const met = await edit(on, id, 0, [change({})]);
    expect([met.status, met.json.now]).toEqual([409, '1 element, 0 wires']);
    await on.call('POST', `/api/refits/${id}/undo`, { json: { who: 'Anna', number: 1 } });
    expect((await on.open(id)).refit.stop).toBeNull();
  });
});

describe('an edit', () => {
  test('derived: is acknowledged, numbered, dated, put into words, and there afterwards', async () => {
    const on = await trial({ now: () => '2026-03-01T18:30:00Z' });
    const id = await on.lathe();
    const change = factChange('resistance', null, measured('1.32 ± 0.06 ohm'));
    const said = await edit(on, id, 0, [change]);
    expect(said.status).toBe(201);
    expect(said.json.head).toBe(1);
    expect(said.json.edit).toMatchObject({
      number: 1,
      who: 'Anna',
      when: '2026-03-01T18:30:00Z',
      basedOn: 0,
      changes: [change],
    });
    expect(said.json.edit.says).toContain('1.32 ± 0.06 ohm (measured)');
    const { refit, head } = await on.open(id);
    expect(head).toBe(1);
    expect(refit.parts['x-motor']!.facts.resistance).toEqual(measured('1.32 ± 0.06 ohm'));
    const [line] = (await on.call('GET', '/api/refits')).json.refits;
    expect(line).toMatchObject({ edits: 1, changed: '2026-03-01T18:30:00Z' });
  });

  test.each([
    ['an empty value', [factChange('resistance', null, measured(''))], 'empty', 'changes[0].new.value'],
    [
      'words for a number',
      [factChange('resistance', null, measured('quite a lot'))],
      undefined,
      'changes[0].new.value',
    ],
    [
      'the wrong dimension',
      [factChange('resistance', null, measured('12 mm'))],
      'wrong-dimension',
      'changes[0].new.value',
    ],
    [
      'below zero',
      [factChange('resistance', null, measured('-3 ohm'))],
      'out-of-domain',
      'changes[0].new.value',
    ],
    [
      'no number at all',
      [factChange('resistance', null, measured('NaN ohm'))],
      undefined,
      'changes[0].new.value',
    ],
    [
      'more than any number',
      [factChange('resistance', null, measured('1e999 ohm'))],
      undefined,
      'changes[0].new.value',
    ],
    [
      'a page for a number',
      [factChange('resistance', null, measured('<script>alert(1)</script>'))],
      undefined,
      'changes[0].new.value',
    ],
    [
      'text for a quantity',
      [factChange('resistance', null, told('some'))],
      'malformed',
      'changes[0].new.value',
    ],
    ['a fact unheard of', [factChange('colour', null, measured('1 ohm'))], 'unknown-name', 'changes[0].new'],
    ['a fact named like a method', [factChange('toString', null, measured('1 ohm'))], 'malformed', undefined],
    [
      'a part that is not there',
      [factChange('resistance', null, measured('1 ohm'), 'y-motor')],
      undefined,
      undefined,
    ],
    [
      'the second of two',
      [factChange('resistance', null, measured('1 ohm')), factChange('inductance', null, measured('3 kg'))],
      'wrong-dimension',
      'changes[1].new.value',
    ],
    [
      'a policy unheard of',
      [{ do: 'policy', policy: 'luck', old: null, new: '1' }],
      'unknown-name',
      'changes[0].new',
    ],
    [
      'a policy in words',
      [{ do: 'policy', policy: 'margin', old: null, new: 'plenty' }],
      undefined,
      'changes[0].new',
    ],
    [
      'a policy of the wrong dimension',
      [{ do: 'policy', policy: 'margin', old: null, new: '3 kg' }],
      undefined,
      'changes[0].new',
    ],
    [
      'a kind of part unheard of',
      [{ do: 'part', id: 'p', old: null, new: { id: 'p', kind: 'sail', name: 'Sail', facts: {} } }],
      'unknown-name',
      'changes[0].new.kind',
    ],
    ['a doing unheard of', [{ do: 'burn', part: 'x-motor' }], 'malformed', 'changes[0].do'],
    [
      'a basis unheard of',
      [factChange('resistance', null, { ...measured('1 ohm'), basis: 'hunch' as 'told' })],
      'malformed',
      'changes[0].new.basis',
    ],
    ['no changes', [], 'malformed', 'changes'],
    ['changes that are none', ['x', 3, null], 'malformed', 'changes[0]'],
  ])(
    'derived: with %s is refused, with its place, and nothing is kept',
    async (_what, changes, code, where) => {
      const on = await trial();
      const id = await on.lathe();
      const before = await on.open(id);
      const said = await edit(on, id, 0, changes);
      expect(said.status).toBe(422);
      const { problem } = said.json;
      if (code !== undefined) expect(problem.code).toBe(code);
      if (where !== undefined) expect(problem.where).toBe(where);
      expect(problem.message).toMatch(/\S.*[.?!]$/s);
      expect(said.headers['content-type']).toBe('application/json; charset=utf-8');
      expect(await on.open(id)).toEqual(before);
      expect(on.faults).toEqual([]);
    },
  );

  test('derived: text of a page in a text stays text', async () => {
    const on = await trial();
    const id = await on.lathe();
    const text = '<img src=x onerror=alert(1)>\u2028</script>';
    const kept = await edit(on, id, 0, [
      { do: 'title', old: { name: 'Bench lathe', about: '' }, new: { name: '<b>x</b>', about: text } },
    ]);
    expect([kept.status, (await on.open(id)).refit.about]).toEqual([201, text]);
    expect(kept.headers['x-content-type-options']).toBe('nosniff');
  });

  test('derived: shape, size and author are looked at', async () => {
    const on = await trial();
    const id = await on.lathe();
    const at = `/api/refits/${id}/edits`;
    const changes = [factChange('resistance', null, measured('1 ohm'))];
    for (const [json, where] of [
      [{ basedOn: 0, changes }, 'who'],
      [{ who: '', basedOn: 0, changes }, 'who'],
      [{ who: 'A\u0007', basedOn: 0, changes }, 'who'],
      [{ who: 'A', basedOn: -1, changes }, 'basedOn'],
      [{ who: 'A', basedOn: 'x', changes }, 'basedOn'],
      [{ who: 'A', basedOn: 7, changes }, 'basedOn'],
      [{ who: 'A', basedOn: 0, changes, when: '2001-01-01T00:00:00Z' }, 'when'],
    ] as const) {
      const said = await on.call('POST', at, { json });
      expect([said.status, said.json.problem.where]).toEqual([422, where]);
    }
    const long = factChange('resistance', null, measured('1'.repeat(1_000_000)));
    expect((await edit(on, id, 0, [long])).status).toBe(422);
    expect((await edit(on, id, 0, Array(5).fill(long))).status).toBe(413);
    expect((await on.open(id)).head).toBe(0);
    expect(on.faults).toEqual([]);
  });
});

describe('edits that meet', () => {
  test('derived: one based on an old state goes in where it touches something else', async () => {
    const on = await trial();
    const id = await on.lathe();
    await edit(on, id, 0, [factChange('resistance', null, measured('1 ohm'))]);
    const said = await edit(on, id, 0, [factChange('inductance', null, measured('3 mH'))], 'Ben');
    expect([said.status, said.json.head, said.json.edit.basedOn]).toEqual([201, 2, 0]);
  });

  test('derived: one that touches the same is a conflict that says what stands there now', async () => {
    const on = await trial();
    const id = await on.lathe();
    await edit(on, id, 0, [factChange('resistance', null, measured('1.32 ± 0.06 ohm'))]);
    const said = await edit(on, id, 0, [factChange('resistance', null, measured('2 ohm'))], 'Ben');
    expect(said.status).toBe(409);
    expect(said.json).toMatchObject({
      problem: { code: 'conflict' },
      now: '1.32 ± 0.06 ohm (measured)',
      head: 1,
    });
    expect((await on.open(id)).refit.parts['x-motor']!.facts.resistance).toEqual(measured('1.32 ± 0.06 ohm'));
    const seen = await edit(
      on,
      id,
      1,
      [factChange('resistance', measured('1.32 ± 0.06 ohm'), measured('2 ohm'))],
      'Ben',
    );
    expect([seen.status, seen.json.head]).toEqual([201, 2]);
  });

  test('derived: undoing takes one back, undoing that does it again, and a later edit stands in the way', async () => {
    const on = await trial();
    const id = await on.lathe();
    const undo = (number: unknown) =>
      on.call('POST', `/api/refits/${id}/undo`, { json: { who: 'Anna', number } });
    await edit(on, id, 0, [factChange('resistance', null, measured('1 ohm'))]);
    expect((await undo(1)).json).toMatchObject({ head: 2, edit: { number: 2 } });
    expect((await on.open(id)).refit.parts['x-motor']!.facts).toEqual({});
    expect((await undo(2)).status).toBe(201);
    expect((await on.open(id)).refit.parts['x-motor']!.facts.resistance).toEqual(measured('1 ohm'));
    await edit(on, id, 3, [factChange('resistance', measured('1 ohm'), measured('2 ohm'))]);
    const met = await undo(1);
    expect([met.status, met.json.now, met.json.head]).toEqual([409, '2 ohm (measured)', 4]);
    for (const number of [99, 0, -1, 1.5, '1', null]) expect((await undo(number)).status).toBe(422);
    expect(on.faults).toEqual([]);
  });
});

describe('what was edited', () => {
  test('derived: is read again by number, a page at a time', async () => {
    const on = await trial();
    const id = await on.lathe();
    let old = null;
    for (let head = 0; head < 230; head++) {
      const now = measured(`${head + 1} ohm`);
      await edit(on, id, head, [factChange('resistance', old, now)]);
      old = now as never;
    }
    const numbers = async (query: string) => {
      const said = await on.call('GET', `/api/refits/${id}/edits${query}`);
      expect(said.json.head).toBe(230);
      const all = said.json.edits.map((each: Edit) => each.number);
      return [all[0], all.at(-1), all.length];
    };
    expect(await numbers('')).toEqual([31, 230, 200]);
    expect(await numbers('?from=3&to=5')).toEqual([3, 5, 3]);
    expect(await numbers('?from=1')).toEqual([1, 200, 200]);
    expect(await numbers('?to=10')).toEqual([1, 10, 10]);
    expect(await numbers('?from=231')).toEqual([undefined, undefined, 0]);
    for (const query of ['?from=x', '?to=', '?from=-1', '?to=1e3', '?from=99999999999']) {
      const said = await on.call('GET', `/api/refits/${id}/edits${query}`);
      expect([query, said.status]).toEqual([query, 422]);
    }
  });

  test('derived: how far each has read is kept for each, and never goes back', async () => {
    const on = await trial();
    const id = await on.lathe();
    const at = `/api/refits/${id}/seen`;
    await edit(on, id, 0, [factChange('resistance', null, measured('1 ohm'))]);
    await edit(on, id, 1, [factChange('inductance', null, measured('3 mH'))]);
    const of = async (who: string) => (await on.call('GET', `${at}?who=${encodeURIComponent(who)}`)).json;
    expect(await of('Anna')).toEqual({ who: 'Anna', number: 0 });
    await on.call('POST', at, { json: { who: 'Anna', number: 2 } });
    await on.call('POST', at, { json: { who: 'Anna', number: 1 } });
    expect(await of('Anna')).toEqual({ who: 'Anna', number: 2 });
    expect(await of('<b>')).toEqual({ who: '<b>', number: 0 });
    expect((await on.call('POST', at, { json: { who: 'Ben' } })).json).toEqual({ who: 'Ben', number: 2 });
    for (const json of [
      {},
      { who: '' },
      { who: 'A', number: 9 },
      { who: 'A', number: -1 },
      { who: 'A', number: 'x' },
    ])
      expect((await on.call('POST', at, { json })).status).toBe(422);
    expect((await on.call('GET', at)).status).toBe(422);
    expect((await on.call('GET', `${at}?who=`)).status).toBe(422);
    expect(on.faults).toEqual([]);
  });
});

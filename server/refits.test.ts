import { describe, expect, test } from 'vitest';
import { trial } from './server.fixture.ts';

const LATHE = { name: 'Bench lathe', machine: 'lathe', axes: ['X', 'Z'] };

describe('hello and refits', () => {
  test('derived: says which Fettle answers, and the folder’s last step only', async () => {
    const { call, faults } = await trial();
    const said = await call('GET', '/api/hello');
    expect(said.status).toBe(200);
    expect(said.json).toEqual({ version: '1.2.3', dataFolderName: 'refits', samples: [] });
    expect(faults).toEqual([]);
  });

  test('derived: a new refit is listed and opened with all its places', async () => {
    const { call, open } = await trial();
    expect((await call('GET', '/api/refits')).json).toEqual({ refits: [] });
    const made = await call('POST', '/api/refits', { json: { ...LATHE, about: 'In the shed' } });
    expect(made.status).toBe(201);
    const { id } = made.json;
    const [line] = (await call('GET', '/api/refits')).json.refits;
    expect(line).toMatchObject({ id, name: 'Bench lathe', about: 'In the shed', machine: 'lathe', edits: 0 });
    const { refit, head } = await open(id);
    expect(head).toBe(0);
    expect(refit.chains.map((chain) => chain.id)).toEqual(['X', 'Z']);
    expect(refit.parts['x-motor']?.kind).toBe('motor');
    const again = await call('POST', '/api/refits', { json: LATHE });
    expect(again.json.id).not.toBe(id);
  });

  test.each([
    ['no name', { ...LATHE, name: '' }, 'name'],
    ['a name of spaces', { ...LATHE, name: '   ' }, 'name'],
    ['a number for a name', { ...LATHE, name: 7 }, 'name'],
    ['a machine unheard of', { ...LATHE, machine: 'oven' }, 'machine'],
    ['no axes', { ...LATHE, axes: [] }, undefined],
    ['an axis of words', { ...LATHE, axes: ['left and right'] }, undefined],
    ['an axis twice', { ...LATHE, axes: ['X', 'x'] }, undefined],
    ['something more', { ...LATHE, colour: 'green' }, 'colour'],
    ['a list', [LATHE], undefined],
    ['nothing in it', {}, 'name'],
  ])('derived: refuses %s with a sentence', async (_what, json, where) => {
    const { call, faults } = await trial();
    const said = await call('POST', '/api/refits', { json });
    expect(said.status).toBe(422);
    expect(said.json.problem.message).toMatch(/\S.*[.!?]$/s);
    if (where !== undefined) expect(said.json.problem.where).toBe(where);
    expect((await call('GET', '/api/refits')).json.refits).toEqual([]);
    expect(faults).toEqual([]);
  });

  test('derived: text of a page comes back as text in JSON, never as a page', async () => {
    const { call } = await trial();
    const name = '<script>alert(1)</script><img src=x onerror=alert(1)>';
    const made = await call('POST', '/api/refits', { json: { ...LATHE, name } });
    expect(made.json.id).toMatch(/^[a-z0-9-]+$/);
    const said = await call('GET', `/api/refits/${made.json.id}`);
    expect(said.headers['content-type']).toBe('application/json; charset=utf-8');
    expect(said.headers['x-content-type-options']).toBe('nosniff');
    expect(said.json.refit.name).toBe(name);
  });
});

describe('requests that are not right', () => {
  test.each([
    ['not JSON', '{"name": ', 400, 'not-json'],
    ['nothing', '', 400, 'not-json'],
    ['words', 'please make a lathe', 400, 'not-json'],
    ['a reserved key', '{"__proto__": {}}', 400, 'not-json'],
    ['brackets without end', '['.repeat(40_000), 400, 'not-json'],
    ['a megabyte', JSON.stringify({ ...LATHE, about: 'x'.repeat(1_000_000) }), 413, 'too-long'],
  ])('derived: %s is refused', async (_what, body, status, code) => {
    const { call, faults } = await trial();
    const said = await call('POST', '/api/refits', {
      body,
      headers: { 'content-type': 'application/json' },
    });
    expect(said.status).toBe(status);
    expect(said.json.problem.code).toBe(code);
    expect(said.json.problem.message).not.toMatch(/ at .*\.ts|undefined|NaN/);
    expect((await call('GET', '/api/hello')).status).toBe(200);
    expect(faults).toEqual([]);
  });

  test('derived: bytes that are no text, and too much without a length, are refused', async () => {
    const { call } = await trial();
    const headers = { 'content-type': 'application/json' };
    const bytes = await call('POST', '/api/refits', { body: new Uint8Array([0xff, 0xfe, 0x7b]), headers });
    expect(bytes.status).toBe(400);
    const chunked = { ...headers, 'transfer-encoding': 'chunked' };
    const long = await call('POST', '/api/refits', { body: 'x'.repeat(200_000), headers: chunked });
    expect(long.status).toBe(413);
  });

  test.each([undefined, 'text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data'])(
    'derived: %s is not taken for JSON',
    async (type) => {
      const { call } = await trial();
      const said = await call('POST', '/api/refits', {
        body: JSON.stringify(LATHE),
        headers: type === undefined ? {} : { 'content-type': type },
      });
      expect(said.status).toBe(415);
      expect(said.json.problem.code).toBe('unsupported-type');
      expect(said.headers.accept).toBe('application/json');
    },
  );

  test('derived: packed JSON is not unpacked', async () => {
    const { call } = await trial();
    const headers = { 'content-type': 'application/json', 'content-encoding': 'gzip' };
    expect((await call('POST', '/api/refits', { body: 'x', headers })).status).toBe(415);
  });

  test('derived: an unknown id is 404 on every route', async () => {
    const { call, faults } = await trial();
    const json = { who: 'A', number: 1, basedOn: 0, changes: [] };
    for (const id of ['nobody', '%00', '..', '%2e%2e%2f', 'x'.repeat(2_000), '<b>', "'; DROP TABLE refits"]) {
      const at = `/api/refits/${id.includes('%') ? id : encodeURIComponent(id)}`;
      for (const [method, path] of [
        ['GET', at],
        ['GET', `${at}/edits`],
        ['POST', `${at}/edits`],
        ['POST', `${at}/undo`],
        ['GET', `${at}/live`],
        ['GET', `${at}/seen?who=A`],
        ['POST', `${at}/seen`],
        ['GET', `${at}/file.refit`],
        ['GET', `${at}/file.json`],
        ['GET', `${at}/photos`],
        ['GET', `${at}/photos/a.png`],
      ] as const) {
        const said = await call(method, path, method === 'POST' ? { json } : {});
        expect([path, said.status]).toEqual([path, 404]);
        expect(said.json.problem.code).toBe('not-found');
      }
    }
    expect(faults).toEqual([]);
  });

  test('derived: other addresses are 404, other methods 405 with those that go', async () => {
    const { call } = await trial();
    expect((await call('GET', '/api/nothing')).status).toBe(404);
    expect((await call('GET', '/api')).status).toBe(404);
    const said = await call('DELETE', '/api/refits');
    expect(said.status).toBe(405);
    expect(said.headers.allow).toBe('GET, POST');
    expect(said.json.problem.code).toBe('method-not-allowed');
    expect((await call('POST', '/')).status).toBe(405);
    expect((await call('GET', '/api/%E0%A4%A')).status).toBe(400);
    const head = await call('HEAD', '/api/refits');
    expect([head.status, head.text]).toEqual([200, '']);
  });
});

/** Every route against what it may be sent, and what every answer has in common. */
import { mkdtempSync, rmSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { PARTS } from '../engine/parts/index.ts';
import { openStore } from '../store/index.ts';
import { type Said, trial } from './server.fixture.ts';

const JSON_TYPE = { 'content-type': 'application/json' };

function expectRefused(said: Said, status: number, code: string): void {
  expect([said.text.slice(0, 300), said.status]).toEqual([said.text.slice(0, 300), status]);
  expect(said.headers['content-type']).toBe('application/json; charset=utf-8');
  expect(said.headers['x-content-type-options']).toBe('nosniff');
  expect(said.json.problem.code).toBe(code);
  expect(said.json.problem.message).toMatch(/^\S+ \S+ .*\.$/s);
  expect(said.text).not.toMatch(/\bat .*\.(ts|js):\d/);
}

/** What the server says to these very bytes. */
const raw = (port: number, bytes: string, host = '127.0.0.1'): Promise<string> =>
  new Promise((done, fail) => {
    let answer = '';
    const socket = connect(port, host, () => socket.write(bytes));
    socket.on('data', (piece) => {
      answer += piece;
    });
    socket.on('error', fail);
    socket.on('close', () => done(answer));
  });

/** Every route that takes JSON alone, with the most bytes it takes; ID stands for a refit. */
const TAKING: readonly (readonly [path: string, most: number])[] = [
  ['/api/refits', 64_000],
  ['/api/refits/ID/edits', 4_000_000],
  ['/api/refits/ID/undo', 16_000],
  ['/api/refits/ID/seen', 16_000],
];
const GETTING = [
  '/api/hello',
  '/api/refits',
  '/api/refits/ID',
  '/api/refits/ID/edits',
  '/api/refits/ID/seen?who=bench',
  '/api/refits/ID/photos',
  '/api/refits/ID/file.refit',
  '/api/refits/ID/file.json',
];
const NO_JSON: readonly (string | Uint8Array)[] = [
  '',
  '   ',
  'words',
  '<script>alert(1)</script>',
  '{"who": "bench"',
  '{"who": "a", "who": "b"}',
  '{"__proto__": {"x": 1}}',
  '{"a": NaN}',
  '['.repeat(9_000),
  Uint8Array.of(0xff, 0xfe, 0x7b),
];
const NO_SUCH_SHAPE = ['null', '[]', '"text"', '12', '{}', '{"who": 5}', '{"unheard": 1}'];

describe('every route', () => {
  test.each(TAKING)('derived: %s refuses what is no JSON of its shape, and nothing changes', async (path) => {
    const { call, lathe, faults } = await trial();
    const id = await lathe();
    const state = async () =>
      (await call('GET', '/api/refits')).text + (await call('GET', `/api/refits/${id}`)).text;
    const before = await state();
    const at = path.replace('ID', id);
    for (const body of NO_JSON)
      expectRefused(await call('POST', at, { body, headers: JSON_TYPE }), 400, 'not-json');
    for (const body of NO_SUCH_SHAPE)
      expectRefused(await call('POST', at, { body, headers: JSON_TYPE }), 422, 'malformed');
    expect(await state()).toBe(before);
    expect(faults).toEqual([]);
  });

  test.each(TAKING)(
    'derived: %s refuses more than %i bytes, whether it is said beforehand or not',
    async (path, most) => {
      const { call, lathe, running } = await trial();
      const at = path.replace('ID', await lathe());
      const headers = { ...JSON_TYPE, 'content-length': String(most + 1) };
      expectRefused(await call('POST', at, { body: 'x'.repeat(most + 1), headers }), 413, 'too-long');
      expectRefused(await call('POST', at, { body: 'x'.repeat(most), headers: JSON_TYPE }), 400, 'not-json');
      const pieces = `${most.toString(16)}\r\n${'x'.repeat(most)}\r\n2\r\nxx\r\n0\r\n\r\n`;
      const head = `POST ${at} HTTP/1.1\r\nHost: localhost:${running.port}\r\nContent-Type: application/json\r\nConnection: close\r\nTransfer-Encoding: chunked\r\n\r\n`;
      expect(await raw(running.port, head + pieces)).toMatch(/^HTTP\/1\.1 413 .*"code":"too-long"/s);
      expect((await call('GET', '/api/hello')).status).toBe(200);
    },
  );

  test('derived: a megabyte of text in a field is refused with its place and a short answer', async () => {
    const { call, lathe } = await trial();
    const json = { who: 'x'.repeat(1_000_000), basedOn: 0, changes: [] };
    const said = await call('POST', `/api/refits/${await lathe()}/edits`, { json });
    expectRefused(said, 422, 'malformed');
    expect(said.json.problem.where).toBe('who');
    expect(said.bytes.length).toBeLessThan(500);
  });

  test('derived: HEAD says what GET would, without a body', async () => {
    const { call, lathe } = await trial();
    const id = await lathe();
    for (const path of GETTING) {
      const said = await call('GET', path.replace('ID', id));
      expect(said.status).toBe(200);
      expect(said.headers['cache-control']).toBe('no-store');
      const head = await call('HEAD', path.replace('ID', id));
      expect([head.status, head.bytes.length]).toEqual([200, 0]);
      expect(head.headers['content-length']).toBe(said.headers['content-length']);
    }
    expect((await call('HEAD', `/api/refits/${id}/live`)).headers['content-type']).toMatch(
      /^text\/event-stream/,
    );
  });

  test('derived: an address that cannot be decoded gets a sentence', async () => {
    const { call, faults } = await trial();
    for (const path of ['/%', '/api/refits/%zz', '/%c3%28', '/api/refits/%ff'])
      expectRefused(await call('GET', path), 400, 'malformed');
    expect(faults).toEqual([]);
  });

  test('derived: a link from elsewhere does not open the API, however its address is written', async () => {
    const { call, lathe } = await trial();
    const id = await lathe();
    const headers = {
      'sec-fetch-site': 'cross-site',
      'sec-fetch-mode': 'navigate',
      'sec-fetch-dest': 'document',
    };
    for (const path of ['/api', '/api/hello', `/%61pi/refits/${id}/file.refit`, `/ap%69/refits/${id}`])
      expectRefused(await call('GET', path, { headers }), 403, 'cross-site');
  });

  test('derived: one who hangs up in the middle of sending does no harm', async () => {
    const { call, lathe, running, faults } = await trial();
    const at = `/api/refits/${await lathe()}/edits`;
    await new Promise<void>((done) => {
      const socket = connect(running.port, '127.0.0.1', () => {
        const head = `POST ${at} HTTP/1.1\r\nHost: localhost:${running.port}\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{"who"`;
        socket.write(head, () => socket.destroy());
      });
      socket.on('close', () => done());
    });
    expect((await call('GET', at)).json).toEqual({ edits: [], head: 0 });
    expect(faults).toEqual([]);
  });

  test('derived: a fault of our own is a sentence to the page, and the fault itself to the report', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fettle-fault-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const opened = openStore(folder, { kinds: PARTS });
    if (!opened.ok) throw new Error(opened.problem.message);
    const fault = new Error('the drawer is stuck');
    const listRefits = () => {
      throw fault;
    };
    const { call, faults } = await trial({ folder, store: { ...opened.value, listRefits } });
    const said = await call('GET', '/api/refits');
    expectRefused(said, 500, 'own-mistake');
    expect(said.text).not.toContain('drawer');
    expect(faults).toEqual([fault]);
    expect((await call('GET', '/api/hello')).status).toBe(200);
  });

  test('derived: another address of this computer reaches nothing', async () => {
    const { running } = await trial();
    await expect(raw(running.port, 'GET / HTTP/1.1\r\n\r\n', '127.0.0.2')).rejects.toThrow('ECONNREFUSED');
  });
});

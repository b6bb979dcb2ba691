import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { trial } from './server.fixture.ts';

const LATHE = { name: 'Bench lathe', machine: 'lathe', axes: ['X'] };

/** What the server says to these very bytes. */
const raw = (port: number, text: string): Promise<string> =>
  new Promise((done, fail) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(text));
    let said = '';
    socket.on('data', (piece) => {
      said += piece;
    });
    socket.on('end', () => done(said));
    socket.on('error', fail);
  });

describe('who may ask', () => {
  test('derived: another name for this computer is refused, on pages and on the API', async () => {
    const { call, running } = await trial();
    const foreign = [
      'evil.example',
      `evil.example:${running.port}`,
      '127.0.0.1',
      '127.0.0.1:1',
      'localhost.',
    ];
    for (const host of foreign)
      for (const path of ['/', '/api/refits']) {
        const said = await call('GET', path, { headers: { host } });
        expect([host, said.status]).toEqual([host, 421]);
        expect(said.json.problem.code).toBe('foreign-host');
      }
    for (const name of ['127.0.0.1', 'localhost', 'LOCALHOST', '[::1]']) {
      const said = await call('GET', '/api/hello', { headers: { host: `${name}:${running.port}` } });
      expect([name, said.status]).toEqual([name, 200]);
    }
    expect(await raw(running.port, 'GET /api/hello HTTP/1.1\r\nConnection: close\r\n\r\n')).toMatch(
      /^HTTP\/1\.1 421 /,
    );
    expect(
      await raw(running.port, 'GET http://evil.example/ HTTP/1.0\r\nHost: evil.example\r\n\r\n'),
    ).toMatch(/^HTTP\/1\.1 421 /);
    expect(await raw(running.port, 'nonsense\r\n\r\n')).toMatch(/^HTTP\/1\.1 400 [\s\S]*"problem"/);
  });

  test('derived: another page is refused, whatever it asks, and changes nothing', async () => {
    const { call, running } = await trial();
    const own = `http://127.0.0.1:${running.port}`;
    for (const headers of [
      { origin: 'https://evil.example' },
      { origin: 'null' },
      { origin: 'http://127.0.0.1:1' },
      { origin: `https://127.0.0.1:${running.port}` },
      { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'no-cors' },
      { 'sec-fetch-site': 'same-site', 'sec-fetch-mode': 'cors' },
      { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate', 'sec-fetch-dest': 'document' },
    ] as Record<string, string>[]) {
      expect((await call('GET', '/api/refits', { headers })).status).toBe(403);
      const post = await call('POST', '/api/refits', { json: LATHE, headers });
      expect(post.status).toBe(403);
      expect(post.json.problem.code).toBe('cross-site');
      expect(post.headers['access-control-allow-origin']).toBeUndefined();
    }
    const preflight = { origin: 'https://evil.example', 'access-control-request-method': 'PUT' };
    expect((await call('OPTIONS', '/api/refits', { headers: preflight })).status).toBe(403);
    expect((await call('GET', '/api/refits')).json.refits).toEqual([]);
    const good = { origin: own, 'sec-fetch-site': 'same-origin' };
    expect((await call('POST', '/api/refits', { json: LATHE, headers: good })).status).toBe(201);
  });

  test('derived: a link from elsewhere may open the page, a frame may not', async () => {
    const { call } = await trial();
    const link = {
      'sec-fetch-site': 'cross-site',
      'sec-fetch-mode': 'navigate',
      'sec-fetch-dest': 'document',
    };
    expect((await call('GET', '/', { headers: link })).status).toBe(503);
    expect((await call('GET', '/', { headers: { ...link, 'sec-fetch-dest': 'iframe' } })).status).toBe(403);
  });

  test('derived: only this computer’s own address is listened on', async () => {
    const { running } = await trial();
    expect(new URL(running.address).hostname).toBe('127.0.0.1');
  });
});

describe('pages', () => {
  const folder = mkdtempSync(join(tmpdir(), 'fettle-pages-'));
  const web = join(folder, 'web');
  mkdirSync(join(web, 'assets'), { recursive: true });
  writeFileSync(join(web, 'index.html'), '<!doctype html><title>Fettle</title>');
  writeFileSync(join(web, 'icon.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  writeFileSync(join(web, 'assets', 'index-B3xk29Qa.js'), 'export {};');
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'secret'), 'secret');

  test('derived: files, the page for every address within it, and what caches may keep', async () => {
    const { call } = await trial({ pageFolder: web });
    for (const path of ['/', '/refit/old-lathe-3f9a1c', '/refit/x/why/X.whirl?as=table', '/index.html']) {
      const said = await call('GET', path);
      expect([path, said.status, said.text]).toEqual([path, 200, '<!doctype html><title>Fettle</title>']);
      expect(said.headers['cache-control']).toBe('no-cache');
      expect(said.headers['content-type']).toBe('text/html; charset=utf-8');
    }
    const script = await call('GET', '/assets/index-B3xk29Qa.js');
    expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect(script.headers['cache-control']).toContain('immutable');
    expect((await call('GET', '/icon.svg')).headers['cache-control']).toBe('no-cache');
    expect((await call('GET', '/missing.js')).status).toBe(404);
  });

  test('derived: every answer carries the policy', async () => {
    const { call } = await trial({ pageFolder: web });
    for (const path of ['/', '/icon.svg', '/api/hello', '/api/nothing', '/missing.js']) {
      const { headers } = await call('GET', path);
      expect(headers['content-security-policy']).toBe(
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
      );
      expect(headers['x-content-type-options']).toBe('nosniff');
      expect(headers['referrer-policy']).toBe('no-referrer');
      expect(headers['cross-origin-opener-policy']).toBe('same-origin');
      expect(headers['cross-origin-resource-policy']).toBe('same-origin');
    }
  });

  test('derived: no address leads out of the folder', async () => {
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const { call, running, faults } = await trial({ pageFolder: web });
    for (const path of [
      '/../secret.txt',
      '/%2e%2e/secret.txt',
      '/..%2fsecret.txt',
      '/assets/..%2f..%2fsecret.txt',
      '/assets/../../secret.txt',
      '/..%5csecret.txt',
      '//secret.txt',
      '/%00secret.txt',
      `/${encodeURIComponent(join(folder, 'secret.txt'))}`,
      '/../secret',
    ]) {
      const said = await call('GET', path);
      expect(said.text).not.toContain('secret');
      const whole = await raw(
        running.port,
        `GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${running.port}\r\nConnection: close\r\n\r\n`,
      );
      expect(whole).not.toContain('secret');
    }
    expect(faults).toEqual([]);
  });

  test('derived: without a built page there is a sentence, and the API answers', async () => {
    const { call } = await trial({ pageFolder: join(folder, 'none') });
    const said = await call('GET', '/');
    expect(said.status).toBe(503);
    expect(said.text).toContain('run “npm start” in its folder');
    expect((await call('GET', '/api/hello')).status).toBe(200);
  });
});

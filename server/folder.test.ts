import { expect, test } from 'vitest';
import { usualFolder } from './folder.ts';
import { findHome } from './home.ts';
import { newId } from './ids.ts';
import { readSamples } from './samples.ts';
import { trial } from './server.fixture.ts';

test('published: folders of each system (XDG Base Directory Specification 0.8 on Linux)', () => {
  expect(usualFolder('linux', {}, '/home/a')).toBe('/home/a/.local/share/fettle');
  expect(usualFolder('linux', { XDG_DATA_HOME: '/data' }, '/home/a')).toBe('/data/fettle');
  expect(usualFolder('linux', { XDG_DATA_HOME: 'data' }, '/home/a')).toBe('/home/a/.local/share/fettle');
  expect(usualFolder('darwin', {}, '/Users/a')).toBe('/Users/a/Library/Application Support/Fettle');
  expect(usualFolder('win32', { LOCALAPPDATA: 'C:\\L' }, 'C:\\a')).toBe('C:\\L\\Fettle');
  expect(usualFolder('win32', {}, 'C:\\a')).toBe('C:\\a\\AppData\\Local\\Fettle');
  expect(usualFolder('linux', {}, '')).toBeUndefined();
});

test('derived: ids are words of the name, whatever the name', () => {
  expect(newId('Old lathe, shed', 'abc123')).toBe('old-lathe-shed-abc123');
  expect(newId('Drehbänkchen', 'abc123')).toBe('drehba-nkchen-abc123');
  for (const name of ['', '<script>', '../..', '旋盤', 'x'.repeat(500)])
    expect(newId(name, 'abc123')).toMatch(/^[a-z0-9][a-z0-9-]{0,60}$/);
});

test('derived: samples are added once and stay as people changed them', async () => {
  const samples = readSamples(findHome());
  expect(samples.length).toBeGreaterThan(0);
  const first = await trial({ samples });
  const { id, name, about } = samples[0]!;
  expect((await first.call('GET', '/api/hello')).json.samples).toEqual(samples.map((each) => each.id));
  const change = { do: 'title', old: { name, about }, new: { name: 'Mine now', about } };
  const json = { who: 'Anna', basedOn: 0, changes: [change] };
  expect((await first.call('POST', `/api/refits/${id}/edits`, { json })).status).toBe(201);
  await first.running.close();
  const second = await trial({ samples, folder: first.folder });
  expect((await second.open(id)).refit.name).toBe('Mine now');
  expect(second.running.samples[0]!.name).toBe('Mine now');
  expect((await second.call('GET', '/api/refits')).json.refits.length).toBe(samples.length);
});

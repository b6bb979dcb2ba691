/** Many edits at once, and a disk that takes no more. */

import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { PARTS } from '../engine/parts/index.ts';
import type { Edit, Fact } from '../engine/refit/index.ts';
import { png } from '../engine/refit/photo.fixture.ts';
import { openStore, type Store } from '../store/index.ts';
import { trouble } from '../store/trouble.ts';
import { factChange, follow, measured, told, trial } from './server.fixture.ts';

test('derived: ten thousand edits of several clients are each acknowledged once, in order; others are answered meanwhile', async () => {
  // Whether the disk keeps what it was told to is the store's test; here its slowness would only be waited for.
  const memory = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();
  const folder = mkdtempSync(join(memory, 'fettle-burst-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const on = await trial({ folder });
  const id = await on.lathe();
  const stream = await follow(on.running.port, `/api/refits/${id}/live`);
  const CLIENTS = 10;
  const EACH = 1000;
  const quantities = Object.entries(PARTS.motor!.facts)
    .flatMap(([fact, spec]) =>
      spec.kind === 'quantity' && spec.domain !== 'fraction' ? [{ fact, unit: spec.unit }] : [],
    )
    .slice(0, CLIENTS / 2);
  const own = ['x-motor', 'z-motor'].flatMap((part) => quantities.map((each) => ({ part, ...each })));
  expect(own.length).toBe(CLIENTS);
  const acknowledged: Edit[] = [];
  let ended = false;

  const work = own.map(async ({ part, fact, unit }, client) => {
    let old: Fact | null = null;
    let basedOn = 0;
    for (let n = 1; n <= EACH; n++) {
      const now = measured(`${n} ${unit}`);
      const json = { who: `client ${client}`, basedOn, changes: [factChange(fact, old, now, part)] };
      const said = await on.call('POST', `/api/refits/${id}/edits`, { json });
      if (said.status !== 201) throw new Error(said.text);
      acknowledged.push(said.json.edit);
      basedOn = said.json.head;
      old = now;
    }
  });
  const slowest: number[] = [];
  const others = (async () => {
    while (!ended) {
      const began = performance.now();
      expect((await on.call('GET', '/api/hello')).status).toBe(200);
      slowest.push(performance.now() - began);
      await new Promise((wait) => setTimeout(wait, 20));
    }
  })();
  await Promise.all(work);
  ended = true;
  await others;

  const numbers = acknowledged.map(({ number }) => number).sort((a, b) => a - b);
  expect(numbers).toEqual(Array.from({ length: CLIENTS * EACH }, (_, i) => i + 1));
  for (let client = 0; client < CLIENTS; client++) {
    const mine = acknowledged.filter(({ who }) => who === `client ${client}`);
    expect(mine.map(({ number }) => number)).toEqual(mine.map(({ number }) => number).sort((a, b) => a - b));
  }
  await stream.until(() => stream.events.length === CLIENTS * EACH + 1);
  expect(stream.events.slice(1).map((event) => Number(event.id))).toEqual(numbers);
  const { refit, head } = await on.open(id);
  expect(head).toBe(CLIENTS * EACH);
  for (const { part, fact, unit } of own)
    expect(refit.parts[part]!.facts[fact]).toEqual(measured(`${EACH} ${unit}`));
  expect(slowest.length).toBeGreaterThan(20);
  expect(slowest.sort((a, b) => a - b)[Math.floor(slowest.length / 2)]).toBeLessThan(500);
  expect(on.faults).toEqual([]);

  await on.running.close();
  const store = openStore(on.folder);
  if (!store.ok) throw new Error(store.problem.message);
  expect(store.value.verify(id)).toEqual({ ok: true, value: CLIENTS * EACH });
  store.value.close();
  // Half a minute of work and ten thousand syncs; a busy computer or a slow disk takes several times as long.
}, 600_000);

describe('a full disk', () => {
  test('derived: is 507 with a sentence on every way of writing; what was kept stays, reading goes on, room mends it', async () => {
    const scratch = mkdtempSync(join(tmpdir(), 'fettle-full-'));
    onTestFinished(() => rmSync(scratch, { recursive: true, force: true }));
    const opened = openStore(scratch, { kinds: PARTS });
    if (!opened.ok) throw new Error(opened.problem.message);
    const real = opened.value;
    let full = false;
    const or =
      <A extends unknown[], T>(work: (...args: A) => T) =>
      (...args: A): T =>
        full ? (trouble('full') as T) : work(...args);
    const store: Store = {
      ...real,
      createRefit: or(real.createRefit),
      appendEdit: or(real.appendEdit),
      undo: or(real.undo),
      markSeen: or(real.markSeen),
      savePhoto: or(real.savePhoto),
      importArchive: or(real.importArchive),
    };
    const on = await trial({ folder: scratch, store });
    const id = await on.lathe();
    const change = (old: Fact | null, now: Fact) => ({
      changes: [factChange('resistance', old, now)],
      who: 'A',
    });
    const at = `/api/refits/${id}`;
    await on.call('POST', `${at}/edits`, { json: { basedOn: 0, ...change(null, measured('1 ohm')) } });
    const stream = await follow(on.running.port, `${at}/live`);
    const file = await on.call('GET', `${at}/file.refit`);
    const before = await on.open(id);
    full = true;
    const octets = { 'content-type': 'application/octet-stream' };
    const picture = png();
    const second = { basedOn: 1, ...change(measured('1 ohm'), measured('2 ohm')) };
    for (const said of [
      await on.call('POST', `${at}/edits`, { json: second }),
      await on.call('POST', `${at}/undo`, { json: { who: 'A', number: 1 } }),
      await on.call('POST', `${at}/seen`, { json: { who: 'A' } }),
      await on.call('POST', '/api/refits', { json: { name: 'B', machine: 'mill', axes: ['X'] } }),
      await on.call('POST', '/api/import', { body: file.bytes, headers: octets }),
      await on.call('PUT', `${at}/photos/a.png`, { body: picture, headers: octets }),
    ]) {
      expect([said.status, said.json.problem.code]).toEqual([507, 'disk']);
      expect(said.json.problem.message).toContain('The disk is full, so this was not kept');
    }
    expect(await on.open(id)).toEqual(before);
    full = false;
    expect((await on.call('POST', `${at}/edits`, { json: second })).status).toBe(201);
    await stream.until(() => stream.events.at(-1)?.id === '2');
    expect(stream.events.length).toBe(2);
    expect(on.faults).toEqual([]);
  });

  test('derived: a disk that really is full (skipped where no small disk can be mounted)', async ({
    skip,
  }) => {
    const scratch = mkdtempSync(join(tmpdir(), 'fettle-small-'));
    const disk = join(scratch, 'disk');
    mkdirSync(disk);
    const mounted = spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=1500k', 'tmpfs', disk]).status === 0;
    onTestFinished(() => {
      spawnSync('umount', ['-l', disk]);
      rmSync(scratch, { recursive: true, force: true });
    });
    skip(!mounted, 'no small disk can be mounted here');
    const on = await trial({ folder: join(disk, 'refits') });
    const id = await on.lathe();
    const text = Object.entries(PARTS.motor!.facts).find(
      ([, spec]) => spec.kind === 'text' && spec.of === undefined,
    )?.[0];
    let head = 0;
    let old: string | null = null;
    const title = (about: string) => ({ name: 'Bench lathe', about });
    for (;;) {
      const now: string = `${head} `.padEnd(1900, 'x');
      const change = text
        ? factChange(text, old === null ? null : told(old), told(now))
        : { do: 'title', old: title(old ?? ''), new: title(now) };
      const json = { who: 'A', basedOn: head, changes: [change] };
      const said = await on.call('POST', `/api/refits/${id}/edits`, { json });
      if (said.status !== 201) {
        expect([said.status, said.json.problem.code]).toEqual([507, 'disk']);
        break;
      }
      head++;
      old = now;
    }
    expect(head).toBeGreaterThan(10);
    expect((await on.open(id)).head).toBe(head);
    expect(on.faults).toEqual([]);
  }, 60_000);
});

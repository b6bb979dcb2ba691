import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readArchive } from '../engine/refit/index.ts';
import { exifSegment, jpeg, png } from '../engine/refit/photo.fixture.ts';
import { factChange, measured, type Trial, trial } from './server.fixture.ts';

const bytesType = { 'content-type': 'application/octet-stream' };
const take = (on: Trial, body: string | Uint8Array, headers: Record<string, string> = bytesType) =>
  on.call('POST', '/api/import?who=Anna', { body, headers });
/** Begins as a PNG picture does. */
const picture = png();

async function workedOn(on: Trial): Promise<string> {
  const id = await on.lathe();
  const json = { who: 'Anna', basedOn: 0, changes: [factChange('resistance', null, measured('1 ohm'))] };
  await on.call('POST', `/api/refits/${id}/edits`, { json });
  await on.call('PUT', `/api/refits/${id}/photos/plate.png`, { body: picture, headers: bytesType });
  return id;
}

describe('refits carried', () => {
  test('derived: out as a .refit file and in again, with history and photos; the own id where it is free', async () => {
    const [from, to] = [await trial(), await trial()];
    const id = await workedOn(from);
    const file = await from.call('GET', `/api/refits/${id}/file.refit`);
    expect(file.headers['content-disposition']).toBe(`attachment; filename="${id}.refit"`);
    const archive = readArchive(file.bytes);
    expect(archive.ok && [archive.value.edits.length, [...archive.value.photos.keys()]]).toEqual([
      1,
      ['plate.png'],
    ]);
    const taken = await take(to, file.bytes);
    expect([taken.status, taken.json]).toEqual([201, { id, renamed: false }]);
    expect(await to.open(id)).toEqual(await from.open(id));
    const again = await take(to, file.bytes);
    expect(again.json.renamed).toBe(true);
    expect(again.json.id).not.toBe(id);
    const photo = await to.call('GET', `/api/refits/${again.json.id}/photos/plate.png`);
    expect(new Uint8Array(photo.bytes)).toEqual(picture);
    expect((await to.call('GET', '/api/refits')).json.refits.length).toBe(2);
  });

  test('derived: out as refit.json and in again', async () => {
    const [from, to] = [await trial(), await trial()];
    const id = await workedOn(from);
    const file = await from.call('GET', `/api/refits/${id}/file.json`);
    expect(file.headers['content-disposition']).toBe(`attachment; filename="${id}.json"`);
    const taken = await take(to, file.bytes, { 'content-type': 'application/json' });
    expect([taken.status, taken.json]).toEqual([201, { id, renamed: false }]);
    expect((await to.open(id)).refit).toEqual((await from.open(id)).refit);
    expect((await take(to, file.bytes)).json.renamed).toBe(true);
  });

  test('derived: what is no refit is refused with its place, and nothing comes in', async () => {
    const on = await trial();
    const id = await on.lathe();
    const { refit } = await on.open(id);
    const { supply, ...parts } = refit.parts;
    const files: [unknown, string | undefined][] = [
      ['', undefined],
      ['a lathe, please', undefined],
      ['<script>alert(1)</script>', undefined],
      [new Uint8Array([0xff, 0xfe, 0]), undefined],
      [new Uint8Array([0x50, 0x4b, 3, 4, 9, 9]), undefined],
      [zipSync({ 'other.json': new Uint8Array(3) }), undefined],
      [zipSync({ '../refit.json': new Uint8Array(3) }), undefined],
      [{ ...refit, machine: 'oven' }, 'machine'],
      [{ ...refit, version: 99 }, 'version'],
      [{ ...refit, parts: { ...parts, supply: { ...supply, kind: 'sail' } } }, 'parts.supply.kind'],
      [{ ...refit, chains: [{ ...refit.chains[0], kind: 'rope' }] }, 'chains[0].kind'],
    ];
    for (const [file, where] of files) {
      const body = typeof file === 'string' || file instanceof Uint8Array ? file : JSON.stringify(file);
      const said = await take(on, body);
      expect(said.status).toBe(422);
      expect(said.json.problem.message).toMatch(/\S.*[.?!]$/s);
      if (where !== undefined) expect(said.json.problem.where).toBe(where);
    }
    expect((await take(on, 'x', { 'content-type': 'text/plain' })).status).toBe(415);
    const huge = { ...bytesType, 'content-length': '64000001', connection: 'close' };
    const refused = await on.call('POST', '/api/import', { headers: huge, body: 'x' });
    expect(refused.status).toBe(413);
    expect((await on.call('GET', '/api/refits')).json.refits.length).toBe(1);
    expect(on.faults).toEqual([]);
  });
});

describe('photos', () => {
  test('derived: are kept once, shown as pictures, and never written over', async () => {
    const on = await trial();
    const id = await on.lathe();
    const at = `/api/refits/${id}/photos`;
    const put = (name: string, body: string | Uint8Array) =>
      on.call('PUT', `${at}/${name}`, { body, headers: bytesType });
    expect((await put('plate.png', picture)).status).toBe(201);
    expect((await put('plate.png', picture)).status).toBe(201);
    const other = await put('plate.png', png([], Uint8Array.of(1, 2, 3)));
    expect([other.status, other.json.problem.code]).toEqual([409, 'conflict']);
    const shown = await on.call('GET', `${at}/plate.png`);
    expect(shown.headers['content-type']).toBe('image/png');
    expect(shown.headers['x-content-type-options']).toBe('nosniff');
    expect(new Uint8Array(shown.bytes)).toEqual(picture);
    expect((await on.call('GET', at)).json).toEqual({ photos: ['plate.png'] });
    for (const [name, body] of [
      ['page.html', '<script>alert(1)</script>'],
      ['page.png', '<script>alert(1)</script>'],
      ['plate.jpg', picture],
      ['..%2f..%2fplate.png', picture],
      ['a%00.png', picture],
      ['empty.png', ''],
    ] as const)
      expect([name, (await put(name, body)).status]).toEqual([name, 422]);
    expect((await on.call('GET', `${at}/none.png`)).status).toBe(404);
    expect((await on.call('GET', `${at}/..%2f..%2frefits.db`)).status).toBe(404);
    const told = await put('gate.jpg', jpeg([exifSegment(6)]));
    expect(told.status).toBe(201);
    expect(told.json.stripped).toContain('location');
    const kept = await on.call('GET', `${at}/gate.jpg`);
    expect(Buffer.from(kept.bytes).includes('S9')).toBe(false);
    expect((await put('large.png', new Uint8Array(8_000_001).fill(1))).status).toBe(413);
    expect(on.faults).toEqual([]);
  });
});

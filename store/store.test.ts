import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Result } from '../engine/quantity/types.ts';
import {
  type Change,
  conflictOf,
  type Fact,
  newRefit,
  type Refit,
  readArchive,
  stripPhoto,
  writeArchive,
  writeEdits,
} from '../engine/refit/index.ts';
import { exifSegment, jpeg, png } from '../engine/refit/photo.fixture.ts';
import { newest } from './carry.ts';
import { openDatabase } from './database.ts';
import { openStore, reasonOf, type Store } from './index.ts';
import { MIGRATIONS } from './migrations.ts';

let folder: string;
let store: Store;
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), 'fettle-store-')), 'refits');
  store = must(openStore(folder));
});
afterEach(() => {
  store.close();
  rmSync(join(folder, '..'), { recursive: true, force: true });
});

const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};
const why = (result: Result<unknown>) => {
  if (result.ok) throw new Error('accepted');
  return result.problem;
};
const when = '2026-03-01T18:30:00Z';
const by = { who: 'bench', when };
const ohm = (text: string): Fact => ({ value: { kind: 'quantity', text }, basis: 'measured' });
const REFIT: Refit = {
  ...newRefit({ id: 'lathe', name: 'Old lathe', machine: 'lathe' }),
  parts: { motor: { id: 'motor', kind: 'motor', name: 'Motor', facts: {} } },
  chains: [{ id: 'X', kind: 'axis', places: { motor: { options: ['motor'], chosen: 'motor' } } }],
};
const set = (old: Fact | null, now: Fact | null, fact = 'resistance'): Change => ({
  do: 'fact',
  part: 'motor',
  fact,
  old,
  new: now,
});
const append = (basedOn: number, ...changes: Change[]) =>
  store.appendEdit('lathe', { ...by, basedOn, changes });
const mayEverything = process.getuid?.() === 0 || process.platform === 'win32';
const PNG = png();

describe('refits and edits', () => {
  test('derived: what an older Fettle kept gets today’s names of a drive’s feed by one edit, once', () => {
    must(store.createRefit(REFIT, 'bench', when));
    const device = {
      id: 'T1',
      kind: 'drive',
      name: '',
      part: null,
      where: '',
      settings: {},
      terminals: {},
      pins: {},
    };
    const wire = { id: 'w1', from: 'G2.plus', to: 'T1.L', cable: null, settings: {} };
    must(append(0, { do: 'device', id: 'T1', old: null, new: device }));
    must(append(1, { do: 'wire', id: 'w1', old: null, new: wire }));
    const longer = { ...wire, settings: { length: '2 m' } };
    must(append(2, { do: 'wire', id: 'w1', old: wire, new: longer }));
    store.close();
    const database = must(openDatabase(folder));
    database.run("UPDATE snapshots SET state = json_set(state, '$.version', 4)");
    database.run("UPDATE refits SET start = json_set(start, '$.version', 4)");
    database.close();
    for (let opened = 0; opened < 2; opened++) {
      store = must(openStore(folder));
      const { refit, head } = must(store.openRefit('lathe'));
      expect(refit.wiring.wires.w1).toEqual({ ...longer, to: 'T1.DC+' });
      expect(head).toBe(4);
      expect(must(store.verify('lathe'))).toBe(4);
      if (opened === 0) store.close();
    }
    expect(must(store.history('lathe')).at(-1)).toMatchObject({
      who: 'Fettle',
      says: expect.stringContaining('DC+'),
    });
  });

  test('derived: what was kept is there after closing and opening', () => {
    must(store.createRefit(REFIT, 'bench', when));
    const { edit } = must(append(0, set(null, ohm('1.32 ± 0.06 ohm'))));
    expect(edit).toMatchObject({
      number: 1,
      basedOn: 0,
      says: 'X motor: resistance 1.32 ± 0.06 ohm (measured)',
    });
    store.close();
    expect(readdirSync(folder)).toEqual(['refits.db']);
    store = must(openStore(folder));
    const opened = must(store.openRefit('lathe'));
    expect(opened.head).toBe(1);
    expect(opened.refit.parts.motor!.facts).toEqual({ resistance: ohm('1.32 ± 0.06 ohm') });
    expect(must(store.history('lathe'))).toEqual([edit]);
    expect(must(store.listRefits())).toEqual([
      { id: 'lathe', name: 'Old lathe', machine: 'lathe', head: 1, changedAt: when },
    ]);
  });

  test('derived: the state is the fold of the log, whatever was snapshotted', () => {
    must(store.createRefit(REFIT, 'bench', when));
    let old: Fact | null = null;
    for (let n = 1; n <= 250; n++) {
      const next = ohm(`${n} ohm`);
      must(append(n - 1, set(old, next)));
      old = next;
    }
    store.close();
    const database = must(openDatabase(folder));
    expect(database.one<{ number: number }>('SELECT number FROM snapshots')?.number).toBe(200);
    database.close();
    store = must(openStore(folder));
    expect(must(store.verify('lathe'))).toBe(250);
    expect(must(store.openRefit('lathe')).refit.parts.motor!.facts.resistance).toEqual(ohm('250 ohm'));
    expect(must(store.history('lathe', { from: 100, to: 102 })).map(({ number }) => number)).toEqual([
      100, 101, 102,
    ]);
  });

  test('derived: an edit that meets another is refused with what is there now', () => {
    must(store.createRefit(REFIT, 'bench', when));
    must(append(0, set(null, ohm('1 ohm'))));
    must(append(1, set(ohm('1 ohm'), ohm('2 ohm'))));
    expect(conflictOf(why(append(1, set(ohm('1 ohm'), ohm('3 ohm')))))?.now).toBe('2 ohm (measured)');
    // It has come back to what it was, and still was edited in between.
    must(append(2, set(ohm('2 ohm'), ohm('1 ohm'))));
    expect(conflictOf(why(append(1, set(ohm('1 ohm'), ohm('3 ohm')))))?.now).toBe('1 ohm (measured)');
    // Something else may be edited from an older sight of the refit.
    must(append(0, set(null, ohm('5 mH'), 'inductance')));
    expect(must(store.openRefit('lathe')).head).toBe(4);
    expect(why(append(9, set(null, ohm('1'), 'other'))).where).toBe('basedOn');
  });

  test('derived: a part and its facts, a chain and its places meet each other', () => {
    must(store.createRefit(REFIT, 'bench', when));
    const part = REFIT.parts.motor!;
    must(append(0, { do: 'part', id: 'motor', old: part, new: { ...part, name: 'Renamed' } }));
    expect(conflictOf(why(append(0, set(null, ohm('1 ohm')))))).toBeDefined();
    must(append(1, set(null, ohm('1 ohm'))));
    must(append(2, set(ohm('1 ohm'), null)));
    expect(
      conflictOf(why(append(1, { do: 'part', id: 'motor', old: { ...part, name: 'Renamed' }, new: part }))),
    ).toBeDefined();
    const place = REFIT.chains[0]!.places.motor!;
    must(append(0, { do: 'place', chain: 'X', place: 'motor', old: place, new: { ...place, chosen: null } }));
    const chain = must(store.openRefit('lathe')).refit.chains[0]!;
    expect(conflictOf(why(append(3, { do: 'chain', id: 'X', old: chain, new: null })))).toBeDefined();
    must(append(4, { do: 'chain', id: 'X', old: chain, new: null }));
  });

  test('derived: an edit is undone by an edit, and that one by another', () => {
    must(store.createRefit(REFIT, 'bench', when));
    must(append(0, set(null, ohm('1 ohm'))));
    const undone = must(store.undo('lathe', 1, by));
    expect(undone.refit).toEqual(REFIT);
    expect(undone.edit.says).toBe('Undone: edit 1 (X motor: resistance 1 ohm (measured))');
    expect(must(store.undo('lathe', 2, by)).refit.parts.motor!.facts.resistance).toEqual(ohm('1 ohm'));
    must(append(3, set(ohm('1 ohm'), ohm('2 ohm'))));
    expect(conflictOf(why(store.undo('lathe', 1, by)))?.now).toBe('2 ohm (measured)');
    expect(why(store.undo('lathe', 99, by)).message).toBe('There is no edit 99 in this refit.');
  });

  test('derived: the id of a part taken out is never used for another', () => {
    must(store.createRefit(REFIT, 'bench', when));
    const part = { ...REFIT.parts.motor!, id: 'belt' };
    must(append(0, { do: 'part', id: 'belt', old: null, new: part }));
    must(append(1, { do: 'part', id: 'belt', old: part, new: null }));
    expect(why(append(2, { do: 'part', id: 'belt', old: null, new: part })).message).toMatch(
      /belonged to a part that was taken out/,
    );
    expect(must(store.undo('lathe', 2, by)).refit.parts).toHaveProperty('belt');
  });

  test('derived: kinds that there are not are refused where the kinds are known', () => {
    store.close();
    store = must(
      openStore(folder, { kinds: { motor: { id: 'motor', name: 'motor', about: '', facts: {} } } }),
    );
    must(store.createRefit(REFIT, 'bench', when));
    const sail = { id: 'sail', kind: 'sail', name: 'Sail', facts: {} };
    expect(why(append(0, { do: 'part', id: 'sail', old: null, new: sail })).message).toBe(
      "There is no kind of part called 'sail'.",
    );
    expect(
      why(store.createRefit({ ...REFIT, id: 'boat', parts: { sail }, chains: [] }, 'bench', when)).where,
    ).toBe('parts.sail.kind');
  });

  test.each<[string, object]>([
    ['no changes', { changes: [] }],
    ['a change of no kind', { changes: [{ do: 'explode' }] }],
    ['a fact with a surplus field', { changes: [{ ...set(null, ohm('1')), extra: 1 }] }],
    ['a reserved word as a fact', { changes: [set(null, ohm('1'), '__proto__')] }],
    ['nobody', { who: '' }],
    ['a null character', { who: 'a\u0000b' }],
    ['no time', { when: 'yesterday' }],
    ['a basis that is no number', { basedOn: 'latest' }],
    ['a basis below zero', { basedOn: -1 }],
    ['nothing at all', { changes: undefined }],
  ])('derived: an edit with %s is refused and changes nothing', (_what, wrong) => {
    must(store.createRefit(REFIT, 'bench', when));
    const edit = { ...by, basedOn: 0, changes: [set(null, ohm('1'))], ...wrong };
    expect(why(store.appendEdit('lathe', edit as never)).message).not.toBe('');
    expect(must(store.openRefit('lathe'))).toEqual({ refit: REFIT, head: 0 });
    expect(must(store.history('lathe'))).toEqual([]);
  });

  test('derived: refits that there are not', () => {
    must(store.createRefit(REFIT, 'bench', when));
    for (const id of ['boat', '', 'lathe\u0000', "x' OR 1=1 --", '__proto__', 'x'.repeat(1e6)]) {
      expect(why(store.openRefit(id)).message).toMatch(/^There is no refit/);
      expect(why(store.readPhoto(id, 'a.png')).message).toMatch(/^There is no refit/);
    }
    expect(why(store.createRefit(REFIT, 'bench', when)).message).toMatch(/^There is a refit 'lathe' already/);
    expect(why(store.createRefit({ ...REFIT, id: 'a b' }, 'bench', when)).where).toBe('id');
  });

  test.each(['x', '軸'])(
    'derived: a refit cannot grow beyond what its file holds, written in %s',
    (letter) => {
      must(store.createRefit(REFIT, 'bench', when));
      const long = ohm(letter.repeat(2000));
      let head = 0;
      let refusal = '';
      for (let part = 0; part < 30 && refusal === ''; part++) {
        const facts = Object.fromEntries(Array.from({ length: 100 }, (_, n) => [`f${n}`, long]));
        const added = store.appendEdit('lathe', {
          ...by,
          basedOn: head,
          changes: [
            {
              do: 'part',
              id: `p${part}`,
              old: null,
              new: { id: `p${part}`, kind: 'motor', name: 'M', facts },
            },
          ],
        });
        if (added.ok) head = added.value.edit.number;
        else refusal = added.problem.message;
      }
      expect(refusal).toMatch(/more than 5 MB/);
      expect(readArchive(must(store.exportArchive('lathe')).bytes).ok).toBe(true);
    },
  );
});

describe('what was seen', () => {
  test('derived: stays seen, for each person', () => {
    must(store.createRefit(REFIT, 'bench', when));
    must(append(0, set(null, ohm('1 ohm'))));
    must(append(1, set(ohm('1 ohm'), ohm('2 ohm'))));
    expect(must(store.lastSeen('lathe', 'bench'))).toBe(0);
    expect(must(store.markSeen('lathe', 'bench', 1))).toBe(1);
    expect(must(store.markSeen('lathe', 'bench'))).toBe(2);
    expect(must(store.markSeen('lathe', 'bench', 1))).toBe(2);
    expect(must(store.lastSeen('lathe', 'other'))).toBe(0);
    for (const wrong of [3, -1, 0.5, Number.NaN])
      expect(why(store.markSeen('lathe', 'bench', wrong)).where).toBe('number');
  });
});

describe('photos and files', () => {
  test('derived: a photo comes back as it was, and is not replaced', () => {
    must(store.createRefit(REFIT, 'bench', when));
    must(store.savePhoto('lathe', 'plate.png', PNG));
    must(store.savePhoto('lathe', 'plate.png', PNG));
    expect(must(store.readPhoto('lathe', 'plate.png'))).toEqual(PNG);
    expect(must(store.listPhotos('lathe'))).toEqual(['plate.png']);
    expect(why(store.savePhoto('lathe', 'plate.png', png([], Uint8Array.of(1, 2, 3)))).message).toMatch(
      /another photo/,
    );
    expect(why(store.savePhoto('lathe', 'Plate.png', PNG)).message).toMatch(/another photo/);
    expect(why(store.savePhoto('lathe', '../x.png', PNG)).message).toMatch(/no name for a photo/);
    expect(why(store.savePhoto('lathe', 'x.png', Uint8Array.of(1))).message).toMatch(
      /not a JPEG, PNG or WebP/,
    );
    expect(why(store.readPhoto('lathe', 'lost.png')).message).toBe(
      "There is no photo 'lost.png' in this refit.",
    );
  });

  test('derived: a refit carried to another folder has its history and photos, and can be undone there', () => {
    must(store.createRefit(REFIT, 'bench', when));
    must(append(0, set(null, ohm('1 ohm'))));
    must(append(1, set(ohm('1 ohm'), ohm('2 ohm'))));
    must(store.savePhoto('lathe', 'plate.png', PNG));
    const { bytes, from } = must(store.exportArchive('lathe'));
    expect(from).toBe(1);
    expect(why(store.importArchive(bytes, by)).message).toMatch(/already/);
    must(store.importArchive(bytes, { ...by, as: 'copy' }));
    expect(must(store.verify('copy'))).toBe(2);
    expect(must(store.history('copy'))).toEqual(must(store.history('lathe')));
    expect(must(store.readPhoto('copy', 'plate.png'))).toEqual(PNG);
    const undone = must(store.undo('copy', 2, by));
    expect(undone.edit.number).toBe(3);
    expect(undone.refit.parts.motor!.facts.resistance).toEqual(ohm('1 ohm'));
    const edit = { ...by, basedOn: 1, changes: [set(ohm('1 ohm'), ohm('4 ohm'))] };
    expect(conflictOf(why(store.appendEdit('copy', edit)))?.now).toBe('1 ohm (measured)');
    expect(why(store.importArchive(bytes.subarray(0, 100), { ...by, as: 'broken' })).message).toMatch(
      /cut short/,
    );
    expect(must(store.listRefits())).toHaveLength(2);
  });
});

test('derived: photos that come in with a refit are kept bare, and one that is no picture keeps it out', () => {
  const refit = must(store.createRefit(REFIT, 'bench', when)).refit;
  const told = jpeg([exifSegment(6)]);
  const packed = (photo: Uint8Array) =>
    must(writeArchive({ refit, edits: [], photos: new Map([['gate.jpg', photo]]) }));
  must(store.importArchive(packed(told), { ...by, as: 'copy' }));
  const kept = must(store.readPhoto('copy', 'gate.jpg'));
  expect(Buffer.from(told).includes('S9')).toBe(true);
  expect(Buffer.from(kept).includes('S9')).toBe(false);
  expect(must(stripPhoto(kept))).toMatchObject({ orientation: 6, stripped: [] });
  const broken = packed(Uint8Array.of(0xff, 0xd8, 0xff, 0xd9));
  expect(why(store.importArchive(broken, { ...by, as: 'other' })).message).toMatch(
    /^gate.jpg begins like a JPEG/,
  );
  expect(must(store.listRefits())).toHaveLength(2);
});

test('derived: of a history too long for a file the newest edits are carried', () => {
  must(store.createRefit(REFIT, 'bench', when));
  must(append(0, set(null, ohm('1 ohm'))));
  must(append(1, set(ohm('1 ohm'), ohm('2 ohm'))));
  must(append(2, set(ohm('2 ohm'), ohm('3 ohm'))));
  const edits = must(store.history('lathe'));
  const length = (from: number) => writeEdits(edits.slice(from)).length;
  expect(newest(edits, length(0))).toEqual(edits);
  expect(newest(edits, length(0) - 1)).toEqual(edits.slice(1));
  expect(newest(edits, 10)).toEqual([]);
  const refit = must(store.openRefit('lathe')).refit;
  const bytes = must(writeArchive({ refit, edits: newest(edits, length(1)), photos: new Map() }));
  must(store.importArchive(bytes, { ...by, as: 'shortened' }));
  expect(must(store.openRefit('shortened')).head).toBe(3);
  expect(must(store.verify('shortened'))).toBe(2);
  expect(must(store.undo('shortened', 3, by)).edit.number).toBe(4);
  expect(why(store.undo('shortened', 1, by)).message).toBe('There is no edit 1 in this refit.');
});

describe('the folder', () => {
  test.skipIf(process.platform === 'win32')('derived: is for its owner alone', () => {
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    for (const name of readdirSync(folder)) expect(statSync(join(folder, name)).mode & 0o077, name).toBe(0);
  });

  test('derived: a second opening is refused in words, in this process too, and works after closing', () => {
    const second = why(openStore(folder));
    expect(reasonOf(second)).toBe('in-use');
    expect(second.message).toBe(
      `Another Fettle (process ${process.pid}) has this folder open. Close it there first.`,
    );
    must(store.createRefit(REFIT, 'bench', when));
    expect(reasonOf(why(openStore(folder)))).toBe('in-use');
    store.close();
    expect(reasonOf(why(store.listRefits()))).toBe('closed');
    store = must(openStore(folder));
    expect(must(store.listRefits())).toHaveLength(1);
  });

  test('derived: a file that is not ours is refused and left as it is', () => {
    const other = join(folder, '..', 'other');
    mkdirSync(other);
    writeFileSync(join(other, 'refits.db'), 'no database at all '.repeat(500));
    expect(reasonOf(why(openStore(other)))).toBe('damaged');
    expect(statSync(join(other, 'refits.db')).size).toBe(9500);
    writeFileSync(join(folder, '..', 'file'), '');
    expect(reasonOf(why(openStore(join(folder, '..', 'file'))))).toBe('missing');
    expect(reasonOf(why(openStore(join(folder, '..', 'file', 'deeper'))))).toBe('missing');
  });

  test('derived: tables climb one step at a time, and a newer file is refused', () => {
    must(store.createRefit(REFIT, 'bench', when));
    store.close();
    const newer = must(openDatabase(folder, [...MIGRATIONS, 'ALTER TABLE refits ADD COLUMN colour TEXT']));
    expect(newer.one('SELECT id, colour FROM refits')).toEqual(
      expect.objectContaining({ id: 'lathe', colour: null }),
    );
    newer.close();
    const refused = why(openStore(folder));
    expect(reasonOf(refused)).toBe('newer');
    expect(refused.message).toMatch(/written by a newer Fettle/);
  });

  test('derived: a step that fails leaves the tables as they were', () => {
    must(store.createRefit(REFIT, 'bench', when));
    store.close();
    const broken = [...MIGRATIONS, 'CREATE TABLE half (a TEXT) STRICT; INSERT INTO nowhere VALUES (1)'];
    expect(() => openDatabase(folder, broken)).toThrow(/nowhere/);
    store = must(openStore(folder));
    expect(must(store.listRefits())).toHaveLength(1);
  });

  test.skipIf(mayEverything)(
    'derived: a folder that may not be written is refused (skipped for root, who may everything)',
    () => {
      const closed = join(folder, '..', 'closed');
      mkdirSync(closed);
      chmodSync(closed, 0o500);
      expect(reasonOf(why(openStore(closed)))).toBe('not-allowed');
    },
  );
});

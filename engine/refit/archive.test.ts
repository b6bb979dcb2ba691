import { strToU8, Zip, ZipDeflate, type Zippable, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readArchive, writeArchive } from './archive.ts';
import { undoOf } from './edit.ts';
import { edit, SAMPLE } from './sample.fixture.ts';
import type { Edit } from './types.ts';
import { writeEdits, writeRefit } from './write.ts';
import { crc32 } from './zip.ts';

const PNG = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3);
const EDITS: Edit[] = [
  edit(4, [{ do: 'machine', old: 'other', new: 'lathe' }]),
  edit(5, [{ do: 'policy', policy: 'screw.whirl', old: null, new: '80 %' }]),
];
const STATE = strToU8(writeRefit(SAMPLE));
const zip = (files: Zippable = {}) => zipSync({ 'refit.json': STATE, ...files });
const written = (archive: Parameters<typeof writeArchive>[0]): Uint8Array => {
  const bytes = writeArchive(archive);
  if (!bytes.ok) throw new Error(bytes.problem.message);
  return bytes.value;
};
const refusal = (bytes: Uint8Array): string => {
  const read = readArchive(bytes);
  return read.ok ? 'accepted' : read.problem.message;
};
/** A copy with one little-endian number changed in the entry's record, in the list of files (or its local header). */
function patched(
  bytes: Uint8Array,
  signature: number,
  at: number,
  value: number,
  size: 2 | 4,
  nth = 0,
): Uint8Array {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  let seen = 0;
  for (let start = 0; start < copy.length - 4; start++)
    if (view.getUint32(start, true) === signature && seen++ === nth) {
      if (size === 2) view.setUint16(start + at, value, true);
      else view.setUint32(start + at, value, true);
      return copy;
    }
  throw new Error('no such record');
}
const CENTRAL = 0x02014b50;
const END = 0x06054b50;

describe('a .refit file', () => {
  test('derived: reads as it was written, byte for byte the same each time', () => {
    const archive = { refit: SAMPLE, edits: EDITS, photos: new Map([['plate-1.png', PNG]]) };
    const bytes = written(archive);
    expect(readArchive(bytes)).toEqual({ ok: true, value: archive });
    expect(written(archive)).toEqual(bytes);
  });

  test('derived: may come from any program that zips a folder', () => {
    expect(readArchive(zip({ 'photos/': new Uint8Array(), 'photos/a.png': PNG }))).toMatchObject({
      ok: true,
    });
    expect(readArchive(zipSync({ 'refit.json': [STATE, { level: 0 }] }))).toMatchObject({
      ok: true,
      value: { edits: [] },
    });
  });

  test('derived: may give its sizes after each entry, as programs do that write in one go', () => {
    const pieces: Uint8Array[] = [];
    const stream = new Zip((fault, piece) => {
      if (fault) throw fault;
      pieces.push(piece);
    });
    const entry = new ZipDeflate('refit.json');
    stream.add(entry);
    entry.push(STATE.subarray(0, 100));
    entry.push(STATE.subarray(100), true);
    stream.end();
    const bytes = Uint8Array.from(pieces.flatMap((piece) => [...piece]));
    expect(new DataView(bytes.buffer).getUint16(6, true) & 8).toBe(8);
    expect(readArchive(bytes)).toMatchObject({ ok: true, value: { refit: SAMPLE } });
  });

  test('derived: a long and repetitive history can be read back', () => {
    const edits: Edit[] = [];
    let next = edit(1, [{ do: 'machine', old: 'other', new: 'lathe' }], { says: 'x'.repeat(1800) });
    for (let number = 1; number <= 1501; number++) {
      edits.push(next);
      next = { ...undoOf(next, { ...next, number: number + 1, basedOn: 0 }), says: next.says };
    }
    const bytes = written({ refit: SAMPLE, edits, photos: new Map() });
    expect(readArchive(bytes)).toMatchObject({ ok: true });
  });

  test('derived: more than it can hold is refused when it is written', () => {
    const photo = new Uint8Array(8_000_000);
    photo.set(PNG);
    const photos = new Map(Array.from({ length: 9 }, (_, n) => [`p${n}.png`, photo]));
    expect(writeArchive({ refit: SAMPLE, edits: [], photos })).toMatchObject({
      problem: { code: 'too-long' },
    });
  });

  test('published: checksum of "123456789" is cbf43926 (check value of CRC-32 in ISO 3309, from memory)', () => {
    expect(crc32(strToU8('123456789')).toString(16)).toBe('cbf43926');
  });
});

describe('what is refused, in words', () => {
  const deflated = zip({ 'edits.jsonl': [strToU8(writeEdits(EDITS)), { level: 9 }] });
  test.each<[string, Uint8Array, RegExp]>([
    ['no zip', strToU8('{"format": "fettle-refit"}'), /^This is not a zip file\.$/],
    ['an empty file', new Uint8Array(), /not a zip file/],
    ['a zip cut short', deflated.subarray(0, deflated.length - 30), /cut short: its end is missing/],
    [
      'a zip with its middle missing',
      Uint8Array.from([...deflated.subarray(0, 40), ...deflated.subarray(90)]),
      /cut short|damaged/,
    ],
    ['a path upwards', zip({ '../refit.json': STATE }), /asks to be put outside its folder/],
    ['a path upwards from photos', zip({ 'photos/../../x.png': PNG }), /asks to be put outside its folder/],
    ['an absolute path', zip({ '/etc/x.png': PNG }), /asks to be put outside its folder/],
    ['a drive letter', zip({ 'c:/x.png': PNG }), /asks to be put outside its folder/],
    ['a backslash', zip({ 'photos\\x.png': PNG }), /backslash/],
    ['a control character', zip({ 'photos/\u0007.png': PNG }), /control characters/],
    ['a name that does not belong', zip({ 'run.exe': PNG }), /'run.exe' in the zip does not belong there/],
    ['a script as a photo', zip({ 'photos/x.svg': strToU8('<svg/>') }), /is no name for a photo/],
    [
      'a page that calls itself a photo',
      zip({ 'photos/x.png': strToU8('<html>') }),
      /is not a JPEG, PNG or WebP picture/,
    ],
    ['a photo of another kind', zip({ 'photos/x.jpg': PNG }), /its name must end in \.png/],
    ['a photo in a folder of its own', zip({ 'photos/a/x.png': PNG }), /is no name for a photo/],
    [
      'names that some file systems hold to be one',
      zip({ 'photos/a.png': PNG, 'photos/A.png': PNG }),
      /is in the zip twice/,
    ],
    ['no refit.json', zipSync({ 'photos/a.png': PNG }), /no refit\.json/],
    ['encryption', patched(deflated, CENTRAL, 8, 1, 2), /'refit\.json' in the zip is encrypted/],
    ['another packing', patched(deflated, CENTRAL, 10, 12, 2), /packed in a way that is not read/],
    ['a wrong checksum', patched(deflated, CENTRAL, 16, 1, 4), /does not match its checksum/],
    [
      'a declared size that is too large',
      patched(deflated, CENTRAL, 24, 900_000_000, 4),
      /unpacks to more than 5 MB/,
    ],
    [
      'a declared size that is too small',
      patched(deflated, CENTRAL, 24, 10, 4),
      /unpacks to more than it says/,
    ],
    [
      'a thousandfold expansion',
      zip({ 'edits.jsonl': [new Uint8Array(30_000_000), { level: 9 }] }),
      /more than 200 times its size/,
    ],
    [
      'an expansion hidden behind a small size',
      patched(zip({ 'edits.jsonl': [new Uint8Array(30_000_000), { level: 9 }] }), CENTRAL, 24, 900_000, 4, 1),
      /unpacks to more than it says/,
    ],
    [
      'more than 64 MB in all',
      zip(
        Object.fromEntries(
          Array.from({ length: 9 }, (_, n) => [`photos/p${n}.png`, [noisy(8_000_000), { level: 6 }]]),
        ) as Zippable,
      ),
      /unpacks to more than 64 MB|larger than 64 MB/,
    ],
    ['entries that share their bytes', patched(deflated, CENTRAL, 42, 0, 4, 1), /shares bytes/],
    [
      'an entry outside the file',
      patched(deflated, CENTRAL, 42, 0x7fffffff, 4),
      /not where its list of files says/,
    ],
    [
      'a list of files outside the file',
      patched(deflated, END, 16, 0x7fffffff, 4),
      /cut short: its list of files lies outside/,
    ],
    ['a list that is longer than it says', patched(deflated, END, 10, 9, 2), /split over several files/],
    [
      'the kind for very large files',
      patched(patched(deflated, END, 8, 0xffff, 2), END, 10, 0xffff, 2),
      /zip64/,
    ],
    [
      'a history that leads elsewhere',
      zip({ 'edits.jsonl': strToU8(writeEdits([edit(1, [{ do: 'machine', old: 'mill', new: 'other' }])])) }),
      /history in edits\.jsonl does not lead to the state/,
    ],
    [
      'a history with a gap',
      zip({ 'edits.jsonl': strToU8(writeEdits([EDITS[0]!, { ...EDITS[1]!, number: 9 }])) }),
      /edits\.jsonl line 2: number must be 5/,
    ],
    [
      'text that is not UTF-8',
      zip({ 'edits.jsonl': Uint8Array.of(0xff, 0xfe) }),
      /edits\.jsonl in the zip is not text/,
    ],
  ])('derived: %s', (_what, bytes, words) => {
    expect(refusal(bytes)).toMatch(words);
  });

  test('derived: two entries of one name', () => {
    const twice = zip({ 'refit.jsoX': STATE });
    const renamed = Uint8Array.from(twice, (byte) => (byte === 0x58 ? 0x6e : byte));
    expect(refusal(renamed)).toMatch(/'refit\.json' is in the zip twice/);
  });

  test('derived: any single byte changed or cut gives a refit or a refusal, never a fault', () => {
    for (let at = 0; at < deflated.length; at += 3) {
      const copy = deflated.slice();
      copy[at] = copy[at]! ^ (1 << (at % 8));
      expect(typeof readArchive(copy).ok).toBe('boolean');
      expect(readArchive(deflated.subarray(0, at)).ok).toBe(false);
    }
  });
});

/** Bytes that do not pack well, beginning like a picture. */
function noisy(length: number): Uint8Array {
  const bytes = new Uint8Array(length);
  let state = 1;
  for (let at = 0; at < length; at += 40) {
    state = (state * 48271) % 2147483647;
    bytes[at] = state & 0xff;
  }
  bytes.set(PNG);
  return bytes;
}

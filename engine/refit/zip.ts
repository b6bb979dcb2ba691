/**
 * Reads a zip (PKWARE APPNOTE 6.3) from a stranger: stored and deflated entries only, every name, size, offset and
 * checksum held against the limits before and while unpacking.
 */
import { Inflate } from 'fflate';
import { ok, type Result, refuse } from '../quantity/types.ts';
import { shorten } from './shape.ts';

export interface ZipLimits {
  readonly total: number;
  readonly entries: number;
  /** Unpacked over packed, above a megabyte. */
  readonly expansion: number;
  /** Most bytes an entry of this name may have; a refusal in words for a name that does not belong. */
  readonly entry: (name: string) => number | string;
}

interface Entry {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly header: number;
}

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;

class ZipRefusal extends Error {}
const stop = (words: string): never => {
  throw new ZipRefusal(words);
};

/** The unpacked entries by name, or why the file is not accepted. */
export function readZip(bytes: Uint8Array, limits: ZipLimits): Result<ReadonlyMap<string, Uint8Array>> {
  try {
    const entries = directory(bytes, limits);
    const files = new Map<string, Uint8Array>();
    for (const entry of entries) if (!entry.name.endsWith('/')) files.set(entry.name, unpack(bytes, entry));
    return ok(files);
  } catch (fault) {
    if (fault instanceof ZipRefusal) return refuse({ code: 'malformed', message: `${fault.message}.` });
    throw fault;
  }
}

const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

function directory(bytes: Uint8Array, limits: ZipLimits): Entry[] {
  const view = viewOf(bytes);
  const end = endRecord(view);
  if (bytes.length > limits.total) stop(`The file is larger than ${limits.total / 1e6} MB`);
  const count = view.getUint16(end + 10, true);
  const length = view.getUint32(end + 12, true);
  const start = view.getUint32(end + 16, true);
  if (view.getUint16(end + 4, true) !== 0 || view.getUint16(end + 8, true) !== count)
    stop('The zip is split over several files');
  if (count === 0xffff || start === 0xffffffff) stop('The zip is of the kind for very large files (zip64)');
  if (count > limits.entries) stop(`The zip holds ${count} files; at most ${limits.entries} belong in it`);
  if (start + length > end) stop('The zip is cut short: its list of files lies outside it');

  const entries: Entry[] = [];
  const seen = new Set<string>();
  let at = start;
  let total = 0;
  for (let i = 0; i < count; i++) {
    if (at + 46 > end || view.getUint32(at, true) !== CENTRAL)
      stop('The zip is damaged: its list of files breaks off');
    const nameLength = view.getUint16(at + 28, true);
    const next = at + 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    if (next > end) stop('The zip is damaged: its list of files breaks off');
    const name = nameIn(bytes, at + 46, nameLength);
    const entry: Entry = {
      name,
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      header: view.getUint32(at + 42, true),
    };
    checkName(name);
    if ((view.getUint16(at + 8, true) & 0x2041) !== 0) stop(`'${shorten(name)}' in the zip is encrypted`);
    const max = limits.entry(name);
    if (typeof max === 'string') stop(`'${shorten(name)}' in the zip ${max}`);
    // Some file systems hold 'A.jpg' and 'a.jpg' to be one.
    if (seen.has(name.toLowerCase())) stop(`'${shorten(name)}' is in the zip twice`);
    seen.add(name.toLowerCase());
    if (entry.method !== 0 && entry.method !== 8)
      stop(`'${shorten(name)}' is packed in a way that is not read`);
    if (entry.method === 0 && entry.packed !== entry.size)
      stop(`'${shorten(name)}' in the zip gives two sizes`);
    if (entry.size > Number(max))
      stop(`'${shorten(name)}' in the zip unpacks to more than ${Number(max) / 1e6} MB`);
    if (entry.size > 1e6 && entry.size > entry.packed * limits.expansion)
      stop(`'${shorten(name)}' in the zip unpacks to more than ${limits.expansion} times its size`);
    total += entry.size;
    if (total > limits.total) stop(`The zip unpacks to more than ${limits.total / 1e6} MB`);
    entries.push(entry);
    at = next;
  }
  if (at !== start + length) stop('The zip is damaged: its list of files has another length than it says');
  checkOverlap(view, entries, start);
  return entries;
}

function endRecord(view: DataView): number {
  const size = view.byteLength;
  if (size < 22 || ![LOCAL, END].includes(view.getUint32(0, true))) stop('This is not a zip file');
  for (let at = size - 22; at >= Math.max(0, size - 22 - 0xffff); at--)
    if (view.getUint32(at, true) === END && at + 22 + view.getUint16(at + 20, true) === size) return at;
  return stop('The zip is cut short: its end is missing');
}

function nameIn(bytes: Uint8Array, at: number, length: number): string {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes.subarray(at, at + length));
  } catch {
    return stop('A name in the zip is not text');
  }
}

function checkName(name: string): void {
  const shown = shorten(name);
  if (name.includes('\\')) stop(`'${shown}' in the zip has a backslash in its name`);
  if (name.startsWith('/') || /^[a-z]:/i.test(name))
    stop(`'${shown}' in the zip asks to be put outside its folder`);
  if (name.split('/').some((step) => step === '..' || step === '.'))
    stop(`'${shown}' in the zip asks to be put outside its folder`);
  if (name === '' || /\p{Cc}/u.test(name)) stop('A name in the zip is empty or has control characters');
}

/** Entries that share bytes are how a small file is made to unpack without end. */
function checkOverlap(view: DataView, entries: readonly Entry[], directoryStart: number): void {
  let free = 0;
  for (const entry of [...entries].sort((a, b) => a.header - b.header)) {
    if (entry.header < free) stop(`'${shorten(entry.name)}' shares bytes with another file of the zip`);
    free = dataStart(view, entry) + entry.packed;
    if (free > directoryStart) stop(`The zip is cut short: '${shorten(entry.name)}' is not whole`);
  }
}

function dataStart(view: DataView, entry: Entry): number {
  const { header } = entry;
  if (header + 30 > view.byteLength || view.getUint32(header, true) !== LOCAL)
    stop(`The zip is damaged: '${shorten(entry.name)}' is not where its list of files says`);
  return header + 30 + view.getUint16(header + 26, true) + view.getUint16(header + 28, true);
}

function unpack(bytes: Uint8Array, entry: Entry): Uint8Array {
  const start = dataStart(viewOf(bytes), entry);
  const packed = bytes.subarray(start, start + entry.packed);
  const unpacked = entry.method === 0 ? packed.slice() : inflate(packed, entry);
  if (unpacked.length !== entry.size || crc32(unpacked) !== entry.crc)
    stop(`The zip is damaged: '${shorten(entry.name)}' does not match its checksum`);
  return unpacked;
}

/** Deflate expands 1,032 times at most, so pieces of 4 kB bound what one step can make beyond the declared size. */
const PIECE = 4096;

function inflate(packed: Uint8Array, entry: Entry): Uint8Array {
  const out = new Uint8Array(entry.size);
  let filled = 0;
  const stream = new Inflate((piece) => {
    if (filled + piece.length > entry.size)
      stop(`'${shorten(entry.name)}' in the zip unpacks to more than it says`);
    out.set(piece, filled);
    filled += piece.length;
  });
  try {
    for (let at = 0; at < packed.length || at === 0; at += PIECE)
      stream.push(packed.subarray(at, at + PIECE), at + PIECE >= packed.length);
  } catch (fault) {
    if (fault instanceof ZipRefusal) throw fault;
    stop(`The zip is damaged: '${shorten(entry.name)}' cannot be unpacked`);
  }
  return out.subarray(0, filled);
}

const CRC = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c >>> 0;
});

/** The checksum of zip entries (ISO 3309, reflected polynomial edb88320). */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = CRC[(crc ^ byte) & 0xff]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

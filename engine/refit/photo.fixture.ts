/** Photos built byte by byte, for tests: what a camera writes, and what it should not have told. */
import { crc32 } from './zip.ts';

const text = (letters: string): number[] => [...letters].map((letter) => letter.charCodeAt(0));
const u16 = (n: number): number[] => [(n >> 8) & 255, n & 255];
const u32 = (n: number): number[] => [...u16(n >>> 16), ...u16(n & 0xffff)];
const u32le = (n: number): number[] => u32(n).reverse();

export const flat = (...pieces: readonly (readonly number[] | Uint8Array)[]): Uint8Array =>
  Uint8Array.from(pieces.flatMap((piece) => [...piece]));

/**
 * A TIFF block: orientation, camera maker, and directories behind pointers with a body serial number and a latitude,
 * which a search for the bytes '48 degrees' (0, 0, 0, 48, 0, 0, 0, 1) finds.
 */
export function exifBlock(orientation: number): Uint8Array {
  const entry = (tag: number, type: number, count: number, value: readonly number[]) => [
    ...u16(tag),
    ...u16(type),
    ...u32(count),
    ...value,
  ];
  const ifd0 = [
    ...u16(4),
    ...entry(0x010f, 2, 4, text('abc\0')),
    ...entry(0x0112, 3, 1, [...u16(orientation), 0, 0]),
    ...entry(0x8769, 4, 1, u32(62)),
    ...entry(0x8825, 4, 1, u32(92)),
    ...u32(0),
  ];
  const exif = [
    ...u16(2),
    ...entry(0x9003, 2, 4, text('2026')),
    ...entry(0xa431, 2, 4, text('S9\0\0')),
    ...u32(0),
  ];
  const gps = [
    ...u16(2),
    ...entry(1, 2, 2, text('N\0\0\0')),
    ...entry(2, 5, 3, u32(122)),
    ...u32(0),
    ...[48, 1, 12, 1, 30, 1].flatMap(u32),
  ];
  return flat(text('MM'), u16(42), u32(8), ifd0, exif, gps);
}

/** A marker segment of a JPEG. */
export const segment = (marker: number, content: readonly number[] | Uint8Array): Uint8Array =>
  flat([0xff, marker], u16(content.length + 2), content);

/** The smallest whole JPEG, 8 × 8 grey, with more segments after its start and more bytes after its end. */
export function jpeg(more: readonly Uint8Array[] = [], after: readonly number[] = []): Uint8Array {
  return flat(
    [0xff, 0xd8],
    segment(0xe0, [...text('JFIF\0'), 1, 2, 0, 0, 1, 0, 1, 0, 0]),
    ...more,
    segment(0xdb, [0, ...Array<number>(64).fill(16)]),
    segment(0xc0, [8, 0, 8, 0, 8, 1, 1, 0x11, 0]),
    segment(0xc4, [0x00, 1, ...Array<number>(15).fill(0), 0]),
    segment(0xc4, [0x10, 1, ...Array<number>(15).fill(0), 0]),
    segment(0xda, [1, 1, 0, 0, 63, 0]),
    [0x3f],
    [0xff, 0xd9],
    after,
  );
}
export const exifSegment = (orientation: number): Uint8Array =>
  segment(0xe1, flat(text('Exif\0\0'), exifBlock(orientation)));
export const textSegment = (marker: number, content: string): Uint8Array => segment(marker, text(content));

/** A chunk of a PNG. */
export function pngChunk(type: string, content: readonly number[] | Uint8Array): Uint8Array {
  const named = flat(text(type), content);
  return flat(u32(content.length), named, u32(crc32(named)));
}

/** The smallest whole PNG, one grey point, with more chunks before its picture; `data` stands for a larger picture. */
export function png(more: readonly Uint8Array[] = [], data: Uint8Array = GREY): Uint8Array {
  const head = pngChunk('IHDR', [...u32(1), ...u32(1), 8, 0, 0, 0, 0]);
  const pieces = [flat([0x89], text('PNG\r\n\x1a\n')), head, ...more];
  const idat = new Uint8Array(data.length + 12);
  idat.set(u32(data.length));
  idat.set(text('IDAT'), 4);
  idat.set(data, 8);
  idat.set(u32(crc32(idat.subarray(4, data.length + 8))), data.length + 8);
  const all = [...pieces, idat, pngChunk('IEND', [])];
  const bytes = new Uint8Array(all.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of all) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
/** A scan line of one grey point, deflated. */
const GREY = Uint8Array.of(120, 218, 99, 104, 0, 0, 0, 130, 0, 129);

/** A chunk of a WebP. */
export const webpChunk = (type: string, content: readonly number[] | Uint8Array): Uint8Array =>
  flat(text(type), u32le(content.length), content, content.length % 2 ? [0] : []);
/** An extended WebP whose picture is no more than some bytes. */
export function webp(more: readonly Uint8Array[] = []): Uint8Array {
  const body = flat(
    text('WEBP'),
    webpChunk('VP8X', [0x0c, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
    webpChunk('VP8L', [0x2f, 0, 0, 0, 0]),
    ...more,
  );
  return flat(text('RIFF'), u32le(body.length), body);
}

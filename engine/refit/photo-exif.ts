/**
 * What the EXIF block of a photo gives away, and which way up the picture belongs.
 * Layout: Exif 2.32 (CIPA DC-008), a TIFF 6.0 header with directories of twelve-byte entries.
 */

export interface Exif {
  /** 1 upright … 8, as EXIF numbers them; 1 when it is not said or makes no sense. */
  readonly orientation: number;
  /** In words: 'EXIF data', 'location', 'serial numbers'; empty where it says nothing but the orientation. */
  readonly holds: readonly string[];
}

const ORIENTATION = 0x0112;
/** Pointers to further directories: Exif, GPS, interoperability. */
const DIRECTORIES = new Set([0x8769, 0x8825, 0xa005]);

const WORDS: readonly (readonly [words: string, tags: readonly number[]])[] = [
  ['location', [0x8825]],
  ['serial numbers', [0xa431, 0xa435, 0xc62f]],
  ['names of people', [0x013b, 0x8298, 0xa430, 0x9c9d]],
  ['camera make and model', [0x010f, 0x0110, 0xa433, 0xa434]],
  ['date and time', [0x0132, 0x9003, 0x9004]],
  ['the camera maker’s own notes', [0x927c]],
  ['comments', [0x010e, 0x9286, 0x9c9b, 0x9c9c, 0x9c9e, 0x9c9f]],
  ['a small preview picture', [0x0201]],
];

/** More directories than any camera writes; a ring of them must not be followed for ever. */
const MOST_DIRECTORIES = 8;
const MOST_ENTRIES = 500;

/** Reads as much as makes sense; never throws. `bytes` begin with the TIFF header ('II' or 'MM'). */
export function readExif(bytes: Uint8Array): Exif {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const found = new Set<number>();
  let orientation = 1;
  const little = bytes[0] === 0x49 && bytes[1] === 0x49;
  const big = bytes[0] === 0x4d && bytes[1] === 0x4d;
  if (bytes.length >= 8 && (little || big)) {
    const u16 = (at: number) => view.getUint16(at, little);
    const u32 = (at: number) => view.getUint32(at, little);
    const waiting = [u32(4)];
    const seen = new Set<number>();
    while (waiting.length > 0 && seen.size < MOST_DIRECTORIES) {
      const start = waiting.pop()!;
      if (start === 0 || seen.has(start) || start + 2 > bytes.length) continue;
      seen.add(start);
      const count = Math.min(u16(start), MOST_ENTRIES);
      for (let index = 0; index < count; index++) {
        const at = start + 2 + 12 * index;
        if (at + 12 > bytes.length) break;
        const tag = u16(at);
        found.add(tag);
        if (tag === ORIENTATION && seen.size === 1) orientation = u16(at + 8);
        if (DIRECTORIES.has(tag)) waiting.push(u32(at + 8));
      }
      const next = start + 2 + 12 * count;
      if (next + 4 <= bytes.length) waiting.push(u32(next));
    }
  }
  if (!(orientation > 1 && orientation <= 8)) orientation = 1;
  const words = WORDS.filter(([, tags]) => tags.some((tag) => found.has(tag))).map(([each]) => each);
  const bare = orientationOnly(orientation);
  const ours = bytes.length === bare.length && bare.every((byte, at) => byte === bytes[at]);
  return { orientation, holds: ours ? [] : ['EXIF data', ...words] };
}

/** A TIFF block that says nothing but which way up the picture belongs. */
export const orientationOnly = (orientation: number): Uint8Array =>
  Uint8Array.of(
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8],
    ...[0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0],
    ...[0, 0, 0, 0],
  );

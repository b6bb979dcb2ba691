/** JPEG (ISO 10918-1 and JFIF 1.02) without what it says besides the picture. */
import { type Bare, joined, says, xmpHolds } from './photo-bytes.ts';
import { orientationOnly, readExif } from './photo-exif.ts';

const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const COM = 0xfe;
/** Frame headers: without one there is no picture. DHT, JPG and DAC share their range. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
/** Tables, frames, scans' parameters: all that decoding needs. */
const isPicture = (marker: number): boolean =>
  (marker >= 0xc0 && marker <= 0xcf) || (marker >= 0xdb && marker <= 0xdf);
const isAlone = (marker: number): boolean => marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);

export function stripJpeg(bytes: Uint8Array): Bare {
  const stripped = new Set<string>();
  const heads: Uint8Array[] = [];
  const body: Uint8Array[] = [];
  let orientation = 1;
  let frame = false;
  let scan = false;
  let at = 2;

  while (at < bytes.length) {
    if (bytes[at] !== 0xff) {
      at++;
      stripped.add('data between the parts of the picture');
      continue;
    }
    const marker = bytes[at + 1];
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === undefined || marker === EOI) {
      if (at + 2 < bytes.length) stripped.add('data after the end of the picture');
      break;
    }
    if (isAlone(marker)) {
      at += 2;
      continue;
    }
    if (at + 4 > bytes.length) break;
    const end = at + 2 + ((bytes[at + 2]! << 8) | bytes[at + 3]!);
    // A segment that ends before it begins, or after the file does, is where reading must stop.
    if (end < at + 4 || end > bytes.length) break;
    const segment = bytes.subarray(at, end);
    if (marker === SOS) {
      const next = endOfScan(bytes, end);
      body.push(bytes.subarray(at, next));
      scan = next > end;
      at = next;
      continue;
    }
    if (isPicture(marker)) {
      frame ||= isFrame(marker);
      body.push(segment);
    } else if (marker === 0xe0 && says(segment, 'JFIF\0', 4) && segment.length >= 18) {
      if (segment.length > 18) stripped.add('a small preview picture');
      heads.push(jfif(segment));
    } else if (marker === 0xe2 && says(segment, 'ICC_PROFILE\0', 4)) heads.push(segment);
    // Which way its colours are coded: without it some pictures turn out in wrong colours.
    else if (marker === 0xee && says(segment, 'Adobe', 4)) heads.push(segment);
    else if (marker === 0xe1 && says(segment, 'Exif\0', 4)) {
      const exif = readExif(segment.subarray(10));
      orientation = exif.orientation;
      for (const words of exif.holds) stripped.add(words);
    } else for (const words of nameOf(marker, segment)) stripped.add(words);
    at = end;
  }

  const upright = orientation === 1 ? [] : [exifSegment(orientation)];
  const first = heads[0]?.[1] === 0xe0 ? 1 : 0;
  const bare = joined([
    Uint8Array.of(0xff, SOI),
    ...heads.slice(0, first),
    ...upright,
    ...heads.slice(first),
    ...body,
    Uint8Array.of(0xff, EOI),
  ]);
  return { bytes: bare, orientation, stripped, picture: frame && scan };
}

/** Past the coded data of a scan: up to a marker that is neither a stuffed byte nor a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at < bytes.length; at++) {
    if (bytes[at] !== 0xff) continue;
    const next = bytes[at + 1];
    if (next === undefined) return at;
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

/** The JFIF header without its preview picture. */
function jfif(segment: Uint8Array): Uint8Array {
  const head = segment.slice(0, 18);
  head[3] = 16;
  head[2] = 0;
  head[16] = 0;
  head[17] = 0;
  return head;
}

function exifSegment(orientation: number): Uint8Array {
  const tiff = orientationOnly(orientation);
  const name = [0x45, 0x78, 0x69, 0x66, 0, 0];
  return Uint8Array.of(0xff, 0xe1, 0, 2 + name.length + tiff.length, ...name, ...tiff);
}

function nameOf(marker: number, segment: Uint8Array): string[] {
  if (marker === COM) return ['comments'];
  if (marker === 0xe1 && says(segment, 'http://ns.adobe.com/', 4)) return xmpHolds(segment);
  if (marker === 0xed) return ['IPTC data'];
  return ['data of the camera or a program'];
}

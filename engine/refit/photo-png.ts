/** PNG (ISO 15948, third edition) without what it says besides the picture. */
import { type Bare, joined, says, xmpHolds } from './photo-bytes.ts';
import { orientationOnly, readExif } from './photo-exif.ts';
import { crc32 } from './zip.ts';

/** The picture, its colours, its size on paper, its movement. */
const KEPT = new Set(
  'IHDR PLTE IDAT IEND tRNS gAMA cHRM sRGB iCCP cICP mDCV cLLI sBIT bKGD pHYs hIST sPLT acTL fcTL fdAT'.split(
    ' ',
  ),
);

export function stripPng(bytes: Uint8Array): Bare {
  const stripped = new Set<string>();
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const before: Uint8Array[] = [bytes.subarray(0, 8)];
  const after: Uint8Array[] = [];
  let orientation = 1;
  let head = false;
  let data = false;

  let at = 8;
  while (at + 8 < bytes.length) {
    const length = view.getUint32(at);
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    // Cut off in the middle: what came of the picture stays, anything else goes.
    const end = Math.min(at + 12 + length, bytes.length);
    const chunk = bytes.subarray(at, end);
    const content = bytes.subarray(at + 8, Math.min(at + 8 + length, bytes.length));
    at = end;
    if (KEPT.has(type)) {
      // The header comes first and has its fixed length, or this is no picture.
      if (!head && (type !== 'IHDR' || length !== 13)) break;
      head = true;
      data ||= type === 'IDAT' && content.length > 0;
      (data ? after : before).push(chunk);
      if (type === 'IEND') break;
    } else if (type === 'eXIf') {
      const exif = readExif(content);
      orientation = exif.orientation;
      for (const words of exif.holds) stripped.add(words);
    } else if (says(content, 'XML:com.adobe.xmp')) for (const words of xmpHolds(content)) stripped.add(words);
    else stripped.add(NAMES[type] ?? 'data of the camera or a program');
  }
  if (at < bytes.length) stripped.add('data after the end of the picture');
  const upright = orientation !== 1 ? [chunkOf('eXIf', orientationOnly(orientation))] : [];
  return { bytes: joined([...before, ...upright, ...after]), orientation, stripped, picture: head && data };
}

const NAMES: Readonly<Record<string, string>> = {
  tEXt: 'comments',
  zTXt: 'comments',
  iTXt: 'comments',
  tIME: 'date and time',
};

function chunkOf(type: string, content: Uint8Array): Uint8Array {
  const chunk = new Uint8Array(content.length + 12);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, content.length);
  for (let i = 0; i < 4; i++) chunk[4 + i] = type.charCodeAt(i);
  chunk.set(content, 8);
  view.setUint32(content.length + 8, crc32(chunk.subarray(4, content.length + 8)));
  return chunk;
}

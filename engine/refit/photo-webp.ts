/** WebP (RFC 9649) without what it says besides the picture. */
import { type Bare, joined, says, xmpHolds } from './photo-bytes.ts';
import { orientationOnly, readExif } from './photo-exif.ts';

const PICTURE = new Set(['VP8 ', 'VP8L', 'ANMF']);
const KEPT = new Set([...PICTURE, 'VP8X', 'ALPH', 'ANIM', 'ICCP']);
const IN_FRAME = new Set(['VP8 ', 'VP8L', 'ALPH']);
/** Flags of the extended header: EXIF and XMP follow. */
const EXIF_FLAG = 0x08;
const XMP_FLAG = 0x04;
/** Bytes of a frame before its chunks. */
const FRAME_HEAD = 16;

export function stripWebp(bytes: Uint8Array): Bare {
  const stripped = new Set<string>();
  const kept: Uint8Array[] = [];
  let orientation = 1;
  let picture = false;
  let extended: Uint8Array | undefined;
  const stated = 8 + new DataView(bytes.buffer, bytes.byteOffset).getUint32(4, true);
  if (stated < bytes.length) stripped.add('data after the end of the picture');

  for (const { type, content } of chunks(bytes.subarray(0, stated), 12)) {
    if (KEPT.has(type)) {
      picture ||= PICTURE.has(type) && content.length > 0;
      const made = chunkOf(type, type === 'ANMF' ? frame(content) : content);
      if (type === 'VP8X' && content.length >= 10) extended ??= made;
      kept.push(made);
    } else if (type === 'EXIF') {
      // Some writers put JPEG's 'Exif' before the block.
      const exif = readExif(says(content, 'Exif\0\0') ? content.subarray(6) : content);
      orientation = exif.orientation;
      for (const words of exif.holds) stripped.add(words);
    } else if (type === 'XMP ') for (const words of xmpHolds(content)) stripped.add(words);
    else stripped.add('data of the camera or a program');
  }
  if (extended) {
    extended[8] = extended[8]! & ~(EXIF_FLAG | XMP_FLAG);
    if (orientation !== 1) {
      extended[8] = extended[8]! | EXIF_FLAG;
      kept.push(chunkOf('EXIF', orientationOnly(orientation)));
    }
  }
  const body = joined(kept);
  const head = Uint8Array.from('RIFF\0\0\0\0WEBP', (letter) => letter.charCodeAt(0));
  new DataView(head.buffer).setUint32(4, body.length + 4, true);
  return { bytes: joined([head, body]), orientation, stripped, picture };
}

/** The chunks from a position on; one that is cut off comes as far as it goes. */
function* chunks(bytes: Uint8Array, from: number): Generator<{ type: string; content: Uint8Array }> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = from; at + 8 <= bytes.length; ) {
    const length = view.getUint32(at + 4, true);
    const type = String.fromCharCode(...bytes.subarray(at, at + 4));
    yield { type, content: bytes.subarray(at + 8, at + 8 + length) };
    at += 8 + length + (length % 2);
  }
}

/** A frame of an animation with nothing but its picture. */
function frame(content: Uint8Array): Uint8Array {
  const inner = [...chunks(content, FRAME_HEAD)].filter(({ type }) => IN_FRAME.has(type));
  return joined([content.subarray(0, FRAME_HEAD), ...inner.map((each) => chunkOf(each.type, each.content))]);
}

function chunkOf(type: string, content: Uint8Array): Uint8Array {
  const chunk = new Uint8Array(8 + content.length + (content.length % 2));
  for (let i = 0; i < 4; i++) chunk[i] = type.charCodeAt(i);
  new DataView(chunk.buffer).setUint32(4, content.length, true);
  chunk.set(content, 8);
  return chunk;
}

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  exifBlock,
  exifSegment,
  flat,
  jpeg,
  png,
  pngChunk,
  segment,
  textSegment,
  webp,
  webpChunk,
} from './photo.fixture.ts';
import { orientationOnly, readExif } from './photo-exif.ts';
import { type StrippedPhoto, stripPhoto } from './photo-strip.ts';

const bare = (bytes: Uint8Array): StrippedPhoto => {
  const result = stripPhoto(bytes);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};
const refusal = (bytes: Uint8Array, name?: string): string => {
  const result = stripPhoto(bytes, name);
  return result.ok ? 'accepted' : result.problem.message;
};
const holds = (bytes: Uint8Array, what: string | readonly number[]): boolean =>
  Buffer.from(bytes).includes(typeof what === 'string' ? what : Buffer.from(what));
/** The latitude of the fixture. */
const LATITUDE = [0, 0, 0, 48, 0, 0, 0, 1, 0, 0, 0, 12];
const ICC = segment(0xe2, Buffer.from('ICC_PROFILE\0\x01\x01profile'));
const XMP = textSegment(0xe1, 'http://ns.adobe.com/xap/1.0/\0<exif:GPSLatitude>48,12N</exif:GPSLatitude>');

describe('what a photo gives away', () => {
  test('derived: a JPEG keeps its picture, its colours and which way up it belongs, and nothing else', () => {
    const photo = jpeg(
      [exifSegment(6), XMP, textSegment(0xed, 'a caption'), textSegment(0xfe, 'left gate'), ICC],
      [1, 2, 3],
    );
    const { kind, bytes, orientation, stripped } = bare(photo);
    expect([kind, orientation]).toEqual(['jpeg', 6]);
    expect(holds(photo, LATITUDE)).toBe(true);
    for (const secret of [LATITUDE, 'S9', 'abc', 'GPSLatitude', 'a caption', 'left gate'])
      expect(holds(bytes, secret), String(secret)).toBe(false);
    expect(holds(bytes, 'ICC_PROFILE')).toBe(true);
    expect(stripped).toEqual([
      'EXIF data',
      'location',
      'serial numbers',
      'camera make and model',
      'date and time',
      'XMP data',
      'IPTC data',
      'comments',
      'data after the end of the picture',
    ]);
    // What is left is the plain picture with the profile and an orientation, in this order.
    const upright = segment(0xe1, flat(Buffer.from('Exif\0\0'), orientationOnly(6)));
    expect(bytes).toEqual(jpeg([upright, ICC]));
  });

  test('derived: a PNG loses its texts, its time and its EXIF block', () => {
    const photo = png([
      pngChunk('gAMA', [0, 0, 0xb1, 0x8f]),
      pngChunk('eXIf', exifBlock(8)),
      pngChunk('tEXt', Buffer.from('Author\0somebody')),
      pngChunk('iTXt', Buffer.from('XML:com.adobe.xmp\0\0\0\0\0<aux:SerialNumber>77</aux:SerialNumber>')),
      pngChunk('tIME', [7, 0xea, 1, 2, 3, 4, 5]),
      pngChunk('prVt', [1]),
    ]);
    const { kind, bytes, orientation, stripped } = bare(photo);
    expect([kind, orientation]).toEqual(['png', 8]);
    expect(bytes).toEqual(png([pngChunk('gAMA', [0, 0, 0xb1, 0x8f]), pngChunk('eXIf', orientationOnly(8))]));
    expect(stripped).toEqual([
      'EXIF data',
      'location',
      'serial numbers',
      'camera make and model',
      'date and time',
      'comments',
      'XMP data',
      'data of the camera or a program',
    ]);
  });

  test('derived: a WebP loses EXIF and XMP, and its header no longer promises them', () => {
    const photo = webp([
      webpChunk('ICCP', [1, 2, 3]),
      webpChunk('EXIF', exifBlock(1)),
      webpChunk('XMP ', Buffer.from('<x/>')),
    ]);
    const { kind, bytes, orientation, stripped } = bare(photo);
    expect([kind, orientation]).toEqual(['webp', 1]);
    expect(stripped).toContain('location');
    expect(stripped).toContain('XMP data');
    const plain = webp([webpChunk('ICCP', [1, 2, 3])]);
    plain[20] = 0;
    expect(bytes).toEqual(plain);
    const turned = bare(webp([webpChunk('EXIF', exifBlock(3))]));
    expect(turned.orientation).toBe(3);
    expect(turned.bytes[20]).toBe(0x08);
    expect(holds(turned.bytes, LATITUDE)).toBe(false);
  });

  test('derived: stripping twice is stripping once, and the second time finds nothing', () => {
    for (const photo of [
      jpeg([exifSegment(6), ICC]),
      jpeg(),
      png([pngChunk('eXIf', exifBlock(5))]),
      webp([webpChunk('EXIF', exifBlock(6))]),
    ]) {
      const once = bare(photo);
      expect(bare(once.bytes)).toEqual({ ...once, stripped: [] });
    }
  });

  test('derived: an orientation in either byte order is read; one that makes no sense is upright', () => {
    expect(readExif(orientationOnly(6)).orientation).toBe(6);
    const little = flat([
      0x49, 0x49, 42, 0, 8, 0, 0, 0, 1, 0, 0x12, 1, 3, 0, 1, 0, 0, 0, 7, 0, 0, 0, 0, 0, 0, 0,
    ]);
    expect(readExif(little).orientation).toBe(7);
    expect(readExif(orientationOnly(9)).orientation).toBe(1);
    expect(readExif(Uint8Array.of(1, 2, 3)).orientation).toBe(1);
  });
});

describe('what is no photo', () => {
  test('derived: is refused in words', () => {
    expect(refusal(Buffer.from('just a note'), 'plate.jpg')).toBe(
      'plate.jpg is not a JPEG, PNG or WebP picture.',
    );
    expect(refusal(flat([0, 0, 0, 24], Buffer.from('ftypheic')))).toMatch(
      /HEIF .* set the camera to save JPEG/,
    );
    expect(refusal(new Uint8Array())).toMatch(/is not a JPEG/);
    expect(refusal(png().subarray(0, 8))).toMatch(/there is no picture in it; it is damaged/);
    expect(refusal(Uint8Array.of(0xff, 0xd8, 0xff, 0xd9))).toMatch(/there is no picture/);
  });

  test('derived: more than a photo may have is refused with its size and the limit', () => {
    expect(refusal(new Uint8Array(60_000_000), 'hall.png')).toBe(
      'hall.png has 60 MB; a photo may have 8 MB at most. Make it smaller.',
    );
  });
});

describe('damaged and hostile files', () => {
  test('derived: cut off anywhere, a photo is bare or refused, never told with what was in it', () => {
    for (const photo of [
      jpeg([exifSegment(6), XMP, ICC]),
      png([pngChunk('eXIf', exifBlock(8)), pngChunk('tEXt', Buffer.from('Author\0somebody'))]),
      webp([webpChunk('EXIF', exifBlock(3))]),
    ]) {
      for (let length = 0; length <= photo.length; length++) {
        const result = stripPhoto(photo.subarray(0, length));
        if (!result.ok) continue;
        expect(holds(result.value.bytes, LATITUDE)).toBe(false);
        expect(holds(result.value.bytes, 'somebody')).toBe(false);
      }
    }
    const cut = bare(jpeg().subarray(0, -1));
    expect([...cut.bytes.slice(-2)]).toEqual([0xff, 0xd9]);
  });

  test('derived: lengths that point behind the end, directories in a ring, any bytes at all', () => {
    const ring = exifBlock(6);
    new DataView(ring.buffer).setUint32(58, 8);
    expect(readExif(ring).orientation).toBe(6);
    const far = png([pngChunk('tEXt', Buffer.from('a\0b'))]);
    far.set([0xff, 0xff, 0xff, 0xff], 33);
    expect(refusal(far)).toMatch(/no picture/);
    const starts = fc.constantFrom(
      Uint8Array.of(0xff, 0xd8, 0xff),
      Uint8Array.from(png().subarray(0, 8)),
      Uint8Array.from(webp().subarray(0, 12)),
    );
    const pieces = fc.array(
      fc.oneof(
        fc.uint8Array({ maxLength: 12 }),
        fc.constant(Uint8Array.of(0xff, 0xda, 0, 2)),
        fc.constant(exifSegment(6)),
        fc.constant(pngChunk('eXIf', exifBlock(6))),
        fc.constant(webpChunk('ANMF', new Uint8Array(17))),
        fc.constant(jpeg().subarray(2)),
        fc.constant(png().subarray(8)),
        fc.constant(webp().subarray(12)),
      ),
      { maxLength: 6 },
    );
    let taken = 0;
    fc.assert(
      fc.property(starts, pieces, (start, rest) => {
        const result = stripPhoto(flat(start, ...rest));
        if (!result.ok) return;
        taken++;
        expect(bare(result.value.bytes).bytes).toEqual(result.value.bytes);
      }),
      { numRuns: 2000, seed: 3 },
    );
    expect(taken).toBeGreaterThan(200);
  });
});

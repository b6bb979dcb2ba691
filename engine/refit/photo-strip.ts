/**
 * Takes out of a photo what it says besides the picture: where it was taken, with which camera, when, by whom.
 * Only the picture, which way up it belongs and its colour profile stay. Pure, on bytes; never throws.
 */
import { ok, type Result, refuse } from '../quantity/types.ts';
import { LIMITS } from './limits.ts';
import { photoKind } from './photo.ts';
import { stripJpeg } from './photo-jpeg.ts';
import { stripPng } from './photo-png.ts';
import { stripWebp } from './photo-webp.ts';

export interface StrippedPhoto {
  readonly kind: 'jpeg' | 'png' | 'webp';
  readonly bytes: Uint8Array;
  /** 1 upright … 8, as EXIF numbers them. */
  readonly orientation: number;
  /** What was taken out, in words: 'location', 'serial numbers', 'date and time'. */
  readonly stripped: readonly string[];
}

const STRIP = { jpeg: stripJpeg, png: stripPng, webp: stripWebp };

/** The photo with nothing in it but the picture; `name` only serves the sentence of a refusal. */
export function stripPhoto(bytes: Uint8Array, name = 'This file'): Result<StrippedPhoto> {
  const called = name.slice(0, 60);
  if (bytes.length > LIMITS.photo)
    return refuse({
      code: 'too-long',
      message: `${called} has ${megabytes(bytes.length)}; a photo may have ${megabytes(LIMITS.photo)} at most. Make it smaller.`,
      where: called,
    });
  const kind = photoKind(bytes);
  if (kind === undefined)
    return refuse({
      code: 'malformed',
      message: `${called} is not a JPEG, PNG or WebP picture${isHeif(bytes) ? ' but a HEIF one (HEIC, AVIF), which few programs open; set the camera to save JPEG' : ''}.`,
      where: called,
    });
  const bare = STRIP[kind](bytes);
  if (!bare.picture)
    return refuse({
      code: 'malformed',
      message: `${called} begins like a ${kind.toUpperCase()} picture, but there is no picture in it; it is damaged.`,
      where: called,
    });
  return ok({ kind, bytes: bare.bytes, orientation: bare.orientation, stripped: [...bare.stripped] });
}

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1).replace(/\.0$/, '')} MB`;

/** ISO 14496-12: a box of the type 'ftyp' first. */
const isHeif = (bytes: Uint8Array): boolean =>
  [0x66, 0x74, 0x79, 0x70].every((byte, i) => bytes[4 + i] === byte);

/** Photos on their way to the server: large ones are made smaller here first, upright as they were taken. */
import { LIMITS } from '../engine/refit/limits.ts';
import { photoKind } from '../engine/refit/photo.ts';

/** Above this a photo is made smaller: a plate is as readable, and a refit holds more of them. */
const LARGE = 4_000_000;
/** Pixels of the longer side to try, one after another. */
const SIDES = [3000, 2200, 1600, 1000];
const QUALITY = 0.85;

export interface ReadyPhoto {
  readonly bytes: Blob;
  readonly ending: 'jpg' | 'png' | 'webp';
  /** 'It had 60 MB and was made smaller to 1.2 MB.'; empty where it is sent as it is. */
  readonly says: string;
}

/** Throws an Error with a sentence where it is no picture that can be sent. */
export async function readyPhoto(file: Blob): Promise<ReadyPhoto> {
  if (file.size > LARGE) return shrink(file);
  const kind = photoKind(new Uint8Array(await file.slice(0, 16).arrayBuffer()));
  // What is no picture is refused by the server in its own words.
  return { bytes: file, ending: kind === 'png' || kind === 'webp' ? kind : 'jpg', says: '' };
}

async function shrink(file: Blob): Promise<ReadyPhoto> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    throw new Error(
      `This file has ${megabytes(file.size)} and this browser cannot open it as a picture, so it could not be made smaller. Fettle takes JPEG, PNG and WebP up to ${megabytes(LIMITS.photo)}.`,
    );
  }
  try {
    for (const side of SIDES) {
      const bytes = await drawn(picture, Math.min(1, side / Math.max(picture.width, picture.height)));
      if (bytes && bytes.size <= LARGE)
        return {
          bytes,
          ending: 'jpg',
          says: `It had ${megabytes(file.size)} and was made smaller to ${megabytes(bytes.size)}.`,
        };
    }
  } finally {
    picture.close();
  }
  throw new Error(`This picture has ${megabytes(file.size)} and could not be made small enough.`);
}

function drawn(picture: ImageBitmap, scale: number): Promise<Blob | null> {
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const pen = canvas.getContext('2d');
  if (!pen) return Promise.resolve(null);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return new Promise((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
}

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1).replace(/\.0$/, '')} MB`;

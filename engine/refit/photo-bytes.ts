/** What the readers of the kinds of photo share. */

/** What a reader of one kind of file gives back. */
export interface Bare {
  readonly bytes: Uint8Array;
  readonly orientation: number;
  /** In words, each once; empty where nothing had to go. */
  readonly stripped: ReadonlySet<string>;
  /** Whether there is any picture in it. */
  readonly picture: boolean;
}

/** Several pieces as one. */
export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

/** Whether bytes at a position are the letters of a text in ASCII. */
export const says = (bytes: Uint8Array, text: string, at = 0): boolean =>
  [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));

/** What an XMP packet (ISO 16684-1) gives away besides itself. */
export function xmpHolds(bytes: Uint8Array): string[] {
  const text = new TextDecoder('latin1').decode(bytes.subarray(0, 200_000));
  return [
    'XMP data',
    ...(/GPS(Latitude|Longitude|Position)/i.test(text) ? ['location'] : []),
    ...(/SerialNumber/i.test(text) ? ['serial numbers'] : []),
  ];
}

/** Which files count as photos: by name and by their first bytes, so that nothing else travels as one. */
const NAME = /^[a-z0-9][a-z0-9._-]{0,80}\.(jpg|jpeg|png|webp)$/i;

/** What is wrong with a photo's name, in words that follow it; undefined when nothing is. */
export function photoNameFault(name: string): string | undefined {
  return NAME.test(name) && !name.includes('..')
    ? undefined
    : 'is no name for a photo; use letters, digits, dots, hyphens and underscores, ending in .jpg, .png or .webp';
}

/** The kind of picture the bytes begin like (ISO 10918-1, PNG 1.2 and RIFF signatures), or undefined. */
export function photoKind(bytes: Uint8Array): 'jpeg' | 'png' | 'webp' | undefined {
  const begins = (signature: readonly number[], at = 0) =>
    signature.every((byte, i) => bytes[at + i] === byte);
  if (begins([0xff, 0xd8, 0xff])) return 'jpeg';
  if (begins([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'png';
  if (begins([0x52, 0x49, 0x46, 0x46]) && begins([0x57, 0x45, 0x42, 0x50], 8)) return 'webp';
  return undefined;
}

/** What keeps these bytes from being a photo of this name; undefined when nothing does. */
export function photoFault(name: string, bytes: Uint8Array): string | undefined {
  const fault = photoNameFault(name);
  if (fault !== undefined) return fault;
  const kind = photoKind(bytes);
  if (kind === undefined) return 'is not a JPEG, PNG or WebP picture';
  const ending = name.slice(name.lastIndexOf('.') + 1).toLowerCase();
  return (ending === 'jpg' ? 'jpeg' : ending) === kind
    ? undefined
    : `is a ${kind} picture, so its name must end in .${kind === 'jpeg' ? 'jpg' : kind}`;
}

/** The fields of a tag in the order of the hand: read the sleeve, see where it sits, follow it. */
import type { Tag } from '../../../engine/refit/types.ts';

export type TagText = 'tag' | 'cable' | 'here' | 'there' | 'otherTag' | 'colour' | 'signal';

export const TAG_FIELDS: Readonly<Record<TagText, { readonly label: string; readonly like: string }>> = {
  tag: { label: 'Tag on the sleeve', like: '12' },
  cable: { label: 'Cable', like: 'W4' },
  here: { label: 'Here: part and terminal', like: 'X motor, U' },
  there: { label: 'There: where the other end goes', like: 'X drive, U1' },
  colour: { label: 'Colour', like: 'brown' },
  otherTag: { label: 'Tag on the other end, if another', like: '12b' },
  signal: { label: 'What it carries', like: 'motor phase U' },
};

export const TAG_NAMES = Object.keys(TAG_FIELDS) as readonly TagText[];

export const ENDS: Readonly<Record<Tag['state'], string>> = {
  untagged: 'no end',
  'one-end': 'one end',
  'both-ends': 'both ends',
};

/** '12' after '11', 'W4-08' after 'W4-07'; nothing after what ends in no number. */
export function nextTag(tag: string): string {
  const [, stem, digits] = /^(.*?)(\d{1,9})$/.exec(tag) ?? [];
  return digits === undefined ? '' : stem + String(Number(digits) + 1).padStart(digits.length, '0');
}

/** The list of tagged conductor ends as CSV (RFC 4180), for a spreadsheet or a label printer. */
import { csvOf } from './csv.ts';
import { TAG_STATE } from './say-survey.ts';
import type { Tag } from './types.ts';

const COLUMNS: readonly (readonly [title: string, of: (tag: Tag) => string])[] = [
  ['Tag', ({ tag }) => tag],
  ['Cable', ({ cable }) => cable],
  ['Here', ({ here }) => here],
  ['There', ({ there }) => there],
  ['Tag there', ({ otherTag }) => otherTag],
  ['Colour', ({ colour }) => colour],
  ['Signal', ({ signal }) => signal],
  ['State', ({ state }) => TAG_STATE[state]],
  ['Note', ({ note }) => note],
  ['Photos', ({ photos }) => photos.join(' ')],
];

export const tagsCsv = (tags: readonly Tag[]): string =>
  csvOf([COLUMNS.map(([title]) => title), ...tags.map((tag) => COLUMNS.map(([, of]) => of(tag)))]);

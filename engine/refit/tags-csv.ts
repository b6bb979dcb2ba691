/** The list of tagged conductor ends as CSV (RFC 4180), for a spreadsheet or a label printer. */
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

/** With a mark at the front by which spreadsheets see that it is UTF-8. */
export function tagsCsv(tags: readonly Tag[]): string {
  const rows = [COLUMNS.map(([title]) => title), ...tags.map((tag) => COLUMNS.map(([, of]) => of(tag)))];
  return `\ufeff${rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')}`;
}

function cell(text: string): string {
  // A spreadsheet would take these for formulas and run them; tags like -K1 are not meant so.
  const tame = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(tame) ? `"${tame.replaceAll('"', '""')}"` : tame;
}

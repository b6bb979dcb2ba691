/** Text in the width of a terminal. */

/** Colour codes and marks that stand over another letter take no room. */
const NO_ROOM = /\p{Cc}\[\d+m|\p{Mn}/gu;

/** Columns a text takes on a terminal. */
export const widthOf = (text: string): number => [...text.replace(NO_ROOM, '')].length;

export const padEnd = (text: string, width: number): string =>
  text + ' '.repeat(Math.max(0, width - widthOf(text)));
export const padStart = (text: string, width: number): string =>
  ' '.repeat(Math.max(0, width - widthOf(text))) + text;

/** Below this a line would hold hardly a word. */
const NARROWEST = 20;
/** Beyond this a line of prose is hard to read. */
const WIDEST = 100;

/**
 * Lines no wider than `width` where words allow, each after `indent`; later lines after `hang`. Line breaks in the text
 * stay.
 */
export function wrap(text: string, width: number, indent = '', hang = indent): string[] {
  const room = Math.min(WIDEST, Math.max(NARROWEST, width));
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = lines.length === 0 ? indent : hang;
    let empty = true;
    for (const word of paragraph.split(' ').filter((each) => each !== '')) {
      if (!empty && widthOf(line) + 1 + widthOf(word) > room) {
        lines.push(line);
        line = hang;
        empty = true;
      }
      line += empty ? word : ` ${word}`;
      empty = false;
    }
    lines.push(empty ? '' : line);
  }
  return lines;
}

export const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** A word of a command line as a shell wants it. */
export const quoted = (word: string): string =>
  /^[\w./@=+-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;

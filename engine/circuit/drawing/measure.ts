/** How much room text takes, on the safe side: the browser's own letters are narrower. */

/** Heights of letters in units of the drawing; four units are a millimetre on A3. */
export const TEXT = { title: 11, small: 9 } as const;
/** Of a letter's height: wider than the mean of any usual sans-serif face. */
const WIDEST = 0.62;
/** Longest text that is written out. */
export const LONGEST = 26;

export const shorten = (text: string, most = LONGEST): string =>
  [...text].length > most ? `${[...text].slice(0, most - 1).join('')}…` : text;

export const widthOf = (text: string, size: number): number => Math.ceil([...text].length * size * WIDEST);

/** Most lines of a name; what is longer still is no name. */
const LINES = 4;

/** A text over several lines, broken between words; a word longer than a line is broken within. */
export function wrapped(text: string, most = LONGEST): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line && [...line, ...word].length + 1 <= most) line = `${line} ${word}`;
    else {
      if (line) lines.push(line);
      let rest = [...word];
      for (; rest.length > most; rest = rest.slice(most)) lines.push(rest.slice(0, most).join(''));
      line = rest.join('');
    }
  }
  if (line) lines.push(line);
  return lines.length > LINES
    ? [
        ...lines.slice(0, LINES - 1),
        shorten(`${lines[LINES - 1]}……`, Math.min(most, [...lines[LINES - 1]!].length + 1)),
      ]
    : lines;
}

/** Longest mark of a terminal that is written out. */
export const MARK_LETTERS = 16;

/** The mark of a terminal without its device: 'A1' of 'K1.A1'. */
export const markOf = (terminal: string): string => terminal.slice(terminal.indexOf('.') + 1);

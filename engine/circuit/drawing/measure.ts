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

/** Marks of terminals without their device: 'A1' of 'K1.A1'. */
export const markOf = (terminal: string): string => terminal.slice(terminal.indexOf('.') + 1);
export const deviceOf = (terminal: string): string => terminal.slice(0, terminal.indexOf('.'));

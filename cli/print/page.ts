/** A page on a terminal: wrapped lines, colour only where it is wanted. */
import type { Io } from '../io.ts';
import { wrap } from './text.ts';

const CODES = {
  bold: [1, 22],
  dim: [2, 22],
  red: [31, 39],
  yellow: [33, 39],
  green: [32, 39],
  cyan: [36, 39],
};
export type Style = keyof typeof CODES;

export interface Page {
  readonly width: number;
  readonly paint: (style: Style, text: string) => string;
  /** One line as it is. */
  readonly line: (text?: string) => void;
  /** Wrapped text. */
  readonly prose: (text: string, indent?: string, hang?: string) => void;
  readonly heading: (text: string) => void;
}

export function pageOn(io: Io): Page {
  const colour = io.terminal && !io.env.NO_COLOR && io.env.TERM !== 'dumb';
  const paint: Page['paint'] = (style, text) => {
    if (!colour || text === '') return text;
    const [on, off] = CODES[style];
    return `\x1b[${on}m${text}\x1b[${off}m`;
  };
  const line: Page['line'] = (text = '') => io.out(`${text.trimEnd()}\n`);
  const prose: Page['prose'] = (text, indent, hang) => {
    for (const each of wrap(text, io.columns, indent, hang)) line(each);
  };
  return {
    width: io.columns,
    paint,
    line,
    prose,
    heading: (text) => {
      line();
      for (const each of wrap(text, io.columns)) line(paint('bold', each));
    },
  };
}

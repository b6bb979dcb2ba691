/** Graphical symbols after IEC 60617, drawn by us. Lines take the colour of the text around them. */
import { type Element, element } from '../../../refit/sheets/node.ts';

/**
 * A symbol, drawn lying: a pole runs from (0, 0) to (WIDE, 0), plus above; a box symbol stands in a square of GLYPH
 * around (0, 0).
 */
export interface SymbolSpec {
  /** In words, for the legend. */
  readonly name: string;
  readonly form: 'pole' | 'box' | 'point';
  readonly draw: () => readonly Element[];
  /** Joins the poles of one device: 'link' by a dashed line, as one movement moves them all. */
  readonly linked?: boolean;
}

/** Length of a pole from terminal to terminal. */
export const WIDE = 40;
/** Side of the square of a box symbol. */
export const GLYPH = 30;

export const path = (d: string, more: Readonly<Record<string, string>> = {}): Element =>
  element('path', { class: 'line', d, ...more });
export const circle = (x: number, y: number, r: number): Element =>
  element('circle', { class: 'line', cx: String(x), cy: String(y), r: String(r) });
export const dot = (x: number, y: number): Element =>
  element('circle', { class: 'solid', cx: String(x), cy: String(y), r: '1.6' });
export const solid = (d: string): Element => element('path', { class: 'solid', d });
export const dashed = (d: string): Element => element('path', { class: 'line dashed', d });
export const letters = (x: number, y: number, text: string): Element =>
  element('text', { class: 'letters', x: String(x), y: String(y), 'text-anchor': 'middle' }, text);

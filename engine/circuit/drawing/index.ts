/** Diagrams of the wiring, drawn by the program. */
export { legend, legendFile, MADE_BY, svgFile, symbolsOf } from './file.ts';
export { type Diagrams, type Layouter, type LayoutOptions, layOut } from './layout.ts';
export { type Badness, type Marks, marksOf } from './marks.ts';
export { type PictureOptions, pictureOfSheet, sheetSize, sheetTitle } from './picture.ts';
export { planOf } from './plan.ts';
export { DIAGRAM_STYLE } from './style.ts';
export { symbolOf, symbolPicture } from './symbol-of.ts';
export { SYMBOLS, type SymbolName } from './symbols/index.ts';
export type { DrawnDevice, DrawnWire, Plan, Sheet, TerminalGroup } from './types.ts';

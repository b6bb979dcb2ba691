/** The survey on paper. */
export { surveyDocument } from './document.ts';
export type { Element, Node } from './node.ts';
export { SHEET_STYLE } from './style.ts';
export { surveySheets } from './survey-sheets.ts';

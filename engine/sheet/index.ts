export { defineSheet, type SheetSpec } from './define.ts';
export { SheetError } from './errors.ts';
export { evaluate } from './evaluate.ts';
export { type Gradient, gradient } from './gradient.ts';
export { type LaneGiven, type LaneOptions, type LaneResult, lanes, lanesInPieces } from './lanes.ts';
export { constant, curve, formula, input, procedure } from './symbols.ts';
export type * from './types.ts';

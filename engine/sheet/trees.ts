/** The parsed trees of each sheet, kept beside it so that a formula is parsed once. */
import type { Unit } from '../quantity/types.ts';
import type { Expression } from './expression.ts';
import type { Sheet } from './types.ts';

export interface SheetTrees {
  readonly expressions: ReadonlyMap<string, Expression>;
  readonly units: ReadonlyMap<string, Unit>;
}

const TREES = new WeakMap<object, SheetTrees>();

export const keepTrees = (sheet: Sheet, trees: SheetTrees): void => {
  TREES.set(sheet, trees);
};

export function treesOf(sheet: Sheet): SheetTrees {
  const trees = TREES.get(sheet);
  if (!trees) throw new TypeError(`sheet '${sheet.id}' was not made by defineSheet`);
  return trees;
}

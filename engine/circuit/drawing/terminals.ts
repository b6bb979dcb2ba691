/** Terminals of a symbol, in the order it shows them. */
import type { Piece, TerminalGroup } from './types.ts';

export const terminalsIn = (group: TerminalGroup): readonly string[] =>
  'poles' in group ? group.poles.flat() : 'box' in group ? group.box : group.points;

export const terminalsOf = ({ group }: Piece): readonly string[] => terminalsIn(group);

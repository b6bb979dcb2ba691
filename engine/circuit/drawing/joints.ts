/** Terminals of strips that need no symbol of their own in a diagram: they are drawn at the ends of their wires. */
import { terminalsOf } from './terminals.ts';
import type { DrawnWire, Piece } from './types.ts';

/**
 * A strip's terminal none of whose wires is drawn as a line, and whose wires in this circuit all end on symbols that
 * stand there: each of those shows it in line with the wire.
 */
export function looseJoints(pieces: readonly Piece[], wires: readonly DrawnWire[]): ReadonlySet<string> {
  const isJoint = new Set(
    pieces.flatMap((piece) =>
      'points' in piece.group && piece.group.symbol === 'terminal' ? terminalsOf(piece) : [],
    ),
  );
  const shown = new Set(pieces.flatMap(terminalsOf));
  const loose = new Set(isJoint);
  for (const { from, to, rail } of wires)
    for (const [own, other] of [
      [from, to],
      [to, from],
    ] as const)
      if (isJoint.has(own) && (rail === null || isJoint.has(other) || !shown.has(other))) loose.delete(own);
  return loose;
}

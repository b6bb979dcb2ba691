/** A move as it is typed. */
import { MOVES, readMoveField } from '../../../engine/simulate/index.ts';
import type { Move, MoveKind } from './parts.ts';

export type Fields = Readonly<Record<string, string>>;

export type Typed = { readonly move: Move } | { readonly fault: Readonly<Record<string, string>> };

/** The move with its texts read, or what is wrong with one of them. */
export function readMove(kind: MoveKind, fields: Fields): Typed {
  const fault: Record<string, string> = {};
  const values: Record<string, number | string> = {};
  for (const [key, field] of Object.entries(MOVES[kind].fields)) {
    const read = readMoveField(field, fields[key] ?? '');
    if (read.ok) values[key] = read.value;
    else fault[key] = read.problem.message;
  }
  return Object.keys(fault).length > 0 ? { fault } : { move: { kind, ...values } as unknown as Move };
}

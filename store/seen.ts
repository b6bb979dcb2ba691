/** How far each person has read a refit's history. */
import { ok, type Result, refuse } from '../engine/quantity/types.ts';
import { checkShape, whoSchema } from '../engine/refit/index.ts';
import type { Database } from './database.ts';

/** Number of the newest edit this person has seen; 0 for one who has seen none. */
export const lastSeen = (database: Database, id: string, who: string): number =>
  database.one<{ number: number }>('SELECT number FROM seen WHERE refit = ? AND who = ?', id, who)?.number ??
  0;

/** Seen up to `number`, at most `head`; what was seen stays seen. */
export function markSeen(
  database: Database,
  id: string,
  who: string,
  number: number,
  head: number,
): Result<number> {
  const name = checkShape(whoSchema, who, 'who');
  if (!name.ok) return name;
  if (!Number.isInteger(number) || number < 0 || number > head)
    return refuse({
      code: 'out-of-domain',
      message: `number must be a whole number from 0 to ${head}.`,
      where: 'number',
    });
  database.transact(() =>
    database.run(
      'INSERT INTO seen VALUES (?, ?, ?) ON CONFLICT DO UPDATE SET number = max(number, excluded.number)',
      ...[id, who, number],
    ),
  );
  return ok(lastSeen(database, id, who));
}

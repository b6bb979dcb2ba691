/** Readings that do not belong to the others, as questions to the person; nothing is thrown out here. */
import { questionReadings } from '../metrology/index.ts';
import type { Question } from './types.ts';

interface Row {
  readonly row: number;
  readonly value: number;
}

/** Chance alone makes one set in fifty ask. Fewer than five rows cannot tell an odd one. */
const LEVEL = 0.98;
const FEWEST = 5;

/** Asks about the row whose value fits the others least, where chance does not explain it. `name` says what was compared. */
export function oddRows(rows: readonly Row[], name: string): Question[] {
  if (rows.length < FEWEST) return [];
  const found = questionReadings(
    rows.map(({ value }) => value),
    { level: LEVEL },
  );
  if (!found) return [];
  const { row } = rows[found.index]!;
  return [{ row, sentence: found.why.replace(/^Reading \d+/, `Row ${row} (${name})`) }];
}

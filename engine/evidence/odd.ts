/** Readings that do not belong to the others, as questions to the person; nothing is thrown out here. */

import { studentProbability, summarise } from '../metrology/index.ts';
import { formatQuantity } from '../quantity/index.ts';
import type { Question } from './types.ts';

interface Row {
  readonly row: number;
  readonly value: number;
}

/** A row is asked about when chance would make one so far off less often than once in this many sets of readings. */
const ONCE_IN = 50;

/**
 * Compares each row with all others: Student's t of the row against their mean and scatter, taken n times since any row could
 * have been the odd one (the outlier test of externally studentised residuals). Fewer than five rows cannot tell.
 */
export function oddRows(rows: readonly Row[], name: string, unit: string): Question[] {
  const n = rows.length;
  if (n < 5) return [];
  return rows.flatMap(({ row, value }, at) => {
    const { mean, deviation } = summarise(rows.filter((_, other) => other !== at).map((each) => each.value));
    const away = Math.abs(value - mean);
    if (away <= 1e-12 * Math.max(Math.abs(mean), Math.abs(value))) return [];
    const chance = deviation === 0 ? 0 : n * (1 - inside(away / (deviation * Math.sqrt(n / (n - 1))), n - 2));
    if (chance > 1 / ONCE_IN) return [];
    const others = formatQuantity(mean, unit, { digits: 4 });
    return [
      {
        row,
        sentence: `Row ${row}: ${name} ${formatQuantity(value, unit, { digits: 4 })}, where the others give ${others} with little scatter. Was it misread or miswritten? Read it again, or set it aside and write down why.`,
      },
    ];
  });
}

/** Probability inside ±t. */
const inside = (t: number, freedom: number): number => 2 * studentProbability(t, freedom) - 1;

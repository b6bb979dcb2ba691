/** The last digit of readings that were written without the zeros at their end. */
import { limitsOf } from './accuracy.ts';
import type { Entries, Row } from './reader.ts';
import type { Column } from './types.ts';

/**
 * People drop zeros at the end: 0.03 among 0.041 and 0.029 was read to three places too. A reading has the finest last digit
 * of all that are not much smaller than it; smaller ones may have been read on a finer range.
 */
export function withDigits(
  columns: readonly Column[],
  rows: ReadonlyMap<number, Row>,
  { accuracies }: Entries,
): ReadonlyMap<number, Row> {
  for (const { key } of columns) {
    const readings = [...rows.values()].flatMap(({ values }) => values.get(key) ?? []);
    for (const reading of readings) {
      const like = readings.filter(
        ({ value, digit }) => digit > 0 && Math.abs(value) >= Math.abs(reading.value) / 2,
      );
      const digit = Math.min(...like.map((each) => each.digit));
      if (!Number.isFinite(digit) || digit === reading.digit) continue;
      const accuracy = accuracies.get(key);
      const parts = reading.parts.map((part) => {
        if (part.kind === 'resolution') return { ...part, amount: digit / Math.sqrt(12) };
        if (part.id !== accuracy?.id) return part;
        return { ...part, amount: limitsOf(accuracy.of, reading.value, digit) / Math.sqrt(3) };
      });
      rows.get(reading.row)!.values.set(key, { ...reading, digit, parts });
    }
  }
  return rows;
}

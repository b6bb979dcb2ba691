/** The nearest known spelling to one that was not understood. */
import { RUN_TOGETHER, spellings } from './unit-table.ts';

function distance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}

/** The known spelling with the fewest changed letters, at most two and fewer than half of them; the shortest and earliest of equals. */
export function nearestUnit(word: string): string | undefined {
  if (word.length === 0 || word.length > 20) return undefined;
  const lower = word.toLowerCase();
  let best: string | undefined;
  let least = Math.min(2, Math.floor(word.length / 2)) + 0.5;
  for (const spelling of [...spellings(), ...RUN_TOGETHER.keys()]) {
    const d = distance(lower, spelling.toLowerCase(), 2);
    if (d < least) {
      least = d;
      best = spelling;
    }
  }
  return best;
}

/** The nearest known spelling or name to one that was not understood. */
import { distance } from './distance.ts';
import { RUN_TOGETHER, spellings } from './unit-table.ts';

/** The known spelling with the fewest changed letters, at most two and fewer than half of them; the shortest and earliest of equals. */
export function nearestUnit(word: string): string | undefined {
  if (word.length === 0 || word.length > 20) return undefined;
  const lower = word.toLowerCase();
  let best: string | undefined;
  let least = Math.min(2, Math.floor(word.length / 2)) + 0.5;
  for (const spelling of [...spellings(), ...RUN_TOGETHER.keys()]) {
    // A spelling of quite another length cannot be near, and need not be compared letter by letter.
    if (Math.abs(word.length - spelling.length) > 2) continue;
    const d = distance(lower, spelling.toLowerCase());
    if (d < least) {
      least = d;
      best = spelling;
    }
  }
  return best;
}

/** The candidate that takes the fewest slips of the finger to become `text`, if few enough to be what was meant. */
export function nearest(text: string, candidates: readonly string[]): string | undefined {
  const wanted = text.toLowerCase();
  let best: string | undefined;
  let fewest = Math.max(2, Math.floor(text.length / 3)) + 1;
  for (const candidate of candidates) {
    const slips = distance(wanted, candidate.toLowerCase());
    if (slips < fewest) [best, fewest] = [candidate, slips];
  }
  return best;
}

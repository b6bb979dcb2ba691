/** The nearest known spelling or name to one that was not understood. */
import { distance, slips } from './distance.ts';
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

/**
 * The candidate that takes the fewest slips of the finger to become `text`, if few enough to be what was meant: one, and of
 * longer words one in three letters. Of names with points each piece must be near by itself. Case does not count.
 */
export function nearest(text: string, candidates: readonly string[]): string | undefined {
  const wanted = text.toLowerCase();
  let best: string | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const between = slipsBetween(wanted, candidate.toLowerCase());
    if (between < fewest) [best, fewest] = [candidate, between];
  }
  return best;
}

/** Infinite where they are not near. */
function slipsBetween(wanted: string, candidate: string): number {
  const [pieces, others] = [wanted.split('.'), candidate.split('.')];
  if (pieces.length !== others.length) return ifNear(wanted, candidate);
  return pieces.reduce((sum, piece, at) => sum + ifNear(piece, others[at]!), 0);
}

function ifNear(wanted: string, candidate: string): number {
  if (wanted === candidate) return 0;
  // One of two letters is no slip.
  const most = wanted.length < 3 ? 0 : Math.max(1, Math.floor(wanted.length / 3));
  if (Math.abs(wanted.length - candidate.length) > most) return Number.POSITIVE_INFINITY;
  const between = slips(wanted, candidate);
  return between <= most ? between : Number.POSITIVE_INFINITY;
}

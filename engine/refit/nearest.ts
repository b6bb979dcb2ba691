import { distance } from '../quantity/distance.ts';

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

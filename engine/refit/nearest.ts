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

/** Levenshtein's distance: letters put in, taken out or exchanged. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}

/** Levenshtein's distance: letters put in, taken out or exchanged. */
export function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}

const isDigit = (letter: string | undefined): boolean =>
  letter !== undefined && letter >= '0' && letter <= '9';

/** Slips of the finger: as the distance, and two neighbours exchanged are one; another number is no slip and counts as two. */
export function slips(a: string, b: string): number {
  let [older, row] = [[] as number[], Array.from({ length: b.length + 1 }, (_, at) => at)];
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const [x, y] = [a[i - 1], b[j - 1]];
      const other = x === y ? 0 : isDigit(x) && isDigit(y) ? 2 : 1;
      let least = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + other);
      if (i > 1 && j > 1 && x === b[j - 2] && a[i - 2] === y) least = Math.min(least, older[j - 2]! + 1);
      next.push(least);
    }
    [older, row] = [row, next];
  }
  return row[b.length]!;
}

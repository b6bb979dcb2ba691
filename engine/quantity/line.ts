/** A line through points, read between them. */

/** How a record of points is read: by its place, ascending in x. */
export interface Points<C> {
  readonly count: (line: C) => number;
  readonly x: (line: C, at: number) => number;
  readonly y: (line: C, at: number) => number;
}

/** Beyond its ends a line stays level, or says nothing: NaN. */
export type Ends = 'level' | 'nothing';

/** Height of a line at x, straight between the neighbouring points. A line without points says nothing. */
export function heightOf<C>(points: Points<C>, line: C, x: number, ends: Ends): number {
  const last = points.count(line) - 1;
  if (last < 0 || Number.isNaN(x)) return Number.NaN;
  const isBefore = x < points.x(line, 0);
  if (isBefore || x > points.x(line, last))
    return ends === 'nothing' ? Number.NaN : points.y(line, isBefore ? 0 : last);
  let [low, high] = [0, last];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (points.x(line, middle) <= x) low = middle;
    else high = middle;
  }
  const x0 = points.x(line, low);
  const x1 = points.x(line, high);
  const y0 = points.y(line, low);
  const y1 = points.y(line, high);
  // At the last point the height is its own, not what rounding makes of it.
  return x === x1 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

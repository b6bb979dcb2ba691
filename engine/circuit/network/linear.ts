/**
 * Linear equations of circuits: few entries in a row, an order that keeps them few, zeros skipped.
 *
 * Only entries that can be other than zero are kept: those of the pattern, and the few that elimination adds. The
 * networks of a wiring are nearly trees, so the work of one factoring grows about with the number of unknowns.
 */

/** Order of elimination: again and again the unknown with the fewest neighbours, which then become neighbours. */
export function fewestNeighbours(n: number, pairs: Iterable<readonly [number, number]>): Int32Array {
  const near = Array.from({ length: n }, () => new Set<number>());
  for (const [a, b] of pairs)
    if (a !== b) {
      near[a]!.add(b);
      near[b]!.add(a);
    }
  const order = new Int32Array(n);
  // Unknowns by their number of neighbours, so that the least is found without looking through all.
  const byCount: Set<number>[] = Array.from({ length: n + 1 }, () => new Set<number>());
  for (let k = 0; k < n; k++) byCount[near[k]!.size]!.add(k);
  let count = 0;
  for (let at = 0; at < n; at++) {
    count = Math.max(0, count - 1);
    while (byCount[count]!.size === 0) count++;
    const [best] = byCount[count]! as Set<number>;
    byCount[count]!.delete(best!);
    order[at] = best!;
    const around = [...near[best!]!];
    for (const a of around) {
      byCount[near[a]!.size]!.delete(a);
      near[a]!.delete(best!);
      for (const b of around) if (a !== b) near[a]!.add(b);
      byCount[near[a]!.size]!.add(a);
      count = Math.min(count, near[a]!.size);
    }
  }
  return order;
}

/** A diagonal entry this share of the column's largest is taken as pivot, to keep the order. */
const THRESHOLD = 1e-3;

/** LU factors of an n × n matrix of a fixed pattern, made and used again and again. */
export class Factors {
  readonly n: number;
  /** Values of the entries of the pattern, by `slot`. */
  readonly matrix: Float64Array;
  /** Multiplications of the last factoring, each with its subtraction: the work it took. */
  work = 0;
  readonly #start: Int32Array;
  readonly #columns: Int32Array;
  readonly #row: Int32Array;
  readonly #scratch: Float64Array;
  /** Factors by place in the order of elimination: below the diagonal, and from the diagonal on. */
  #lower: readonly Row[] = [];
  #upper: readonly Row[] = [];

  /** @param pairs places off the diagonal that may hold something, either way round; the diagonal always may */
  constructor(n: number, pairs: Iterable<readonly [number, number]>) {
    this.n = n;
    const rows = Array.from({ length: n }, (_, k) => new Set([k]));
    for (const [a, b] of pairs) {
      rows[a]!.add(b);
      rows[b]!.add(a);
    }
    this.#start = new Int32Array(n + 1);
    rows.forEach((each, k) => {
      this.#start[k + 1] = this.#start[k]! + each.size;
    });
    this.#columns = new Int32Array(this.#start[n]!);
    rows.forEach((each, k) => {
      this.#columns.set(
        [...each].sort((a, b) => a - b),
        this.#start[k]!,
      );
    });
    this.matrix = new Float64Array(this.#columns.length);
    this.#row = new Int32Array(n);
    this.#scratch = new Float64Array(n);
  }

  /** Where an entry of the pattern is kept in `matrix`; a RangeError where none is foreseen. */
  slot(row: number, column: number): number {
    const at = this.find(row, column);
    if (at < 0) throw new RangeError(`No entry is foreseen in row ${row}, column ${column}.`);
    return at;
  }

  /** The same, or −1 where none is foreseen. */
  find(row: number, column: number): number {
    return find(this.#columns, column, this.#start[row]!, this.#start[row + 1]!);
  }

  /** Factors `matrix`, which stays as it is; the unknown at which it turned out singular, or −1. */
  factor(): number {
    const { n, matrix } = this;
    const row = this.#row;
    const place = new Int32Array(n);
    const lower: Row[] = [];
    const upper: Row[] = [];
    // Rows that hold something in a column; those done with are told by their place.
    const holders: number[][] = Array.from({ length: n }, () => []);
    for (let k = 0; k < n; k++) {
      row[k] = k;
      place[k] = k;
      lower.push({ columns: [], values: [], head: 0 });
      const columns: number[] = [];
      const values: number[] = [];
      for (let at = this.#start[k]!; at < this.#start[k + 1]!; at++) {
        const value = matrix[at]!;
        if (value === 0) continue;
        columns.push(this.#columns[at]!);
        values.push(value);
        holders[this.#columns[at]!]!.push(k);
      }
      upper.push({ columns, values, head: 0 });
    }
    this.work = 0;
    for (let k = 0; k < n; k++) {
      const candidates = holders[k]!.filter((each) => place[each]! >= k);
      let best = -1;
      let most = 0;
      let diagonal = 0;
      for (const each of candidates) {
        const { values, head } = upper[each]!;
        const size = Math.abs(values[head]!);
        if (place[each] === k) diagonal = size;
        if (size > most || (size === most && best >= 0 && place[each]! < place[best]!)) {
          most = size;
          best = each;
        }
      }
      if (!(most > 1e-18) || most === Number.POSITIVE_INFINITY) return k;
      if (diagonal < THRESHOLD * most) {
        const other = row[k]!;
        row[place[best]!] = other;
        place[other] = place[best]!;
        row[k] = best;
        place[best] = k;
      }
      const top = upper[row[k]!]!;
      const pivot = top.values[top.head]!;
      for (const each of candidates) {
        if (place[each] === k) continue;
        const active = upper[each]!;
        const value = active.values[active.head]!;
        active.head++;
        if (value === 0) continue;
        const factor = value / pivot;
        lower[each]!.columns.push(k);
        lower[each]!.values.push(factor);
        this.work += top.columns.length - top.head;
        subtract(active, top, factor, (column) => holders[column]!.push(each));
      }
      holders[k] = [];
    }
    this.#lower = [...row].map((each) => lower[each]!);
    this.#upper = [...row].map((each) => upper[each]!);
    return -1;
  }

  /** Solves for a right-hand side, which becomes the answer. */
  solve(b: Float64Array): void {
    const { n } = this;
    const row = this.#row;
    const x = this.#scratch;
    for (let i = 0; i < n; i++) {
      let sum = b[row[i]!]!;
      const { columns, values } = this.#lower[i]!;
      for (let j = 0; j < columns.length; j++) sum -= values[j]! * x[columns[j]!]!;
      x[i] = sum;
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = x[i]!;
      const { columns, values, head } = this.#upper[i]!;
      for (let j = head + 1; j < columns.length; j++) sum -= values[j]! * x[columns[j]!]!;
      x[i] = sum / values[head]!;
    }
    b.set(x);
  }
}

/** Entries of a row by rising column, those from `head` on. */
interface Row {
  columns: number[];
  values: number[];
  head: number;
}

/** Place of a column among sorted ones, or −1. */
function find(columns: ArrayLike<number>, column: number, from: number, to: number): number {
  let [low, high] = [from, to - 1];
  while (low <= high) {
    const middle = (low + high) >> 1;
    const there = columns[middle]!;
    if (there === column) return middle;
    if (there < column) low = middle + 1;
    else high = middle - 1;
  }
  return -1;
}

/** Takes `factor` times what stands right of the pivot in `top` from a row; `grows` hears of columns it gains. */
function subtract(row: Row, top: Row, factor: number, grows: (column: number) => void): void {
  let missing = false;
  for (let n = top.head + 1; n < top.columns.length; n++) {
    const at = find(row.columns, top.columns[n]!, row.head, row.columns.length);
    if (at >= 0) row.values[at]! -= factor * top.values[n]!;
    else missing = true;
  }
  if (!missing) return;
  const columns: number[] = [];
  const values: number[] = [];
  let at = row.head;
  for (let n = top.head + 1; n < top.columns.length; n++) {
    const column = top.columns[n]!;
    for (; at < row.columns.length && row.columns[at]! < column; at++) {
      columns.push(row.columns[at]!);
      values.push(row.values[at]!);
    }
    if (row.columns[at] === column) continue;
    columns.push(column);
    values.push(0 - factor * top.values[n]!);
    grows(column);
  }
  for (; at < row.columns.length; at++) {
    columns.push(row.columns[at]!);
    values.push(row.values[at]!);
  }
  row.columns = columns;
  row.values = values;
  row.head = 0;
}

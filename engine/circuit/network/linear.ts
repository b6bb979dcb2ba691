/**
 * Linear equations of circuits: few entries in a row, an order that keeps them few, zeros skipped.
 *
 * Dense storage, since pieces have tens of nodes, seldom hundreds; the order by fewest neighbours and the skipping
 * of zeros make the work nearly that of a sparse solver (docs/decisions/0010).
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

/** LU factors of an n × n matrix, made and used in place again and again. */
export class Factors {
  readonly n: number;
  readonly matrix: Float64Array;
  readonly #row: Int32Array;
  readonly #scratch: Float64Array;

  constructor(n: number) {
    this.n = n;
    this.matrix = new Float64Array(n * n);
    this.#row = new Int32Array(n);
    this.#scratch = new Float64Array(n);
  }

  /** Factors `matrix` in place; the unknown at which it turned out singular, or −1. */
  factor(): number {
    const { n, matrix: m } = this;
    const row = this.#row;
    for (let k = 0; k < n; k++) row[k] = k;
    for (let k = 0; k < n; k++) {
      let best = k;
      let most = 0;
      for (let i = k; i < n; i++) {
        const size = Math.abs(m[row[i]! * n + k]!);
        if (size > most) {
          most = size;
          best = i;
        }
      }
      if (!(most > 1e-18) || most === Number.POSITIVE_INFINITY) return k;
      if (Math.abs(m[row[k]! * n + k]!) < THRESHOLD * most) {
        const swap = row[k]!;
        row[k] = row[best]!;
        row[best] = swap;
      }
      const top = row[k]! * n;
      const pivot = m[top + k]!;
      for (let i = k + 1; i < n; i++) {
        const at = row[i]! * n;
        if (m[at + k] === 0) continue;
        const factor = m[at + k]! / pivot;
        m[at + k] = factor;
        for (let j = k + 1; j < n; j++) {
          const above = m[top + j]!;
          if (above !== 0) m[at + j]! -= factor * above;
        }
      }
    }
    return -1;
  }

  /** Solves for a right-hand side, which becomes the answer. */
  solve(b: Float64Array): void {
    const { n, matrix: m } = this;
    const row = this.#row;
    const x = this.#scratch;
    for (let i = 0; i < n; i++) {
      let sum = b[row[i]!]!;
      const at = row[i]! * n;
      for (let j = 0; j < i; j++) if (m[at + j] !== 0) sum -= m[at + j]! * x[j]!;
      x[i] = sum;
    }
    for (let i = n - 1; i >= 0; i--) {
      let sum = x[i]!;
      const at = row[i]! * n;
      for (let j = i + 1; j < n; j++) if (m[at + j] !== 0) sum -= m[at + j]! * x[j]!;
      x[i] = sum / m[at + i]!;
    }
    b.set(x);
  }
}

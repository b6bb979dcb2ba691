/** In which order the nodes of a mesh are taken out, and which places that fills: worked out once for many meshes. */
import { fewestNeighbours } from './linear.ts';

export class MeshOrder {
  readonly size: number;
  /** Names of the nodes by their number. */
  readonly names: readonly string[];
  /** Rows of what stands later in the order and may hang on a node, sorted: row k from `start[k]` on. */
  readonly start: Int32Array;
  readonly later: Int32Array;
  /** The first of each row, to which the rest of the row belongs too: a tree. −1 for its roots. */
  readonly parent: Int32Array;
  readonly #index: ReadonlyMap<string, number>;

  /** @param pairs all nodes between which a branch may ever stand */
  constructor(pairs: Iterable<readonly [string, string]>) {
    const raw = new Map<string, number>();
    const number = (name: string): number => {
      const found = raw.get(name) ?? raw.size;
      raw.set(name, found);
      return found;
    };
    const edges = Array.from(pairs, ([a, b]) => [number(a), number(b)] as const);
    const n = raw.size;
    const order = fewestNeighbours(n, edges);
    const place = new Int32Array(n);
    order.forEach((node, at) => {
      place[node] = at;
    });
    const names = [...raw.keys()];
    this.size = n;
    this.names = Array.from(order, (node) => names[node]!);
    this.#index = new Map([...raw].map(([name, at]) => [name, place[at]!]));
    const rows = filled(
      n,
      edges.map(([a, b]) => [place[a]!, place[b]!]),
    );
    this.start = new Int32Array(n + 1);
    rows.forEach((row, k) => {
      this.start[k + 1] = this.start[k]! + row.length;
    });
    this.later = new Int32Array(this.start[n]!);
    rows.forEach((row, k) => {
      this.later.set(row, this.start[k]!);
    });
    this.parent = Int32Array.from(rows, (row) => row[0] ?? -1);
  }

  /** Number of a node, −1 for one that no pair names. */
  node(name: string): number {
    return this.#index.get(name) ?? -1;
  }

  /** Where a pair of nodes is kept, the earlier one first; −1 where no branch is foreseen. */
  place(early: number, late: number): number {
    let [low, high] = [this.start[early]!, this.start[early + 1]! - 1];
    while (low <= high) {
      const middle = (low + high) >> 1;
      const there = this.later[middle]!;
      if (there === late) return middle;
      if (there < late) low = middle + 1;
      else high = middle - 1;
    }
    return -1;
  }
}

/** Rows of later neighbours, with those that elimination joins. */
function filled(n: number, edges: readonly (readonly [number, number])[]): readonly (readonly number[])[] {
  const rows = Array.from({ length: n }, () => new Set<number>());
  for (const [a, b] of edges) if (a !== b) rows[Math.min(a, b)]!.add(Math.max(a, b));
  return rows.map((row) => {
    const sorted = [...row].sort((a, b) => a - b);
    const parent = sorted[0];
    // What a node leaves behind hangs on its parent; from there it goes on.
    if (parent !== undefined) for (const other of sorted) if (other !== parent) rows[parent]!.add(other);
    return sorted;
  });
}

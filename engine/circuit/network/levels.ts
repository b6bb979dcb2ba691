/** Volts of all nodes of a mesh, as numbers in arrays, and which of them compare. */
import type { StarMesh } from './star-mesh.ts';

export class Levels {
  /** By node; only differences between nodes of one root mean something. */
  readonly volts: Float64Array;
  readonly #roots: Int32Array;
  readonly #references: readonly number[];
  /** The reference of each piece that has one, by the piece’s root. */
  readonly #reference = new Map<number, number>();

  /** @param references nodes that count as 0 V where they are; the first of a piece wins */
  constructor(size: number, references: readonly number[]) {
    this.volts = new Float64Array(size);
    this.#roots = new Int32Array(size);
    this.#references = references;
  }

  take(mesh: StarMesh): void {
    mesh.all(this.volts, this.#roots);
    this.#reference.clear();
  }

  /** Whether a path joins two nodes. */
  together(a: number, b: number): boolean {
    return a >= 0 && b >= 0 && this.#roots[a]! >= 0 && this.#roots[a] === this.#roots[b];
  }

  /** Volts of a node against another, or against its reference; undefined where no path joins them or none has one. */
  level(a: number, against?: number): number | undefined {
    if (a < 0 || this.#roots[a]! < 0) return undefined;
    if (against === undefined) {
      const zero = this.#zeroAt(a);
      return zero === undefined ? undefined : this.volts[a]! - zero;
    }
    if (against < 0 || this.#roots[against]! < 0) return undefined;
    if (this.#roots[a] === this.#roots[against]) return this.volts[a]! - this.volts[against]!;
    const [one, other] = [this.#zeroAt(a), this.#zeroAt(against)];
    if (one === undefined || other === undefined) return undefined;
    return this.volts[a]! - one - (this.volts[against]! - other);
  }

  #zeroAt(a: number): number | undefined {
    const found = this.#reference;
    if (found.size === 0)
      for (const reference of this.#references) {
        const root = this.#roots[reference]!;
        if (root >= 0 && !found.has(root)) found.set(root, reference);
      }
    const reference = found.get(this.#roots[a]!);
    return reference === undefined ? undefined : this.volts[reference]!;
  }
}

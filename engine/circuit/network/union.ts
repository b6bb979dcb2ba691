/** Sets of things that join: which of them hang together. */
export class Union {
  readonly #parent = new Map<string, string>();

  find(name: string): string {
    let root = name;
    for (let up = this.#parent.get(root); up !== undefined && up !== root; up = this.#parent.get(root))
      root = up;
    for (let at = name; at !== root; ) {
      const up = this.#parent.get(at) ?? root;
      this.#parent.set(at, root);
      at = up;
    }
    if (!this.#parent.has(root)) this.#parent.set(root, root);
    return root;
  }

  /** False where both were together already. */
  join(a: string, b: string): boolean {
    const [x, y] = [this.find(a), this.find(b)];
    if (x === y) return false;
    this.#parent.set(x, y);
    return true;
  }
}

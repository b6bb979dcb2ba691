/** Things joined into groups, by name. */
export class Groups {
  readonly #up = new Map<string, string>();

  of(name: string): string {
    let at = name;
    for (let up = this.#up.get(at); up !== undefined; up = this.#up.get(at)) at = up;
    if (at !== name) this.#up.set(name, at);
    return at;
  }

  join(a: string, b: string): void {
    const [one, other] = [this.of(a), this.of(b)];
    if (one !== other) this.#up.set(one, other);
  }
}

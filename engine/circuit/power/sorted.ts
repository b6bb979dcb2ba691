/** Things in an order, that come and go one by one. */
export class Sorted<T> {
  readonly #order: (a: T, b: T) => number;
  readonly #list: T[] = [];

  /** @param order never 0 for two things that may both be there */
  constructor(order: (a: T, b: T) => number) {
    this.#order = order;
  }

  get list(): readonly T[] {
    return this.#list;
  }

  add(one: T): void {
    this.#list.splice(this.#place(one), 0, one);
  }

  /** What was added, or something that stands in the same place. */
  remove(one: T): void {
    const at = this.#place(one);
    if (at < this.#list.length && this.#order(this.#list[at]!, one) === 0) this.#list.splice(at, 1);
  }

  #place(one: T): number {
    let [low, high] = [0, this.#list.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#order(this.#list[middle]!, one) < 0) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

export const byName = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

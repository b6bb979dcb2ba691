/** Sums of twice the figures of a number, so that what was added can be taken off again. */
export class Sums {
  /** The sums, as near as one number comes. */
  readonly high: Float64Array;
  readonly #low: Float64Array;

  constructor(length: number) {
    this.high = new Float64Array(length);
    this.#low = new Float64Array(length);
  }

  /** Exact sum of two numbers by Knuth's method, its remainder kept. */
  add(at: number, value: number): void {
    const old = this.high[at]!;
    const sum = old + value;
    const part = sum - old;
    const rest = old - (sum - part) + (value - part) + this.#low[at]!;
    this.high[at] = sum + rest;
    this.#low[at] = rest - (this.high[at]! - sum);
  }

  clear(at: number): void {
    this.high[at] = 0;
    this.#low[at] = 0;
  }

  clearAll(): void {
    this.high.fill(0);
    this.#low.fill(0);
  }

  copyAll(other: Sums): void {
    this.high.set(other.high);
    this.#low.set(other.#low);
  }

  copy(other: Sums, at: number): void {
    this.high[at] = other.high[at]!;
    this.#low[at] = other.#low[at]!;
  }
}

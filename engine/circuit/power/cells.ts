/**
 * Answers that remember what they looked at, and are asked anew when, and only when, something of that has changed.
 *
 * What can be looked at goes by a name: a fact of the wiring ('w:W1'), or another answer. An answer that comes out as
 * before wakes nobody.
 */

interface Cell {
  readonly name: string;
  readonly ask: () => unknown;
  /** Kept although nobody looks at it; hears of each change. */
  changed: ((now: unknown, before: unknown) => void) | undefined;
  kept: boolean;
  /** Whether a value that says the same as before counts as the same. */
  readonly compared: boolean;
  /** What hears of its change alters what others look at: it is asked before them, so that they are asked once. */
  readonly early: boolean;
  seen: ReadonlySet<string>;
  value: unknown;
  asked: boolean;
}

export class Cells {
  readonly #cells = new Map<string, Cell>();
  readonly #watchers = new Map<string, Set<Cell>>();
  readonly #due = new Set<Cell>();
  /** Those of `#due` that are asked first. */
  readonly #early = new Set<Cell>();
  readonly #alone = new Set<string>();
  readonly #asking: Set<string>[] = [];
  readonly #open = new Set<Cell>();
  /** How many answers were asked, since the beginning. */
  asked = 0;

  /** The answer being asked looks at this. */
  note(name: string): void {
    this.#asking.at(-1)?.add(name);
  }

  /** This has changed. */
  touch(name: string): void {
    for (const cell of this.#watchers.get(name) ?? []) this.#wake(cell);
  }

  /** An answer others look at; asked when it is first wanted, forgotten when nobody looks at it any more. */
  answer<T>(name: string, ask: () => T): T {
    this.note(name);
    let cell = this.#cells.get(name);
    if (!cell) {
      cell = {
        name,
        ask,
        changed: undefined,
        kept: false,
        compared: true,
        early: false,
        seen: new Set(),
        value: undefined,
        asked: false,
      };
      this.#cells.set(name, cell);
      if (this.#asking.length === 0) this.#alone.add(name);
    }
    // One that comes round to itself keeps what it last said.
    if ((!cell.asked || this.#due.has(cell)) && !this.#open.has(cell)) this.#ask(cell);
    return cell.value as T;
  }

  /** An answer that is kept up to date by `settle` until it is dropped. */
  keep<T>(
    name: string,
    ask: () => T,
    changed?: (now: T | undefined, before: T | undefined) => void,
    { compared = true, early = false }: { readonly compared?: boolean; readonly early?: boolean } = {},
  ): void {
    const cell: Cell = {
      name,
      ask,
      changed: changed as Cell['changed'],
      kept: true,
      compared,
      early,
      seen: new Set(),
      value: undefined,
      asked: false,
    };
    this.#cells.set(name, cell);
    this.#wake(cell);
  }

  has(name: string): boolean {
    return this.#cells.has(name);
  }

  drop(name: string): void {
    const cell = this.#cells.get(name);
    if (!cell) return;
    this.#rest(cell);
    this.#watch(cell, new Set());
    this.#cells.delete(name);
    const before = cell.value;
    cell.value = undefined;
    if (cell.asked) cell.changed?.(undefined, before);
    this.touch(name);
  }

  /** Asks anew whatever has to be. */
  settle(): void {
    do {
      for (const cell of this.#due) {
        for (const first of this.#early) this.#ask(first);
        if (this.#due.has(cell)) this.#ask(cell);
      }
      this.#forget();
    } while (this.#due.size > 0);
  }

  /** How many answers and looks are kept. */
  get kept(): { readonly answers: number; readonly looks: number } {
    let looks = 0;
    for (const set of this.#watchers.values()) looks += set.size;
    return { answers: this.#cells.size, looks };
  }

  #wake(cell: Cell): void {
    this.#due.add(cell);
    if (cell.early) this.#early.add(cell);
  }

  #rest(cell: Cell): void {
    this.#due.delete(cell);
    if (cell.early) this.#early.delete(cell);
  }

  #ask(cell: Cell): void {
    this.#rest(cell);
    this.#open.add(cell);
    this.#asking.push(new Set());
    let now: unknown;
    let seen: Set<string>;
    try {
      this.asked++;
      now = cell.ask();
    } finally {
      seen = this.#asking.pop()!;
      this.#open.delete(cell);
    }
    this.#watch(cell, seen);
    if (cell.asked && cell.compared && JSON.stringify(now) === JSON.stringify(cell.value)) return;
    const before = cell.value;
    cell.value = now;
    cell.asked = true;
    cell.changed?.(now, before);
    this.touch(cell.name);
  }

  #watch(cell: Cell, seen: ReadonlySet<string>): void {
    for (const name of cell.seen) {
      if (seen.has(name)) continue;
      const set = this.#watchers.get(name)!;
      set.delete(cell);
      if (set.size > 0) continue;
      this.#watchers.delete(name);
      if (this.#cells.has(name)) this.#alone.add(name);
    }
    for (const name of seen) {
      if (cell.seen.has(name)) continue;
      const set = this.#watchers.get(name);
      if (set) set.add(cell);
      else this.#watchers.set(name, new Set([cell]));
    }
    cell.seen = seen;
  }

  #forget(): void {
    for (const name of this.#alone) {
      this.#alone.delete(name);
      const cell = this.#cells.get(name);
      if (!cell || cell.kept || this.#watchers.has(name)) continue;
      this.#rest(cell);
      this.#watch(cell, new Set());
      this.#cells.delete(name);
    }
  }
}

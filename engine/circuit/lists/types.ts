/** A list to work from: on the screen, as CSV, on paper. */

export interface ListRow {
  /** The terminal, wire or cable it speaks of. */
  readonly id: string;
  readonly cells: readonly string[];
}

/** One strip, one cable, one plug. */
export interface ListGroup {
  readonly title: string;
  readonly note: string;
  /** What to take care of at this step. */
  readonly cautions?: readonly string[];
  readonly rows: readonly ListRow[];
}

export interface List {
  readonly id: ListId;
  readonly title: string;
  /** What it is for, and what to take care of. */
  readonly about: string;
  readonly caution: string;
  readonly columns: readonly string[];
  readonly groups: readonly ListGroup[];
}

export type ListId = 'wires' | 'cables' | 'strips' | 'labels' | 'pins' | 'ring-out';

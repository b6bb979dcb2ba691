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
  /** Numbers of columns in which all rows say the same, or one of few things: said at the head, where there is one. */
  readonly shared?: readonly number[];
  readonly rows: readonly ListRow[];
}

/** What stands in shared columns, a line each: 'Should show: under 1 Ω'. */
export const sharedLines = (
  { shared = [], rows }: ListGroup,
  columns: readonly string[],
): readonly string[] =>
  shared.flatMap((at) =>
    [...new Set(rows.map(({ cells }) => cells[at]!))]
      .filter(Boolean)
      .map((said) => `${columns[at]}: ${said}${/[.!?]$/.test(said) ? '' : '.'}`),
  );

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

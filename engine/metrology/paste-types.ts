/** What pasted readings are asked for and come back as. */
import type { Problem } from '../quantity/index.ts';

/** What is wanted: `name` as people read it, `unit` that bare numbers are in unless a heading says otherwise. */
export interface Column {
  readonly key: string;
  readonly name: string;
  readonly unit: string;
}

export interface Cell {
  /** As pasted. */
  readonly text: string;
  /** SI; null where nothing stands or it could not be read, then with a problem. */
  readonly value: number | null;
  readonly problem?: Problem;
}

export interface Pasted {
  /** Cells of each wanted column, all of the same length. */
  readonly columns: Readonly<Record<string, readonly Cell[]>>;
  /** What was taken how, and what is questioned, in whole sentences. */
  readonly notes: readonly string[];
}

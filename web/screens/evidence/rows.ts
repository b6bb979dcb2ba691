/** The readings of a bench test as rows of cells: what is typed, set aside, pasted, and handed on. */
import type { Column, Taken } from '../../../engine/evidence/index.ts';
import type { Evidence } from '../../../engine/refit/types.ts';

export interface Row {
  readonly cells: Readonly<Record<string, string>>;
  /** Why it was set aside; absent for a row that counts. */
  readonly aside?: string;
}

/** Everything typed for one measurement, until it is recorded. */
export interface Draft {
  readonly given: Readonly<Record<string, string>>;
  readonly rows: readonly Row[];
  readonly note: string;
  readonly photos: readonly string[];
}

export const isBlank = ({ cells }: Row): boolean => Object.values(cells).every((text) => text.trim() === '');

/** Rows up to the last one with something in it. */
export function filled(rows: readonly Row[]): readonly Row[] {
  const last = rows.findLastIndex((row) => !isBlank(row));
  return rows.slice(0, last + 1);
}

/** Sets one cell; rows come into being as they are needed. */
export function setCell(rows: readonly Row[], at: number, key: string, text: string): readonly Row[] {
  const grown = Array.from({ length: Math.max(rows.length, at + 1) }, (_, i) => rows[i] ?? { cells: {} });
  grown[at] = { ...grown[at]!, cells: { ...grown[at]!.cells, [key]: text } };
  return grown;
}

export function setAside(rows: readonly Row[], at: number, reason: string | undefined): readonly Row[] {
  return rows.map((row, i) =>
    i !== at ? row : reason === undefined ? { cells: row.cells } : { cells: row.cells, aside: reason },
  );
}

/**
 * Whether a row lacks a cell that it has to have, or that the row before it has: then somebody is still typing it.
 * It is not worked with while the cursor stands in it.
 */
function isUnfinished(columns: readonly Column[], rows: readonly Row[], at: number): boolean {
  const row = rows[at];
  if (!row || isBlank(row)) return false;
  const before = rows[at - 1];
  return columns.some(({ key, optional }) => {
    const wanted = !optional || Boolean(before?.cells[key]?.trim());
    return wanted && !row.cells[key]?.trim();
  });
}

export interface Counted {
  readonly taken: Taken;
  /** The row that is still being typed, counted from 1. */
  readonly unfinished?: number;
}

/** What is worked with. `typing` is the row the cursor stands in. */
export function takenOf(columns: readonly Column[], draft: Draft, typing?: number): Counted {
  const all = filled(draft.rows);
  const open = typing === all.length - 1 && isUnfinished(columns, all, typing);
  const rows = open ? all.slice(0, -1) : all;
  const used = columns.filter(({ key }) => rows.some((row) => row.cells[key]?.trim()));
  return {
    taken: {
      given: draft.given,
      readings: Object.fromEntries(
        used.map(({ key }) => [key, rows.map((row) => (row.cells[key] ?? '').trim())]),
      ),
      aside: rows.flatMap((row, i) => (row.aside === undefined ? [] : [i])),
    },
    ...(open ? { unfinished: all.length } : {}),
  };
}

const ASIDE = /^Row (\d+) set aside: (.*)$/;

/** The note as it is kept: what the person wrote, then why each row was set aside. */
export function noteOf({ note, rows }: Draft): string {
  const reasons = rows.flatMap(({ aside }, i) =>
    aside === undefined ? [] : [`Row ${i + 1} set aside: ${aside}`],
  );
  return [note.trim(), ...reasons].filter((line) => line !== '').join('\n');
}

/** A recorded measurement, opened again. */
export function draftOf({ given, readings, aside, note, photos }: Evidence): Draft {
  const lines = note.split('\n');
  const reasons = new Map(
    lines.flatMap((line) => {
      const [, row, reason] = ASIDE.exec(line) ?? [];
      return row === undefined ? [] : [[Number(row) - 1, reason ?? ''] as const];
    }),
  );
  const height = Math.max(0, ...Object.values(readings).map((texts) => texts.length));
  return {
    given,
    rows: Array.from({ length: height }, (_, i): Row => {
      const cells = Object.fromEntries(Object.entries(readings).map(([key, texts]) => [key, texts[i] ?? '']));
      return aside.includes(i) ? { cells, aside: reasons.get(i) ?? 'no reason was written down' } : { cells };
    }),
    note: lines.filter((line) => !ASIDE.test(line)).join('\n'),
    photos,
  };
}

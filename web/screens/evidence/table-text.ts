/** Readings out of a spreadsheet and into one. */
import type { Column } from '../../../engine/evidence/index.ts';
import {
  type Column as Asked,
  type Cell,
  parseReadings,
  writeReadings,
} from '../../../engine/metrology/index.ts';
import { convert, formatNumber, ok, parseQuantity, type Result } from '../../../engine/quantity/index.ts';
import { filled, type Row } from './rows.ts';

const ASIDE: Asked = { key: 'set aside', name: 'set aside because', unit: '1' };

const asked = (column: Column): Asked => ({
  key: column.key,
  name: column.name,
  unit: column.kind === 'quantity' ? column.unit : '1',
});

const NUMBER = /^[+−-]?\d[\d.,]*(?:e[+-]?\d+)?$/i;

/** The text as it stands where the column's own unit gives the same value; else the number in that unit. */
function textIn({ text, value }: Cell, unit: string): string {
  if (value === null) return text.trim();
  for (const each of [text.trim(), text.trim().replace(',', '.')]) {
    const read = parseQuantity(NUMBER.test(each) && unit !== '1' ? `${each} ${unit}` : each, unit);
    if (read.ok && Math.abs(read.value.value - value) <= 1e-12 * Math.abs(value)) return each;
  }
  return `${formatNumber(convert(value, unit), 12)} ${unit === '1' ? '' : unit}`.trim();
}

/** A choice by its key or in its words, whatever the capitals. */
function optionIn(text: string, options: Readonly<Record<string, string>>): string {
  const word = text.trim().toLowerCase();
  const found = Object.entries(options).find(
    ([key, words]) => key.toLowerCase() === word || words.toLowerCase() === word,
  );
  return found?.[0] ?? text.trim();
}

/** One column of numbers, perhaps with decimal commas, under a heading or not: no commas between cells. */
function isOneColumn(text: string): boolean {
  if (/[\t;]/.test(text)) return false;
  const [first = '', ...rest] = text.split(/\r\n?|\n/).filter((line) => line.trim() !== '');
  const alone = /^\s*[+−-]?\d+(?:[.,]\d+)?(?:\s*\D{1,8})?\s*$/;
  const heading = !/\d\s*,|,\s*\d/.test(first) && !first.includes(',');
  return (alone.test(first) || heading) && rest.every((line) => alone.test(line) || !line.includes(','));
}

/** Whether a pasted text is more than one cell. */
export const isTable = (text: string): boolean => /[\t\n\r;]/.test(text.trim());

export interface FromTable {
  readonly rows: readonly Row[];
  readonly notes: readonly string[];
}

/** Puts pasted cells into the table from a row and a column on; what it says of them comes with it. */
export function pasteInto(
  columns: readonly Column[],
  rows: readonly Row[],
  text: string,
  at: { readonly row: number; readonly column: number },
): Result<FromTable> {
  const onwards = columns.slice(at.column);
  const hasAside = text.slice(0, 2000).toLowerCase().includes(ASIDE.name);
  const extra = hasAside ? [ASIDE] : [];
  const wide = isOneColumn(text) ? onwards.slice(0, 1) : onwards;
  const first = parseReadings(text, { columns: [...wide.map(asked), ...extra] });
  if (!first.ok) return first;
  const isUsed = ({ key }: { readonly key: string }): boolean =>
    (first.value.columns[key] ?? []).some((cell) => cell.text.trim() !== '');
  const used = wide.filter(isUsed);
  // Read again without the columns that were not in it, so that nothing is said of them.
  const read =
    used.length === 0 || used.length === wide.length
      ? first
      : parseReadings(text, { columns: [...used.map(asked), ...extra] });
  if (!read.ok) return read;
  const cells = read.value.columns;
  const height = Math.max(0, ...used.map(({ key }) => cells[key]?.length ?? 0));
  const grown: Row[] = [...rows];
  for (let i = 0; i < height; i++) {
    const reason = cells[ASIDE.key]?.[i]?.text.trim();
    const put = Object.fromEntries(
      used.map((column) => {
        const cell = cells[column.key]![i] ?? { text: '', value: null };
        const said =
          column.kind === 'quantity' ? textIn(cell, column.unit) : optionIn(cell.text, column.options);
        return [column.key, said];
      }),
    );
    const before = grown[at.row + i]?.cells ?? {};
    grown[at.row + i] = { cells: { ...before, ...put }, ...(reason ? { aside: reason } : {}) };
  }
  // Cells of a choice are no numbers, and what is amiss with them is said at the row.
  const choices = new Set(columns.flatMap((each) => (each.kind === 'choice' ? [each.name] : [])));
  const notes = read.value.notes.filter(
    (note) => ![...choices, ASIDE.name].some((name) => note.startsWith(`${name}:`)),
  );
  const problems = used.flatMap(({ key, kind }) =>
    kind === 'choice' ? [] : (cells[key] ?? []).flatMap(({ problem }) => (problem ? [problem.message] : [])),
  );
  return ok({
    rows: Array.from(grown, (row) => row ?? { cells: {} }),
    notes: [...problems.slice(0, 5), ...notes],
  });
}

/** A table that `pasteInto` reads back: what was typed, and why rows were set aside. */
export function tableOf(columns: readonly Column[], rows: readonly Row[]): string {
  const kept = filled(rows);
  const used = columns.filter(({ key }) => kept.some((row) => row.cells[key]?.trim()));
  const cellOf = (column: Column, text: string): Cell => {
    if (column.kind === 'choice') return { text: column.options[text] ?? text, value: null };
    // Plain numbers go out as typed: their last digit tells how finely the instrument reads.
    if (/^\d+(?:\.\d+)?$/.test(text)) return { text, value: null };
    const read = parseQuantity(
      NUMBER.test(text) && column.unit !== '1' ? `${text} ${column.unit}` : text,
      column.unit,
    );
    return { text, value: read.ok ? read.value.value : null };
  };
  const cells = Object.fromEntries(
    used.map((column) => [
      column.key,
      kept.map((row) => cellOf(column, (row.cells[column.key] ?? '').trim())),
    ]),
  );
  const isAside = kept.some(({ aside }) => aside !== undefined);
  return writeReadings(
    {
      columns: {
        ...cells,
        [ASIDE.key]: kept.map(({ aside }): Cell => ({ text: aside ?? '', value: null })),
      },
    },
    { columns: [...used.map(asked), ...(isAside ? [ASIDE] : [])] },
  );
}

/** The table of readings: grows as it is typed, Enter goes to the next cell, a spreadsheet can be pasted, odd rows are asked about. */

import { type ClipboardEvent, type KeyboardEvent, useRef, useState } from 'react';
import type { Column, Question } from '../../../engine/evidence/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { RowLine } from './row-line.tsx';
import { isBlank, type Row, setAside, setCell } from './rows.ts';
import { isTable } from './table-text.ts';

/** Far above what a reading may have, low enough that a page does not choke on it. */
const LONGEST_CELL = 2_000;

/** Rows that are drawn at once; a long table is cut in its middle, but for what is odd or wrong. */
const AT_ONCE = 120;

interface Props {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  readonly least: number;
  readonly questions: readonly Question[];
  /** What makes no sense in a row, by its number from 1. */
  readonly faults: ReadonlyMap<number, string>;
  readonly unfinished: number | undefined;
  readonly onRows: (rows: readonly Row[]) => void;
  /** The row the cursor stands in, from 0; undefined once it has left the table. */
  readonly onTyping: (row: number | undefined) => void;
  readonly onPaste: (text: string, at: { readonly row: number; readonly column: number }) => void;
}

export function Readings(props: Props) {
  const { columns, rows, questions, faults, unfinished, onRows, onTyping, onPaste } = props;
  const table = useRef<HTMLTableElement>(null);
  const [asking, setAsking] = useState<number>();
  const [tooLong, setTooLong] = useState('');
  const [isWhole, setIsWhole] = useState(false);
  // One empty row waits below what is typed; a test of few readings starts with as many as it needs.
  const shown = Math.max(rows.length + (rows.length > 0 && isBlank(rows.at(-1)!) ? 0 : 1), props.least, 3);
  const marked = (at: number): boolean =>
    faults.has(at + 1) || rows[at]?.aside !== undefined || questions.some(({ row }) => row === at + 1);
  const everyRow = Array.from({ length: shown }, (_, at) => at);
  const numbers =
    isWhole || shown <= AT_ONCE
      ? everyRow
      : everyRow.filter((at) => at < AT_ONCE / 2 || at >= shown - 10 || marked(at));
  const hidden = shown - numbers.length;
  const cell = (row: number, column: number): HTMLElement | null =>
    table.current?.querySelector<HTMLElement>(`[data-cell="${row}.${column}"]`) ?? null;

  const onKey = (event: KeyboardEvent, row: number, column: number): void => {
    const isSelect = event.target instanceof HTMLSelectElement;
    const move = (to: HTMLElement | null): void => {
      event.preventDefault();
      to?.focus();
      if (to instanceof HTMLInputElement) to.select();
    };
    if (event.key === 'Enter') {
      const step = event.shiftKey ? -1 : 1;
      const at = row * columns.length + column + step;
      move(cell(Math.floor(at / columns.length), ((at % columns.length) + columns.length) % columns.length));
    } else if (!isSelect && event.key === 'ArrowDown') move(cell(row + 1, column));
    else if (!isSelect && event.key === 'ArrowUp' && row > 0) move(cell(row - 1, column));
  };
  const paste = (event: ClipboardEvent, row: number, column: number): void => {
    const text = event.clipboardData.getData('text/plain');
    setTooLong('');
    if (isTable(text)) {
      event.preventDefault();
      onPaste(text, { row, column });
    } else if (text.length > LONGEST_CELL) {
      event.preventDefault();
      setTooLong(
        `What you pasted has ${text.length.toLocaleString('en-GB')} characters and is not one reading. A reading is a number, such as 1.32. Nothing was changed.`,
      );
    }
  };

  return (
    <div className="bench-readings">
      <table ref={table} className={columns.length > 2 ? 'wide' : undefined}>
        <caption className="hidden">Readings</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="hidden">row</span>
            </th>
            {columns.map((column) => (
              <th key={column.key} scope="col">
                {capital(column.name)}
                {column.kind === 'quantity' && column.unit !== '1' && ` in ${column.unit}`}
                {column.optional && <span className="optional">if you have it</span>}
              </th>
            ))}
            <th scope="col">
              <span className="hidden">set aside</span>
            </th>
          </tr>
        </thead>
        <tbody
          onBlur={(event) => {
            if (!event.currentTarget.contains(event.relatedTarget)) onTyping(undefined);
          }}
        >
          {numbers.map((at) => {
            const row = rows[at];
            const number = at + 1;
            const isAside = row?.aside !== undefined;
            const asked = isAside ? undefined : questions.find((each) => each.row === number);
            const fault = isAside ? undefined : faults.get(number);
            return (
              <RowLine
                key={at}
                at={at}
                columns={columns}
                row={row}
                question={asked?.sentence}
                fault={fault}
                isUnfinished={unfinished === number}
                isAsking={asking === at}
                onText={(key, text) => {
                  onTyping(at);
                  onRows(setCell(rows, at, key, text));
                }}
                onFocus={() => onTyping(at)}
                onKey={(event, column) => onKey(event, at, column)}
                onPaste={(event, column) => paste(event, at, column)}
                onAsk={(open) => setAsking(open ? at : undefined)}
                onAside={(reason) => {
                  setAsking(undefined);
                  onRows(setAside(rows, at, reason));
                }}
              />
            );
          })}
        </tbody>
      </table>
      {hidden > 0 && (
        <p className="small">
          {hidden} more rows count as well; they are not drawn here, to keep typing quick.{' '}
          <button type="button" className="plain" onClick={() => setIsWhole(true)}>
            Show all rows
          </button>
        </p>
      )}
      {tooLong && (
        <p className="bad small" role="alert">
          {tooLong}
        </p>
      )}
    </div>
  );
}

/** The table of readings: grows as it is typed, Enter goes to the next cell, a spreadsheet can be pasted, odd rows are asked about. */
import { type ClipboardEvent, type KeyboardEvent, useId, useRef, useState } from 'react';
import type { Column, Question } from '../../../engine/evidence/index.ts';
import { capital } from '../../parts/fact-field.tsx';
import { isBlank, type Row, setAside, setCell } from './rows.ts';
import { isTable } from './table-text.ts';

/** Far above what a reading may have, low enough that a page does not choke on it. */
const LONGEST_CELL = 2_000;

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
  // One empty row waits below what is typed; a test of few readings starts with as many as it needs.
  const shown = Math.max(rows.length + (rows.length > 0 && isBlank(rows.at(-1)!) ? 0 : 1), props.least, 3);
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
          {Array.from({ length: shown }, (_, at) => {
            const row = rows[at];
            const number = at + 1;
            const isAside = row?.aside !== undefined;
            const asked = isAside ? undefined : questions.find((each) => each.row === number);
            const fault = isAside ? undefined : faults.get(number);
            return (
              <RowLine
                // biome-ignore lint/suspicious/noArrayIndexKey: a row is its number
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
      {tooLong && (
        <p className="bad small" role="alert">
          {tooLong}
        </p>
      )}
    </div>
  );
}

/** Choices whose words need the whole width of a phone. */
const isLong = (column: Column): boolean =>
  column.kind === 'choice' && Object.values(column.options).some((words) => words.length > 18);

interface LineProps {
  readonly at: number;
  readonly columns: readonly Column[];
  readonly row: Row | undefined;
  readonly question: string | undefined;
  readonly fault: string | undefined;
  readonly isUnfinished: boolean;
  readonly isAsking: boolean;
  readonly onText: (key: string, text: string) => void;
  readonly onFocus: () => void;
  readonly onKey: (event: KeyboardEvent, column: number) => void;
  readonly onPaste: (event: ClipboardEvent, column: number) => void;
  readonly onAsk: (open: boolean) => void;
  readonly onAside: (reason: string | undefined) => void;
}

function RowLine(props: LineProps) {
  const { at, columns, row, question, fault, isUnfinished, isAsking, onText, onFocus, onKey, onPaste } =
    props;
  const number = at + 1;
  const isAside = row?.aside !== undefined;
  const says = isAside ? undefined : (fault ?? question);
  const marked = isAside ? 'aside' : question ? 'odd' : fault ? 'fault' : undefined;
  return (
    <>
      <tr className={marked}>
        <th scope="row">
          <span className="hidden">row </span>
          {number}
        </th>
        {columns.map((column, i) => {
          const text = row?.cells[column.key] ?? '';
          const name = `${column.name}, row ${number}`;
          const common = {
            'aria-label': name,
            'data-cell': `${at}.${i}`,
            value: text,
            'aria-invalid': fault !== undefined && !isAside,
            'aria-describedby': says ? `said-${number}` : undefined,
            onFocus,
            onChange: (event: { target: { value: string } }) => onText(column.key, event.target.value),
            onKeyDown: (event: KeyboardEvent) => onKey(event, i),
          };
          return (
            <td
              key={column.key}
              className={isLong(column) ? 'long' : undefined}
              data-name={
                column.kind === 'quantity' && column.unit !== '1'
                  ? `${column.name} in ${column.unit}`
                  : column.name
              }
            >
              {column.kind === 'choice' ? (
                <select {...common}>
                  <option value="">–</option>
                  {text !== '' && !Object.hasOwn(column.options, text) && (
                    <option value={text}>{text.slice(0, 30)}?</option>
                  )}
                  {Object.entries(column.options).map(([key, words]) => (
                    <option key={key} value={key}>
                      {words}
                    </option>
                  ))}
                </select>
              ) : (
                <input
                  {...common}
                  inputMode={column.domain === 'positive' ? 'decimal' : 'text'}
                  enterKeyHint="next"
                  autoComplete="off"
                  spellCheck={false}
                  onPaste={(event) => onPaste(event, i)}
                />
              )}
            </td>
          );
        })}
        <td className="act">
          {row && !isBlank(row) && (
            <button
              type="button"
              className="plain small"
              aria-expanded={isAside ? undefined : isAsking}
              onClick={() => (isAside ? props.onAside(undefined) : props.onAsk(!isAsking))}
            >
              {isAside ? 'Bring back' : 'Set aside'}
              <span className="hidden"> row {number}</span>
            </button>
          )}
        </td>
      </tr>
      {(says || isAside || isAsking) && (
        <tr className="under">
          <td colSpan={columns.length + 2}>
            {isAside && (
              <p className="small soft">
                Row {number} does not count: {row?.aside}
              </p>
            )}
            {fault && !isAside && (
              <p id={`said-${number}`} className={isUnfinished ? 'small soft' : 'small bad'}>
                {fault}
              </p>
            )}
            {question && !fault && (
              <p id={`said-${number}`} className="small question">
                <strong>Odd? </strong>
                {question}
              </p>
            )}
            {isAsking && !isAside && (
              <Reason number={number} onAside={props.onAside} onCancel={() => props.onAsk(false)} />
            )}
          </td>
        </tr>
      )}
    </>
  );
}

interface ReasonProps {
  readonly number: number;
  readonly onAside: (reason: string) => void;
  readonly onCancel: () => void;
}

/** Nothing is left out without a reason that is kept. */
function Reason({ number, onAside, onCancel }: ReasonProps) {
  const id = useId();
  const [reason, setReason] = useState('');
  const done = (): void => {
    if (reason.trim() !== '') onAside(reason.trim().replace(/\s+/g, ' '));
  };
  return (
    <div className="bench-reason">
      <label htmlFor={id}>Set row {number} aside, because …</label>
      <input
        id={id}
        // biome-ignore lint/a11y/noAutofocus: it was opened by the button beside it, to be typed in
        autoFocus
        value={reason}
        maxLength={120}
        placeholder="the probe slipped"
        onChange={(event) => setReason(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') done();
          if (event.key === 'Escape') onCancel();
        }}
      />
      <div className="row">
        <button type="button" onClick={done} disabled={reason.trim() === ''}>
          Set it aside
        </button>
        <button type="button" className="plain" onClick={onCancel}>
          Let it count
        </button>
      </div>
    </div>
  );
}

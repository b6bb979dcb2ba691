/** One row of readings: its cells, what is odd or wrong in it, and setting it aside for a reason. */
import { type ClipboardEvent, type KeyboardEvent, useId, useState } from 'react';
import type { Column } from '../../../engine/evidence/index.ts';
import { isBlank, type Row } from './rows.ts';

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

export function RowLine(props: LineProps) {
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

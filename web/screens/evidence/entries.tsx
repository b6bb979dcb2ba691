/** What a bench test asks once: entries with their unit, help, and what is wrong with them. */

import { useId } from 'react';
import type { Entry } from '../../../engine/evidence/index.ts';
import { capital } from '../../../engine/quantity/words.ts';

interface Props {
  readonly entries: readonly Entry[];
  readonly given: Readonly<Record<string, string>>;
  /** By key. */
  readonly faults: Readonly<Record<string, string>>;
  readonly onChange: (key: string, text: string) => void;
}

/** What has to be said first; what may be left out after it, unless nothing else is asked. */
export function Entries(props: Props) {
  const { entries } = props;
  const needed = entries.filter((entry) => !entry.optional);
  const instruments = entries.filter((entry) => entry.optional && entry.kind === 'accuracy');
  const more = entries.filter((entry) => entry.optional && entry.kind !== 'accuracy');
  const isShy = needed.length > 0;
  return (
    <>
      <List {...props} entries={isShy ? needed : more} />
      {isShy && more.length > 0 && (
        <Unfold {...props} entries={more} summary="If you know or have measured it" />
      )}
      {instruments.length > 0 && (
        <Unfold
          {...props}
          entries={instruments}
          summary="How far your instruments may be wrong: without it the ± is too small"
        />
      )}
    </>
  );
}

function Unfold({ summary, ...props }: Props & { summary: string }) {
  const isUsed = props.entries.some(({ key }) => (props.given[key] ?? '').trim() !== '' || props.faults[key]);
  return (
    <details className="bench-more" open={isUsed || undefined}>
      <summary>{summary}</summary>
      <List {...props} />
    </details>
  );
}

function List({ entries, given, faults, onChange }: Props) {
  return (
    <div className="bench-entries">
      {entries.map((entry) => (
        <Field
          key={entry.key}
          entry={entry}
          text={given[entry.key] ?? ''}
          fault={faults[entry.key]}
          onChange={(text) => onChange(entry.key, text)}
        />
      ))}
    </div>
  );
}

interface FieldProps {
  readonly entry: Entry;
  readonly text: string;
  readonly fault: string | undefined;
  readonly onChange: (text: string) => void;
}

function Field({ entry, text, fault, onChange }: FieldProps) {
  const id = useId();
  const common = {
    id,
    value: text,
    'aria-describedby': `${id}-help`,
    'aria-invalid': fault !== undefined && text.trim() !== '',
    onChange: (event: { target: { value: string } }) => onChange(event.target.value),
  };
  return (
    <div className="bench-entry" data-entry={entry.key}>
      <label htmlFor={id}>
        {capital(entry.name)}
        {entry.kind === 'quantity' && entry.unit !== '1' && (
          <span className="small soft"> in {entry.unit} or another unit</span>
        )}
      </label>
      {entry.kind === 'choice' ? (
        <select {...common}>
          <option value="">{entry.optional ? 'not looked at' : 'choose'}</option>
          {Object.entries(entry.options).map(([key, words]) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          autoComplete="off"
          spellCheck={false}
          placeholder={
            entry.kind === 'accuracy' ? 'like 0.5 % + 2 digits' : entry.usual ? `empty: ${entry.usual}` : ''
          }
        />
      )}
      <p id={`${id}-help`} className="small" aria-live="polite">
        {fault ? (
          <span className={text.trim() === '' ? undefined : 'bad'}>{fault}</span>
        ) : (
          <span className="soft">{entry.help}</span>
        )}
      </p>
    </div>
  );
}

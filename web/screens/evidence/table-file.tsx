/** Readings from a file of separated values, and into one. */
import { type ChangeEvent, useId } from 'react';

interface TableFileProps {
  readonly name: string;
  readonly isEmpty: boolean;
  readonly csv: () => string;
  readonly onText: (text: string) => void;
  readonly onFault: (fault: string) => void;
}

/** Largest table that is read, in bytes. */
const LARGEST = 1_000_000;

export function TableFile({ name, isEmpty, csv, onText, onFault }: TableFileProps) {
  const id = useId();
  const pick = async (event: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const file = event.target.files?.[0];
    if (!file) return;
    try {
      if (file.size > LARGEST)
        onFault(
          `This file has ${(file.size / 1e6).toFixed(1)} MB; a table of readings has at most 1 MB. Nothing was changed.`,
        );
      else onText(await file.text());
    } catch {
      onFault('This file could not be read. Nothing was changed.');
    }
    event.target.value = '';
  };
  return (
    <span className="row">
      <span className="bench-pick">
        <input id={id} type="file" accept=".csv,.tsv,.txt,text/csv,text/plain" onChange={pick} />
        <label htmlFor={id} className="button small">
          From a CSV file
        </label>
      </span>
      <button
        type="button"
        className="small"
        disabled={isEmpty}
        onClick={() => {
          const address = URL.createObjectURL(new Blob([csv()], { type: 'text/csv' }));
          const link = document.createElement('a');
          link.href = address;
          link.download = name;
          link.click();
          // The browser has taken it over by the next turn.
          setTimeout(() => URL.revokeObjectURL(address), 0);
        }}
      >
        As CSV
      </button>
    </span>
  );
}

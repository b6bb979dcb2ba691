/** What a run reads: entries, rows, and sheets whose use is written down. */
import { explain, type Sheet } from '../sheet/index.ts';
import type { Accuracy } from './accuracy.ts';
import { through } from './estimate.ts';
import type { Estimate, Read, Reading, WorkingLine } from './types.ts';

export interface Row {
  readonly values: Map<string, Reading>;
  readonly picks: Map<string, string>;
}

export interface Entries {
  readonly values: Map<string, Estimate>;
  readonly picks: Map<string, string>;
  readonly accuracies: Map<string, { readonly of: Accuracy; readonly id: string; readonly name: string }>;
}

/** How a sheet's formula was used, the first time it was. */
export interface Notebook {
  readonly lines: readonly WorkingLine[];
}

export function readFrom(entries: Entries, rows: ReadonlyMap<number, Row>): Read & Notebook {
  const lines = new Map<string, { readonly line: WorkingLine; uses: number }>();
  const numbers = [...rows.keys()];
  return {
    entry: (key) => {
      const value = entries.values.get(key);
      if (!value) throw new TypeError(`the method reads '${key}', which it does not ask for`);
      return value;
    },
    maybe: (key) => entries.values.get(key),
    choice: (key) => entries.picks.get(key),
    accuracyGiven: (column) => entries.accuracies.has(column),
    column: (key) => numbers.flatMap((row) => rows.get(row)!.values.get(key) ?? []),
    cell: (key, row) => rows.get(row)?.values.get(key),
    picked: (key, row) => rows.get(row)?.picks.get(key),
    rows: numbers,
    through: (sheet, key, given) => {
      const id = `${sheet.id}.${key}`;
      const known = lines.get(id);
      if (known) known.uses += 1;
      else lines.set(id, { line: lineOf(sheet, key, given), uses: 1 });
      return through(sheet, key, given);
    },
    get lines() {
      return [...lines.values()].map(({ line, uses }) =>
        uses === 1 ? line : { ...line, name: `${line.name}, the first of ${uses}` },
      );
    },
  };
}

function lineOf<K extends string>(
  sheet: Sheet<K>,
  key: K,
  given: Readonly<Partial<Record<K, Estimate>>>,
): WorkingLine {
  const values = Object.fromEntries(
    Object.entries(given).map(([k, each]) => [k, (each as Estimate).value]),
  ) as Partial<Record<K, number>>;
  const { name, plain, plainWithNumbers, tex, texWithNumbers, source } = explain(sheet, key, values);
  return { sheet: sheet.id, name, plain, plainWithNumbers, tex, texWithNumbers, source };
}

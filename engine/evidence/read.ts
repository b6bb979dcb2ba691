/** Everything typed for a method, as numbers; what cannot be read is refused with the entry or the row named. */
import { ok, type Result, refuse } from '../quantity/index.ts';
import { nearest } from '../quantity/nearest.ts';
import { parseAccuracy } from './accuracy.ts';
import { withDigits } from './digits.ts';
import { readValue } from './read-value.ts';
import { type Entries, type Notebook, type Row, readFrom } from './reader.ts';
import type { ChoiceAsked, Column, Entry, Method, Read, Taken } from './types.ts';

const MOST_ROWS = 2000;

const noSuch = (what: string, typed: string, keys: readonly string[]): Result<never> => {
  const near = nearest(typed.slice(0, 60), keys);
  return refuse({
    code: 'unknown-name',
    where: typed.slice(0, 60),
    message: `There is no ${what} “${typed.slice(0, 60)}” here. ${near ? `Did you mean “${near}”? ` : ''}${keys.length > 0 ? `There are: ${keys.join(', ')}.` : 'There are none.'}`,
  });
};

function pick({ name, options }: ChoiceAsked, text: string): Result<string> {
  const word = text.trim().toLowerCase();
  const found = Object.keys(options).find(
    (key) => key.toLowerCase() === word || options[key]!.toLowerCase() === word,
  );
  if (found !== undefined) return ok(found);
  return refuse({
    code: 'unknown-name',
    message: `“${text.slice(0, 40)}” is none of the answers for ${name}: ${Object.entries(options)
      .map(([key, says]) => `${key} (${says})`)
      .join(', ')}.`,
  });
}

function readEntries(given: readonly Entry[], taken: Taken['given']): Result<Entries> {
  const entries: Entries = { values: new Map(), picks: new Map(), accuracies: new Map() };
  // Accuracies first: they say how far the others can be trusted.
  const inOrder = [...given].sort((a, b) => Number(b.kind === 'accuracy') - Number(a.kind === 'accuracy'));
  for (const entry of inOrder) {
    const text = (Object.hasOwn(taken, entry.key) ? taken[entry.key]! : '').trim() || (entry.usual ?? '');
    const where = entry.key;
    const said = (message: string): Result<never> =>
      refuse({ code: 'malformed', where, message: `${entry.name} (${where}): ${message}` });
    if (text === '') {
      if (entry.optional || entry.kind === 'accuracy') continue;
      return said(`this has to be given. ${entry.help}`);
    }
    if (entry.kind === 'accuracy') {
      const read = parseAccuracy(text, entry.unit);
      if (!read.ok) return said(read.problem.message);
      for (const key of entry.of)
        entries.accuracies.set(key, { of: read.value, id: `accuracy:${where}:${key}`, name: entry.name });
    } else if (entry.kind === 'choice') {
      const read = pick(entry, text);
      if (!read.ok) return said(read.problem.message);
      entries.picks.set(where, read.value);
    } else {
      const read = readValue(entry, text, `given:${where}`, entries.accuracies.get(where), false);
      if (!read.ok) return said(read.problem.message);
      entries.values.set(where, read.value);
    }
  }
  return ok(entries);
}

function readRow(
  columns: readonly Column[],
  readings: Taken['readings'],
  row: number,
  { accuracies }: Entries,
): Result<Row> {
  const into: Row = { values: new Map(), picks: new Map() };
  for (const column of columns) {
    const text = (readings[column.key]?.[row - 1] ?? '').trim();
    const where = `${column.key}, row ${row}`;
    const said = (message: string): Result<never> =>
      refuse({ code: 'malformed', where, message: `${column.name} in row ${row}: ${message}` });
    if (text === '') {
      if (column.optional) continue;
      return said(`nothing is written there. ${column.help}`);
    }
    if (column.kind === 'choice') {
      const read = pick(column, text);
      if (!read.ok) return said(read.problem.message);
      into.picks.set(column.key, read.value);
    } else {
      const read = readValue(column, text, `${column.key}:${row}`, accuracies.get(column.key), true);
      if (!read.ok) return said(read.problem.message);
      into.values.set(column.key, { ...read.value, row, text });
    }
  }
  return ok(into);
}

export function readTaken(method: Method, taken: Taken): Result<Read & Notebook> {
  const { given, columns, least } = method;
  for (const key of Object.keys(taken.given))
    if (!given.some((entry) => entry.key === key))
      return noSuch(
        'entry',
        key,
        given.map((entry) => entry.key),
      );
  for (const key of Object.keys(taken.readings))
    if (!columns.some((column) => column.key === key))
      return noSuch(
        'column',
        key,
        columns.map((column) => column.key),
      );
  const entries = readEntries(given, taken.given);
  if (!entries.ok) return entries;

  const height = Math.max(0, ...columns.map(({ key }) => taken.readings[key]?.length ?? 0));
  if (height > MOST_ROWS)
    return refuse({
      code: 'too-long',
      where: 'readings',
      message: `There are ${height} rows; at most ${MOST_ROWS} can be worked with.`,
    });
  const rows = new Map<number, Row>();
  for (let row = 1; row <= height; row++) {
    const blank = columns.every(({ key }) => (taken.readings[key]?.[row - 1] ?? '').trim() === '');
    if (blank || taken.aside.includes(row - 1)) continue;
    const read = readRow(columns, taken.readings, row, entries.value);
    if (!read.ok) return read;
    rows.set(row, read.value);
  }
  if (rows.size < least) {
    const aside = taken.aside.length > 0 ? ', those set aside left out' : '';
    return refuse({
      code: 'malformed',
      where: 'readings',
      message: `${method.title} needs at least ${least} ${least === 1 ? 'row' : 'rows'} of readings (${columns.map(({ key }) => key).join(', ')}); there ${rows.size === 1 ? 'is 1' : `are ${rows.size}`}${aside}.`,
    });
  }
  return ok(readFrom(entries.value, withDigits(columns, rows, entries.value)));
}

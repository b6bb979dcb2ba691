/** All that a bench method still wants of what was typed, said at once. */
import type { Column, Entry, Method, Taken } from '../engine/evidence/index.ts';
import { quoted } from './print/text.ts';
import { Refusal } from './refusal.ts';

const isWanted = (entry: Entry): boolean =>
  entry.kind !== 'accuracy' && !entry.optional && entry.usual === undefined;

const blank = (text: string | undefined): boolean => (text ?? '').trim() === '';

/** Throws Refusal naming every entry and column that is missing, with its unit, a line as an example, and where the cautions are. */
export function refuseMissing(method: Method, { given, readings }: Taken): void {
  const { id, title, least } = method;
  const entries = method.given.filter((entry) => isWanted(entry) && blank(given[entry.key]));
  const isEmpty = ({ key }: Column): boolean => (readings[key] ?? []).every(blank);
  // Where nothing was read, what may be left out is named as well: of some columns any one will do.
  const none = method.columns.every(isEmpty);
  const columns = least > 0 ? method.columns.filter((each) => isEmpty(each) && (none || !each.optional)) : [];
  if (entries.length + columns.length === 0) return;
  const leaveOut = method.columns.every(({ optional }) => optional)
    ? 'if that is what you read'
    : 'may be left out';
  throw new Refusal(
    [
      `“${title}” cannot be worked out yet; it still wants:`,
      ...entries.map((entry) => `– ${entry.key}: ${entry.name}, ${whatOf(entry)}`),
      ...columns.map(
        (column) =>
          `– ${column.key}: ${column.name}, ${whatOf(column)}, ${column.optional ? leaveOut : rowsOf(least)}`,
      ),
      `For example: fettle evidence ${exampleOf(method)}`,
      `What can hurt, the tools and the steps: fettle evidence --show ${id}`,
    ].join('\n'),
  );
}

function whatOf(asked: Entry | Column): string {
  if (asked.kind === 'choice')
    return `one of ${Object.entries(asked.options)
      .map(([key, says]) => (key === says ? key : `${key} (${says})`))
      .join(', ')}`;
  return asked.unit === '1' ? 'a plain number' : `in ${asked.unit}`;
}

const rowsOf = (least: number): string =>
  least === 1 ? 'one reading or more with commas between' : `${least} readings or more with commas between`;

/** Everything that has to be given, with invented numbers. */
export function exampleOf({ id, given, columns, least }: Method): string {
  const rows = Math.max(2, least);
  const wanted = columns.filter(({ optional }) => !optional);
  const words = [
    ...given.filter(isWanted).map((entry) => `${entry.key}=${sampleOf(entry, 0)}`),
    ...(wanted.length > 0 || least === 0 ? wanted : columns.slice(0, 1)).map(
      (column) =>
        `${column.key}=${Array.from({ length: rows }, (_, row) => sampleOf(column, row)).join(',')}`,
    ),
  ];
  return [id, ...words].map(quoted).join(' ');
}

function sampleOf(asked: Entry | Column, row: number): string {
  if (asked.kind === 'choice') return Object.keys(asked.options)[row % Object.keys(asked.options).length]!;
  if (asked.kind === 'quantity' && asked.whole) return String(10 + row);
  return (12.1 + row / 5).toFixed(1);
}

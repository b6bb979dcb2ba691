/** Readings as a person types them on a command line or keeps them in a table. */

import { existsSync, readFileSync, statSync } from 'node:fs';
import type { Method, Taken } from '../engine/evidence/index.ts';
import { parseReadings } from '../engine/metrology/index.ts';
import { convert, formatNumber, parseQuantity } from '../engine/quantity/index.ts';
import { nearest } from '../engine/quantity/nearest.ts';
import { shown } from './arguments.ts';
import { assignment } from './assignment.ts';
import { type Call, TO_OUT } from './command.ts';
import { writeOut } from './output.ts';
import { need, Refusal } from './refusal.ts';

const LARGEST = 1_000_000;

/** Throws Refusal that names what was not understood. */
export function readTaken(
  method: Method,
  words: readonly string[],
  csv: string | undefined,
  aside: string | undefined,
): Taken {
  const given: Record<string, string> = Object.create(null);
  const readings: Record<string, string[]> = Object.assign(
    Object.create(null),
    csv === undefined ? {} : readTable(method, csv),
  );
  for (const word of words) {
    const [name, text] = assignment(word, `NAME=VALUE, such as ${example(method)}`);
    const key = keyOf(method, name);
    const twice = (): never => {
      throw new Refusal(`${key} was given twice; give it once, with all its readings.`);
    };
    if (method.columns.some((column) => column.key === key)) {
      if (readings[key] !== undefined) twice();
      readings[key] = split(text);
    } else {
      if (given[key] !== undefined) twice();
      given[key] = text;
    }
  }
  return { given: { ...given }, readings: { ...readings }, aside: rowsOf(aside) };
}

/** Commas part readings; where there are semicolons, commas are decimal. */
const split = (text: string): string[] =>
  text.split(text.includes(';') ? ';' : ',').map((each) => each.trim());

function keyOf({ title, given, columns }: Method, typed: string): string {
  const keys = [...columns, ...given].map(({ key }) => key);
  const found =
    keys.find((key) => key === typed) ?? keys.find((key) => key.toLowerCase() === typed.toLowerCase());
  if (found !== undefined) return found;
  const near = nearest(shown(typed), keys);
  throw new Refusal(
    `${title} has no “${shown(typed)}”. ${near ? `Did you mean ${near}? ` : ''}It asks for ${keys.join(', ')}.`,
  );
}

const example = ({ columns, given }: Method): string => {
  const [column] = columns;
  return column ? `${column.key}=1.2,1.3` : `${given[0]?.key ?? 'name'}=VALUE`;
};

function rowsOf(text: string | undefined): number[] {
  if (text === undefined) return [];
  return [
    ...new Set(
      text.split(/[,; ]+/).map((each) => {
        if (!/^[1-9]\d{0,4}$/.test(each))
          throw new Refusal(`--aside takes row numbers from 1, such as 3,5; “${shown(each)}” is none.`);
        return Number(each) - 1;
      }),
    ),
  ];
}

/** Columns of a table by their headings, as texts in each column's own unit. */
function readTable(method: Method, path: string): Record<string, string[]> {
  const name = shown(path);
  if (!existsSync(path) || !statSync(path).isFile()) throw new Refusal(`${name}: there is no such file.`);
  if (statSync(path).size > LARGEST)
    throw new Refusal(`${name} is too large for a table of readings; the most is ${LARGEST / 1e6} MB.`);
  const wanted = method.columns.map((column) => ({
    key: column.key,
    name: column.name,
    unit: column.kind === 'quantity' ? column.unit : '1',
  }));
  const { columns } = need(parseReadings(readFileSync(path, 'utf8'), { columns: wanted }), `${name}: `);
  return Object.fromEntries(
    method.columns.flatMap((column) => {
      const cells = columns[column.key] ?? [];
      if (cells.every(({ text }) => text.trim() === '')) return [];
      return [
        [
          column.key,
          cells.map(({ text, value }) =>
            column.kind === 'quantity' ? inUnit(text, value, column.unit) : text.trim(),
          ),
        ],
      ];
    }),
  );
}

/** The text as it stands where it reads the same in the column's unit; else the number in that unit. */
function inUnit(text: string, value: number | null, unit: string): string {
  if (value === null) return text.trim();
  const plain =
    /^[-+]?[\d.,]+(?:e[-+]?\d+)?$/i.test(text.trim()) && unit !== '1' ? `${text.trim()} ${unit}` : text;
  const read = parseQuantity(plain, unit);
  if (read.ok && Math.abs(read.value.value - value) <= 1e-12 * Math.abs(value)) return text.trim();
  return `${formatNumber(convert(value, unit), 12)} ${unit === '1' ? '' : unit}`.trim();
}

const cell = (text: string): string => (/[",;\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
/** A spreadsheet would run a cell that begins so. */
const harmless = (text: string): string => (/^[=+@\t]/.test(text) || /^-\D/.test(text) ? `'${text}` : text);

/** A table that `--csv` reads back: headings with units, one row a reading. */
export function writeTaken(io: Call['io'], path: string, { columns }: Method, { readings }: Taken): void {
  const used = columns.filter(({ key }) => readings[key] !== undefined);
  if (used.length === 0) throw new Refusal('There are no readings to write.');
  const height = Math.max(...used.map(({ key }) => readings[key]!.length));
  const heading = used.map((column) =>
    cell(column.kind === 'quantity' && column.unit !== '1' ? `${column.name} [${column.unit}]` : column.name),
  );
  const rows = Array.from({ length: height }, (_, row) =>
    used.map(({ key }) => cell(harmless(readings[key]![row] ?? ''))).join(','),
  );
  if (path !== TO_OUT && existsSync(path))
    throw new Refusal(`${shown(path)} is there already; choose another name.`);
  writeOut(io, path, `${[heading.join(','), ...rows].join('\n')}\n`, false);
}

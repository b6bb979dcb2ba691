/** Readings pasted from a spreadsheet or a file of separated values. */
import { ok, type Problem, parseQuantity, type Result, refuse } from '../quantity/index.ts';
import { cellName, cutCells } from './paste-cells.ts';
import { isBlank, isHeading, isUnits, type Source, sourcesOf } from './paste-heading.ts';
import type { Cell, Column, Pasted } from './paste-types.ts';
import { questionReadings } from './question.ts';

const MOST_CHARACTERS = 1_000_000;
const MOST_ROWS = 20_000;
const MOST_CELLS = 200_000;

const shown = (text: string): string => `“${text.length > 30 ? `${text.slice(0, 30)}…` : text}”`;

/** Whether the cells settle what a lone comma before three digits means: decimal commas surely, and no decimal point. */
function commaIsDecimal(cells: readonly string[]): boolean {
  const sure = cells.some((c) => /^\D*(?:0,\d+|\d+,(?:\d{1,2}|\d{4,}))(?!\d|,)/.test(c));
  return sure && !cells.some((c) => /\d\.\d|\d,\d{3}[,.]/.test(c));
}

/** A number without a unit. */
const isBare = (text: string): boolean => !/[\p{L}%°"']/u.test(text.replace(/\d[eE][+-]?\d/, ''));

const LONE_COMMA = /^([+−-]? ?[1-9]\d{0,2}),(\d{3})(?![\d.,])/;

function readCell(text: string, source: Source, name: string, decimalComma: boolean): Cell {
  if (isBlank(text)) return { text, value: null };
  const fail = (problem: Problem): Cell => ({ text, value: null, problem: { ...problem, where: name } });
  if (/^[=@]/.test(text) || /^[+-] ?\$?[A-Za-z]/.test(text))
    return fail({
      code: 'not-a-number',
      message: `Cell ${name} holds the formula ${shown(text)} instead of a number. Paste the values it shows.`,
    });
  if (text.startsWith('#'))
    return fail({
      code: 'not-a-number',
      message: `Cell ${name} holds the spreadsheet's own error ${shown(text)}. Put its number there or leave it blank.`,
    });
  const settled = decimalComma ? text.replace(LONE_COMMA, '$1.$2') : text;
  const unit = isBare(text) && source.unit !== '1' ? ` ${source.unit}` : '';
  const read = parseQuantity(`${settled}${unit}`, source.column.unit);
  if (read.ok) return { text, value: read.value.value };
  const { message } = read.problem;
  return fail({ ...read.problem, message: `Cell ${name}: ${message}` });
}

/** Counted before anything is cut, so that a megabyte of blank lines costs nothing. */
function lineEnds(text: string): number {
  let count = 0;
  for (let i = 0; i < text.length; i++)
    if (text[i] === '\n' || (text[i] === '\r' && text[i + 1] !== '\n')) count++;
  return count;
}

/**
 * Reads pasted rows into the wanted columns. Cells are separated by tabs, semicolons, commas or blanks; a first row of
 * headings may name columns in any order and give their units; a second one may hold the units. Bare numbers are in the
 * heading's unit, else in the column's. Blank cells stay blank, blank rows are left out, nothing else is: a cell that
 * cannot be read keeps its text with a problem naming the cell (B3: second column, third row), a wild reading is
 * questioned in `notes`.
 *
 * Refused as a whole: nothing, more than a million characters or 20 000 rows, or commas that stand both inside numbers
 * and between them.
 */
export function parseReadings(text: string, wanted: { readonly columns: readonly Column[] }): Result<Pasted> {
  const { columns } = wanted;
  if (text.length > MOST_CHARACTERS)
    return refuse({
      code: 'too-long',
      message: 'This is more than a million characters. Paste fewer rows at a time.',
    });
  const tooMany = refuse<Pasted>({
    code: 'too-long',
    message: `This has more than ${MOST_ROWS} rows or ${MOST_CELLS} cells. Paste fewer at a time.`,
  });
  if (lineEnds(text) > MOST_ROWS) return tooMany;
  const cells = cutCells(text, columns.length);
  if ('undecided' in cells)
    return refuse({
      code: 'ambiguous',
      message:
        'Commas stand both inside the numbers and between them. Paste straight from the spreadsheet, or put semicolons between the cells.',
    });
  const { rows } = cells;
  const first = rows.findIndex((row) => !row.every((c) => c === ''));
  if (first < 0)
    return refuse({
      code: 'empty',
      message: `Nothing was pasted. Paste rows with ${columns.map((c) => c.name).join(', ')}.`,
    });
  if (rows.reduce((sum, row) => sum + row.length, 0) > MOST_CELLS) return tooMany;
  const notes: string[] = [];
  const heading = isHeading(rows[first]!, columns) ? rows[first]! : undefined;
  const below = heading ? first + 1 : first;
  const units = heading && rows[below] && isUnits(rows[below]) ? rows[below] : undefined;
  const sources = sourcesOf(columns, heading, units, notes);
  const body = rows
    .map((row, index) => ({ row, index }))
    .slice(units ? below + 1 : below)
    .filter(({ row }) => !row.every((c) => c === ''));
  if (body.length === 0)
    return refuse({ code: 'empty', message: 'There is a heading but no readings below it.' });
  noteUneven(body, sources, heading?.length, notes);
  const read = sources.map((source) => {
    const texts = body.map(({ row }) => row[source.at] ?? '');
    const decimalComma = commaIsDecimal(texts);
    if (decimalComma && texts.some((t) => LONE_COMMA.test(t)))
      notes.push(
        `${source.column.name}: the comma was taken as a decimal comma, as in the other cells of that column.`,
      );
    const list = texts.map((t, i) => readCell(t, source, cellName(body[i]!.index, source.at), decimalComma));
    noteColumn(source, list, body, notes);
    return [source.column.key, list] as const;
  });
  return ok({ columns: Object.fromEntries(read), notes });
}

type Body = readonly { readonly row: readonly string[]; readonly index: number }[];

function noteUneven(
  body: Body,
  sources: readonly Source[],
  headed: number | undefined,
  notes: string[],
): void {
  const wanted = Math.max(...sources.map((s) => s.at)) + 1;
  const say = (list: Body, one: string, several: string): void => {
    if (list.length === 0) return;
    const names = list
      .slice(0, 5)
      .map(({ index }) => index + 1)
      .join(', ');
    notes.push(
      `Row${list.length === 1 ? '' : 's'} ${names}${list.length > 5 ? ` and ${list.length - 5} more` : ''} ${list.length === 1 ? one : several}`,
    );
  };
  say(
    body.filter(({ row }) => row.length < wanted),
    'ends before the last column wanted; the missing cells were left blank.',
    'end before the last column wanted; the missing cells were left blank.',
  );
  const most = Math.max(wanted, headed ?? 0);
  say(
    body.filter(({ row }) => row.slice(most).some((c) => c !== '')),
    'has more cells than there are columns; the further ones were not read.',
    'have more cells than there are columns; the further ones were not read.',
  );
}

function noteColumn(source: Source, cells: readonly Cell[], body: Body, notes: string[]): void {
  const { name, unit } = source.column;
  const bare = cells.some((c) => c.value !== null && isBare(c.text));
  if (bare && unit !== '1')
    notes.push(
      `${name}: numbers without a unit were taken in ${source.unit}${source.unit === unit ? '' : ', as the heading says'}.`,
    );
  const read = cells.flatMap((c, i) => (c.value === null ? [] : [{ value: c.value, i }]));
  if (read.some((r) => Math.abs(r.value) > 1e300)) return;
  const question = questionReadings(
    read.map((r) => r.value),
    {
      name: (r) => `cell ${cellName(body[read[r]!.i]!.index, source.at)} (${shown(cells[read[r]!.i]!.text)})`,
    },
  );
  if (question) notes.push(`${name}: ${question.why}`);
}

/** Pasted text cut into cells: separators, quotes, line ends. */

export type Separator = '\t' | ';' | ',' | 'blanks' | 'none';

export interface Cut {
  readonly rows: readonly (readonly string[])[];
  readonly separator: Separator;
}

/** Commas stand both inside numbers and between them. */
export interface Undecided {
  readonly undecided: true;
}

/** Cuts into rows of cells at one separator. A cell may stand in double quotes, "" inside them for one. */
function cut(text: string, separator: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let quoted = false;
  let begun = false;
  const endCell = (): void => {
    row.push(cell.trim());
    cell = '';
    begun = false;
  };
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!;
    if (quoted) {
      if (c !== '"') cell += c;
      else if (text[i + 1] === '"') {
        cell += '"';
        i++;
      } else quoted = false;
    } else if (c === '"' && !begun && closes(text, i, separator)) {
      quoted = true;
      begun = true;
      cell = '';
    } else if (c === separator) endCell();
    else if (c === '\n') {
      endCell();
      rows.push(row);
      row = [];
    } else {
      cell += c;
      begun ||= c !== ' ';
    }
  }
  endCell();
  rows.push(row);
  return rows;
}

/** A quote opens a cell only where another closes it within reason: 3" is no quoted text. */
function closes(text: string, from: number, separator: string): boolean {
  for (let i = from + 1; i < Math.min(text.length, from + 1000); i++) {
    if (text[i] !== '"') continue;
    if (text[i + 1] === '"') {
      i++;
      continue;
    }
    const after = /^ *(.)?/.exec(text.slice(i + 1, i + 20).replaceAll('\n', '\u0001'))?.[1];
    return after === undefined || after === '\u0001' || after === separator;
  }
  return false;
}

const isBlank = (row: readonly string[]): boolean => row.every((cell) => cell === '');
/** Rows with something in them. */
const filled = (rows: readonly (readonly string[])[]): (readonly string[])[] =>
  rows.filter((r) => !isBlank(r));

const most = (rows: readonly (readonly string[])[], holds: (row: readonly string[]) => boolean): boolean =>
  rows.length > 0 && rows.filter(holds).length > rows.length / 2;

/** Cells of `text` for so many wanted columns. */
export function cutCells(text: string, columns: number): Cut | Undecided {
  const lines = text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
  if (lines.includes('\t')) return { rows: cut(lines, '\t'), separator: '\t' };
  if (lines.includes(';')) return { rows: cut(lines, ';'), separator: ';' };
  const whole = lines.split('\n').map((line) => [line.trim()]);
  const blanks = lines.split('\n').map((line) => line.trim().split(/ {2,}/));
  const singles = lines.split('\n').map((line) => line.trim().split(/ +/));
  const commas = cut(lines, ',');
  if (columns === 1) {
    // '1.250,' or '3.10, good': a comma that cannot be a decimal one separates.
    if (most(filled(commas), (row) => row.length > 1 && /^[^,]*\.\d+\D*$/.test(row[0]!)))
      return { rows: commas, separator: ',' };
    if (/(?:^|\n) *"/.test(lines)) return { rows: commas, separator: ',' };
    return { rows: whole, separator: 'none' };
  }
  const rows = filled(commas);
  for (const split of [blanks, singles])
    if (most(filled(split), (r) => r.length === columns && r.every((c) => /^[+−-]?[\d.,]*\d\.?$/.test(c))))
      return { rows: split, separator: 'blanks' };
  if (most(rows, (r) => r.length === 2 * columns && r.every((c) => /\d/.test(c)))) return { undecided: true };
  if (rows.some((r) => r.length > 1)) return { rows: commas, separator: ',' };
  if (most(filled(blanks), (r) => r.length > 1)) return { rows: blanks, separator: 'blanks' };
  return { rows: whole, separator: 'none' };
}

/** 'B3' for the second column of the third row. */
export function cellName(row: number, column: number): string {
  let name = '';
  for (let n = column + 1; n > 0; n = Math.floor((n - 1) / 26))
    name = String.fromCharCode(65 + ((n - 1) % 26)) + name;
  return name + String(row + 1);
}

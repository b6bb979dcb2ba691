/** Headings over pasted columns: which column is which, and in what unit. */
import { parseQuantity, parseUnit } from '../quantity/index.ts';
import { cellName } from './paste-cells.ts';
import type { Column } from './paste-types.ts';

/** Nothing, or the dash that people put for nothing. */
export const isBlank = (text: string): boolean => /^[-–—−]?$/.test(text);

/** A heading's name and unit: 'Position (mm)', 'Position [mm]', 'Position / mm', 'Position, mm'. */
function readHeading(text: string): { name: string; unit?: string } {
  if (text.length > 200) return { name: text };
  const match =
    /^(.*?) ?[([]([^()[\]]+)[)\]]$/.exec(text) ?? /^(.*?) ?\/ (.+)$/.exec(text) ?? /^(.*?), (.+)$/.exec(text);
  if (match && parseUnit(match[2]!).ok) return { name: match[1]!, unit: match[2]! };
  // A bracket that is no unit may still be meant as one; the cells will say so.
  const bracket = /^(.*?) ?\[([^[\]]+)\]$/.exec(text);
  return bracket ? { name: bracket[1]!, unit: bracket[2]! } : { name: text };
}

const plain = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');

export interface Source {
  readonly column: Column;
  /** Which pasted column. */
  readonly at: number;
  readonly unit: string;
}

export function isHeading(row: readonly string[], columns: readonly Column[]): boolean {
  if (row.every(isBlank)) return false;
  const names = columns.flatMap((c) => [plain(c.key), plain(c.name)]);
  if (row.some((cell) => cell !== '' && names.includes(plain(readHeading(cell).name)))) return true;
  // No number stands in it, and some cell has words that are no formula.
  const isNumber = (cell: string): boolean =>
    /^[=+−-]? ?[\d.,]/.test(cell) || columns.some((c) => parseQuantity(cell, c.unit).ok);
  return !row.some(isNumber) && row.some((cell) => /^(?!nan|inf)[^=@#+-]*\p{L}/iu.test(cell));
}

const unitText = (cell: string): string => cell.replace(/^[([](.*)[)\]]$/, '$1');
export const isUnits = (row: readonly string[]): boolean =>
  row.some((c) => c !== '') && row.every((c) => c === '' || (!/\d/.test(c) && parseUnit(unitText(c)).ok));

/** Which pasted column serves which wanted one. */
export function sourcesOf(
  columns: readonly Column[],
  heading: readonly string[] | undefined,
  units: readonly string[] | undefined,
  notes: string[],
): Source[] {
  const heads = (heading ?? []).map(readHeading);
  const used = new Set<number>();
  const found = columns.map((column) => {
    const at = heads.findIndex(
      (h, i) =>
        !used.has(i) && h.name !== '' && [plain(column.key), plain(column.name)].includes(plain(h.name)),
    );
    if (at >= 0) used.add(at);
    return at >= 0 ? at : undefined;
  });
  const byOrder = found.filter((at) => at === undefined).length;
  let next = 0;
  const sources = columns.map((column, i): Source => {
    let at = found[i];
    if (at === undefined) {
      while (used.has(next)) next++;
      at = next;
      used.add(next);
    }
    const below = units?.[at] ?? '';
    const said = heads[at]?.unit ?? (below === '' ? undefined : unitText(below));
    return { column, at, unit: said ?? column.unit };
  });
  if (heading && byOrder > 0) {
    const names = sources
      .filter((_, i) => found[i] === undefined)
      .map((s) => `${s.column.name} from column ${cellName(0, s.at).slice(0, -1)}`);
    notes.push(
      `No heading names ${byOrder === 1 ? 'this column' : 'these columns'}, so ${byOrder === 1 ? 'it was' : 'they were'} taken by order: ${names.join(', ')}.`,
    );
  }
  return sources;
}

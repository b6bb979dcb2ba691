/** Lines of one step put together by what they have in common, so that it need be said only once. */
import { inOrder } from './words.ts';

export interface Line {
  readonly id: string;
  /** Terminal it is sorted by. */
  readonly sort: string;
  /** First, red, black, wire, should show, otherwise. */
  readonly cells: readonly string[];
}

export interface Section {
  /** What is common to its readings: 'no path'; empty where the step is one section. */
  readonly name: string;
  readonly shared: readonly number[];
  readonly lines: readonly Line[];
}

const [SHOWS, OTHERWISE] = [4, 5];
/** Columns that may be said at the head: all but where the red lead goes, and what was measured. */
const COMMON = [0, 2, 3, SHOWS, OTHERWISE];
/** So many meanings of another reading are said at the head. */
const FEW = 2;
/** Fewer lines than this with the same words are no section of their own. */
const LEAST = 3;

/** `inTurn`: the lines stand in the order of working, and are left in it. */
export function sectionsOf(lines: readonly Line[], inTurn: boolean): readonly Section[] {
  if (lines.length === 0) return [];
  if (inTurn) return [section('', lines)];
  const sorted = [...lines].sort((a, b) => inOrder(a.sort, b.sort));
  // Readings that are the same stand together; all others make the last section.
  const byReading = parted(sorted, [SHOWS, OTHERWISE]);
  const alike = [...byReading.values()].filter((own) => own.length >= LEAST);
  const single = [...byReading.values()].filter((own) => own.length < LEAST).flat();
  const rest = sorted.filter((line) => single.includes(line));
  const parts = rest.length > 0 ? [...alike, rest] : alike;
  return parts.map((own) => section(parts.length > 1 ? nameOf(own) : '', own));
}

function parted(lines: readonly Line[], columns: readonly number[]): ReadonlyMap<string, readonly Line[]> {
  const found = new Map<string, Line[]>();
  for (const line of lines) {
    const key = JSON.stringify(columns.map((at) => line.cells[at]));
    const own = found.get(key);
    if (own) own.push(line);
    else found.set(key, [line]);
  }
  return found;
}

function section(name: string, lines: readonly Line[]): Section {
  const isShared = (at: number): boolean => {
    const said = new Set(lines.map(({ cells }) => cells[at]!)).size;
    return said === 1 || (at === OTHERWISE && said <= FEW && lines.length > FEW);
  };
  return { name, shared: lines.length === 1 ? [] : COMMON.filter(isShared), lines };
}

const nameOf = (lines: readonly Line[]): string => {
  const [first] = lines;
  const says = first!.cells[SHOWS]!;
  return lines.every(({ cells }) => cells[SHOWS] === says) ? says.split(/[;:]/)[0]! : 'others';
};

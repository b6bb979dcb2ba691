/** Lines drawn through many points, and the table that says the same in a few rows. */
import { convert, toSI } from '../../quantity/index.ts';
import type { Mark, Role, Scale, Series, Table } from './types.ts';

/** A line as a function of x: SI in, SI out, NaN where the line has ended. */
export interface Line {
  readonly name: string;
  readonly role: Role;
  readonly at: (xs: Float64Array) => Float64Array;
}

export const level = (name: string, role: Role, y: number): Line => ({
  name,
  role,
  at: (xs) => new Float64Array(xs.length).fill(y),
});

/** Whether a logarithmic axis is needed, so that what is asked does not lie on the floor under the limit. */
export const spread = (asked: number, most: number): boolean => asked > 0 && most > 12 * asked;

const INTERVALS = 120;
const ROWS = 10;

/** A step of 1, 2 or 5 times a power of ten that makes about this many rows. */
function niceStep(span: number, rows: number): number {
  const raw = span / rows;
  const power = 10 ** Math.floor(Math.log10(raw));
  const share = raw / power;
  return power * (share > 5 ? 10 : share > 2 ? 5 : share > 1 ? 2 : 1);
}

const ascending = (values: Iterable<number>, from: number, to: number): Float64Array => {
  const sorted = [...values].filter((x) => x >= from && x <= to).sort((a, b) => a - b);
  return Float64Array.from(sorted.filter((x, i) => i === 0 || x - sorted[i - 1]! > 1e-9 * (to - from)));
};

interface Span {
  /** Ends of the x axis, SI. */
  readonly from: number;
  readonly to: number;
  /** Places where a line bends or ends. */
  readonly through?: readonly number[];
}

/** Points of the lines and the table under them. Values that are no number are left out of both. */
export function draw(
  x: Scale,
  y: Scale,
  { from, to, through = [] }: Span,
  lines: readonly Line[],
  marks: readonly Mark[],
): { series: Series[]; table: Table } {
  const even = Array.from({ length: INTERVALS + 1 }, (_, k) => from + ((to - from) * k) / INTERVALS);
  const xs = ascending([...even, ...through], from, to);
  const series = lines.map(({ name, role, at }) => {
    const ys = at(xs);
    const points = Array.from(xs, (each, i) => [each, ys[i]!] as const);
    return { name, role, points: points.filter(([, value]) => Number.isFinite(value)) };
  });
  const shownTo = convert(to, x.unit);
  const step = niceStep(shownTo - convert(from, x.unit), ROWS);
  const nice: number[] = [];
  for (let k = Math.ceil(convert(from, x.unit) / step - 1e-9); k * step <= shownTo * (1 + 1e-9); k++)
    nice.push(Math.min(to, toSI(k * step, x.unit)));
  const at = ascending([...nice, ...marks.map((mark) => mark.x)], from, to);
  const columns = lines.map((line) => line.at(at));
  return {
    series,
    table: {
      columns: [{ name: x.name, unit: x.unit }, ...lines.map(({ name }) => ({ name, unit: y.unit }))],
      rows: Array.from(at, (each, row) => [
        each,
        ...columns.map((column) => (Number.isFinite(column[row]!) ? column[row]! : null)),
      ]),
    },
  };
}

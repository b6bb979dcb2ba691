/** The readings as numbers for a picture: points against points with a line, or dots in their order with a mean. */
import type { Column, QuantityAsked } from '../../../engine/evidence/index.ts';
import { coverage, fitLine, summarise } from '../../../engine/metrology/index.ts';
import { convert, parseQuantity } from '../../../engine/quantity/index.ts';
import { filled, type Row } from './rows.ts';

/** What stands over what, where two columns were read at the same moment. */
const OVER: Readonly<Record<string, readonly (readonly [y: string, x: string])[]>> = {
  'winding-resistance': [['volts', 'amps']],
  'back-emf': [['volts', 'speed']],
  'no-load-current': [['amps', 'speed']],
  'locked-rotor': [['loading', 'amps']],
  'tacho-constant': [['volts', 'speed']],
  inductance: [['volts', 'amps']],
  'pole-pairs': [['hertz', 'speed']],
  'encoder-lines': [['counts', 'turns']],
};

export interface PlotPoint {
  /** Counted from 1. */
  readonly row: number;
  readonly x: number;
  readonly y: number;
  readonly isAside: boolean;
  /** Distance from the line or the mean, in the unit of y. */
  readonly off?: number;
}

export interface PlotSeries {
  readonly name: string;
  readonly points: readonly PlotPoint[];
  readonly mean?: number;
  /** Half width of where the mean lies 95 times in a hundred, by the scatter alone. */
  readonly half?: number;
}

/** Numbers in the units of the columns. */
export interface Plot {
  readonly kind: 'line' | 'dots';
  readonly y: QuantityAsked;
  /** Absent for dots, which stand in the order of their rows. */
  readonly x?: QuantityAsked;
  readonly series: readonly PlotSeries[];
  readonly line?: { readonly intercept: number; readonly slope: number; readonly deviation: number };
}

function numberIn(text: string | undefined, { unit }: QuantityAsked): number | undefined {
  const trimmed = text?.trim() ?? '';
  if (trimmed === '' || trimmed.length > 60) return undefined;
  for (const each of unit === '1' ? [trimmed] : [`${trimmed} ${unit}`, trimmed]) {
    const read = parseQuantity(each, unit);
    if (!read.ok) continue;
    const value = convert(read.value.value, unit);
    return Math.abs(value) < 1e100 ? value : undefined;
  }
  return undefined;
}

/** Speeds that hardly differ carry no line. */
const SPREAD = 0.02;

export function plotOf(method: string, columns: readonly Column[], rows: readonly Row[]): Plot | undefined {
  const kept = filled(rows);
  const quantities = columns.filter(
    (column): column is QuantityAsked & { readonly key: string } =>
      column.kind === 'quantity' && kept.some((row) => numberIn(row.cells[column.key], column) !== undefined),
  );
  const byKey = (key: string) => quantities.find((column) => column.key === key);
  for (const [yKey, xKey] of OVER[method] ?? []) {
    const [y, x] = [byKey(yKey), byKey(xKey)];
    const plot = y && x ? lineOf(y, x, kept) : undefined;
    if (plot) return plot;
  }
  const [preferred] = (OVER[method] ?? []).flatMap(([y]) => byKey(y) ?? []);
  const y = preferred ?? quantities[0];
  return y && dotsOf(y, quantities, columns, kept);
}

function lineOf(y: QuantityAsked, x: QuantityAsked, rows: readonly Row[]): Plot | undefined {
  const points = rows.flatMap((row, i): PlotPoint[] => {
    const [a, b] = [numberIn(row.cells[x.key], x), numberIn(row.cells[y.key], y)];
    if (a === undefined || b === undefined) return [];
    return [{ row: i + 1, x: a, y: b, isAside: row.aside !== undefined }];
  });
  const used = points.filter(({ isAside }) => !isAside);
  if (used.length < 3) return undefined;
  const xs = used.map((each) => each.x);
  const spread = Math.max(...xs) - Math.min(...xs);
  if (spread <= SPREAD * Math.max(...xs.map(Math.abs))) return undefined;
  const fit = fitLine(
    xs,
    used.map((each) => each.y),
  );
  if (!fit.ok) return undefined;
  const [intercept, slope] = fit.value.parameters as [number, number];
  return {
    kind: 'line',
    x,
    y,
    series: [
      {
        name: y.name,
        points: points.map((each) => ({ ...each, off: each.y - intercept - slope * each.x })),
      },
    ],
    line: { intercept, slope, deviation: fit.value.deviation },
  };
}

/** Columns in the same unit stand beside each other; ways round, places and the like are parted. */
function dotsOf(
  y: QuantityAsked,
  quantities: readonly QuantityAsked[],
  columns: readonly Column[],
  rows: readonly Row[],
): Plot {
  const choice = columns.find(
    (column) => column.kind === 'choice' && rows.some((row) => row.cells[column.key]?.trim()),
  );
  const alike = quantities.filter(({ unit }) => unit === y.unit);
  const parted = partedBy(alike, choice, rows);
  // Shapes that can be told apart are few; and a mean over unlike places would mean nothing.
  return parted.size <= MOST_SHAPES
    ? { kind: 'dots', y, series: [...parted].map(([name, points]) => withMean(name, points)) }
    : {
        kind: 'dots',
        y,
        series: [...partedBy(alike, undefined, rows)].map(([name, points]) => ({ name, points })),
      };
}

const MOST_SHAPES = 4;

function partedBy(
  alike: readonly QuantityAsked[],
  choice: Column | undefined,
  rows: readonly Row[],
): Map<string, PlotPoint[]> {
  const series = new Map<string, PlotPoint[]>();
  for (const [i, row] of rows.entries())
    for (const column of alike) {
      const value = numberIn(row.cells[column.key], column);
      if (value === undefined) continue;
      const picked = choice?.kind === 'choice' ? (row.cells[choice.key] ?? '') : '';
      const words = choice?.kind === 'choice' ? (choice.options[picked] ?? picked) : '';
      const name = [alike.length > 1 ? column.name : '', words].filter(Boolean).join(', ') || column.name;
      const points = series.get(name) ?? [];
      points.push({ row: i + 1, x: i + 1, y: value, isAside: row.aside !== undefined });
      series.set(name, points);
    }
  return series;
}

function withMean(name: string, points: readonly PlotPoint[]): PlotSeries {
  const used = points.filter(({ isAside }) => !isAside).map((each) => each.y);
  if (used.length < 2) return { name, points };
  const { mean, standard, freedom } = summarise(used);
  return {
    name,
    points: points.map((each) => ({ ...each, off: each.y - mean })),
    mean,
    half: coverage(freedom) * standard,
  };
}

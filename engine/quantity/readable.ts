/** One rule of figures for whatever people read of a finding. */
import { convert, formatQuantity } from './format.ts';

/** Units a thousand apart, smallest first. */
const LADDERS: readonly (readonly string[])[] = [
  ['µm', 'mm', 'm'],
  ['thou', 'in'],
  ['µs', 'ms', 's'],
  ['µA', 'mA', 'A', 'kA'],
  ['µV', 'mV', 'V', 'kV'],
  ['µW', 'mW', 'W', 'kW', 'MW'],
  ['mJ', 'J', 'kJ', 'MJ'],
  ['mΩ', 'Ω', 'kΩ', 'MΩ'],
  ['µH', 'mH', 'H'],
  ['pF', 'nF', 'µF', 'mF', 'F'],
  ['Hz', 'kHz', 'MHz'],
  ['mN', 'N', 'kN', 'MN'],
  ['mN·m', 'N·m', 'kN·m'],
  ['Pa', 'kPa', 'MPa', 'GPa'],
  ['mg', 'g', 'kg'],
];

/** Units of the same kind a thousand apart, smallest first; none for a unit that has no such neighbours. */
export const ladderOf = (unit: string): readonly string[] =>
  LADDERS.find((each) => each.includes(unit)) ?? [];

/** Numbers in this span are read at a glance; outside it another unit is taken, where there is one. */
const LEAST = 0.01;
const MOST = 1e5;
/** Significant figures of a number without a ±, and at most with one. */
const FIGURES = 3;
const MOST_FIGURES = 4;

/** The unit of the same ladder in which a value in SI needs no power of ten; `unit` itself where it needs none. */
export function unitToRead(valueSI: number, unit: string): string {
  const size = Math.abs(convert(valueSI, unit));
  const ladder = ladderOf(unit);
  if (ladder.length === 0 || !Number.isFinite(size) || size === 0 || (size >= LEAST && size < MOST))
    return unit;
  const from = ladder.indexOf(unit);
  const up = size >= MOST;
  const rest = up ? ladder.slice(from + 1) : ladder.slice(0, from).reverse();
  return (
    rest.find((each) =>
      up ? Math.abs(convert(valueSI, each)) < 1000 : Math.abs(convert(valueSI, each)) >= 1,
    ) ??
    rest.at(-1) ??
    unit
  );
}

/**
 * A value in SI as findings print it: rounded to its ± (one or two figures of the ±; JCGM 100:2008, 7.2.6), to four figures at
 * most; without a ± to three. In the unit named, or one a step away where that would need a power of ten.
 * Throws RangeError for an unknown unit.
 */
export function readable(
  valueSI: number,
  unit: string,
  { half = 0, figures = FIGURES }: { readonly half?: number; readonly figures?: number } = {},
): string {
  const shown = unitToRead(Math.max(Math.abs(valueSI), Math.abs(half)), unit);
  return half > 0
    ? formatQuantity(valueSI, shown, { half, most: MOST_FIGURES })
    : formatQuantity(valueSI, shown, { digits: figures });
}

/** Value and half width of a quantity's text, whatever its shape: single, ±, +a/−b or range. */
import { readBound } from './accuracy.ts';
import type { Chosen } from './choose.ts';
import { formatNumber } from './format.ts';
import { readInstrument } from './instrument.ts';
import type { Side } from './side.ts';
import { chooseFor, isPercent, notesOf, readHalf, readSide, toSI } from './side.ts';
import { splitQuantity } from './split.ts';
import type { Result, Unit } from './types.ts';
import { ok, refuse } from './types.ts';

/** In SI, taken to what is wanted. */
export interface Read {
  readonly value: number;
  readonly half: number;
  readonly chosen: Chosen;
  readonly notes: readonly string[];
  /** How the ± was given; 'instrument' for a sum as makers of meters state it. */
  readonly form: 'single' | 'plus-minus' | 'unequal' | 'range' | 'instrument';
}

export function readParts(text: string, wanted: Unit | undefined): Result<Read> {
  const shape = splitQuantity(text);
  if (shape.kind === 'malformed') return refuse({ code: 'malformed', message: shape.why });
  if (shape.kind === 'range') return readRange(shape.low, shape.high, text, wanted);
  const main = readSide(shape.main);
  if (!main.ok) return main;
  let bounds: readonly string[] = shape.kind === 'unequal' ? [shape.up, shape.down] : [];
  if (shape.kind === 'plus-minus') {
    const counted = (main.value.units?.[0]?.unit ?? wanted)?.dimension.tally === 'count';
    const bound = readBound(shape.half, counted);
    if (!bound.ok) return bound;
    if (bound.value.instrument) return readInstrument(shape, main.value, bound.value, wanted);
    bounds = [bound.value.text];
  }
  const sides: Side[] = [];
  for (const bound of bounds) {
    const side = readSide(bound);
    if (!side.ok) return side;
    sides.push(side.value);
  }
  // '+10/-15 %' and '1.32 ± 0.06 ohm': a unit written once serves all.
  const written = sides.find((s) => s.units);
  const shared = sides.map(
    (s): Side => (s.units || !written?.units ? s : { number: s.number, units: written.units }),
  );
  const lends = written && (!isPercent(written) || wanted?.symbol === '%');
  const value: Side =
    main.value.units || !lends ? main.value : { number: main.value.number, units: written.units! };
  const chosen = chooseFor(value, wanted, text);
  if (!chosen.ok) return chosen;
  const si = toSI(value.number, chosen.value);
  const halves: number[] = [];
  for (const side of shared) {
    const half = readHalf(side, si, chosen.value, isPercent(value));
    if (!half.ok) return half;
    halves.push(half.value);
  }
  const notes = notesOf(chosen.value);
  if (shape.kind === 'unequal') notes.push('the two limits differ; the larger was taken both ways');
  return ok({ value: si, half: Math.max(0, ...halves), chosen: chosen.value, notes, form: shape.kind });
}

function readRange(lowText: string, highText: string, text: string, wanted: Unit | undefined): Result<Read> {
  const low = readSide(lowText);
  if (!low.ok) return low;
  const high = readSide(highText);
  if (!high.ok) return high;
  const units = high.value.units ?? low.value.units;
  const ends: number[] = [];
  let last: Chosen | undefined;
  for (const side of [low.value, high.value]) {
    const chosen = chooseFor(
      side.units || !units ? side : { number: side.number, units },
      wanted ?? last?.unit,
      text,
    );
    if (!chosen.ok) return chosen;
    last = chosen.value;
    ends.push(toSI(side.number, last));
  }
  const [a, b] = ends as [number, number];
  const value = a / 2 + b / 2;
  const half = Math.abs(b / 2 - a / 2);
  const inUnit = (v: number): string => formatNumber(v, 6);
  const { scale, offset, symbol } = last!.shown;
  const suffix = symbol === '1' ? '' : ` ${symbol}`;
  const note = `a range: read as ${inUnit(value / scale - offset)} ± ${inUnit(half / scale)}${suffix}`;
  return ok({ value, half, chosen: last!, notes: [...notesOf(last!), note], form: 'range' });
}

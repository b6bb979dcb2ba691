/** `parseQuantity`: a number with its unit, as people write it. */
import { LONGEST, normalise, quote } from './characters.ts';
import type { Chosen } from './choose.ts';
import { chooseUnit } from './choose.ts';
import { formatNumber } from './format.ts';
import { commaReadings, readNumber, wordProblem } from './number.ts';
import { splitQuantity } from './split.ts';
import type { LengthOf, Wording } from './thread-words.ts';
import { takeWording } from './thread-words.ts';
import type { Problem, Quantity, Result, Unit } from './types.ts';
import { ok, refuse } from './types.ts';
import type { UnitReading } from './unit.ts';
import { readUnit } from './unit.ts';

/** What a field wants: a unit of the right dimension and, for lengths, which length of the thing. */
export interface Expected {
  readonly unit: string;
  readonly of?: LengthOf;
}

/** A number and what its unit's text can mean; `units` is undefined when none was written. */
interface Side {
  readonly number: number;
  readonly units?: readonly UnitReading[];
}

const PLAIN_UNIT: UnitReading = {
  unit: {
    symbol: '1',
    dimension: { m: 0, kg: 0, s: 0, A: 0, K: 0, tally: 'none', tallyPower: 0 },
    scale: 1,
    offset: 0,
  },
};

function readSide(text: string): Result<Side> {
  const number = readNumber(text, 0);
  if (!number.ok) return number;
  // '3-start', '20-tooth': the hyphen only joins.
  const rest = text
    .slice(number.value.end)
    .trim()
    .replace(/^-(?=[A-Za-z])/, '');
  if (rest === '') return ok({ number: number.value.value });
  if (/^[\d.,]/.test(rest) && !/^1 ?\//.test(rest))
    return refuse({
      code: 'malformed',
      message: `Two numbers follow each other in ${quote(text)}. Write one number and its unit, such as 5 mm.`,
    });
  const units = readUnit(rest);
  if (!units.ok) {
    const { suggestion } = units.problem;
    const front = text.slice(0, number.value.end).trim();
    return refuse({
      ...units.problem,
      ...(suggestion === undefined ? {} : { suggestion: `${front} ${suggestion}` }),
      ...(units.problem.readings ? { readings: units.problem.readings.map((r) => `${front} ${r}`) } : {}),
    });
  }
  return ok({ number: number.value.value, units: units.value });
}

const isPercent = (side: Side): boolean => side.units?.[0]?.unit.symbol === '%';

/** SI, before and after adapting to what is wanted. */
interface Read {
  readonly value: number;
  readonly half: number;
  readonly chosen: Chosen;
  readonly notes: readonly string[];
}

function choose(side: Side, wanted: Unit | undefined, text: string): Result<Chosen> {
  if (side.units) return chooseUnit(side.units, wanted, side.number);
  if (!wanted || wanted.symbol === '1') return chooseUnit([PLAIN_UNIT], undefined, side.number);
  const suggestion = `${text} ${wanted.symbol}`;
  return refuse({
    code: 'unit-missing',
    message: `The unit is missing. Write it behind the number, such as ${text.length > 30 ? `5 ${wanted.symbol}` : suggestion}.`,
    suggestion,
  });
}

const toSI = (n: number, c: Chosen): number => (n + c.unit.offset) * c.unit.scale * c.factor;
const halfToSI = (n: number, c: Chosen): number => n * c.unit.scale * c.factor;

const notesOf = (c: Chosen): string[] => (c.note === undefined ? [] : [c.note]);

/** A half width in SI: in per cent of the value, in the value's unit, or in one of its own. */
function readHalf(side: Side, value: number, main: Chosen, mainIsPercent: boolean): Result<number> {
  if (side.number < 0)
    return refuse({
      code: 'malformed',
      message: 'The part behind ± is below zero. Write it like 1.32 ± 0.06 ohm.',
    });
  if (!side.units) return ok(halfToSI(side.number, main));
  if (isPercent(side) && !mainIsPercent) {
    if (main.unit.offset !== 0)
      return refuse({
        code: 'malformed',
        message: 'A temperature in degrees has no percentage. Write the ± in kelvin, such as 40 °C ± 2 K.',
      });
    return ok((Math.abs(value) * side.number) / 100);
  }
  // A difference is in K where the value is in °C, and may be written in °C as well.
  const chosen = chooseUnit(side.units, main.unit, side.number);
  return chosen.ok ? ok(halfToSI(side.number, chosen.value) * main.factor) : chosen;
}

function readParts(text: string, wanted: Unit | undefined): Result<Read> {
  const shape = splitQuantity(text);
  if (shape.kind === 'malformed') return refuse({ code: 'malformed', message: shape.why });
  if (shape.kind === 'range') return readRange(shape.low, shape.high, text, wanted);
  const main = readSide(shape.main);
  if (!main.ok) return main;
  const bounds =
    shape.kind === 'single' ? [] : shape.kind === 'plus-minus' ? [shape.half] : [shape.up, shape.down];
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
  const chosen = choose(value, wanted, text);
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
  return ok({ value: si, half: Math.max(0, ...halves), chosen: chosen.value, notes });
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
    const chosen = choose(
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
  return ok({ value, half, chosen: last!, notes: [...notesOf(last!), note] });
}

const TPI = (unit: Unit): boolean => unit.symbol === 'tpi';
const isLength = (unit: Unit): boolean => {
  const d = unit.dimension;
  return d.m === 1 && d.kg === 0 && d.s === 0 && d.A === 0 && d.K === 0 && d.tally === 'none';
};

/** '5 TPI' in a field of length, or where nothing says otherwise, is the pitch. */
function threadsPerInch(text: string, wanted: Unit | undefined): Result<Read> | undefined {
  if (!/tpi|thread/i.test(text) || (wanted && !isLength(wanted))) return undefined;
  const read = readParts(text, undefined);
  if (!read.ok) return read;
  const { value, half, chosen } = read.value;
  if (!TPI(chosen.unit)) return undefined;
  if (value <= 0)
    return refuse({ code: 'out-of-domain', message: 'Threads per inch are above zero, such as 5 TPI.' });
  const millimetre = readUnit('mm');
  if (!millimetre.ok) return millimetre;
  const unit = wanted ?? millimetre.value[0]!.unit;
  const pitch = 1 / value;
  const note = `${formatNumber(value / chosen.unit.scale, 6)} threads per inch are a pitch of ${formatNumber(pitch * 1000, 6)} mm`;
  return ok({
    value: pitch,
    half: pitch * (half / value),
    chosen: { unit, factor: 1, shown: unit },
    notes: [...read.value.notes, note],
  });
}

/** Radius for diameter, pitch for lead, and the other way round. */
function settleLength(
  read: Read,
  wording: Wording,
  of: LengthOf | undefined,
): Result<{ factor: number; note?: string }> {
  const { of: said, starts } = wording;
  if (said === undefined && starts === undefined) return ok({ factor: 1 });
  if (!isLength(read.chosen.shown))
    return refuse({
      code: 'wrong-dimension',
      message: `A ${said ?? 'thread with starts'} is a length, but the unit here is ${read.chosen.shown.symbol}. Write it like 20 mm.`,
    });
  const unit = read.chosen.shown;
  const show = (v: number): string => `${formatNumber(v / unit.scale, 6)} ${unit.symbol}`;
  const becomes = (factor: number, what: string): Result<{ factor: number; note: string }> =>
    ok({
      factor,
      note: `${said ?? 'pitch'} ${show(read.value)} is a ${what} of ${show(read.value * factor)}`,
    });
  if (said === 'radius' && of === 'diameter') return becomes(2, 'diameter');
  if (said === 'diameter' && of === 'radius') return becomes(0.5, 'radius');
  if (said === 'radius' && of === undefined)
    return ok({
      factor: 1,
      note: `${show(read.value)} was taken as it stands, as the radius; it was not doubled`,
    });
  if (said === 'diameter' && of === undefined)
    return ok({ factor: 1, note: `${show(read.value)} was taken as it stands, as the diameter` });
  const isLead = said === 'lead';
  if (starts !== undefined && said !== 'radius' && said !== 'diameter') {
    if (of === 'lead' && !isLead) return starts === 1 ? ok({ factor: 1 }) : becomes(starts, 'lead');
    if (of === 'pitch' && isLead) return starts === 1 ? ok({ factor: 1 }) : becomes(1 / starts, 'pitch');
    if (isLead)
      return ok({ factor: 1, note: `the pitch of ${starts} starts is ${show(read.value / starts)}` });
    return ok({
      factor: 1,
      note: `the value is the pitch; the lead of ${starts} starts is ${show(read.value * starts)}`,
    });
  }
  const wrong = of !== undefined && said !== undefined && said !== of;
  if (wrong && !(said === 'pitch' && of === 'lead') && !(said === 'lead' && of === 'pitch'))
    return refuse({
      code: 'wrong-dimension',
      message: `A ${said} was given where a ${of} is wanted. Write the ${of}, such as 20 mm.`,
    });
  if (wrong) return ok({ factor: 1, note: `${said} taken as the ${of}: that holds for one start` });
  return ok({ factor: 1 });
}

function withSaid(read: Read): readonly string[] {
  const { says, unit, shown, factor } = read.chosen;
  if (says === undefined) return read.notes;
  const before = formatNumber(read.value / factor / unit.scale, 6);
  const after = formatNumber(read.value / shown.scale, 6);
  const what = (n: string, u: Unit): string => (u.symbol === '1' ? n : `${n} ${u.symbol}`);
  return [...read.notes, `${what(before, unit)} read as ${what(after, shown)}: ${says}`];
}

function readAll(
  typed: string,
  text: string,
  wanted: Unit | undefined,
  of: LengthOf | undefined,
): Result<Quantity> {
  const wording = takeWording(text);
  const parts = threadsPerInch(wording.text, wanted) ?? readParts(wording.text, wanted);
  if (!parts.ok) return parts;
  const settled = settleLength(parts.value, wording, of);
  if (!settled.ok) return settled;
  const { factor, note } = settled.value;
  const value = parts.value.value * factor;
  const half = parts.value.half * factor;
  if (!Number.isFinite(value) || !Number.isFinite(half) || (value !== 0 && Math.abs(value) < 1e-290))
    return refuse({
      code: 'not-finite',
      message: 'The number is too large or too small to work with in this unit.',
    });
  const notes = [...withSaid(parts.value), ...(note === undefined ? [] : [note])];
  const quantity: Quantity = { text: typed, value, half, unit: parts.value.chosen.shown, notes };
  return ok(wording.starts === undefined ? quantity : { ...quantity, starts: wording.starts });
}

function ambiguous(
  text: string,
  comma: readonly [string, string],
  wanted: Unit | undefined,
  of: LengthOf | undefined,
): Result<Quantity> {
  const readings: string[] = [];
  let problem: Problem | undefined;
  for (const candidate of comma) {
    const read = readAll(candidate, candidate, wanted, of);
    if (read.ok) readings.push(candidate);
    else if (read.problem.code === 'unit-missing' && read.problem.suggestion)
      readings.push(read.problem.suggestion);
    else problem ??= read.problem;
  }
  if (problem) return refuse(problem);
  return refuse({
    code: 'ambiguous',
    message: `The comma in ${quote(text)} can be a decimal comma or part thousands. Write ${readings.join(' or ')}.`,
    readings,
  });
}

/**
 * Reads a quantity as a person writes it: '2,5 mm', '1 3/8"', '1.32 ± 5 % ohm', '230 V +10/-15 %', '20–30 mm', '5 TPI',
 * '3-start pitch 2 mm' (value: the pitch, `starts`: 3, unless `of: 'lead'` asks for the lead).
 *
 * `expect` is a unit whose dimension is wanted, '1' for a plain number. Without it a lone number is a plain number.
 * Never throws and never gives NaN; what was not understood comes back as a problem.
 */
export function parseQuantity(text: string, expect?: string | Expected): Result<Quantity> {
  if (text.length > LONGEST)
    return refuse({
      code: 'too-long',
      message: `This has more than ${LONGEST} characters. Write one number and its unit, such as 5 mm.`,
    });
  const expected = typeof expect === 'string' ? { unit: expect } : expect;
  let wanted: Unit | undefined;
  if (expected) {
    const unit = readUnit(expected.unit);
    if (!unit.ok) return refuse({ ...unit.problem, where: 'the unit expected' });
    wanted = unit.value[0]!.unit;
  }
  const normal = normalise(text).replace(/^[–—] ?(?=[\d.,])/, '-');
  if (normal === '')
    return refuse({
      code: 'empty',
      message: `Nothing is written here. Write a number and its unit, such as 5 ${wanted && wanted.symbol !== '1' ? wanted.symbol : 'mm'}.`,
    });
  const word = wordProblem(normal);
  if (word) return refuse(word);
  const comma = commaReadings(normal);
  return comma ? ambiguous(normal, comma, wanted, expected?.of) : readAll(text, normal, wanted, expected?.of);
}

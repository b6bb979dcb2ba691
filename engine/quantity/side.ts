/** One number with its unit, before it is known which of its readings serves; and what it is in SI once that is chosen. */
import { quote } from './characters.ts';
import type { Chosen } from './choose.ts';
import { chooseUnit } from './choose.ts';
import { PLAIN } from './dimension.ts';
import { EXAMPLE, readNumber } from './number.ts';
import type { Result, Unit } from './types.ts';
import { ok, refuse } from './types.ts';
import type { UnitReading } from './unit.ts';
import { readUnit } from './unit.ts';

/** A number and what its unit's text can mean; `units` is undefined when none was written. */
export interface Side {
  readonly number: number;
  readonly units?: readonly UnitReading[];
  /** Power of ten of the last digit as written. */
  readonly place?: number;
}

const PLAIN_UNIT: UnitReading = { unit: { symbol: '1', dimension: PLAIN, scale: 1, offset: 0 } };

export function readSide(text: string): Result<Side> {
  const number = readNumber(text, 0);
  if (!number.ok) return number;
  // '3-start', '20-tooth': the hyphen only joins.
  const rest = text
    .slice(number.value.end)
    .trim()
    .replace(/^-(?=[A-Za-z])/, '');
  const { value, place } = number.value;
  const side: Side = { number: value, ...(place === undefined ? {} : { place }) };
  if (rest === '') return ok(side);
  if (/^[\d.,]/.test(rest) && !/^1 ?\//.test(rest))
    return refuse({
      code: 'malformed',
      message: `Two numbers follow each other in ${quote(text)}. Write one number and its unit, ${EXAMPLE}.`,
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
  return ok({ ...side, units: units.value });
}

export const isPercent = (side: Side): boolean => side.units?.[0]?.unit.symbol === '%';

/** Of what is counted a plain number says enough: lines of an encoder, teeth of a wheel. */
const COUNTED = new Set(['lines', 'teeth']);

/** The unit the side is meant in; a missing unit is only right for a plain number and for what is counted. */
export function chooseFor(side: Side, wanted: Unit | undefined, text: string): Result<Chosen> {
  if (side.units) return chooseUnit(side.units, wanted, side.number);
  if (!wanted || wanted.symbol === '1') return chooseUnit([PLAIN_UNIT], undefined, side.number);
  if (COUNTED.has(wanted.symbol))
    return ok({
      unit: wanted,
      factor: 1,
      shown: wanted,
      // Where the maker counts each line four times, a bare number could be either.
      ...(wanted.symbol === 'lines'
        ? { note: `${text} read as lines; if it is counts, write counts behind it` }
        : {}),
    });
  const suggestion = `${text} ${wanted.symbol}`;
  return refuse({
    code: 'unit-missing',
    message: `The unit is missing. Write it behind the number, such as ${text.length > 30 ? `5 ${wanted.symbol}` : suggestion}.`,
    suggestion,
  });
}

export const toSI = (n: number, c: Chosen): number => (n + c.unit.offset) * c.unit.scale * c.factor;
const halfToSI = (n: number, c: Chosen): number => n * c.unit.scale * c.factor;

export const notesOf = (c: Chosen): string[] => (c.note === undefined ? [] : [c.note]);

/** A half width in SI: in per cent of the value, in the value's unit, or in one of its own. */
export function readHalf(side: Side, value: number, main: Chosen, mainIsPercent: boolean): Result<number> {
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

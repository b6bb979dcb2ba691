/** Takes, of the ways a unit's text can be read, the one that serves what is expected. */
import { adapt } from './adapt.ts';
import { describeDimension } from './describe.ts';
import { sameDimension } from './dimension.ts';
import { formatNumber } from './format.ts';
import type { Result, Unit } from './types.ts';
import { ok, refuse } from './types.ts';
import type { UnitReading } from './unit.ts';

export interface Chosen {
  /** As typed: number and half width are first taken to SI with it. */
  readonly unit: Unit;
  /** Then multiplied by this, and shown in `shown`. */
  readonly factor: number;
  readonly shown: Unit;
  readonly note?: string;
  /** What was done beyond reading: 'four counts to a line'. */
  readonly says?: string;
}

const isDifferenceWanted = (given: Unit, wanted: Unit): boolean => given.offset !== 0 && wanted.offset === 0;

/** `number` is only used to word a suggestion. */
export function chooseUnit(
  readings: readonly UnitReading[],
  wanted: Unit | undefined,
  number: number,
): Result<Chosen> {
  const first = readings[0]!;
  const plainly = (r: UnitReading): Chosen => ({
    unit: r.unit,
    factor: 1,
    shown: r.unit,
    ...(r.note === undefined ? {} : { note: r.note }),
  });
  if (!wanted) return ok(plainly(first));
  const exact = readings.find((r) => sameDimension(r.unit.dimension, wanted.dimension));
  if (exact) {
    if (!isDifferenceWanted(exact.unit, wanted)) return ok(plainly(exact));
    const kelvins = `${formatNumber(number * exact.unit.scale, 6)} K`;
    return refuse({
      code: 'wrong-dimension',
      message: `A temperature difference is wanted here, in kelvin; ${exact.unit.symbol} is a temperature on a thermometer. As a difference it is ${kelvins}.`,
      suggestion: kelvins,
    });
  }
  let why: string | undefined;
  let suggestion: string | undefined;
  for (const r of readings) {
    const adapted = adapt(r.unit, wanted);
    if (!adapted) continue;
    if ('factor' in adapted)
      return ok({
        unit: r.unit,
        factor: adapted.factor,
        shown: adapted.unit,
        ...(r.note === undefined ? {} : { note: r.note }),
        ...(adapted.says === undefined ? {} : { says: adapted.says }),
      });
    why ??= adapted.why;
    if (adapted.suggestFactor !== undefined)
      suggestion ??= `${formatNumber((number * r.unit.scale * adapted.suggestFactor) / wanted.scale, 6)} ${wanted.symbol}`;
  }
  const example = `${wanted.symbol === '1' ? '5' : `5 ${wanted.symbol}`}`;
  if (why !== undefined)
    return refuse({
      code: 'wrong-dimension',
      message: `Here ${why}${suggestion === undefined ? `, such as ${example}.` : `; if one cycle is one turn, that is ${suggestion}.`}`,
      ...(suggestion === undefined ? {} : { suggestion }),
    });
  return refuse({
    code: 'wrong-dimension',
    message: `${first.unit.symbol === '1' ? 'This' : `A number in ${first.unit.symbol}`} is ${describeDimension(first.unit.dimension)}; ${describeDimension(wanted.dimension)} is wanted here, such as ${example}.`,
  });
}

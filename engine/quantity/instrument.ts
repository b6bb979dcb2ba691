/** The ± of an instrument in SI: per cent of the reading, counts of its last digit and fixed amounts, added up. */
import type { Bound } from './accuracy.ts';
import { formatNumber } from './format.ts';
import type { Read } from './parts.ts';
import type { Side } from './side.ts';
import { chooseFor, isPercent, notesOf, readHalf, readSide, toSI } from './side.ts';
import type { Result, Unit } from './types.ts';
import { ok, refuse } from './types.ts';

type Instrument = Extract<Bound, { instrument: true }>;

/** `written`: the texts in front of and behind the ±, for a suggestion. */
export function readInstrument(
  written: { readonly main: string; readonly half: string },
  main: Side,
  bound: Instrument,
  wanted: Unit | undefined,
): Result<Read> {
  const sides: Side[] = [];
  let digits = 0;
  for (const term of bound.terms) {
    if (term.kind === 'digits') {
      digits += term.digits;
      continue;
    }
    const side = readSide(term.kind === 'plain' ? term.text : `${term.percent} %`);
    if (!side.ok) return side;
    sides.push(side.value);
  }
  const value = withUnit(main, bound.unit, sides);
  if (!value.ok) return value;
  const chosen = chooseFor(value.value, wanted, `${written.main} ± ${written.half}`);
  if (!chosen.ok) {
    if (chosen.problem.code !== 'unit-missing' || !wanted) return chosen;
    const suggestion = `${written.main} ${wanted.symbol} ± ${written.half}`;
    return refuse({
      ...chosen.problem,
      message: `The unit is missing. Write it behind the number, such as ${suggestion}.`,
      suggestion,
    });
  }
  const si = toSI(value.value.number, chosen.value);
  let half = 0;
  for (const [index, side] of sides.entries()) {
    const ofReading = bound.terms.filter((t) => t.kind !== 'digits')[index]!.kind === 'of-reading';
    const part = readHalf(side, si, chosen.value, isPercent(value.value) && !ofReading);
    if (!part.ok) return part;
    half += part.value;
  }
  const { unit, factor, shown } = chosen.value;
  if (digits > 0) {
    if (main.place === undefined)
      return refuse({
        code: 'malformed',
        message: `A fraction has no last digit to count. Write the value as the display shows it, such as 1.32.`,
      });
    half += digits * 10 ** main.place * unit.scale * factor;
  }
  const suffix = shown.symbol === '1' ? '' : ` ${shown.symbol}`;
  const counts =
    digits > 0
      ? `; one digit is ${formatNumber((10 ** main.place! * unit.scale * factor) / shown.scale, 6)}${suffix}`
      : '';
  const note = `the accuracy of the instrument is ± ${formatNumber(half / shown.scale, 4)}${suffix} here${counts}`;
  return ok({
    value: si,
    half,
    chosen: chosen.value,
    notes: [...notesOf(chosen.value), note],
    form: 'instrument',
  });
}

/** The value with its own unit, else with the one behind the ±, else with that of a fixed amount. */
function withUnit(main: Side, behind: string, sides: readonly Side[]): Result<Side> {
  if (behind !== '') {
    if (main.units)
      return refuse({
        code: 'malformed',
        message:
          'The unit stands both behind the value and behind the ±. Write it once, such as 1.32 ohm ±(0.8 % + 3 digits).',
      });
    const unit = readSide(`1 ${behind}`);
    if (!unit.ok) return unit;
    return ok(unit.value.units ? { ...main, units: unit.value.units } : main);
  }
  const fixed = sides.find((s) => s.units && !isPercent(s));
  return ok(main.units || !fixed?.units ? main : { ...main, units: fixed.units });
}

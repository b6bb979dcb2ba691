/** `parseQuantity`: a number with its unit, as people write it. */
import { LONGEST, normalise, quote } from './characters.ts';
import { formatNumber } from './format.ts';
import type { LengthOf } from './length-words.ts';
import { takeWording } from './length-words.ts';
import { settleLength, threadsPerInch } from './lengths.ts';
import { commaReadings, EXAMPLE, wordProblem } from './number.ts';
import type { Read } from './parts.ts';
import { readParts } from './parts.ts';
import { type Said, settleSaid, takeSaid } from './spread.ts';
import type { Problem, Quantity, Result, Spread, Unit } from './types.ts';
import { ok, refuse } from './types.ts';
import { readUnit } from './unit.ts';

/** What a field wants: a unit of the right dimension and, for lengths, which length of the thing. */
export interface Expected {
  readonly unit: string;
  readonly of?: LengthOf;
}

function withSaid(read: Read): readonly string[] {
  const { says, unit, shown, factor } = read.chosen;
  if (says === undefined) return read.notes;
  const before = formatNumber(read.value / factor / unit.scale, 6);
  const after = formatNumber(read.value / shown.scale, 6);
  const what = (n: string, u: Unit): string => (u.symbol === '1' ? n : `${n} ${u.symbol}`);
  return [...read.notes, `${what(before, unit)} read as ${what(after, shown)}: ${says}`];
}

const spreadOf = ({ kind, shape, perHalf }: Said, half: number): Spread => ({
  kind,
  standard: half * perHalf,
  shape,
});

/** A suggestion to write the unit keeps the words that say what the ± is. */
function withWords(problem: Problem, words: string): Problem {
  const { suggestion } = problem;
  if (words === '' || suggestion === undefined || problem.code !== 'unit-missing') return problem;
  return { ...problem, suggestion: `${suggestion} ${words}` };
}

function readAll(
  typed: string,
  text: string,
  wanted: Unit | undefined,
  of: LengthOf | undefined,
): Result<Quantity> {
  const taken = takeSaid(text);
  if (!taken.ok) return taken;
  const wording = takeWording(taken.value.text);
  const parts = threadsPerInch(wording.text, wanted) ?? readParts(wording.text, wanted);
  if (!parts.ok) return refuse(withWords(parts.problem, taken.value.words));
  const said = settleSaid(taken.value, parts.value.form);
  if (!said.ok) return said;
  const settled = settleLength(parts.value, wording, of);
  if (!settled.ok) return settled;
  const { factor, note } = settled.value;
  const value = parts.value.value * factor;
  // A resolution is typed as the whole step.
  const half = parts.value.half * factor * (said.value?.kind === 'resolution' ? 0.5 : 1);
  if (!Number.isFinite(value) || !Number.isFinite(half) || (value !== 0 && Math.abs(value) < 1e-290))
    return refuse({
      code: 'not-finite',
      message: 'The number is too large or too small to work with in this unit.',
    });
  const notes = [...withSaid(parts.value), ...(note === undefined ? [] : [note])];
  const quantity: Quantity = { text: typed, value, half, unit: parts.value.chosen.shown, notes };
  const what = of ?? wording.of ?? (wording.starts === undefined ? undefined : 'pitch');
  return ok({
    ...quantity,
    ...(said.value && half > 0 ? { spread: spreadOf(said.value, half) } : {}),
    ...(wording.starts === undefined ? {} : { starts: wording.starts }),
    ...(what === undefined ? {} : { of: what }),
  });
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
 * '1.32 ohm ±(0.8 % + 3 digits)', '1.32 ± 0.06 ohm (k=2)' and the words resolution, tolerance, guess behind a ± (`spread`),
 * '3-start pitch 2 mm' (value: the pitch, `starts`: 3, unless `of: 'lead'` asks for the lead), 'lead 6 mm'.
 *
 * `expect` is a unit whose dimension is wanted, '1' for a plain number. Without it a lone number is a plain number.
 * Never throws and never gives NaN; what was not understood comes back as a problem.
 */
export function parseQuantity(text: string, expect?: string | Expected): Result<Quantity> {
  const read = readExpected(text, expect);
  if (read.ok || !read.problem.message.includes(EXAMPLE)) return read;
  const symbol = typeof expect === 'string' ? expect : expect?.unit;
  if (symbol === undefined || symbol.length > 20) return read;
  const example = symbol === '1' ? 'such as 5' : `such as 5 ${symbol}`;
  return refuse({ ...read.problem, message: read.problem.message.replaceAll(EXAMPLE, example) });
}

function readExpected(text: string, expect?: string | Expected): Result<Quantity> {
  if (text.length > LONGEST)
    return refuse({
      code: 'too-long',
      message: `This has more than ${LONGEST} characters. Write one number and its unit, ${EXAMPLE}.`,
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
      message:
        wanted?.symbol === '1'
          ? `Nothing is written here. Write a number, ${EXAMPLE}.`
          : `Nothing is written here. Write a number and its unit, ${EXAMPLE}.`,
    });
  const word = wordProblem(normal);
  if (word) return refuse(word);
  const comma = commaReadings(normal);
  return comma ? ambiguous(normal, comma, wanted, expected?.of) : readAll(text, normal, wanted, expected?.of);
}

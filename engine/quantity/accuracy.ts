/** What may stand behind a ±: one number, or a sum as makers of meters state it: ±(0.8 % + 3 digits). */
import { readNumber } from './number.ts';
import type { Result } from './types.ts';
import { ok, refuse } from './types.ts';

export type Term =
  /** A number with or without a unit. */
  | { readonly kind: 'plain'; readonly text: string }
  /** Per cent of the reading, said to be so. */
  | { readonly kind: 'of-reading'; readonly percent: number }
  /** Counts of the last digit of the value as typed. */
  | { readonly kind: 'digits'; readonly digits: number };

/** One number, or an instrument's accuracy. */
export type Bound =
  | { readonly instrument: false; readonly text: string }
  | {
      readonly instrument: true;
      readonly terms: readonly Term[];
      /** A unit behind it all: it belongs to the value where that has none. */
      readonly unit: string;
    };

const DIGITS = /^(?:digits?|dgts?|lsds?|d)\b\.?/i;
const COUNTS = /^(?:counts?|cts?)$/i;
const OF_READING = /^% ?(?:of )?(?:the )?(?:reading|rdg|value)\.?$/i;
const OF_RANGE = /% ?(?:of )?(?:the )?(?:full scale|f\.?s\.?|range|span)\b/i;
const RIGHT = 'Write it like ±(0.8 % + 3 digits) or ±(0.8 % + 0.05 mm).';

const malformed = (message: string): Result<never> => refuse<never>({ code: 'malformed', message });

/** Cuts at plus signs that are none of an exponent. */
function summands(text: string): string[] {
  const out: string[] = [];
  let from = 0;
  for (let i = 1; i < text.length; i++) {
    if (text[i] !== '+' || /(?:\d[eE]|\^)\(?$/.test(text.slice(Math.max(0, i - 3), i))) continue;
    out.push(text.slice(from, i).trim());
    from = i + 1;
  }
  out.push(text.slice(from).trim());
  return out;
}

function readTerm(text: string, sum: boolean, countsAreUnits: boolean): Result<Term & { unit?: string }> {
  const number = readNumber(text, 0);
  if (!number.ok) return sum ? malformed(`A part of the sum behind ± is no number. ${RIGHT}`) : number;
  const rest = text.slice(number.value.end).trim();
  const digits = DIGITS.exec(rest);
  if (digits || (sum && COUNTS.test(rest) && !countsAreUnits)) {
    if (number.value.value < 0) return malformed(`The part behind ± is below zero. ${RIGHT}`);
    const unit = rest.slice(digits?.[0].length ?? rest.length).trim();
    return ok({ kind: 'digits', digits: number.value.value, unit });
  }
  if (OF_READING.test(rest)) return ok({ kind: 'of-reading', percent: number.value.value });
  if (sum && rest === '')
    return malformed(`Each part of the sum behind ± needs %, a unit or the word digits. ${RIGHT}`);
  return ok({ kind: 'plain', text });
}

/** Reads what stands behind a ±. `countsAreUnits` where the value itself is in counts. */
export function readBound(text: string, countsAreUnits: boolean): Result<Bound> {
  if (OF_RANGE.test(text))
    return malformed(
      'A per cent of full scale needs the range of the instrument. Work it out and write it in the unit: 0.5 % of a 20 V range is ± 0.1 V.',
    );
  const bracket = /^\(([^()]*)\)(.*)$/.exec(text);
  const inner = bracket ? bracket[1]!.trim() : text;
  let unit = bracket ? bracket[2]!.trim() : '';
  const parts = summands(inner);
  if (parts.length > 4) return malformed(`The sum behind ± has too many parts. ${RIGHT}`);
  const terms: Term[] = [];
  for (const part of parts) {
    const term = readTerm(part, parts.length > 1, countsAreUnits);
    if (!term.ok) return term;
    const { unit: behind = '', ...rest } = term.value;
    if (behind !== '') {
      if (unit !== '') return malformed(`A unit stands behind ± twice. ${RIGHT}`);
      unit = behind;
    }
    terms.push(rest);
  }
  const [only] = terms;
  if (terms.length > 1 || only?.kind !== 'plain') return ok({ instrument: true, terms, unit });
  return ok({ instrument: false, text: unit === '' ? only.text : `${only.text} ${unit}` });
}

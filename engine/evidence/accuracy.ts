/** How far an instrument may be wrong, as its manual states it: '0.5 % + 2 digits', '±(1 % + 0.03 V)', '0.01 mm'. */
import { ok, parseQuantity, type Result, refuse } from '../quantity/index.ts';

export interface Accuracy {
  /** Share of the reading. */
  readonly share: number;
  /** Of its own, SI. */
  readonly fixed: number;
  /** Steps of the last digit shown. */
  readonly digits: number;
}

/** Half width of the limits for one reading, SI. */
export const limitsOf = ({ share, fixed, digits }: Accuracy, value: number, digit: number): number =>
  share * Math.abs(value) + fixed + digits * digit;

const DIGITS = /^(\d+(?:[.,]\d+)?)\s*(?:digits?|dgts?|counts?|d)$/i;
const LONGEST = 120;

/** A number alone is in the unit of the readings. */
const withUnit = (term: string, unit: string): string =>
  unit !== '1' && /^[\d.,]+$/.test(term) ? `${term} ${unit}` : term;

/** `unit` is that of the readings it is for. */
export function parseAccuracy(text: string, unit: string): Result<Accuracy> {
  const example = `write it as the instrument’s manual does, like “0.5 % + 2 digits” or “0.03 ${unit === '1' ? '' : unit}”`;
  if (text.length > LONGEST) return refuse({ code: 'too-long', message: `That is too long; ${example}.` });
  const bare = text
    .trim()
    .replace(/^(?:±|\+\/-|\+-)\s*/, '')
    .replace(/^\((.*)\)$/, '$1')
    .replace(/\bof (?:the )?reading\b|\brdg\b/gi, '')
    .trim();
  let [share, fixed, digits] = [0, 0, 0];
  for (const term of bare.split('+').map((each) => each.trim())) {
    const counted = DIGITS.exec(term);
    if (counted) {
      digits += Number(counted[1]!.replace(',', '.'));
      continue;
    }
    const percent = /^([\d.,]+)\s*%$/.exec(term);
    const read = parseQuantity(percent ? `${percent[1]} %` : withUnit(term, unit), percent ? '1' : unit);
    if (!read.ok)
      return refuse({
        ...read.problem,
        message: `“${term.slice(0, 40)}”: ${read.problem.message} In all, ${example}.`,
      });
    if (read.value.value < 0 || read.value.half !== 0)
      return refuse({ code: 'out-of-domain', message: `“${term.slice(0, 40)}” is no accuracy; ${example}.` });
    if (percent) share += read.value.value;
    else fixed += read.value.value;
  }
  if (!Number.isFinite(share + fixed + digits))
    return refuse({ code: 'not-finite', message: `That is too large; ${example}.` });
  if (share > 0.5)
    return refuse({
      code: 'out-of-domain',
      message: `An instrument that may be wrong by more than half its reading tells nothing; ${example}.`,
    });
  return ok({ share, fixed, digits });
}

/** Numbers as people write them: 2,5 · 1 250 · 1.25e-3 · 3/8 · 1 3/8 · −4. */
import type { Problem, Result } from './types.ts';
import { ok, refuse } from './types.ts';

export interface NumberRead {
  readonly value: number;
  /** Where the text goes on behind the number. */
  readonly end: number;
  /** Power of ten of the last digit as written: −2 for 1.32; undefined for fractions, which have none. */
  readonly place?: number;
}

const SIGN = /([+-]?) ?/y;
const MIXED = /(\d{1,6})[ -](\d{1,4})\/(\d{1,4})(?![\d.,])/y;
const FRACTION = /(\d{1,6})\/(\d{1,6})(?![\d.,])/y;
const BLANK_GROUPS = /(\d{1,3}(?: \d{3})+)(?!\d)(?:[.,](\d+))?/y;
const PLAIN = /(?:\d+(?:[.,]\d+)*|[.,]\d+)\.?/y;
const EXPONENT = /[eE]([+-]?\d+)/y;
const TIMES_TEN = / ?[×x*·] ?10(?:\^|\*\*)\(?([+-]?\d+)\)?/y;

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

const bad = (message: string): Result<never> => refuse({ code: 'not-a-number', message });

/** Points and commas to one decimal point. A lone comma before three digits is settled before this is called. */
function decimalText(body: string): string | undefined {
  const marks = body.replace(/\d/g, '');
  if (marks === '' || marks === '.') return body;
  if (marks === ',') return body.replace(',', '.');
  const last = marks.at(-1)!;
  const [head, tail] = [body.slice(0, body.lastIndexOf(last)), body.slice(body.lastIndexOf(last) + 1)];
  const groupMark = marks[0]!;
  const allSame = marks.split('').every((m) => m === groupMark);
  // 1,250,000 has groups only; 1,250.5 has groups and then a decimal mark of the other kind.
  const grouped = allSame ? body : head;
  if (!allSame && marks.indexOf(last) !== marks.length - 1) return undefined;
  const groups = grouped.split(groupMark);
  const right = groups.every((g, i) => (i === 0 ? g.length >= 1 && g.length <= 3 : g.length === 3));
  if (!right) return undefined;
  return allSame ? groups.join('') : `${groups.join('')}.${tail}`;
}

function finite(value: number, isZero: boolean, end: number, place?: number): Result<NumberRead> {
  if (!Number.isFinite(value) || (!isZero && Math.abs(value) < 1e-290))
    return refuse({ code: 'not-finite', message: 'The number is too large or too small to work with.' });
  return ok({ value: value === 0 ? 0 : value, end, ...(place === undefined ? {} : { place }) });
}

/** Reads the number that begins at `at`; the text is normalised. */
export function readNumber(text: string, at: number): Result<NumberRead> {
  const sign = match(SIGN, text, at)!;
  const factor = sign[1] === '-' ? -1 : 1;
  const start = at + sign[0].length;
  const fraction = match(MIXED, text, start) ?? match(FRACTION, text, start);
  if (fraction) {
    const [whole, top, bottom] =
      fraction.length === 4 ? fraction.slice(1).map(Number) : [0, ...fraction.slice(1).map(Number)];
    if (bottom === 0)
      return refuse({ code: 'not-finite', message: 'The fraction has a zero below its stroke.' });
    if (fraction.length === 4 && top! >= bottom!)
      return bad(`“${fraction[0]}” is not a whole number and a fraction. Write it like 1 3/8.`);
    const value = factor * (whole! + top! / bottom!);
    return finite(value, value === 0, start + fraction[0].length);
  }
  const groups = match(BLANK_GROUPS, text, start);
  const plain = groups ?? match(PLAIN, text, start);
  if (!plain) return bad(`No number was found. Begin with one, ${EXAMPLE}.`);
  let end = start + plain[0].length;
  const body = groups
    ? `${groups[1]!.replaceAll(' ', '')}${groups[2] === undefined ? '' : `.${groups[2]}`}`
    : decimalText(plain[0].endsWith('.') ? plain[0].slice(0, -1) : plain[0]);
  if (body === undefined)
    return bad(
      `“${plain[0].slice(0, 30)}” mixes points and commas so that it is no number. Write it like 1250.5.`,
    );
  const exponent = match(EXPONENT, text, end) ?? match(TIMES_TEN, text, end);
  if (exponent) end += exponent[0].length;
  const place = Number(exponent?.[1] ?? 0) - (body.split('.')[1]?.length ?? 0);
  return finite(factor * Number(`${body}e${exponent?.[1] ?? '0'}`), !/[1-9]/.test(body), end, place);
}

// One to three digits, a comma, three digits: 1.25 to a European, 1250 to an American. A leading zero or blank groups settle it.
const TWO_WAYS = /(?<![\d.,]|\d )([1-9]\d{0,2}),(\d{3})(?!\d|[.,]\d)/g;

/** The two texts an undecided comma can mean, or undefined when there is none. */
export function commaReadings(text: string): readonly [decimal: string, grouped: string] | undefined {
  const decimal = text.replace(TWO_WAYS, '$1.$2');
  return decimal === text ? undefined : [decimal, text.replace(TWO_WAYS, '$1$2')];
}

/** The example in a refusal, for whom nothing else is known to be wanted. */
export const EXAMPLE = 'such as 5 mm';

/** Words that stand for no usable number. */
export function wordProblem(text: string): Problem | undefined {
  if (/^[+-]? ?(inf|infinity|infinite|∞)\b|^[+-]? ?∞/i.test(text))
    return {
      code: 'not-finite',
      message: 'An infinite value cannot be worked with. Leave the field empty if it is not known.',
    };
  if (/^[+-]? ?nan\b/i.test(text))
    return {
      code: 'not-a-number',
      message: `“NaN” is no number. Write one, ${EXAMPLE}, or leave the field empty.`,
    };
  return undefined;
}

/** Text a person wrote for a thread: made uniform, and its numbers read. */
import { type Problem, type Result, refuse } from '../quantity/index.ts';

export const MM = 1e-3;
export const INCH = 25.4e-3;
export const DEGREE = Math.PI / 180;
/** No name of a thread and no value of a cut is longer. */
export const LONGEST = 80;

const FRACTIONS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** One spelling for crosses, dashes, inch marks, blanks and fractions. Refuses what cannot be a name at all. */
export function uniform(text: string): Result<string> {
  if (text.trim() === '')
    return refuse({
      code: 'empty',
      message: 'No thread was named. Write one such as M10x1.25 or 1/4-20 UNC.',
    });
  if (text.length > LONGEST)
    return refuse({
      code: 'too-long',
      message: 'That is too long to be the name of a thread, such as M10x1.25.',
    });
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is refused
  if (/[\u0000-\u001f\u007f]/.test(text))
    return refuse({
      code: 'malformed',
      message: 'There is a character in it that cannot be printed; type the thread anew.',
    });
  const value = text
    .replace(/(\d)?([½¼¾⅛⅜⅝⅞])/g, (_, before: string | undefined, each: string) =>
      before === undefined ? FRACTIONS[each]! : `${before} ${FRACTIONS[each]}`,
    )
    .replace(/[×✕✖*]/g, 'x')
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/''|[″”“‶]/g, '"')
    .replace(/[⌀Øø∅]/g, 'ø')
    .replace(/\s+/g, ' ')
    .trim();
  return { ok: true, value };
}

/** '1.25', '1,25'; undefined for anything else, also for '1,250', which can be read two ways. */
export function number(text: string): number | undefined {
  if (!/^(?:\d{1,6}(?:[.,]\d{0,6})?|[.,]\d{1,6})$/.test(text)) return undefined;
  if (/^\d{1,3},\d{3}$/.test(text)) return undefined;
  return Number(text.replace(',', '.'));
}

/** '1 1/8', '1-1/8', '5/16', '0.25'. */
export function inches(text: string): number | undefined {
  const mixed = /^(?:(\d{1,2})[ -])?(\d{1,3})\/(\d{1,3})$/.exec(text);
  if (!mixed) return number(text);
  const [, whole = '0', top, bottom] = mixed;
  return Number(bottom) === 0 ? undefined : Number(whole) + Number(top) / Number(bottom);
}

/** Pattern of a size in inches, for a regular expression. */
export const SIZE = String.raw`(?:#|no\.? ?)?(?:\d{1,2}[ -]\d{1,2}\/\d{1,3}|\d{1,2}\/\d{1,3}|\d{0,3}[.,]\d{1,5}|\d{1,3})`;
/** Pattern of a plain number. */
export const NUMBER = String.raw`(?:\d{1,6}(?:[.,]\d{1,6})?|[.,]\d{1,6})`;

/** Without needless zeros. */
export const plainNumber = (value: number): string => String(Number(value.toPrecision(7)));

export const problem = (
  code: Problem['code'],
  message: string,
  readings?: readonly string[],
): { readonly ok: false; readonly problem: Problem } => ({
  ok: false,
  problem: {
    code,
    message,
    ...(readings && readings.length > 0 ? { readings } : {}),
    ...(readings?.[0] !== undefined && code !== 'ambiguous' ? { suggestion: readings[0] } : {}),
  },
});

/** 'a, b or c'. */
export const orList = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} or ${items.at(-1)}`;

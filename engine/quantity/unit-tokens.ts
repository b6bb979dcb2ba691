/** Cuts a unit's text into words, numbers and operators. */
import { normalise } from './characters.ts';
import type { Problem } from './types.ts';

/** Carries a problem out of the depth of the reading; never leaves `scanUnit`. */
export class Refusal extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

export const stop = (problem: Problem): never => {
  throw new Refusal(problem);
};

export type Token =
  | {
      readonly kind: 'word' | 'operator';
      readonly text: string;
      readonly at: number;
      readonly tight: boolean;
    }
  | {
      readonly kind: 'number';
      readonly value: number;
      readonly text: string;
      readonly at: number;
      readonly tight: boolean;
    };

const LETTER = /[A-Za-zΩµ°℃℉_]/;
const TOKEN = /(\d+(?:\.\d+)?)|([A-Za-zΩµ°℃℉_]+)|(["'%])|(\*\*|[·*×/^()√.-])/y;

/** Spellings with blanks or points inside, made one word before cutting. */
function spell(text: string): string {
  return normalise(text)
    .replace(/\br\. ?p\. ?m\.?/gi, 'rpm')
    .replace(/\b(?:degrees?|deg\.?|°) ?([CF])(?![A-Za-z])/g, '°$1')
    .replace(/\b(?:degrees?|deg) (celsius|fahrenheit)/gi, '$1')
    .replace(/° ([CF])(?![A-Za-z])/g, '°$1')
    .replace(/\b(V|A) ?(?:DC|AC|dc|ac)(?![A-Za-z])/g, '$1')
    .replace(/\barc[ -](sec|min)/gi, 'arc$1')
    .replace(/\bthreads? ?(?:per|\/) ?in(?:ch)?\b/gi, 'tpi')
    .replace(/\b(?:rev|revs|r|U|tr|turns?) ?\/ ?min(?:ute)?\b\.?/g, 'r_min')
    .replace(/\bREV ?\/ ?MIN\b/g, 'r_min');
}

/** The tokens; throws Refusal for a sign that is in no unit. */
export function cutUnit(typed: string): Token[] {
  const text = spell(typed);
  const tokens: Token[] = [];
  let at = 0;
  let tight = false;
  while (at < text.length) {
    if (text[at] === ' ') {
      at++;
      tight = false;
      continue;
    }
    TOKEN.lastIndex = at;
    const found = TOKEN.exec(text);
    if (!found) {
      const odd = String.fromCodePoint(text.codePointAt(at)!);
      return stop({ code: 'unit-unknown', message: `The sign “${odd}” is not part of any unit known here.` });
    }
    const [whole, number, word, mark, operator] = found;
    if (number !== undefined) tokens.push({ kind: 'number', value: Number(number), text: number, at, tight });
    else if (word !== undefined || mark !== undefined) tokens.push({ kind: 'word', text: whole, at, tight });
    // A point behind an abbreviation ('lb. in.') only ends it; between letters ('N.m') it multiplies.
    else if (operator !== '.' || LETTER.test(text[at + 1] ?? ''))
      tokens.push({
        kind: 'operator',
        text: operator === '.' || operator === '×' || operator === '*' ? '·' : operator!,
        at,
        tight,
      });
    at += whole.length;
    tight = true;
  }
  return tokens;
}

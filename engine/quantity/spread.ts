/** Words behind a ± that say what it is: (k=2), (95 %), (1 sd), resolution, tolerance, guess, instrument. */
import type { Result, Spread, SpreadKind } from './types.ts';
import { ok, refuse } from './types.ts';

/** What a ± was said to be. */
export interface Said {
  readonly kind: SpreadKind;
  readonly shape: 'normal' | 'rectangular';
  /** Standard uncertainty as a part of the half width. */
  readonly perHalf: number;
}

export interface Taken {
  /** What is left to be read. */
  readonly text: string;
  readonly said?: Said;
  /** The words taken off, to be put back into a suggestion. */
  readonly words: string;
}

/**
 * Half width in standard uncertainties for the levels people write, of a normal distribution. 68 % is what people call one
 * standard deviation, 95.45 and 99.73 % two and three (common practice, no source); the others are quantiles.
 */
const LEVELS: Readonly<Record<string, number>> = {
  '68': 1,
  '68.27': 1,
  '90': 1.6448536269514722,
  '95': 1.959963984540054,
  '95.45': 2,
  '99': 2.5758293035489004,
  '99.7': 3,
  '99.73': 3,
};

const RECTANGLE = 1 / Math.sqrt(3);
const LIMITS: Readonly<Record<string, SpreadKind>> = {
  resolution: 'resolution',
  tolerance: 'tolerance',
  tol: 'tolerance',
  guess: 'guess',
  guessed: 'guess',
  instrument: 'instrument',
  accuracy: 'instrument',
};

/** A meter's accuracy is a limit within which every error is taken as equally likely (common practice; JCGM 100:2008, 4.3.7). */
const ACCURACY: Said = { kind: 'instrument', shape: 'rectangular', perHalf: RECTANGLE };

const NUMBER = '(\\d{1,6}(?:[.,]\\d{1,15})?)';
const WORD = / ?\(?\b(resolution|tolerance|tol|guess|guessed|instrument|accuracy)\b\.?\)?$/i;
const FACTOR = new RegExp(
  ` ?(?:\\( ?k ?= ?${NUMBER}(?: ?[,;] ?[\\d.,]+ ?%)? ?\\)|(?<= )k ?= ?${NUMBER}$)`,
  'i',
);
const LEVEL = new RegExp(`(?<=[^±( ]) ?\\( ?${NUMBER} ?%(?: (?:confidence|coverage|level))* ?\\)`, 'i');
const DEVIATIONS = new RegExp(
  ` ?\\( ?${NUMBER} ?(?:sd|s\\.d\\.|σ|sigma|standard deviations?) ?\\)|(?<=[^±] )([123]) ?(?:sd|σ|sigma)$`,
  'i',
);

const amount = (text: string): number => Number(text.replace(',', '.'));

function normalOf(kind: SpreadKind, k: number, written: string): Result<Said> {
  if (k >= 0.1 && k <= 10) return ok({ kind, shape: 'normal', perHalf: 1 / k });
  return refuse({
    code: 'out-of-domain',
    message: `“${written.trim()}” is no usual coverage factor: it lies between 0.1 and 10. Write it like ± 0.06 (k=2).`,
  });
}

interface Found {
  readonly at: number;
  readonly length: number;
  readonly said: Said;
}

function readSaid(text: string): Result<Found> | undefined {
  const place = (match: RegExpExecArray, said: Result<Said>): Result<Found> =>
    said.ok ? ok({ at: match.index, length: match[0].length, said: said.value }) : said;
  const word = WORD.exec(text);
  if (word) {
    const kind = LIMITS[word[1]!.toLowerCase()]!;
    return place(word, ok({ kind, shape: 'rectangular', perHalf: RECTANGLE }));
  }
  const factor = FACTOR.exec(text);
  const deviations = factor ? null : DEVIATIONS.exec(text);
  const counted = factor ?? deviations;
  if (counted) {
    const kind = factor ? 'expanded' : 'readings';
    return place(counted, normalOf(kind, amount(counted[1] ?? counted[2] ?? ''), counted[0]));
  }
  const level = LEVEL.exec(text);
  if (!level) return undefined;
  const key = String(amount(level[1]!));
  if (!Object.hasOwn(LEVELS, key))
    return refuse({
      code: 'out-of-domain',
      message: `A level of ${key} % behind a ± is not known here. Write (68 %), (90 %), (95 %), (99 %) or the coverage factor, such as (k=2).`,
    });
  return place(level, normalOf('expanded', LEVELS[key]!, level[0]));
}

/** Takes the words that say what a ± is off a normalised text. */
export function takeSaid(text: string): Result<Taken> {
  const read = readSaid(text);
  if (!read) return ok({ text, words: '' });
  if (!read.ok) return read;
  const { at, length, said } = read.value;
  const rest = `${text.slice(0, at)}${text.slice(at + length)}`.trim();
  return ok({ text: rest, said, words: text.slice(at, at + length).trim() });
}

/** What the ± is once it is known how it was written. Refused where there is none to say it of. */
export function settleSaid({ said, words }: Taken, form: string): Result<Said | undefined> {
  if (!said) return ok(form === 'instrument' ? ACCURACY : undefined);
  const plain = /^\w/.test(words);
  if (form === 'single')
    return refuse({
      code: 'malformed',
      message: `“${words}” says what kind a ± is, but there is no ± in front of it. Write it like 5 mm ± 0.1 mm ${plain || words.startsWith('(') ? words : 'tolerance'}.`,
    });
  if (said.kind === 'resolution' && form !== 'plus-minus')
    return refuse({
      code: 'malformed',
      message: 'A resolution is one step of the display. Write it like 5.00 mm ± 0.01 mm resolution.',
    });
  return ok(said);
}

/** How a spread is written so that it reads back the same. */
export function printSaid({ kind, shape, standard }: Spread, half: number): string {
  if (shape === 'rectangular') return ` ${kind}`;
  const factor = String(Number((half / standard).toPrecision(15)));
  return kind === 'readings' ? ` (${factor} sd)` : ` (k=${factor})`;
}

/** Reads what people write for a thread. */
import type { Result } from '../quantity/index.ts';
import { parseBareInch, parseUnified, parseWhitworth } from './parse-inch.ts';
import { parseBare, parseMetric, parseTrapezoidal } from './parse-metric.ts';
import { parseNpt, parsePipe } from './parse-pipe.ts';
import { NUMBER, number, problem, uniform } from './text.ts';
import type { Hand, Thread } from './types.ts';

/** What may stand with any thread, taken out of its text. */
export interface Common {
  readonly hand: Hand;
  /** As typed; absent where nothing was said. */
  readonly starts?: number;
  /** Travel of one turn, metres, where it was named. */
  readonly lead?: number;
}

const WORDS: Readonly<Record<string, number>> = {
  single: 1,
  double: 2,
  two: 2,
  twin: 2,
  triple: 3,
  three: 3,
  four: 4,
  six: 6,
};
const MOST_STARTS = 24;

/**
 * A thread from its text: 'M10x1.25', '1/4-20 UNC LH', 'G 1/2', 'Tr 40x14 (P7)', '3-start pitch 2 mm ø20'.
 * What can be read two ways is `ambiguous` with the readings; what cannot be says what would be right.
 */
export function parseThread(text: string): Result<Thread> {
  const made = uniform(text);
  if (!made.ok) return made;
  const taken = takeCommon(made.value);
  if (!taken.ok) return taken;
  const [rest, common] = taken.value;
  if (/\bacme\b/i.test(rest))
    return problem(
      'unknown-name',
      'Acme threads are not in the book; the metric trapezoidal ones are, such as Tr 20x4.',
    );
  if (/npt|nps/i.test(rest)) return parseNpt(rest, common);
  if (/^m ?\d|^m[.,]\d/i.test(rest)) return parseMetric(rest, common);
  if (/^tr\b|^tr ?\d/i.test(rest)) return parseTrapezoidal(rest, common);
  if (/\bun(?:c|f|ef|s|r[cfs]?|j[cf]?)?\b|\dun(?:c|f|ef|s)?\b/i.test(rest)) return parseUnified(rest, common);
  if (/bs[wf]\b|whit|^w ?\d/i.test(rest)) return parseWhitworth(rest, common);
  if (/^(?:g|r|rc|rp|r1|r2|bspp?|bspt) ?(?=[\d.])|\bbsp/i.test(rest)) return parsePipe(rest, common);
  if (/^m\b/i.test(rest))
    return problem('malformed', 'A metric thread has its diameter behind the M, such as M10 or M10x1.25.', [
      'M10',
    ]);
  if (/ø|\bpitch\b|\blead\b|\bdia/i.test(rest) || common.starts !== undefined || common.lead !== undefined)
    return parseBare(rest, common);
  return parseBareInch(rest, common);
}

function takeCommon(text: string): Result<readonly [string, Common]> {
  let rest = text;
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const found = pattern.exec(rest);
    if (found) rest = `${rest.slice(0, found.index)} ${rest.slice(found.index + found[0].length)}`.trim();
    return found;
  };
  const left = take(/[ ,-]*\b(?:lh|left(?:[ -]?hand(?:ed)?)?)\b[ ,-]*/i);
  const right = take(/[ ,-]*\b(?:rh|right(?:[ -]?hand(?:ed)?)?)\b[ ,-]*/i);
  if (left && right)
    return problem('malformed', 'It says left-hand and right-hand; a thread is one of them.');
  const starts = take(/,? ?\b(\d{1,6}|[a-z]+)[ -]?starts?\b,?/i);
  let count: number | undefined;
  if (starts) {
    const word = starts[1]!.toLowerCase();
    count = /^\d+$/.test(word) ? Number(word) : WORDS[word];
    if (count === undefined || count < 1 || count > MOST_STARTS)
      return problem(
        'out-of-domain',
        `The number of starts must be a whole number from 1 to ${MOST_STARTS}, such as 2-start.`,
      );
  }
  const lead = take(new RegExp(`,? ?\\blead(?: of| =|=|:)? ?(${NUMBER}) ?(mm|in|")?,?`, 'i'));
  let travel: number | undefined;
  if (lead) {
    const value = number(lead[1]!);
    if (value === undefined || value <= 0)
      return problem('out-of-domain', 'The lead must be a length above zero, such as lead 6 mm.');
    travel = value * (lead[2] === undefined || lead[2].toLowerCase() === 'mm' ? 1e-3 : 25.4e-3);
  }
  return {
    ok: true,
    value: [
      rest.replace(/\s+/g, ' ').trim(),
      {
        hand: left ? 'left' : 'right',
        ...(count === undefined ? {} : { starts: count }),
        ...(travel === undefined ? {} : { lead: travel }),
      },
    ],
  };
}

/** Paths and lists in words. */

import { AXIS_PLACES, factSpec, PLACES, type PlaceId, SPINDLE_PLACES } from '../parts/index.ts';
import { readable } from '../quantity/index.ts';
import { andList } from '../quantity/words.ts';
import type { Chain } from '../refit/types.ts';
import type { Amount, Doubt, Finding } from './finding.ts';

/** 'X.screw.root' → 'root diameter of the X screw'. */
export function sayPath(path: string): string {
  const pieces = path.split('.');
  const last = pieces.at(-1)!;
  const before = pieces.at(-2);
  if (before !== undefined && factSpec(before, last)) {
    const name = factSpec(before, last)!.name;
    return `${name} of the ${sayPlace(before, pieces.length === 3 ? pieces[0] : undefined)}`;
  }
  return `whether there is a ${sayPlace(last, before)}`;
}

function sayPlace(place: string, chain?: string): string {
  const kind = Object.hasOwn(PLACES, place) ? PLACES[place as PlaceId].name : place;
  if (place === 'duty') return chain ? `${chain} axis’ duty` : kind;
  if (place === 'spindle-duty') return `${saySpindle(chain)}’s duty`;
  if (chain && Object.hasOwn(SPINDLE_PLACES, place))
    return chain === ONLY_SPINDLE ? kind : `${chain} ${kind}`;
  return chain && Object.hasOwn(AXIS_PLACES, place) ? `${chain} ${kind}` : kind;
}

/** The usual name of a machine’s spindle; with it nobody asks which. */
const ONLY_SPINDLE = 'S';
const saySpindle = (chain: string | undefined): string =>
  chain === undefined || chain === ONLY_SPINDLE ? 'spindle' : `${chain} spindle`;

/** 'X axis', 'spindle', or 'S2 spindle' where there are several. */
export const sayChain = ({ id, kind }: Pick<Chain, 'id' | 'kind'>): string =>
  kind === 'axis' ? `${id} axis` : saySpindle(id);

export function missingSentence(paths: readonly string[]): string {
  if (paths.length === 0) return 'Not enough is known.';
  const shown = paths.slice(0, 3).map(sayPath);
  const rest = paths.length - shown.length;
  return `Not known yet: ${rest > 0 ? `${shown.join(', ')} and ${rest} more` : andList(shown)}.`;
}

/** An amount with its ±: '13.16 ± 0.01 kN'. */
export const sayDoubted = ({ value, doubt, unit }: Amount): string =>
  readable(value, unit, { half: 2 * doubt });

/** An amount for a sentence: rounded where its doubt begins, as the table beside it; without doubt to three figures. */
export function sayRounded(amount: Amount, figures?: number): string {
  const { value, doubt, unit } = amount;
  const exact = readable(value, unit, figures === undefined ? {} : { figures });
  if (!(doubt > 0) || value === 0) return exact;
  const text = sayDoubted(amount).replace(/\(?(-?[\d.]+) ± [\d.]+\)?/, '$1');
  // More doubt than value: its size still says more than nothing.
  return Number.parseFloat(text) === 0 ? readable(value, unit, { figures: 1 }) : text;
}

/** Beyond this many figures two exact amounts are told apart by nobody. */
const FINEST = 7;

/** Two amounts that are compared: where rounding would make unequal exact ones read alike, with as many figures as tell them apart. */
export function sayBoth(asked: Amount, there: Amount): readonly [asked: string, there: string] {
  let both = [sayRounded(asked), sayRounded(there)] as const;
  if (asked.doubt > 0 || there.doubt > 0 || asked.value === there.value) return both;
  for (let figures = 4; both[0] === both[1] && figures <= FINEST; figures++)
    both = [sayRounded(asked, figures), sayRounded(there, figures)];
  return both;
}

/** A source of doubt in words: a fact's name, or the table a choice leads to. */
export const sayDoubt = (source: string): string =>
  source.startsWith('table ') ? `the table for the ${sayPath(source.split(' ')[1]!)}` : sayPath(source);

/** 'root diameter of the X screw 62 %, X motor … 30 % and others'. */
export function sayDoubts(doubts: readonly Doubt[]): string {
  const shown = doubts
    .slice(0, 4)
    .map(({ source, share }) => `${sayDoubt(source)} ${(100 * share).toFixed(0)} %`);
  return andList(doubts.length > shown.length ? [...shown, 'others'] : shown);
}

/**
 * The guesses of a finding that matter to it: those that carry some of its doubt, and guessed choices, of which no number tells
 * how far off they are.
 */
export function heavyGuesses({ guesses, doubts }: Pick<Finding, 'guesses' | 'doubts'>): readonly string[] {
  const carry = new Set(doubts?.map(({ source }) => source));
  return guesses.filter((path) => {
    const [place, name] = path.split('.').slice(-2);
    return carry.has(path) || factSpec(place ?? '', name ?? '')?.kind !== 'quantity';
  });
}

/** 'It rests on a guess: the root diameter of the X screw.' Guesses that hardly matter are said to. */
export function sayGuesses(finding: Pick<Finding, 'guesses' | 'doubts'>): string | undefined {
  const { guesses } = finding;
  if (guesses.length === 0) return undefined;
  const heavy = heavyGuesses(finding);
  if (heavy.length === 0)
    return guesses.length === 1
      ? `It rests on a guess that hardly matters here: ${sayPath(guesses[0]!)}.`
      : `It rests on ${guesses.length} guesses that hardly matter here.`;
  const named = heavy.slice(0, 3).map(sayPath);
  const rest = heavy.length - named.length;
  const what = andList(rest > 0 ? [...named, `${rest} more`] : named);
  return heavy.length === 1 ? `It rests on a guess: ${what}.` : `It rests on guesses: ${what}.`;
}

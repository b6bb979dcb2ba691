/** Finding things in a refit, and paths as people write them: `X.motor.resistance`, `site.mains`. */

import { surveyItem } from '../parts/survey/index.ts';
import type { PartKind } from '../parts/types.ts';
import { nearest } from '../quantity/nearest.ts';
import { own } from '../quantity/own.ts';
import { ok, type Result, refuse } from '../quantity/types.ts';
import { BY_ID, type Namer } from './say.ts';
import { shorten } from './shape.ts';
import type { Fact, Part, Place, Refit } from './types.ts';

type Kinds = Readonly<Record<string, PartKind>>;
type Policies = ReadonlyMap<string, { readonly name: string }>;

/** A place of a chain, or of the whole machine where `chain` is null. */
export function findPlace(refit: Refit, chain: string | null, place: string): Place | undefined {
  const places = chain === null ? refit.places : refit.chains.find(({ id }) => id === chain)?.places;
  return places && own(places, place);
}

/** The part that fills a place; null when nothing does, it is not known, or there is no such place. */
export function chosenPart(refit: Refit, chain: string | null, place: string): Part | null {
  const chosen = findPlace(refit, chain, place)?.chosen;
  return (chosen && own(refit.parts, chosen)) || null;
}

/** Every place with where it stands, chains first. */
export function* everyPlace(refit: Refit): Generator<{ chain: string | null; name: string; place: Place }> {
  for (const chain of refit.chains)
    for (const [name, place] of Object.entries(chain.places)) yield { chain: chain.id, name, place };
  for (const [name, place] of Object.entries(refit.places)) yield { chain: null, name, place };
}

/** The place in which a part is an option. */
export function placeOf(
  refit: Refit,
  part: string,
): { chain: string | null; name: string; place: Place } | undefined {
  for (const found of everyPlace(refit)) if (found.place.options.includes(part)) return found;
  return undefined;
}

export interface FactPath {
  readonly chain: string | null;
  readonly place: string;
  readonly part: Part;
  readonly fact: string;
}

/** The recorded fact a path leads to, or null. */
export function findFact(refit: Refit, path: string): Fact | null {
  const found = resolvePath(refit, path);
  return found.ok ? (own(found.value.part.facts, found.value.fact) ?? null) : null;
}

/** The path of a fact as people write it. */
export const pathOf = (chain: string | null, place: string, fact: string): string =>
  chain === null ? `${place}.${fact}` : `${chain}.${place}.${fact}`;

/**
 * Reads `<chain>.<place>.<fact>`, `<place>.<fact>` or `machine.<place>.<fact>`; capitals do not matter where only one
 * name fits. With `kinds`, a fact that the part's kind knows is found though nobody has entered it yet.
 */
export function resolvePath(refit: Refit, text: string, kinds?: Kinds): Result<FactPath> {
  const steps = text.trim().split('.');
  if (text.length > 250 || steps.length < 2 || steps.length > 3 || steps.some((step) => step === ''))
    return refuse({
      code: 'malformed',
      message: `'${shorten(text)}' is no path to a fact; write one like X.motor.resistance or site.mains.`,
    });
  const [chainText, placeText, factText] =
    steps.length === 3 ? (steps as [string, string, string]) : [null, ...(steps as [string, string])];
  const wholeMachine = chainText === null || chainText.toLowerCase() === 'machine';
  const chains = refit.chains.map(({ id }) => id);
  const chain = wholeMachine ? null : choose(chainText, chains);
  if (chain === undefined) return unknown('axis', chainText!, [...chains, 'machine'], [placeText, factText]);

  const places = chain === null ? refit.places : refit.chains.find(({ id }) => id === chain)!.places;
  const before = chain === null ? [] : [chain];
  const place = choose(placeText, Object.keys(places));
  if (place === undefined)
    return wholeMachine && chains.includes(placeText.toUpperCase())
      ? refuse({
          code: 'unknown-name',
          message: `'${shorten(text)}' names an axis and one thing more; write axis, place and fact, like X.motor.resistance.`,
        })
      : unknown(
          chain === null ? 'place' : `place of ${chain}`,
          placeText,
          Object.keys(places),
          [factText],
          before,
        );

  const part = chosenPart(refit, chain, place);
  const at = [...before, place].join('.');
  if (part === null)
    return refuse({
      code: 'unknown-name',
      message:
        places[place]!.chosen === 'none'
          ? `Nothing is fitted at ${at}, so it has no facts.`
          : `It is not decided yet which part fills ${at}; choose one first.`,
      where: at,
    });

  const spec = kinds && own(kinds, part.kind);
  const facts = [...new Set([...Object.keys(spec?.facts ?? {}), ...Object.keys(part.facts)])];
  const fact = choose(factText, facts);
  if (fact === undefined)
    return unknown(`fact of ${at} (${part.kind})`, factText, facts, [], [...before, place]);
  return ok({ chain, place, part, fact });
}

/** Calls parts by their place and facts by the name their kind gives them: 'X motor', 'winding resistance'. */
export function refitNamer(refit: Refit, kinds?: Kinds, policies?: Policies): Namer {
  return {
    place: placeInWords,
    item: (id) => surveyItem(id)?.name ?? id,
    policy: (id) => {
      const name = policies?.get(id)?.name;
      return name === undefined ? BY_ID.policy(id) : `policy “${name}”`;
    },
    part: (id) => {
      const name = own(refit.parts, id)?.name ?? id;
      const at = placeOf(refit, id);
      if (!at) return name;
      const place = placeInWords(at.chain, at.name);
      return at.place.chosen === id ? place : `${name} (option for ${place})`;
    },
    fact: (part, fact) => {
      const kind = kinds && own(kinds, own(refit.parts, part)?.kind ?? '');
      return (kind && own(kind.facts, fact)?.name) ?? fact;
    },
  };
}

/** 'X motor', 'S spindle drive'. */
const placeInWords = (chain: string | null, place: string): string =>
  BY_ID.place(chain, place.replaceAll('-', ' '));

function choose(text: string, names: readonly string[]): string | undefined {
  if (names.includes(text)) return text;
  const alike = names.filter((name) => name.toLowerCase() === text.toLowerCase());
  return alike.length === 1 ? alike[0] : undefined;
}

function unknown(
  what: string,
  text: string,
  names: readonly string[],
  after: readonly string[],
  before: readonly string[] = [],
): Result<never> {
  const near = nearest(text, names);
  const suggestion = near === undefined ? undefined : [...before, near, ...after].join('.');
  const list = names.length === 0 ? 'there is none yet' : `there are ${names.slice(0, 40).join(', ')}`;
  return refuse({
    code: 'unknown-name',
    message: `There is no ${what} called '${shorten(text)}'; ${suggestion ? `did you mean ${shorten(suggestion)}?` : `${list}.`}`,
    where: shorten(text),
    ...(suggestion === undefined ? {} : { suggestion }),
  });
}

/** What a person types for a path, as changes. The same for command line, server and screen. */
import { factSpec, PLACES, type PlaceId } from '../parts/index.ts';
import { nearest } from '../quantity/nearest.ts';
import { BASES, type Basis, ok, type Problem, type Result, refuse } from '../quantity/types.ts';
import { findPlace } from './place.ts';
import { askBackOfFact, oddity, type ReadFact, readFact, typedValue } from './read-fact.ts';
import type { Change, Fact, Part, Place, Refit } from './types.ts';

export interface Setting {
  readonly changes: readonly Change[];
  /** How the text was read, and whether it looks odd: for showing beside the field. */
  readonly notes: readonly string[];
  readonly questions: readonly string[];
  /** It looks like a slip: to be asked before it is recorded. */
  readonly askBack?: string;
  readonly read?: ReadFact;
}

export interface Target {
  readonly chain: string | null;
  readonly place: PlaceId;
  /** An option of the place other than the chosen part: 'X.motor@x-motor-2'. */
  readonly part?: string;
  /** Absent for the place itself: 'X.brake'. */
  readonly fact?: string;
}

/** Places that refits of an older Fettle lack; they come with their first fact. */
const LATER = ['job'];
const EMPTY: Place = { options: [], chosen: null };

const UNKNOWN = new Set(['unknown', "don't know", 'don’t know', 'dont know', '?']);
const NOTHING = new Set(['none', 'no', 'nothing']);
const SOMETHING = new Set(['yes', 'fitted', 'one']);

const noSuch = (what: string, text: string, names: readonly string[]): Problem => {
  const near = nearest(text, names);
  return {
    code: 'unknown-name',
    message: `There is no ${what} “${text.slice(0, 60)}”. ${near ? `Did you mean “${near}”? ` : ''}There are: ${names.join(', ')}.`,
    ...(near ? { suggestion: near } : {}),
  };
};

/** Finds what a path means, whether or not anything is known there yet. Capitals do not matter. */
export function target(refit: Refit, path: string): Result<Target> {
  if (path.length > 200)
    return refuse({
      code: 'too-long',
      message: 'A path is at most 200 characters long, like X.motor.resistance.',
    });
  const steps = path
    .trim()
    .split('.')
    .map((step) => step.trim());
  if (steps[0]?.toLowerCase() === 'machine') steps.shift();
  const axis = refit.chains.find((chain) => chain.id.toLowerCase() === steps[0]?.toLowerCase());
  if (axis) steps.shift();
  const places = [...new Set([...Object.keys(axis ? axis.places : refit.places), ...(axis ? [] : LATER)])];
  const [address = '', factText, ...more] = steps;
  const [placeText = '', optionText, ...others] = address.split('@').map((step) => step.trim());
  if (placeText === '' || more.length > 0 || others.length > 0) {
    return refuse({
      code: 'malformed',
      message: `“${path.slice(0, 60)}” is no path; write one like X.motor.resistance or supply.secondary.`,
    });
  }
  const place = places.find((name) => name.toLowerCase() === placeText.toLowerCase());
  if (!place || !Object.hasOwn(PLACES, place)) {
    const names = axis ? places : [...places, ...refit.chains.map((chain) => chain.id)];
    return refuse(
      noSuch(axis ? `place of the ${axis.id} axis called` : 'place or axis called', placeText, names),
    );
  }
  const chain = axis?.id ?? null;
  let part: { part: string } | undefined;
  if (optionText !== undefined) {
    const { options: ids } = findPlace(refit, chain, place) ?? EMPTY;
    const id = ids.find((each) => each.toLowerCase() === optionText.toLowerCase());
    if (id === undefined) return refuse(noSuch(`option of ${place} called`, optionText, ids));
    part = { part: id };
  }
  if (factText === undefined) return ok({ chain, place: place as PlaceId, ...part });
  const facts = Object.keys(PLACES[place as PlaceId].facts);
  const fact = facts.find((name) => name.toLowerCase() === factText.toLowerCase());
  if (!fact) return refuse(noSuch(`fact of the ${PLACES[place as PlaceId].name} called`, factText, facts));
  return ok({ chain, place: place as PlaceId, ...part, fact });
}

export const sayTarget = ({ chain, place, part, fact }: Target): string =>
  [chain, part === undefined ? place : `${place}@${part}`, fact]
    .filter((step) => step !== null && step !== undefined)
    .join('.');

function freeId(refit: Refit, wanted: string): string {
  if (!Object.hasOwn(refit.parts, wanted)) return wanted;
  for (let n = 2; ; n++) if (!Object.hasOwn(refit.parts, `${wanted}-${n}`)) return `${wanted}-${n}`;
}

/** A new part in a place; it becomes an option there and, with `choose`, fills it. */
export function addOption(
  refit: Refit,
  where: Target,
  name: string,
  choose: boolean,
): { part: Part; changes: Change[] } {
  const kind = PLACES[where.place];
  const id = freeId(refit, [where.chain?.toLowerCase(), where.place].filter(Boolean).join('-'));
  const part: Part = { id, kind: kind.id, name, facts: {} };
  const there = findPlace(refit, where.chain, where.place);
  const { options, chosen } = there ?? EMPTY;
  const now: Place = { options: [...options, id], chosen: choose ? id : chosen };
  return {
    part,
    changes: [
      { do: 'part', id, old: null, new: part },
      { do: 'place', chain: where.chain, place: where.place, old: there ?? null, new: now },
    ],
  };
}

/** 'none', 'fitted', 'unknown' or the id or name of an option, for a place. */
function setPlace(refit: Refit, where: Target, text: string): Result<Setting> {
  const there = findPlace(refit, where.chain, where.place);
  const old = there ?? EMPTY;
  const word = text.trim().toLowerCase();
  const done = (chosen: Place['chosen']): Result<Setting> =>
    ok({
      changes:
        chosen === old.chosen
          ? []
          : [
              {
                do: 'place',
                chain: where.chain,
                place: where.place,
                old: there ?? null,
                new: { ...old, chosen },
              },
            ],
      notes: [],
      questions: [],
    });
  if (UNKNOWN.has(word)) return done(null);
  if (NOTHING.has(word)) return done('none');
  const option = old.options.find(
    (id) => id.toLowerCase() === word || refit.parts[id]?.name.toLowerCase() === word,
  );
  if (option) return done(option);
  if (SOMETHING.has(word)) {
    if (old.chosen !== null && old.chosen !== 'none') return done(old.chosen);
    if (old.options.length > 0) return done(old.options[0]!);
    const kind = PLACES[where.place];
    const name = where.chain ? `${where.chain} ${kind.name}` : kind.name;
    return ok({ changes: addOption(refit, where, name, true).changes, notes: [], questions: [] });
  }
  return refuse({
    code: 'unknown-name',
    where: sayTarget(where),
    message: `For the place ${sayTarget(where)} write none, fitted, unknown${old.options.length > 0 ? `, or one of its parts: ${old.options.join(', ')}` : ''}.`,
  });
}

export interface SetOptions {
  readonly basis?: Basis;
  readonly note?: string;
}

/**
 * The changes that record `text` for a path: a fact ('X.motor.resistance'), one of an option that is not chosen
 * ('X.motor@x-motor-2.resistance'), or a place ('X.brake'). 'unknown' forgets a fact. Nothing is recorded that cannot
 * be read.
 */
export function set(refit: Refit, path: string, text: string, options: SetOptions = {}): Result<Setting> {
  const found = target(refit, path);
  if (!found.ok) return found;
  const where = found.value;
  const at = sayTarget(where);
  if (text.trim() === '') {
    return refuse({
      code: 'empty',
      where: at,
      message: `Nothing was given for ${at}. Write “unknown” to forget what is recorded.`,
    });
  }
  if (where.fact === undefined) return setPlace(refit, where, text);
  const spec = factSpec(where.place, where.fact)!;
  const place = findPlace(refit, where.chain, where.place) ?? EMPTY;
  const forget = UNKNOWN.has(text.trim().toLowerCase());
  if (place.chosen === 'none' && where.part === undefined) {
    return refuse({
      code: 'unknown-name',
      where: at,
      message: `The machine has no ${PLACES[where.place].name} there. Set ${sayTarget({ chain: where.chain, place: where.place })} to fitted first.`,
    });
  }
  const id = where.part ?? place.chosen;
  let part = id === null ? undefined : refit.parts[id];
  const changes: Change[] = [];
  if (!part) {
    if (forget) return ok({ changes: [], notes: [], questions: [] });
    const kind = PLACES[where.place];
    const made = addOption(refit, where, where.chain ? `${where.chain} ${kind.name}` : kind.name, true);
    part = made.part;
    changes.push(...made.changes);
  }
  const old = Object.hasOwn(part.facts, where.fact) ? part.facts[where.fact]! : null;
  if (forget) {
    if (old) changes.push({ do: 'fact', part: part.id, fact: where.fact, old, new: null });
    return ok({ changes, notes: [], questions: [] });
  }
  const value = typedValue(spec, text);
  const read = readFact(spec, value);
  if (!read.ok) return refuse({ ...read.problem, where: at });
  const basis = options.basis ?? old?.basis ?? (spec.kind === 'quantity' && spec.chosen ? 'told' : 'guess');
  const fact: Fact = { value, basis, ...(options.note ? { note: options.note } : {}) };
  changes.push({ do: 'fact', part: part.id, fact: where.fact, old, new: fact });
  const notes = read.value.kind === 'quantity' ? [...read.value.quantity.notes] : [];
  // '3-start pitch 2 mm' tells the starts as well; they are recorded with it.
  const starts = read.value.kind === 'quantity' ? read.value.quantity.starts : undefined;
  if (starts !== undefined && where.place === 'screw' && (where.fact === 'pitch' || where.fact === 'lead')) {
    changes.push({
      do: 'fact',
      part: part.id,
      fact: 'starts',
      old: part.facts.starts ?? null,
      new: { value: { kind: 'quantity', text: String(starts) }, basis },
    });
  }
  const odd = oddity(spec, read.value);
  const asked = askBackOfFact(spec, read.value);
  return ok({
    changes,
    notes,
    questions: odd ? [odd] : [],
    read: read.value,
    ...(asked === undefined ? {} : { askBack: asked }),
  });
}

/** A basis as a person names it. */
export function readBasis(text: string): Result<Basis> {
  const word = text.trim().toLowerCase();
  const basis = BASES.find((each) => each === word);
  return basis
    ? ok(basis)
    : refuse({
        code: 'unknown-name',
        message: `“${text.slice(0, 40)}” is no basis; say where the fact comes from: ${BASES.join(', ')}.`,
      });
}

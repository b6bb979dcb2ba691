/** How far the survey of a machine has come: what was looked at, what is still to save, which ends have no tag. */

import { itemsFor, KEEPS, type SurveyItemSpec, surveyItem } from '../parts/survey/index.ts';
import { own } from '../quantity/own.ts';
import { everyPlace } from './place.ts';
import { isToBuy } from './to-buy.ts';
import type { Keep, Part, Refit, SurveyItem, Tag } from './types.ts';

/** The part that fills a place. */
export interface SurveyedPart {
  /** 'X.motor', 'supply'. */
  readonly at: string;
  readonly place: string;
  readonly part: Part;
  readonly looked: boolean;
  /** Not there yet, as far as the refit tells: nothing to look at. */
  readonly toBuy: boolean;
}

export interface SurveyedItem {
  readonly spec: SurveyItemSpec;
  readonly found: SurveyItem | undefined;
  readonly looked: boolean;
}

export interface SurveyedKeep {
  readonly id: string;
  readonly what: string;
  readonly keep: Keep | undefined;
  readonly done: boolean;
}

/** `done` of `all`. */
export interface Share {
  readonly done: number;
  readonly all: number;
}

export interface Survey {
  readonly parts: readonly SurveyedPart[];
  readonly items: readonly SurveyedItem[];
  readonly keeps: readonly SurveyedKeep[];
  /** In the order of what is written on their sleeves: 2 before 10. */
  readonly tags: readonly Tag[];
  readonly shares: {
    readonly parts: Share;
    readonly items: Share;
    readonly keeps: Share;
    /** Conductor ends: a conductor has two. */
    readonly ends: Share;
    /** Conductors whose other end is known. */
    readonly traced: Share;
  };
}

/** What is wished for and where it stands: neither works nor wears. */
const NO_THING = new Set(['duty', 'spindle-duty', 'site', 'job']);

const byNumber = new Intl.Collator('en', { numeric: true });

export function surveyOf(refit: Refit): Survey {
  const parts: SurveyedPart[] = [];
  for (const { chain, name, place } of everyPlace(refit)) {
    const part = place.chosen === null ? undefined : refit.parts[place.chosen];
    if (!part || NO_THING.has(name)) continue;
    const looked = part.condition !== undefined && part.condition !== 'unknown';
    parts.push({
      at: chain === null ? name : `${chain}.${name}`,
      place: name,
      part,
      looked,
      toBuy: isToBuy(part),
    });
  }

  const items: SurveyedItem[] = [];
  const asked = itemsFor(refit.machine);
  // What was recorded stays on the list although the machine was called something else since.
  const others = Object.keys(refit.survey).flatMap((id) => surveyItem(id) ?? []);
  for (const spec of new Set([...asked, ...others])) {
    const found = own(refit.survey, spec.id);
    items.push({ spec, found, looked: found !== undefined && found.state !== 'unknown' });
  }

  const known = KEEPS.map(({ id, what }) => ({ id, what: own(refit.keeps, id)?.what ?? what }));
  const added = Object.values(refit.keeps).filter(({ id }) => known.every((each) => each.id !== id));
  const keeps = [...known, ...added].map(({ id, what }): SurveyedKeep => {
    const keep = own(refit.keeps, id);
    return { id, what, keep, done: keep !== undefined && keep.state !== 'to-do' };
  });

  const tags = Object.values(refit.tags).sort(
    (a, b) => byNumber.compare(a.tag, b.tag) || byNumber.compare(a.id, b.id),
  );
  return {
    parts,
    items,
    keeps,
    tags,
    shares: {
      parts: share(
        parts.filter(({ toBuy }) => !toBuy),
        ({ looked }) => looked,
      ),
      items: share(items, ({ looked }) => looked),
      keeps: share(keeps, ({ done }) => done),
      ends: {
        done: tags.reduce((sum, { state }) => sum + TAGGED_ENDS[state], 0),
        all: 2 * tags.length,
      },
      traced: share(tags, ({ there }) => there.trim() !== ''),
    },
  };
}

/** Ends of one conductor that carry their tag. */
export const TAGGED_ENDS: Readonly<Record<Tag['state'], number>> = {
  untagged: 0,
  'one-end': 1,
  'both-ends': 2,
};

function share<T>(things: readonly T[], is: (thing: T) => boolean): Share {
  return { done: things.filter(is).length, all: things.length };
}

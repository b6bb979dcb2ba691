/** Changes of the survey, made from what a person sets: what they leave alone stays. */

import { KEEPS } from '../parts/survey/index.ts';
import { own } from '../quantity/own.ts';
import type { Change, Keep, Part, Refit, SurveyItem, Tag } from './types.ts';

export type PartFound = Partial<Pick<Part, 'condition' | 'notes' | 'photos'>>;

/** What was found of a part; undefined where there is no such part. */
export function partFound(refit: Refit, id: string, found: PartFound): Change | undefined {
  const old = own(refit.parts, id);
  return old && { do: 'part', id, old, new: { ...old, ...found } };
}

export function itemFound(refit: Refit, id: string, found: Partial<Omit<SurveyItem, 'id'>>): Change {
  const old = own(refit.survey, id) ?? null;
  const before = old ?? { id, state: 'unknown' as const, note: '', photos: [], answers: {} };
  return { do: 'survey', id, old, new: { ...before, ...found } };
}

export function keepFound(refit: Refit, id: string, found: Partial<Omit<Keep, 'id'>>): Change {
  const old = own(refit.keeps, id) ?? null;
  const what = KEEPS.find((each) => each.id === id)?.what ?? id;
  const before = old ?? { id, what, state: 'to-do' as const, note: '', photos: [] };
  return { do: 'keep', id, old, new: { ...before, ...found } };
}

const EMPTY_TAG: Omit<Tag, 'id'> = {
  tag: '',
  cable: '',
  here: '',
  there: '',
  otherTag: '',
  colour: '',
  signal: '',
  note: '',
  photos: [],
  state: 'untagged',
};

/** The tag of this id with some fields set; a new one where there is none. */
export function tagFound(refit: Refit, id: string, found: Partial<Omit<Tag, 'id'>>): Change {
  const old = own(refit.tags, id) ?? null;
  return { do: 'tag', id, old, new: { ...EMPTY_TAG, ...old, ...found, id } };
}

/** An id no tag of this refit has: one more than the highest number. */
export const newTagId = (refit: Refit): string => newId('t', refit.tags);

/** An id for something to keep that is not on the usual list. */
export const newKeepId = (refit: Refit): string => newId('k', refit.keeps);

function newId(letter: string, record: object): string {
  const numbers = Object.keys(record).map((id) =>
    Number(new RegExp(`^${letter}-(\\d{1,6})$`).exec(id)?.[1] ?? 0),
  );
  return `${letter}-${Math.max(0, ...numbers) + 1}`;
}

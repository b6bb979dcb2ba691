/** What a person finds at the machine, from words of the command line to changes of the refit. */
import { KEEPS, SURVEY_ITEMS } from '../engine/parts/survey/index.ts';
import { nearest } from '../engine/quantity/nearest.ts';
import {
  type Change,
  itemFound,
  keepFound,
  LIMITS,
  newTagId,
  partFound,
  type Refit,
  type SurveyItem,
  type Tag,
  tagFound,
} from '../engine/refit/index.ts';
import { askBackOfAnswer, readAnswer } from '../engine/refit/read-answer.ts';
import { target } from '../engine/refit/set.ts';
import { surveyOf } from '../engine/refit/survey.ts';
import { shown } from './arguments.ts';
import { refuseSlip } from './ask-back.ts';
import { need, Refusal } from './refusal.ts';

export type Setter = (
  refit: Refit,
  words: readonly string[],
  note: string | undefined,
  anyway: boolean,
) => Change;

/** One word of a list, or a refusal that names the list. */
function oneOf<T extends string>(text: string, words: readonly T[], what: string): T {
  const lower = text.trim().toLowerCase();
  const found = words.find((word) => word === lower);
  if (found) return found;
  const near = nearest(shown(text), words);
  throw new Refusal(
    `“${shown(text)}” is no ${what}. ${near ? `Did you mean ${near}?` : `There are: ${words.join(', ')}.`}`,
  );
}

/** NAME=TEXT, each name once. */
function fields<T extends string>(
  words: readonly string[],
  names: readonly T[],
  what: string,
): Map<T, string> {
  const set = new Map<T, string>();
  for (const word of words) {
    const at = word.indexOf('=');
    if (at < 0)
      throw new Refusal(
        `“${shown(word)}” has no “=”; write each as NAME=TEXT, in quotation marks where there are spaces.`,
      );
    const typed = word.slice(0, at);
    const name =
      names.find((each) => each.toLowerCase() === typed.trim().toLowerCase()) ?? oneOf(typed, names, what);
    if (set.has(name)) throw new Refusal(`“${name}” is set twice.`);
    set.set(name, word.slice(at + 1).trim());
  }
  return set;
}

const noMore = (words: readonly string[]): void => {
  if (words.length > 0)
    throw new Refusal(`“${shown(words[0]!)}” is too much; put text with spaces in quotation marks.`);
};

function condition(refit: Refit, [at, state, ...rest]: readonly string[], note: string | undefined): Change {
  if (at === undefined || state === undefined)
    throw new Refusal('Write the part and its condition, as in: condition X.motor worn.');
  noMore(rest);
  const where = need(target(refit, at));
  if (where.fact !== undefined)
    throw new Refusal(`“${shown(at)}” is more than a part; write one like X.motor.`);
  const found = surveyOf(refit).parts.find((each) => each.at === placeText(where));
  const id = where.part ?? found?.part.id;
  if (id === undefined)
    throw new Refusal(`No part whose condition could be looked at stands at ${shown(at)}.`);
  const change = partFound(refit, id, {
    condition: oneOf(state, ['works', 'worn', 'dead', 'unknown'] as const, 'condition'),
    ...(note === undefined ? {} : { notes: note }),
  });
  if (!change) throw new Refusal(`There is no part “${shown(id)}”.`);
  return change;
}

const placeText = ({ chain, place }: { chain: string | null; place: string }): string =>
  chain === null ? place : `${chain}.${place}`;

function item(
  refit: Refit,
  [typed, state, ...rest]: readonly string[],
  note: string | undefined,
  anyway: boolean,
): Change {
  if (typed === undefined || state === undefined)
    throw new Refusal('Write the item and its state, as in: item coolant works.');
  const id = oneOf(
    typed,
    SURVEY_ITEMS.map((each) => each.id),
    'item of the survey',
  );
  const spec = SURVEY_ITEMS.find((each) => each.id === id)!;
  const answers: Record<string, string> = { ...refit.survey[id]?.answers };
  for (const [name, text] of fields(rest, Object.keys(spec.questions), `question about the ${spec.name}`)) {
    const read = need(readAnswer(spec, name, text), `${name}: `);
    if (!anyway) refuseSlip(name, askBackOfAnswer(spec, name, text));
    if (read === '') delete answers[name];
    else answers[name] = read;
  }
  const found: Partial<SurveyItem> = {
    state: oneOf(state, ['works', 'worn', 'dead', 'unknown', 'none'] as const, 'state'),
    answers,
    ...(note === undefined ? {} : { note }),
  };
  return itemFound(refit, id, found);
}

function keep(refit: Refit, [typed, state, ...rest]: readonly string[], note: string | undefined): Change {
  if (typed === undefined || state === undefined)
    throw new Refusal('Write what and how it stands, as in: keep parameters kept.');
  noMore(rest);
  const ids = [...KEEPS.map((each) => each.id), ...Object.keys(refit.keeps)];
  return keepFound(refit, oneOf(typed, ids, 'thing to keep'), {
    state: oneOf(state, ['kept', 'not-there', 'to-do'] as const, 'state of a thing to keep'),
    ...(note === undefined ? {} : { note }),
  });
}

const TAG_FIELDS = ['cable', 'here', 'there', 'otherTag', 'colour', 'signal', 'ends'] as const;
const ENDS: Readonly<Record<'none' | 'one' | 'both', Tag['state']>> = {
  none: 'untagged',
  one: 'one-end',
  both: 'both-ends',
};

function tag(refit: Refit, [typed, ...rest]: readonly string[], note: string | undefined): Change {
  const name = (typed ?? '').trim();
  if (name === '' || name.includes('='))
    throw new Refusal('Write what stands on the sleeve first, as in: tag 12 here=… there=….');
  const alike = Object.values(refit.tags).filter((each) => each.tag === name);
  if (alike.length > 1)
    throw new Refusal(
      `${alike.length} conductors carry the tag “${shown(name)}”; change them on the screen.`,
    );
  const { ends, ...texts } = Object.fromEntries(fields(rest, TAG_FIELDS, 'field of a tag')) as Partial<
    Record<(typeof TAG_FIELDS)[number], string>
  >;
  for (const [field, text] of Object.entries({ tag: name, ...texts }))
    if (text.length > LIMITS.name) throw new Refusal(`${field} may have ${LIMITS.name} characters at most.`);
  const known = alike[0];
  const state =
    ends === undefined
      ? (known?.state ?? 'one-end')
      : ENDS[oneOf(ends, Object.keys(ENDS) as (keyof typeof ENDS)[], 'number of ends; write')];
  return tagFound(refit, known?.id ?? newTagId(refit), {
    tag: name,
    ...texts,
    state,
    ...(note === undefined ? {} : { note }),
  });
}

export const SETTERS: Readonly<Record<string, Setter>> = { condition, item, keep, tag };

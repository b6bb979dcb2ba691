/** An answer to a question of the survey, read as it was typed: kept as text, refused where it makes no sense. */

import { type SurveyItemSpec, surveyItem } from '../parts/survey/index.ts';
import { askBack } from '../quantity/ask-back.ts';
import { parseQuantity } from '../quantity/index.ts';
import { nearest } from '../quantity/nearest.ts';
import { own } from '../quantity/own.ts';
import { ok, type Problem, type Result, refuse } from '../quantity/types.ts';
import { shorten } from './shape.ts';
import type { SurveyItem } from './types.ts';

/** The text as it is kept; an empty one forgets the answer. */
export function readAnswer(spec: SurveyItemSpec, id: string, text: string): Result<string> {
  const question = own(spec.questions, id);
  if (!question) return noSuch(`question about the ${spec.name}`, id, Object.keys(spec.questions));
  const typed = text.trim();
  if (typed === '' || question.kind === 'text') return ok(typed);
  if (question.kind === 'choice') {
    return Object.hasOwn(question.options, typed)
      ? ok(typed)
      : noSuch(`answer to “${question.name}”`, typed, Object.keys(question.options));
  }
  const read = parseQuantity(typed, question.unit);
  return read.ok ? ok(typed) : read;
}

/** What to ask a person whose answer looks like a slip; undefined where there is nothing to ask. */
export function askBackOfAnswer(spec: SurveyItemSpec, id: string, text: string): string | undefined {
  const question = own(spec.questions, id);
  if (question?.kind !== 'quantity') return undefined;
  const read = parseQuantity(text.trim(), question.unit);
  return read.ok ? askBack(question, read.value.value, read.value) : undefined;
}

/** What cannot be in a found item; undefined where all can. Answers that stood there before are let be. */
export function itemProblem(found: SurveyItem, old: SurveyItem | null): Problem | undefined {
  const spec = surveyItem(found.id);
  if (!spec) return { ...unknownItem(found.id), where: 'id' };
  for (const [id, text] of Object.entries(found.answers)) {
    if (old !== null && Object.hasOwn(old.answers, id) && old.answers[id] === text) continue;
    const read = readAnswer(spec, id, text);
    if (!read.ok) return { ...read.problem, where: `answers.${id}` };
  }
  return undefined;
}

/** There is no such item in the survey. */
export function unknownItem(id: string): Problem {
  return {
    code: 'unknown-name',
    message: `The survey has no item called “${shorten(id)}”.`,
    where: shorten(id),
  };
}

function noSuch(what: string, name: string, names: readonly string[]): Result<never> {
  const near = nearest(name.slice(0, 60), names);
  return refuse({
    code: 'unknown-name',
    message: `There is no ${what} called “${shorten(name)}”. ${near ? `Did you mean “${near}”?` : `There are: ${names.join(', ')}.`}`,
    ...(near ? { suggestion: near } : {}),
  });
}

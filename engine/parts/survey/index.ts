/** Everything a survey walks through. Add an item or a thing to keep: one entry in its list. */
import { AUXILIARIES } from './auxiliaries.ts';
import { MARKS } from './marks.ts';
import type { SurveyItemSpec } from './types.ts';

export { KEEPS } from './keeps.ts';
export { SKETCHES } from './sketches.ts';
export type { KeepSpec, Sketch, SurveyItemSpec, SurveyQuestion } from './types.ts';

export const SURVEY_ITEMS: readonly SurveyItemSpec[] = [...AUXILIARIES, ...MARKS];

const BY_ID: ReadonlyMap<string, SurveyItemSpec> = new Map(SURVEY_ITEMS.map((item) => [item.id, item]));

/** The item, or undefined where there is none of that name. */
export const surveyItem = (id: string): SurveyItemSpec | undefined => BY_ID.get(id);

/** The items that a kind of machine may have. */
export const itemsFor = (machine: 'lathe' | 'mill' | 'other'): readonly SurveyItemSpec[] =>
  SURVEY_ITEMS.filter(({ machines }) => machines?.includes(machine) ?? true);

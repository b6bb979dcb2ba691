/** How far the survey has come, on a terminal. */
import { ITEM_STATE, KEEP_STATE, TAG_STATE } from '../../engine/refit/say-survey.ts';
import type { Share, Survey } from '../../engine/refit/survey.ts';
import type { Page } from './page.ts';
import { plural } from './text.ts';

/** `all` also lists what is done. */
export function printSurvey(page: Page, survey: Survey, all: boolean): void {
  const { parts, items, keeps, tags, shares } = survey;
  heading(page, 'Parts looked at', shares.parts);
  for (const { at, part, looked } of parts)
    if (all || !looked)
      entry(
        page,
        looked,
        `${at}: ${part.name}`,
        part.condition ? ITEM_STATE[part.condition] : 'not looked at',
        part.notes,
      );

  heading(page, 'Everything else looked at', shares.items);
  for (const { spec, found, looked } of items)
    if (all || !looked)
      entry(
        page,
        looked,
        `${spec.id}: ${spec.name}`,
        found ? ITEM_STATE[found.state] : 'not looked at',
        found?.note,
      );

  heading(page, 'Saved from the old control', shares.keeps);
  for (const { id, what, keep, done } of keeps)
    if (all || !done) entry(page, done, `${id}: ${what}`, KEEP_STATE[keep?.state ?? 'to-do'], keep?.note);

  heading(page, 'Conductor ends tagged', shares.ends);
  for (const { tag, here, there, state, colour } of tags) {
    const done = state === 'both-ends' && there !== '';
    const way = `${tag || 'no tag'}${colour ? ` (${colour})` : ''}: ${here || 'not written where'} → ${there || 'not traced yet'}`;
    if (all || !done) entry(page, done, way, TAG_STATE[state], undefined);
  }
  const untraced = shares.traced.all - shares.traced.done;
  if (untraced > 0)
    page.prose(`Of ${plural(untraced, 'conductor')} it is not known where the other end goes.`, '  ');
}

const heading = (page: Page, title: string, { done, all }: Share): void =>
  page.heading(`${title}: ${all === 0 ? 'none on the list' : `${done} of ${all}`}`);

const entry = (page: Page, done: boolean, what: string, state: string, note: string | undefined): void =>
  page.prose(`${done ? '●' : '◌'} ${what}: ${state}${note ? ` – ${note}` : ''}`, '  ', '      ');

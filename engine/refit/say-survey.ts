/** What a survey found, in words. */
import { brief } from './brief.ts';
import type { Namer } from './say.ts';
import type { Change, Evidence, Keep, SurveyItem, Tag } from './types.ts';

export type SurveyChange = Extract<Change, { do: 'evidence' | 'tag' | 'keep' | 'survey' }>;

/** What a change of the survey is about: 'tag 12', 'to keep: Pitch error tables'. */
export function surveySubject(change: SurveyChange, namer: Namer): string {
  switch (change.do) {
    case 'evidence': {
      const { part = null, method = change.id } = change.new ?? change.old ?? {};
      return `measurement ${method}${part === null ? '' : ` on ${namer.part(part)}`}`;
    }
    case 'tag':
      return `tag ${brief((change.new ?? change.old)?.tag ?? '') || change.id}`;
    case 'keep':
      return `to keep: ${brief((change.new ?? change.old)?.what ?? change.id)}`;
    case 'survey':
      return namer.item(change.id);
  }
}

export function saySurvey(change: SurveyChange, namer: Namer): string {
  return `${surveySubject(change, namer)}: ${change.new === null ? 'taken out' : sayRecord(change.do, change.new)}`;
}

/** What stands there: 'kept', 'X motor U to X drive U, both ends tagged'. */
export function sayRecord(kind: SurveyChange['do'], record: NonNullable<SurveyChange['new']>): string {
  switch (kind) {
    case 'evidence': {
      const { readings, aside, note } = record as Evidence;
      const most = Math.max(0, ...Object.values(readings).map((each) => each.length));
      const said = [`${most} reading${most === 1 ? '' : 's'}`];
      if (aside.length > 0) said.push(`${aside.length} set aside`);
      if (note) said.push(`'${brief(note)}'`);
      return said.join(', ');
    }
    case 'tag': {
      const { here, there, state } = record as Tag;
      return `${brief(here) || 'place not written'} to ${brief(there) || 'not traced yet'}, ${TAG_STATE[state]}`;
    }
    case 'keep':
      return withNote(KEEP_STATE[(record as Keep).state], (record as Keep).note);
    case 'survey': {
      const { state, note, answers } = record as SurveyItem;
      const count = Object.values(answers).filter((answer) => answer.trim() !== '').length;
      const said = count === 0 ? ITEM_STATE[state] : `${ITEM_STATE[state]}, ${count} answered`;
      return withNote(said, note);
    }
  }
}

const withNote = (said: string, note: string): string => (note ? `${said}, '${brief(note)}'` : said);

export const TAG_STATE: Readonly<Record<Tag['state'], string>> = {
  untagged: 'not tagged',
  'one-end': 'tagged at one end',
  'both-ends': 'tagged at both ends',
};
export const KEEP_STATE: Readonly<Record<Keep['state'], string>> = {
  'to-do': 'still to do',
  kept: 'kept',
  'not-there': 'not there on this control',
};
export const ITEM_STATE: Readonly<Record<SurveyItem['state'], string>> = {
  works: 'works',
  worn: 'worn',
  dead: 'dead',
  unknown: 'not known',
  none: 'the machine has none',
};

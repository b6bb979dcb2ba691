/** Changes in words, for the history and for the person whose edit met another's. */
import { brief } from './brief.ts';
import { LIMITS } from './limits.ts';
import { same } from './same.ts';
import { sayStop } from './say-stop.ts';
import { saySurvey } from './say-survey.ts';
import { sayWiring } from './say-wiring.ts';
import type { Change, Fact, Part, Place } from './types.ts';

/** How things are called; without one, their ids stand. */
export interface Namer {
  readonly part: (id: string) => string;
  readonly fact: (part: string, fact: string) => string;
  readonly place: (chain: string | null, place: string) => string;
  /** An item of the survey: 'coolant pump'. */
  readonly item: (id: string) => string;
  /** A policy: 'policy “margin below which a verdict is tight”'. */
  readonly policy: (id: string) => string;
}

export const BY_ID: Namer = {
  part: (id) => id,
  fact: (_part, fact) => fact,
  place: (chain, place) => (chain === null ? place : `${chain} ${place}`),
  item: (id) => id,
  policy: (id) => `policy ${id}`,
};

/** A fact as '1.32 ± 0.06 ohm (measured)', or 'nothing'. */
export function sayFact(fact: Fact | null): string {
  if (fact === null) return 'nothing';
  const { value } = fact;
  const said =
    value.kind === 'choice'
      ? value.option
      : value.kind === 'choices'
        ? value.options.join(', ') || 'none'
        : value.text;
  return `${brief(said)} (${fact.basis})`;
}

/** One change as 'X motor: winding resistance 1.32 ± 0.06 ohm (measured)'. */
export function sayChange(change: Change, namer: Namer = BY_ID): string {
  switch (change.do) {
    case 'fact': {
      const subject = `${namer.part(change.part)}: ${namer.fact(change.part, change.fact)}`;
      return change.new === null
        ? `${subject} taken out (was ${sayFact(change.old)})`
        : `${subject} ${sayFact(change.new)}`;
    }
    case 'part':
      if (change.new === null)
        return `${change.old?.kind ?? 'part'} '${change.old?.name ?? change.id}' taken out`;
      if (change.old === null) return `${change.new.kind} '${change.new.name}' added`;
      return change.old.name === change.new.name
        ? sayPartChange(change.old, change.new, namer)
        : `${change.old.kind} '${change.old.name}' is now '${change.new.name}'`;
    case 'place':
      return `${namer.place(change.chain, change.place)}: ${sayPlace(change.old, change.new, namer)}`;
    case 'chain':
      return `${(change.new ?? change.old)?.kind ?? 'axis'} ${change.id} ${change.new === null ? 'taken out' : change.old === null ? 'added' : 'changed'}`;
    case 'policy':
      return `${namer.policy(change.policy)}: ${change.new === null ? 'back to its usual value' : brief(change.new)}`;
    case 'evidence':
    case 'tag':
    case 'keep':
    case 'survey':
      return saySurvey(change, namer);
    case 'stop':
      return `stop circuit: ${sayStop(change.old, change.new)}`;
    case 'work':
    case 'auxiliary':
    case 'device':
    case 'wire':
    case 'cable':
      return sayWiring(change);
    case 'wiring-setting':
      return `wiring, ${change.setting}: ${change.new === null ? 'taken out' : brief(change.new)}`;
    case 'machine':
      return `kind of machine: ${change.new}`;
    case 'title':
      return change.old.name === change.new.name
        ? 'description changed'
        : `name: '${change.new.name}' (was '${change.old.name}')`;
  }
}

/** All changes of an edit in one text, short enough to be kept with it. */
export function sayChanges(changes: readonly Change[], namer: Namer = BY_ID): string {
  const shown = changes.length > 5 ? changes.slice(0, 4) : changes;
  const more = changes.length - shown.length;
  const said = shown.map((change) => sayChange(change, namer)).join('; ');
  return brief(more > 0 ? `${said}; and ${more} more changes` : said, LIMITS.text);
}

/** What the survey found of a part, or that something else about it changed. */
function sayPartChange(before: Part, after: Part, namer: Namer): string {
  const said: string[] = [];
  if (before.condition !== after.condition)
    said.push(after.condition === undefined ? 'condition not looked at' : `condition ${after.condition}`);
  if (before.notes !== after.notes)
    said.push(after.notes ? `notes '${brief(after.notes)}'` : 'notes taken out');
  if (!same(before.facts, after.facts)) said.push('facts changed');
  const count = (after.photos?.length ?? 0) - (before.photos?.length ?? 0);
  if (count !== 0) said.push(count > 0 ? 'photo added' : 'photo taken out');
  const only = said.length === 1 && said[0] === 'facts changed';
  return said.length === 0 || only
    ? `${after.kind} '${after.name}' changed`
    : `${namer.part(after.id)}: ${said.join(', ')}`;
}

export function sayPlaceNow(place: Place | null, namer: Namer): string {
  if (place === null) return 'not there';
  const chosen =
    place.chosen === null
      ? 'not known yet'
      : place.chosen === 'none'
        ? 'nothing fitted'
        : namer.part(place.chosen);
  return `${chosen}, of ${place.options.length} options`;
}

function sayPlace(before: Place | null, after: Place | null, namer: Namer): string {
  if (after === null) return 'taken out';
  if (before?.chosen !== after.chosen)
    return after.chosen === null
      ? 'not known yet'
      : after.chosen === 'none'
        ? 'nothing fitted'
        : namer.part(after.chosen);
  const added = after.options.filter((id) => !before.options.includes(id));
  const removed = before.options.filter((id) => !after.options.includes(id));
  const said = [
    ...added.map((id) => `option ${namer.part(id)} added`),
    ...removed.map((id) => `option ${namer.part(id)} taken out`),
  ];
  return said.length > 0 ? said.join(', ') : 'order of options changed';
}

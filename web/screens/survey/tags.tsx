/** A tag on every conductor end before it comes off: quick entry, the list, and what is still untagged. */
import { useState } from 'react';
import type { Survey } from '../../../engine/refit/survey.ts';
import { tagsCsv } from '../../../engine/refit/tags-csv.ts';
import type { Refit, Tag } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';
import { NewTag } from './new-tag.tsx';
import { TagCard } from './tag-card.tsx';

interface Props {
  readonly session: Session;
  readonly refit: Refit;
  readonly survey: Survey;
}

const SHOWN_AT_ONCE = 100;

const WHICH = {
  all: 'all',
  open: 'with an untagged end',
  untraced: 'not traced yet',
} as const;
type Which = keyof typeof WHICH;

export function Tags({ session, refit, survey }: Props) {
  const [text, setText] = useState('');
  const [which, setWhich] = useState<Which>('all');
  const [most, setMost] = useState(SHOWN_AT_ONCE);
  const { tags, shares } = survey;
  const found = tags.filter((tag) => belongs(tag, which) && holds(tag, text));
  return (
    <div className="stack">
      <Count {...shares} />
      <NewTag session={session} refit={refit} />
      <section className="stack" aria-labelledby="tags-list">
        <div className="row spread">
          <h2 id="tags-list">Conductors</h2>
          {tags.length > 0 && (
            <button type="button" onClick={() => download(`${refit.id}-tags.csv`, tagsCsv(tags))}>
              List as CSV, for a spreadsheet
            </button>
          )}
        </div>
        {tags.length > 0 && (
          <div className="row">
            <label className="grow">
              Find
              <input
                type="search"
                value={text}
                placeholder="a tag, cable, part or colour"
                onChange={(event) => setText(event.target.value)}
              />
            </label>
            <label className="grow">
              Show
              <select value={which} onChange={(event) => setWhich(event.target.value as Which)}>
                {Object.entries(WHICH).map(([id, words]) => (
                  <option key={id} value={id}>
                    {words}
                  </option>
                ))}
              </select>
            </label>
          </div>
        )}
        <p role="status" className="small soft">
          {tags.length === 0
            ? 'No conductor is on the list yet.'
            : `${found.length} of ${tags.length} shown.`}
        </p>
        <ul className="survey-list">
          {found.slice(0, most).map((tag) => (
            <li key={tag.id} className="sheet">
              <TagCard session={session} tag={tag} />
            </li>
          ))}
        </ul>
        {found.length > most && (
          <button type="button" onClick={() => setMost(most + SHOWN_AT_ONCE)}>
            Show more
          </button>
        )}
      </section>
    </div>
  );
}

function Count({ ends, traced }: Survey['shares']) {
  const open = ends.all - ends.done;
  const untraced = traced.all - traced.done;
  if (ends.all === 0)
    return <p role="status">Put a sleeve with a number on each conductor end, and write it down here.</p>;
  return (
    <p role="status" className={open > 0 ? 'survey-open' : 'survey-done'}>
      <strong>
        {open === 0
          ? 'Every end on the list carries its tag.'
          : `${open} of ${ends.all} ends ${open === 1 ? 'has' : 'have'} no tag yet.`}
      </strong>{' '}
      {untraced > 0 &&
        `Of ${untraced} ${untraced === 1 ? 'conductor' : 'conductors'} it is not known where the other end goes. `}
      {open > 0 && 'Take nothing off until none is left.'}
    </p>
  );
}

const belongs = (tag: Tag, which: Which): boolean =>
  which === 'all' || (which === 'open' ? tag.state !== 'both-ends' : tag.there.trim() === '');

function holds(tag: Tag, text: string): boolean {
  const fields = [tag.tag, tag.cable, tag.here, tag.there, tag.otherTag, tag.colour, tag.signal, tag.note];
  const all = fields.join('\n').toLowerCase();
  return text
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}

function download(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/csv' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken it over by the next turn.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}

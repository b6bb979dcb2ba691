/** Part by part: its condition, a photo of its plate, notes, and how each thing known of it was found out. */

import { Link } from 'wouter';
import { PARTS } from '../../../engine/parts/index.ts';
import type { FactSpec } from '../../../engine/parts/types.ts';
import { capital } from '../../../engine/quantity/words.ts';
import { LIMITS } from '../../../engine/refit/limits.ts';
import type { SurveyedPart } from '../../../engine/refit/survey.ts';
import { type PartFound, partFound } from '../../../engine/refit/survey-set.ts';
import type { Fact, Part } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';
import { Choice, CONDITIONS } from './choice.tsx';
import { DraftField } from './draft-field.tsx';
import { More } from './more.tsx';
import { Photos } from './photos.tsx';
import { recordLatest } from './record.ts';

export function Parts({ session, parts }: { session: Session; parts: readonly SurveyedPart[] }) {
  if (parts.length === 0) return <p>No part stands in any place of this machine yet.</p>;
  return (
    <ul className="survey-list" aria-label="Parts">
      {parts.map((each) => (
        <li key={each.part.id} className="sheet">
          <PartCard session={session} {...each} />
        </li>
      ))}
    </ul>
  );
}

function PartCard({ session, at, part, toBuy }: SurveyedPart & { session: Session }) {
  const kind = PARTS[part.kind]?.name ?? part.kind;
  const axis = at.includes('.') ? `${at.split('.')[0]} ` : '';
  const title = axis + (axis ? kind : capital(kind));
  const save = (found: PartFound): Promise<boolean> =>
    recordLatest(session, (refit) => partFound(refit, part.id, found));
  const photos = part.photos ?? [];
  const facts = Object.keys(part.facts).length;
  return (
    <>
      <h2>{title}</h2>
      {part.name !== title && <p className="small soft">{part.name}</p>}
      {toBuy && (
        <p className="soft">
          To be bought, as far as is known: nothing to look at yet. Is it here already? Say how you found it.
        </p>
      )}
      <Choice
        legend={`Condition of the ${title}`}
        options={CONDITIONS}
        value={part.condition}
        onChoose={(condition) => void save({ condition })}
      />
      <More
        of={title}
        words={[
          photos.length === 0
            ? 'no photo of the plate'
            : `${photos.length} photo${photos.length > 1 ? 's' : ''}`,
          part.notes ? 'notes' : 'no notes',
          `${facts} fact${facts === 1 ? '' : 's'} known`,
        ].join(', ')}
      >
        <h3>Photos: the plate first</h3>
        <Photos refit={session.id} of={title} names={photos} onChange={(names) => save({ photos: names })} />
        <DraftField
          label={`Notes on the ${title}`}
          draft={`${session.id}.part.${part.id}.notes`}
          recorded={part.notes ?? ''}
          onSave={(notes) => save({ notes })}
          lines
          most={LIMITS.text}
        />
        <FoundOut session={session} part={part} />
      </More>
    </>
  );
}

function FoundOut({ session, part }: { session: Session; part: Part }) {
  const facts = Object.entries(part.facts);
  return (
    <>
      <h3>Found out so far, and how</h3>
      {facts.length === 0 ? (
        <p className="soft">Nothing yet.</p>
      ) : (
        <ul className="survey-facts">
          {facts.map(([name, fact]) => (
            <li key={name}>
              {capital(PARTS[part.kind]?.facts[name]?.name ?? name)}:{' '}
              <strong>{sayValue(fact, PARTS[part.kind]?.facts[name])}</strong>
              <span className="soft"> ({fact.basis})</span>
              {fact.note && <span className="soft"> {fact.note}</span>}
            </li>
          ))}
        </ul>
      )}
      <p>
        <Link href={`/refit/${session.id}/know`}>Enter what you read or measured</Link>
      </p>
    </>
  );
}

function sayValue({ value }: Fact, spec: FactSpec | undefined): string {
  const options = spec && 'options' in spec ? spec.options : {};
  if (value.kind === 'choice') return options[value.option] ?? value.option;
  if (value.kind === 'choices')
    return value.options.map((option) => options[option] ?? option).join(', ') || 'none';
  return value.text;
}

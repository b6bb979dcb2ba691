/** What only the old control knows: a list to tick before the first board is unplugged. */
import { useState } from 'react';
import { KEEPS } from '../../../engine/parts/survey/index.ts';
import { LIMITS } from '../../../engine/refit/limits.ts';
import type { SurveyedKeep } from '../../../engine/refit/survey.ts';
import { keepFound, newKeepId } from '../../../engine/refit/survey-set.ts';
import type { Keep } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';
import { Choice } from './choice.tsx';
import { DraftField } from './draft-field.tsx';
import { More } from './more.tsx';
import { Photos } from './photos.tsx';
import { recordLatest } from './record.ts';

const STATES = { 'to-do': 'to do', kept: 'kept', 'not-there': 'not there' } as const;
const SPECS = new Map(KEEPS.map((each) => [each.id, each]));

export function Keeps({ session, keeps }: { session: Session; keeps: readonly SurveyedKeep[] }) {
  const open = keeps.filter(({ done }) => !done).length;
  return (
    <div className="stack">
      <p className="caution">
        <strong>The battery goes first.</strong> When the battery of the old control dies, or is taken out
        with the power off, everything in its memory is gone for good. Save the list below before you switch
        the machine off for long.
      </p>
      <p role="status">
        {open === 0
          ? 'Nothing on the list is left to do.'
          : `${open} ${open === 1 ? 'thing is' : 'things are'} still to do.`}
      </p>
      <ul className="survey-list">
        {keeps.map((each) => (
          <li key={each.id} className="sheet">
            <KeepCard session={session} {...each} />
          </li>
        ))}
      </ul>
      <Another session={session} />
    </div>
  );
}

function KeepCard({ session, id, what, keep }: SurveyedKeep & { session: Session }) {
  const spec = SPECS.get(id);
  const save = (found: Partial<Keep>): Promise<boolean> =>
    recordLatest(session, (refit) => keepFound(refit, id, found));
  const remove = (): void => {
    void recordLatest(session, (refit) => {
      const old = refit.keeps[id];
      return old && { do: 'keep', id, old, new: null };
    });
  };
  return (
    <>
      <h2>{what}</h2>
      {spec && <p className="small soft">{spec.why}</p>}
      <Choice
        legend={what}
        options={STATES}
        value={keep?.state ?? 'to-do'}
        onChoose={(state) => void save({ state })}
      />
      <More of={what} words={keep?.note ? `How, notes: ${keep.note.slice(0, 60)}` : 'How, photos and notes'}>
        {spec?.caution && (
          <p className="caution">
            <strong>Take care.</strong> {spec.caution}
          </p>
        )}
        {spec && <p>{spec.how}</p>}
        <Photos
          refit={session.id}
          of={what}
          names={keep?.photos ?? []}
          onChange={(photos) => save({ photos })}
        />
        <DraftField
          label="Where the copy is, and notes"
          draft={`${session.id}.keep.${id}`}
          recorded={keep?.note ?? ''}
          onSave={(note) => save({ note })}
          lines
          most={LIMITS.text}
        />
        {!spec && (
          <button type="button" className="plain" onClick={remove}>
            Take “{what}” off the list
          </button>
        )}
      </More>
    </>
  );
}

/** The made thing's name stands in the list, so the field starts empty again. */
function Another({ session }: { session: Session }) {
  const [made, setMade] = useState(0);
  const add = async (what: string): Promise<boolean> => {
    if (what === '') return true;
    const recorded = await recordLatest(session, (refit) => keepFound(refit, newKeepId(refit), { what }));
    if (recorded) setMade(made + 1);
    return recorded;
  };
  return (
    <div className="sheet">
      <DraftField
        key={made}
        label="Something else to keep"
        draft={`${session.id}.keep-more.${made}`}
        recorded=""
        onSave={add}
        like="Hour meter reading"
      />
    </div>
  );
}

/** What is recorded only because it is usual, to be looked at: said to be so, or changed where it stands. */
import { useState } from 'react';
import { stateAll, type UsualHere, usualHere } from '../../../engine/circuit/whole/index.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';
import { recordAll } from './record-all.ts';

interface Props {
  readonly session: Session;
  readonly refit: Refit;
  /** Shows a device where it is. */
  readonly show: (id: string) => void;
}

export function UsualValues({ session, refit, show }: Props) {
  const [fault, setFault] = useState<string>();
  const groups = usualHere(refit);
  if (groups.length === 0) return null;
  const isSo = async ({ places, value }: UsualHere): Promise<void> => {
    setFault(
      await recordAll(session, (now) =>
        stateAll(
          now,
          places.map((place) => [place, value]),
        ),
      ),
    );
  };
  return (
    <details className="sheet" data-usual-values>
      <summary>Usual values, not looked at yet: {groups.length}</summary>
      <p className="small">
        Nobody stated these; they were taken because they are nearly always so. What rests on one says so
        until you have looked. Where it is otherwise, open the device and write what you found.
      </p>
      {fault && (
        <p className="bad" role="alert">
          {fault}
        </p>
      )}
      <ul className="wiring-questions">
        {groups.map((group) => (
          <li key={group.id}>
            <p>
              <strong>
                {capital(group.name)}: {group.value}
              </strong>{' '}
              {group.because}
            </p>
            <p className="row">
              {group.places.map(({ of, id, setting }) =>
                of === 'device' ? (
                  <button key={`${id} ${setting}`} type="button" className="plain" onClick={() => show(id)}>
                    <span className="hidden">Show </span>
                    {id}
                  </button>
                ) : (
                  <span key={`${id} ${setting}`}>{id}</span>
                ),
              )}
              <button
                type="button"
                aria-label={`${capital(group.name)}, ${group.value}: it is so`}
                onClick={() => void isSo(group)}
              >
                I looked, it is so{group.places.length > 1 ? ' for all of them' : ''}
              </button>
            </p>
          </li>
        ))}
      </ul>
    </details>
  );
}

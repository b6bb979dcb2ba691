/** History: who changed which fact, when; what is new since you last looked; files to carry away. */
import { useEffect, useState } from 'react';
import type { Edit } from '../../engine/refit/types.ts';
import { api } from '../api.ts';
import { sayTime } from '../parts/day.ts';
import { getPerson } from '../state/person.ts';
import type { Session, View } from '../state/session.ts';

const PAGE = 100;

export function History({ session, view }: { session: Session; view: View }) {
  const [edits, setEdits] = useState<readonly Edit[]>([]);
  const [from, setFrom] = useState(Math.max(1, view.head - PAGE + 1));
  const [seen, setSeen] = useState<number>();
  const [fault, setFault] = useState('');
  useEffect(() => {
    api.history(session.id, from, view.head).then(
      ({ edits: page }) => setEdits(page),
      (error: Error) => setFault(error.message),
    );
  }, [session.id, from, view.head]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was seen on coming here, not on each edit
  useEffect(() => {
    const { who } = getPerson();
    api.seen(session.id, who).then(
      ({ number }) => {
        setSeen(number);
        void api.markSeen(session.id, who, view.head).catch(() => undefined);
      },
      () => setSeen(view.head),
    );
  }, [session.id]);
  const fresh = seen === undefined ? 0 : Math.max(0, view.head - seen);
  return (
    <div className="stack">
      <div>
        <h1>Who changed what, and when?</h1>
        <p>
          {fresh === 0
            ? 'Nothing is new since you last looked.'
            : `${fresh} ${fresh === 1 ? 'change is' : 'changes are'} new since you last looked.`}
        </p>
      </div>
      <div className="row">
        <a className="button" href={api.fileUrl(session.id, 'refit')} download>
          Take away a .refit file, with history
        </a>
        <a className="button" href={api.fileUrl(session.id, 'json')} download>
          Take away refit.json, the state only
        </a>
      </div>
      {fault && (
        <p role="alert" className="bad">
          {fault}
        </p>
      )}
      <div className="sheet scroll">
        <table>
          <thead>
            <tr>
              <th>When</th>
              <th>Who</th>
              <th>What</th>
              <th>
                <span className="hidden">Take back</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {[...edits].reverse().map((edit) => (
              <tr key={edit.number}>
                <td className="small">{sayTime(edit.when)}</td>
                <td>{edit.who}</td>
                <td>
                  {seen !== undefined && edit.number > seen && <span className="basis">new</span>} {edit.says}
                </td>
                <td>
                  <button
                    type="button"
                    className="plain"
                    aria-label={`Take back: ${edit.says}`}
                    onClick={() => void session.undo(edit.number)}
                  >
                    Take back
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        {edits.length === 0 && <p className="soft">No edit yet.</p>}
        {from > 1 && (
          <button type="button" onClick={() => setFrom(Math.max(1, from - PAGE))}>
            Show older ones
          </button>
        )}
      </div>
    </div>
  );
}

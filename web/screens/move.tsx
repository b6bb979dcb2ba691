/** Move it: the axis moves on the screen before anything is bought. */
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import type { MoveSetting } from '../../engine/advice/axis-model.ts';
import type { Session, View } from '../state/session.ts';
import { Lacking } from './move/lacking.tsx';
import { Moving } from './move/moving.tsx';
import { Others, type Parts } from './move/others.tsx';
import '../pictures/pictures.css';
import './move/move.css';

interface Props {
  readonly session: Session;
  readonly view: View;
  readonly subject: string;
}

export default function MovePage({ session, view, subject }: Props) {
  const [setting, setSetting] = useState<MoveSetting>();
  const [parts, setParts] = useState<Parts>({});
  const { shown } = view;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new snapshot is a new model
  useEffect(() => {
    let current = true;
    session.engine.ask('axisModel', { chain: subject, parts }).then(
      (got) => current && setSetting(got),
      () => undefined,
    );
    return () => {
      current = false;
    };
  }, [session, subject, shown, parts]);
  const home = `/refit/${session.id}/move`;
  return (
    <div>
      <h1>How will the {subject} axis move?</h1>
      <nav className="row" aria-label="Axes" style={{ marginBottom: '1rem' }}>
        {view.refit.chains
          .filter(({ kind }) => kind === 'axis')
          .map(({ id }) => (
            <Link
              key={id}
              className="button tab"
              href={`${home}/${id}`}
              aria-current={id === subject ? 'page' : undefined}
            >
              {id}
            </Link>
          ))}
      </nav>
      <Others key={subject} view={view} subject={subject} parts={parts} onChange={setParts} />
      {!setting && <p role="status">Putting the axis together …</p>}
      {setting && !setting.model && <Lacking session={session} setting={setting} />}
      {setting?.model && <Moving key={subject} subject={subject} setting={setting} model={setting.model} />}
    </div>
  );
}

/** Gives a refit without one a spindle, with nothing known of it yet. */
import { useState } from 'react';
import { useLocation } from 'wouter';
import { addChain, SPINDLE } from '../../engine/refit/blank.ts';
import type { Session, View } from '../state/session.ts';

export function AddSpindle({ session, view }: { session: Session; view: View }) {
  const [fault, setFault] = useState('');
  const [, go] = useLocation();
  if (view.refit.chains.some(({ kind }) => kind === 'spindle')) return null;
  const add = async (): Promise<void> => {
    const changes = addChain(view.refit, 'spindle', SPINDLE);
    if (!changes.ok) setFault(changes.problem.message);
    else if (await session.record(changes.value)) go(`/refit/${session.id}/fit/${SPINDLE}`);
  };
  return (
    <>
      <button type="button" className="plain" onClick={() => void add()}>
        Add the spindle
      </button>
      {fault && (
        <span role="alert" className="bad">
          {fault}
        </span>
      )}
    </>
  );
}

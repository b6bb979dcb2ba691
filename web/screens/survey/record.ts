/** Records what the survey finds: each change is made from the newest state, however quickly one follows another. */
import type { Change, Refit } from '../../../engine/refit/types.ts';
import type { Session } from '../../state/session.ts';

const waiting = new WeakMap<Session, Promise<unknown>>();

/** Resolves to false when it could not be recorded; the reason stands in the page's foot. */
export function recordLatest(session: Session, make: (refit: Refit) => Change | undefined): Promise<boolean> {
  const turn = async (): Promise<boolean> => {
    const state = session.get();
    const change = state.state === 'open' ? make(state.view.refit) : undefined;
    return change ? session.record([change]) : false;
  };
  const run = (waiting.get(session) ?? Promise.resolve()).then(turn, turn);
  waiting.set(session, run);
  return run;
}

/** What the engine's worker answers, asked again after every recorded change; the answer before stays until then. */
import { useEffect, useState } from 'react';
import type { Asked } from '../worker/protocol.ts';
import type { Session, View } from './session.ts';

export interface Asking<T> {
  readonly answer: T | undefined;
  /** 0 to 1 while it is being worked out. */
  readonly progress: number | undefined;
  readonly fault: string | undefined;
}

export function useAsked<K extends keyof Asked>(
  session: Session,
  view: View,
  what: K,
  ask: Asked[K]['ask'],
): Asking<Asked[K]['answer']> {
  const [state, setState] = useState<Asking<Asked[K]['answer']>>({
    answer: undefined,
    progress: 0,
    fault: undefined,
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew when what is recorded has changed
  useEffect(() => {
    const giveUp = new AbortController();
    setState((before) => ({ ...before, progress: 0 }));
    session.engine
      .ask(what, ask, {
        signal: giveUp.signal,
        progress: (progress) => setState((before) => ({ ...before, progress })),
      })
      .then(
        (answer) => setState({ answer, progress: undefined, fault: undefined }),
        (fault: Error) => {
          if (fault.name !== 'AbortError')
            setState((before) => ({ ...before, progress: undefined, fault: fault.message }));
        },
      );
    return () => giveUp.abort();
  }, [session, what, view.recorded]);
  return state;
}

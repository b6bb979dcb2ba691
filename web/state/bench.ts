/** Bench tests as a screen uses them: the list, asked once, and an outcome that follows what is typed. */
import { useEffect, useRef, useState } from 'react';
import type { Outcome, Taken } from '../../engine/evidence/index.ts';
import type { Problem } from '../../engine/quantity/types.ts';
import type { BenchRecording, BenchSheet, Measured } from '../worker/bench-protocol.ts';
import type { Session } from './session.ts';

const lists = new WeakMap<Session, Promise<readonly BenchSheet[]>>();

export function benchSheets(session: Session): Promise<readonly BenchSheet[]> {
  let list = lists.get(session);
  if (!list) {
    list = session.engine.ask('bench', { do: 'list' }).then(({ sheets }) => sheets ?? []);
    lists.set(session, list);
  }
  return list;
}

/** Undefined until they are there. */
export function useBenchSheets(session: Session): readonly BenchSheet[] | undefined {
  const [sheets, setSheets] = useState<readonly BenchSheet[]>();
  useEffect(() => {
    let current = true;
    benchSheets(session).then(
      (got) => current && setSheets(got),
      () => current && setSheets([]),
    );
    return () => {
      current = false;
    };
  }, [session]);
  return sheets;
}

export interface Worked {
  /** What it was worked out from. */
  readonly taken: Taken;
  readonly outcome?: Outcome;
  readonly problem?: Problem;
}

export async function workOut(session: Session, method: string, taken: Taken): Promise<Worked> {
  const { outcome } = await session.engine.ask('bench', { do: 'run', method, taken });
  if (!outcome) throw new Error('the bench gave no answer');
  return outcome.ok ? { taken, outcome: outcome.value } : { taken, problem: outcome.problem };
}

export async function recording(
  session: Session,
  method: string,
  measured: Measured,
): Promise<{ readonly recording?: BenchRecording; readonly problem?: Problem }> {
  const { recording: got, outcome } = await session.engine.ask('bench', { do: 'record', method, measured });
  if (got?.ok) return { recording: got.value };
  const refused = got ?? outcome;
  if (!refused || refused.ok) throw new Error('the bench gave no answer');
  return { problem: refused.problem };
}

/** Milliseconds without a keystroke before it is worked out, and after which waiting is worth a word. */
const HAND_RESTS = 80;
const SLOW = 300;

/**
 * The newest outcome, and whether a newer one is being worked out for longer than a moment. Only one is worked out at a time:
 * what was typed meanwhile follows as it stands then.
 */
export function useWorked(
  session: Session,
  method: string,
  taken: Taken,
): { readonly worked: Worked | undefined; readonly slow: boolean } {
  const [worked, setWorked] = useState<Worked>();
  const [slow, setSlow] = useState(false);
  const running = useRef<Promise<unknown>>(Promise.resolve());
  useEffect(() => {
    let current = true;
    const waiting = setTimeout(() => setSlow(true), HAND_RESTS + SLOW);
    const show = (got: Worked): void => {
      if (!current) return;
      clearTimeout(waiting);
      setSlow(false);
      setWorked(got);
    };
    const ask = async (): Promise<void> => {
      if (!current) return;
      try {
        show(await workOut(session, method, taken));
      } catch (fault) {
        const message = fault instanceof Error ? fault.message : String(fault);
        show({ taken, problem: { code: 'undefined-result', message } });
      }
    };
    const rest = setTimeout(() => {
      running.current = running.current.then(ask);
    }, HAND_RESTS);
    return () => {
      current = false;
      clearTimeout(rest);
      clearTimeout(waiting);
    };
  }, [session, method, taken]);
  return { worked, slow };
}

/** The run of the model and move as they stand, made beside the page. */
import { type RefObject, useEffect, useRef, useState } from 'react';
import type { MoveSetting } from '../../../engine/advice/axis-model.ts';
import { besideOf, type InWordsOptions, inWords, type Saying } from '../../../engine/simulate/index.ts';
import { CannotMove, Movers } from '../../worker/move-client.ts';
import type { AxisModel, Run } from './parts.ts';
import type { Typed } from './read-move.ts';

export interface Shown {
  readonly run: Run;
  readonly model: AxisModel;
  /** The move as it was typed. */
  readonly typed: Typed;
  readonly says: readonly Saying[];
  /** The other case that belongs beside it: the same without its brake, or with its weight driving it on. */
  readonly beside?: { readonly name: string; readonly run: Run; readonly says: readonly Saying[] };
}

export interface Kept extends Shown {
  readonly name: string;
}

/** Points kept of each quantity: more than a wide screen has pixels. */
const POINTS = 1600;

interface Running {
  readonly movers: RefObject<Movers | undefined>;
  /** The newest run that is done; undefined before the first. */
  readonly now: Shown | undefined;
  /** Why the newest could not be; empty where it could. */
  readonly fault: string;
}

export function useRun(model: AxisModel, typed: Typed, setting: MoveSetting, words: InWordsOptions): Running {
  const [now, setNow] = useState<Shown>();
  const [fault, setFault] = useState('');
  const movers = useRef<Movers>(undefined);
  const turn = useRef(0);
  const busy = useRef(false);
  const wanted = useRef<(() => Promise<void>) | undefined>(undefined);

  useEffect(() => {
    const own = new Movers();
    movers.current = own;
    return () => own.close();
  }, []);

  // While one run is under way only the newest wish waits: a slider must never queue up work.
  useEffect(() => {
    if ('fault' in typed) return;
    const mine = ++turn.current;
    const { move } = typed;
    const next = async (): Promise<void> => {
      try {
        const common = { points: POINTS, settleBand: setting.settleBand };
        const run = await movers.current!.run({
          model,
          move,
          ...common,
          ...(move.kind === 'circle' && setting.second ? { second: setting.second.model } : {}),
        });
        const other = besideOf(model, move);
        const otherRun =
          other && mine === turn.current
            ? await movers.current!.run({ model: other.model, move: other.move, ...common })
            : undefined;
        if (mine === turn.current) {
          setFault('');
          const beside =
            other && otherRun
              ? { beside: { name: other.name, run: otherRun, says: inWords(otherRun, other.model, words) } }
              : {};
          setNow({ run, model, typed, says: inWords(run, model, words), ...beside });
        }
      } catch (error) {
        if (mine === turn.current)
          setFault(error instanceof CannotMove || error instanceof Error ? error.message : String(error));
      }
    };
    const work = async (task: () => Promise<void>): Promise<void> => {
      if (busy.current) {
        wanted.current = task;
        return;
      }
      busy.current = true;
      await task();
      busy.current = false;
      const waiting = wanted.current;
      wanted.current = undefined;
      if (waiting) await work(waiting);
    };
    void work(next);
  }, [model, typed, words, setting]);

  return { movers, now, fault };
}

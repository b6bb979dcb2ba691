/** The looked-through circuit, worked out beside the page. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { StopCircuit } from '../../../engine/refit/types.ts';
import type { Looked, LookReply, PairSaid } from './look-worker.ts';

export interface Pairs {
  readonly done: number;
  readonly all: number;
  readonly found: readonly PairSaid[];
  readonly running: boolean;
}

export interface Look {
  readonly looked: Looked | undefined;
  readonly problem: string | undefined;
  readonly busy: boolean;
  readonly pairs: Pairs | undefined;
  readonly seekPairs: (go: boolean) => void;
}

export function useLook(circuit: StopCircuit | null): Look {
  const worker = useRef<Worker>(undefined);
  const number = useRef(0);
  const [looked, setLooked] = useState<Looked>();
  const [problem, setProblem] = useState<string>();
  const [busy, setBusy] = useState(false);
  const [pairs, setPairs] = useState<Pairs>();
  useEffect(() => {
    const made = new Worker(new URL('./look-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    made.onmessage = ({ data }: MessageEvent<LookReply>) => {
      if ('done' in data) {
        setPairs((before) =>
          before?.running
            ? {
                done: data.done,
                all: data.all,
                found: [...before.found, ...data.found],
                running: data.done < data.all,
              }
            : before,
        );
        return;
      }
      if (data.n !== number.current) return;
      setBusy(false);
      if ('problem' in data) setProblem(data.problem);
      else {
        setProblem(undefined);
        setLooked(data.looked);
      }
    };
    return () => made.terminate();
  }, []);
  useEffect(() => {
    setPairs(undefined);
    if (circuit === null) return;
    setBusy(true);
    worker.current?.postMessage({ n: ++number.current, circuit });
  }, [circuit]);
  const seekPairs = useCallback((go: boolean) => {
    setPairs((before) =>
      go ? { done: 0, all: 1, found: [], running: true } : before && { ...before, running: false },
    );
    worker.current?.postMessage({ pairs: go });
  }, []);
  return { looked, problem, busy, pairs, seekPairs };
}

/** The looked-through circuit, worked out beside the page. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { LookProgress, Offers } from '../../../engine/circuit/stop/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import type { Choice, Looked, LookReply } from './look-worker.ts';

export interface Pairs {
  readonly done: number;
  readonly all: number;
  /** In words. */
  readonly found: readonly string[];
  readonly running: boolean;
}

export interface Look {
  readonly looked: Looked | undefined;
  /** Numbers of the motions from the rest of the refit; undefined until they are there. */
  readonly offers: Offers | undefined;
  /** Patterns, the best first, and what they are laid out for; undefined until they are there. */
  readonly choice: Choice | undefined;
  readonly problem: string | undefined;
  /** Absent once all is looked through. */
  readonly progress: LookProgress | undefined;
  readonly pairs: Pairs | undefined;
  readonly seekPairs: (go: boolean) => void;
}

const BEGINS: LookProgress = { doing: 'every single fault', done: 0, all: 0 };

export function useLook(refit: Refit): Look {
  const worker = useRef<Worker>(undefined);
  const number = useRef(0);
  const [looked, setLooked] = useState<Looked>();
  const [offers, setOffers] = useState<Offers>();
  const [choice, setChoice] = useState<Choice>();
  const [problem, setProblem] = useState<string>();
  const [progress, setProgress] = useState<LookProgress>();
  const [pairs, setPairs] = useState<Pairs>();
  useEffect(() => {
    const made = new Worker(new URL('./look-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    made.onmessage = ({ data }: MessageEvent<LookReply>) => {
      if (!('n' in data)) {
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
      if ('progress' in data) setProgress(data.progress);
      else if ('choice' in data) setChoice(data.choice);
      // The same numbers keep their object, so that nothing starts anew.
      else if ('offers' in data)
        setOffers((before) =>
          JSON.stringify(before) === JSON.stringify(data.offers) ? before : data.offers,
        );
      else {
        setProgress(undefined);
        if ('problem' in data) setProblem(data.problem);
        else {
          setProblem(undefined);
          setLooked(data.looked);
        }
      }
    };
    return () => made.terminate();
  }, []);
  useEffect(() => {
    setPairs(undefined);
    setProgress(refit.stop === null ? undefined : BEGINS);
    worker.current?.postMessage({ n: ++number.current, refit });
  }, [refit]);
  const seekPairs = useCallback((go: boolean) => {
    setPairs((before) =>
      go ? { done: 0, all: 1, found: [], running: true } : before && { ...before, running: false },
    );
    worker.current?.postMessage({ pairs: go });
  }, []);
  return { looked, offers, choice, problem, progress, pairs, seekPairs };
}

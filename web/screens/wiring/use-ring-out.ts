/** What a meter should show, worked out in a worker of its own: the page and the rules go on meanwhile. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { List } from '../../../engine/circuit/lists/index.ts';
import type { ReadWiring } from '../../../engine/circuit/wiring/index.ts';
import type { RingOutReply } from './ring-out-worker.ts';

export interface RingOut {
  /** Absent until it is there, and while a changed wiring is worked out. */
  readonly list: List | undefined;
  readonly problem: string;
  /** How far it is, once it takes a while. */
  readonly share: number | undefined;
  readonly isStopped: boolean;
  readonly stop: () => void;
  readonly start: () => void;
}

/**
 * @param read undefined while nobody asks
 * @param stamp another number for each state of the wiring
 */
export function useRingOut(read: ReadWiring | undefined, stamp: number): RingOut {
  const newest = useRef(read);
  newest.current = read;
  const [list, setList] = useState<List>();
  const [problem, setProblem] = useState('');
  const [share, setShare] = useState<number>();
  const [isStopped, setStopped] = useState(false);
  const isAsked = read !== undefined && stamp > 0 && !isStopped;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the stamp tells of another wiring, the object only of another copy
  useEffect(() => {
    setList(undefined);
    setProblem('');
    setShare(undefined);
    if (!isAsked) return;
    const worker = new Worker(new URL('./ring-out-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<RingOutReply>) => {
      if ('share' in data) {
        setShare(data.share);
        return;
      }
      setShare(undefined);
      if ('list' in data) setList(data.list);
      else setProblem(data.problem);
    };
    worker.onerror = ({ message }) => setProblem(`The readings could not be worked out: ${message}`);
    worker.postMessage(newest.current);
    return () => worker.terminate();
  }, [isAsked, stamp]);
  const stop = useCallback(() => setStopped(true), []);
  const start = useCallback(() => setStopped(false), []);
  return { list, problem, share, isStopped, stop, start };
}

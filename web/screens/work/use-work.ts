/** The judged work of a refit and runs in time, worked out beside the page. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Refit } from '../../../engine/refit/types.ts';
import type { InStepAnswer, JudgedWork, NotInStep, WorkChart } from '../../../engine/work/index.ts';
import type { WorkReply } from './work-worker.ts';

export interface WorkView {
  /** Absent until it is judged for the first time. */
  readonly judged: readonly JudgedWork[] | undefined;
  /** What is judged of a piece of work: as the refit stands now where it is there already, else as it stood before. */
  readonly latest: (id: string) => JudgedWork | undefined;
  readonly chart: WorkChart | null;
  /** While it judges anew. */
  readonly progress: { readonly done: number; readonly all: number } | undefined;
  /** Share done of drawing the chances; undefined while nothing is drawn. */
  readonly drawing: number | undefined;
  /** Runs of the refit as it stands, by id. */
  readonly runs: Readonly<Record<string, InStepAnswer | NotInStep>>;
  readonly running: string | undefined;
  readonly run: (id: string) => void;
  readonly stop: () => void;
}

const NONE: ReadonlyMap<string, JudgedWork> = new Map();

/** `first`: id of the work that is looked at; it is judged before the others. */
export function useWork(refit: Refit, first: string): WorkView {
  const looked = useRef(first);
  looked.current = first;
  const worker = useRef<Worker>(undefined);
  const number = useRef(0);
  const [generation, setGeneration] = useState(0);
  const [judged, setJudged] = useState<readonly JudgedWork[]>();
  const [arrived, setArrived] = useState<ReadonlyMap<string, JudgedWork>>(NONE);
  const [chart, setChart] = useState<WorkChart | null>(null);
  const [progress, setProgress] = useState<WorkView['progress']>();
  const [drawing, setDrawing] = useState<number>();
  const [runs, setRuns] = useState<WorkView['runs']>({});
  const [running, setRunning] = useState<string>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: a stopped run ends its worker, and a new one begins
  useEffect(() => {
    const made = new Worker(new URL('./work-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    made.onmessage = ({ data }: MessageEvent<WorkReply>) => {
      if (data.n !== number.current) return;
      if ('run' in data) {
        setRunning(undefined);
        setRuns((before) => ({ ...before, [data.run]: data.answer }));
      } else if ('judged' in data) {
        setProgress(undefined);
        setDrawing(undefined);
        setJudged(data.judged);
        setArrived(NONE);
        setChart(data.chart);
      } else if ('drawn' in data) setDrawing(data.drawn);
      else {
        setProgress(data);
        setArrived((before) => new Map(before).set(data.one.work.id, data.one));
      }
    };
    return () => made.terminate();
  }, [generation]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new worker has to be told the refit as well
  useEffect(() => {
    setRuns({});
    setRunning(undefined);
    setDrawing(undefined);
    setArrived(NONE);
    setProgress({ done: 0, all: Object.keys(refit.work).length });
    worker.current?.postMessage({ n: ++number.current, refit, first: looked.current });
  }, [refit, generation]);
  const run = useCallback((id: string) => {
    setRunning(id);
    worker.current?.postMessage({ n: number.current, run: id });
  }, []);
  const stop = useCallback(() => setGeneration((before) => before + 1), []);
  const latest = (id: string) => arrived.get(id) ?? judged?.find(({ work }) => work.id === id);
  return { judged, latest, chart, progress, drawing, runs, running, run, stop };
}

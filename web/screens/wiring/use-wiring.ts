/** The wiring looked through beside the page, and whatever else the page asks of it. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { ListId } from '../../../engine/circuit/lists/index.ts';
import type { Looked } from '../../../engine/circuit/whole/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import type { Drawn, Step, WiringAsk, WiringReply } from './wiring-protocol.ts';

type Without<T> = T extends unknown ? Omit<T, 'n'> : never;
type Question = Without<WiringAsk>;

export interface Drawing {
  readonly drawn: Drawn | undefined;
  readonly progress: { readonly done: number; readonly all: number } | undefined;
  readonly draw: () => void;
  readonly cancel: () => void;
}

export interface WiringView {
  readonly looked: Looked | undefined;
  readonly busy: boolean;
  /** What is being done for the look, while it goes on. */
  readonly step: Step | undefined;
  /** What is being done for what was asked last beside it. */
  readonly asked: Step | undefined;
  /** Ends the look where it is; what is looked through already stays. */
  readonly stopLooking: () => void;
  /** Whether it was ended so. */
  readonly stopped: boolean;
  /** Looks through all of it again. */
  readonly lookAgain: () => void;
  /** Another number for each state of the wiring that was looked through. */
  readonly stamp: number;
  readonly problem: string;
  readonly drawing: Drawing;
  /** Throws an Error with a sentence. */
  readonly ask: <K extends keyof Answers>(question: Extract<Question, { do: K }>) => Promise<Answers[K]>;
}

type ReplyWith<K extends string> = Extract<WiringReply, Readonly<Record<K, unknown>>>;
export interface Answers {
  readonly fitting: ReplyWith<'fitting'>['fitting'];
  readonly try: ReplyWith<'tried'>['tried'];
  readonly propose: ReplyWith<'proposed'>['proposed'];
  readonly list: ReplyWith<'list'>['list'];
}

interface Waiting {
  readonly done: (reply: WiringReply) => void;
  readonly failed: (reason: Error) => void;
}

export type ListAsk = { readonly do: 'list'; readonly list: ListId };

export function useWiring(refit: Refit): WiringView {
  const worker = useRef<Worker>(undefined);
  const number = useRef(0);
  const waiting = useRef(new Map<number, Waiting>());
  const [looked, setLooked] = useState<Looked>();
  const [busy, setBusy] = useState(true);
  const [stamp, setStamp] = useState(0);
  const [problem, setProblem] = useState('');
  const [step, setStep] = useState<Step>();
  const [asked, setAsked] = useState<Step>();
  const [stopped, setStopped] = useState(false);
  const [drawn, setDrawn] = useState<Drawn>();
  const [progress, setProgress] = useState<Drawing['progress']>();
  const lookNumber = useRef(0);
  const drawNumber = useRef(0);

  useEffect(() => {
    const made = new Worker(new URL('./wiring-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    made.onmessage = ({ data }: MessageEvent<WiringReply>) => {
      const answered = waiting.current.get(data.n);
      if ('step' in data) {
        if (answered) setAsked(data.step);
        else if (data.n === lookNumber.current) setStep(data.step);
      } else if (answered) {
        waiting.current.delete(data.n);
        setAsked(undefined);
        if ('problem' in data) answered.failed(new Error(data.problem));
        else answered.done(data);
      } else if ('looked' in data && data.n === lookNumber.current) {
        setLooked(data.looked);
        setProblem('');
        setStamp(data.n);
        setBusy(!data.whole);
        if (data.whole) setStep(undefined);
      } else if ('all' in data && data.n === drawNumber.current)
        setProgress({ done: data.done, all: data.all });
      else if ('drawn' in data && data.n === drawNumber.current) {
        setProgress(undefined);
        if (data.drawn) setDrawn(data.drawn);
      } else if ('problem' in data) {
        setProblem(data.problem);
        setBusy(false);
        setStep(undefined);
        setProgress(undefined);
      }
    };
    made.onerror = (event) => {
      setProblem(`The wiring could not be looked through: ${event.message}`);
      setBusy(false);
    };
    return () => {
      made.terminate();
      worker.current = undefined;
    };
  }, []);

  const send = useCallback((question: Question): number => {
    const n = ++number.current;
    worker.current?.postMessage({ ...question, n });
    return n;
  }, []);

  const lookAgain = useCallback(() => {
    setBusy(true);
    setStopped(false);
    lookNumber.current = send({ do: 'look', refit });
  }, [refit, send]);
  useEffect(lookAgain, [lookAgain]);
  const stopLooking = useCallback(() => {
    send({ do: 'stop-looking' });
    // What comes of it all the same is not waited for.
    lookNumber.current = 0;
    setBusy(false);
    setStep(undefined);
    setStopped(true);
  }, [send]);

  const draw = useCallback(() => {
    setProgress({ done: 0, all: 0 });
    drawNumber.current = send({ do: 'draw' });
  }, [send]);
  const cancel = useCallback(() => {
    send({ do: 'stop-drawing' });
    setProgress(undefined);
  }, [send]);
  const ask = useCallback(
    async (question: Question): Promise<never> => {
      const reply = await new Promise<WiringReply>((done, failed) => {
        waiting.current.set(send(question), { done, failed });
      });
      const { n: _, ...rest } = reply;
      return Object.values(rest)[0] as never;
    },
    [send],
  );
  return {
    looked,
    busy,
    step,
    asked,
    stopLooking,
    stopped,
    lookAgain,
    stamp,
    problem,
    drawing: { drawn, progress, draw, cancel },
    ask: ask as WiringView['ask'],
  };
}

/** The compared controls, and the auxiliaries gone through, worked out beside the page. */
import { useEffect, useRef, useState } from 'react';
import type { ControlReport } from '../../../engine/control/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import type { AuxiliariesLooked, ControlAsk, ControlReply } from './control-worker.ts';

function useAsk(refit: Refit, of: ControlAsk['of'], take: (reply: ControlReply) => void): void {
  const worker = useRef<Worker>(undefined);
  const number = useRef(0);
  const taking = useRef(take);
  taking.current = take;
  useEffect(() => {
    const made = new Worker(new URL('./control-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    made.onmessage = ({ data }: MessageEvent<ControlReply>) => {
      if (data.n === number.current) taking.current(data);
    };
    return () => made.terminate();
  }, []);
  useEffect(() => {
    number.current += 1;
    worker.current?.postMessage({ n: number.current, refit, of } satisfies ControlAsk);
  }, [refit, of]);
}

export function useControl(refit: Refit): ControlReport | undefined {
  const [report, setReport] = useState<ControlReport>();
  useAsk(refit, 'control', (reply) => {
    if ('report' in reply) setReport(reply.report);
  });
  return report;
}

export function useAuxiliaries(refit: Refit): { looked: AuxiliariesLooked | undefined; share: number } {
  const [state, setState] = useState<{ looked: AuxiliariesLooked; share: number }>();
  useAsk(refit, 'auxiliaries', (reply) => {
    if ('looked' in reply) setState(reply);
  });
  return { looked: state?.looked, share: state?.share ?? 0 };
}

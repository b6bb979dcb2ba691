/** Looks a stop circuit through beside the page, and then for pairs of faults, in pieces. */
import { analyseStop, dangerousPairs, type StopAnalysis } from '../../../engine/circuit/stop/index.ts';
import type { StopCircuit } from '../../../engine/refit/types.ts';

export type LookAsk = { readonly n: number; readonly circuit: StopCircuit } | { readonly pairs: boolean };

/** What can travel: everything but the simulation itself. */
export interface Looked extends Omit<StopAnalysis, 'base'> {
  readonly barred: readonly string[];
}

export interface PairSaid {
  readonly first: string;
  readonly second: string;
  readonly says: string;
}

export type LookReply =
  | { readonly n: number; readonly looked: Looked }
  | { readonly n: number; readonly problem: string }
  | { readonly done: number; readonly all: number; readonly found: readonly PairSaid[] };

let last: StopAnalysis | undefined;
let pairing = false;

self.onmessage = ({ data }: MessageEvent<LookAsk>) => {
  if ('pairs' in data) {
    pairing = data.pairs;
    if (pairing) void pairsOf();
    return;
  }
  pairing = false;
  const found = analyseStop(data.circuit);
  if (!found.ok) {
    last = undefined;
    const { where, message } = found.problem;
    post({ n: data.n, problem: `${where ? `${where}: ` : ''}${message}` });
    return;
  }
  last = found.value;
  const { base, ...rest } = found.value;
  post({ n: data.n, looked: { ...rest, barred: base.barred.map(({ act }) => act.says) } });
};

async function pairsOf(): Promise<void> {
  const mine = last;
  if (!mine) return;
  const judged = mine.faults.map(({ fault, judged: each }) => [fault, each] as const);
  for (const { done, all, found } of dangerousPairs(mine.base, judged)) {
    post({
      done,
      all,
      found: found.map(({ first, second, judged: both }) => ({
        first: first.id,
        second: second.id,
        says: `${both.happenings[0]?.motions.join(', ') ?? ''}, after “${both.happenings[0]?.after ?? ''}”`,
      })),
    });
    // Lets a cancel come in.
    await new Promise((next) => setTimeout(next, 0));
    if (!pairing || last !== mine) return;
  }
}

const post = (reply: LookReply): void => self.postMessage(reply);

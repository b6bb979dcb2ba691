/** Looks a stop circuit through beside the page, in pieces, and then for pairs of faults. */
import { rankedPatterns, stopOffers, whatMoves } from '../../../engine/advice/stop-offers.ts';
import { type Assessment, assess } from '../../../engine/assess/index.ts';
import {
  dangerousPairs,
  type LookProgress,
  lookThrough,
  type MotionWanted,
  type Offers,
  type StopAnalysis,
  sayPair,
} from '../../../engine/circuit/stop/index.ts';
import { readWiring } from '../../../engine/circuit/wiring/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';

export type LookAsk = { readonly n: number; readonly refit: Refit } | { readonly pairs: boolean };

/** What can travel: everything but the simulation itself. */
export interface Looked extends Omit<StopAnalysis, 'base'> {
  readonly barred: readonly string[];
}

/** A pattern by its id, since what it lays out cannot travel. */
export interface RankedId {
  readonly id: string;
  readonly why: string;
}

/** What there is to choose from, and what it is laid out for. */
export interface Choice {
  readonly ranked: readonly RankedId[];
  readonly moves: readonly MotionWanted[];
}

export type LookReply =
  | { readonly n: number; readonly looked: Looked }
  | { readonly n: number; readonly offers: Offers }
  | { readonly n: number; readonly choice: Choice }
  | { readonly n: number; readonly progress: LookProgress }
  | { readonly n: number; readonly problem: string }
  | { readonly done: number; readonly all: number; readonly found: readonly string[] };

/** Milliseconds of work before a newer circuit or a cancel may come in. */
const PIECE = 40;

let assessed: Assessment | undefined;
let last: StopAnalysis | undefined;
let pairing = false;
let newest = 0;

self.onmessage = ({ data }: MessageEvent<LookAsk>) => {
  if ('pairs' in data) {
    pairing = data.pairs;
    if (pairing) void pairsOf();
    return;
  }
  pairing = false;
  newest = data.n;
  void look(data.n, data.refit);
};

async function look(n: number, refit: Refit): Promise<void> {
  const { stop } = refit;
  assessed = assess(refit, assessed ? { previous: assessed } : undefined);
  const ranked = rankedPatterns(assessed).map(({ pattern, why }) => ({ id: pattern.id, why }));
  post({ n, choice: { ranked, moves: whatMoves(assessed) } });
  if (stop === null) return;
  const offers = stopOffers(assessed, stop);
  post({ n, offers });
  const looking = lookThrough(stop, offers, readWiring(refit.wiring, refit));
  for (let until = performance.now() + PIECE; ; ) {
    const step = looking.next();
    if (step.done) {
      if (step.value.ok) {
        last = step.value.value;
        const { base, ...rest } = last;
        post({ n, looked: { ...rest, barred: base.barred.map(({ act }) => act.says) } });
      } else {
        last = undefined;
        const { where, message } = step.value.problem;
        post({ n, problem: `${where ? `${where}: ` : ''}${message}` });
      }
      return;
    }
    if (performance.now() < until) continue;
    post({ n, progress: step.value });
    await rest();
    // A newer circuit has come in: this one is no longer asked for.
    if (newest !== n) return;
    until = performance.now() + PIECE;
  }
}

async function pairsOf(): Promise<void> {
  const mine = last;
  if (!mine) return;
  const judged = mine.faults.map(({ fault, judged: each }) => [fault, each] as const);
  for (const { done, all, found } of dangerousPairs(mine.base, judged)) {
    post({ done, all, found: found.map(sayPair) });
    await rest();
    if (!pairing || last !== mine) return;
  }
}

/** Lets what was sent come in. */
const rest = (): Promise<void> => new Promise((next) => setTimeout(next, 0));

const post = (reply: LookReply): void => self.postMessage(reply);

/** Simulates, beside the page and beside the worker that judges. */
import {
  BandMaker,
  buffersOf,
  hunting,
  loopMargins,
  ModelError,
  simulate,
  startingGains,
} from '../../engine/simulate/index.ts';
import type { MoveAsk, MoveReply } from './move-protocol.ts';

/** The same draws every time: a band may not jump about when nothing was changed. */
const SEED = 1;

const cancelled = new Set<number>();

const send = (reply: MoveReply, transfer: Transferable[] = []): void => self.postMessage(reply, { transfer });

const breathe = (): Promise<void> => new Promise((done) => setTimeout(done));

async function work(message: MoveAsk): Promise<void> {
  const { n } = message;
  if (message.do === 'run') {
    const { model, move, ...options } = message.ask;
    const run = simulate(model, move, options);
    send({ n, answer: run }, buffersOf(run));
  } else if (message.do === 'loop') {
    const { model } = message.ask;
    const answer = { margins: loopMargins(model), gains: startingGains(model) };
    send({ n, answer });
  } else if (message.do === 'hunting') {
    send({ n, answer: hunting(message.ask.model) });
  } else {
    const { model, second, spread, move, runs, first } = message.ask;
    const maker = new BandMaker(model, spread, move, runs, SEED, second ? { second } : {}, first);
    while (!maker.finished) {
      maker.piece(10);
      send({ n, progress: maker.done });
      await breathe();
      if (cancelled.delete(n)) return;
    }
    send({ n, answer: maker.finish() });
  }
}

self.onmessage = async ({ data }: MessageEvent<MoveAsk | { cancel: number }>) => {
  if ('cancel' in data) {
    cancelled.add(data.cancel);
    return;
  }
  try {
    await work(data);
  } catch (error) {
    const problems =
      error instanceof ModelError
        ? error.problems
        : [{ code: 'malformed' as const, message: error instanceof Error ? error.message : String(error) }];
    send({ n: data.n, problems });
  }
};

/** A band over all cores, with its progress on the error stream; Ctrl-C ends it with what is done by then. */
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type Band, joinBands, timeOf } from '../engine/simulate/index.ts';
import { type BandJob, doBand } from './band-job.ts';
import type { BandNews } from './band-worker.ts';
import type { Io } from './io.ts';
import { Refusal } from './refusal.ts';

/** Milliseconds between two lines of progress. */
const EVERY = 2000;

/** Where the program runs from its source, as in a test, there is no file that a thread could begin with. */
const THREAD = new URL('./band-worker.js', import.meta.url);

export async function makeBand(
  { err }: Pick<Io, 'err'>,
  asked: Omit<BandJob, 'first' | 'stop'>,
  threads = existsSync(THREAD) ? availableParallelism() : 1,
): Promise<Band> {
  const stop = new Int32Array(new SharedArrayBuffer(4));
  const { runs, model, move } = asked;
  const options = { ...asked.options, until: asked.options.until ?? timeOf(model, move, asked.options) };
  const lanes = Math.min(threads, runs);
  const shares = Array.from({ length: lanes }, (_, at) => Math.floor((runs + at) / lanes));
  // Each goes on where the one before stops, so the band is the same on any number of cores.
  const jobs = shares.map(
    (own, at): BandJob => ({
      ...asked,
      options,
      runs: own,
      first: shares.slice(0, at).reduce((sum, each) => sum + each, 0),
      stop,
    }),
  );
  const done = shares.map(() => 0);
  let last = Date.now();
  const progress = (at: number, count: number): void => {
    done[at] = count;
    const now = Date.now();
    if (now - last < EVERY) return;
    last = now;
    const all = done.reduce((sum, each) => sum + each, 0);
    err(`Moved ${all} of ${runs}; Ctrl-C ends it with these.\n`);
  };
  const end = (): void => void Atomics.store(stop, 0, 1);
  process.once('SIGINT', end);
  try {
    const bands = await Promise.all(
      jobs.map((job, at) =>
        existsSync(THREAD)
          ? inThread(job, (count) => progress(at, count))
          : doBand(job, async (count) => {
              progress(at, count);
              await new Promise(setImmediate);
            }),
      ),
    );
    const band = joinBands(bands);
    if (band.runs === 0) throw new Refusal('It was stopped before any was moved.');
    return band;
  } finally {
    process.removeListener('SIGINT', end);
  }
}

function inThread(job: BandJob, progress: (done: number) => void): Promise<Band> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(THREAD, { workerData: job });
    worker.on('message', (news: BandNews) => {
      if ('done' in news) progress(news.done);
      else resolve(news.band);
    });
    worker.on('error', reject);
    worker.on('exit', () => reject(new Error('a thread ended before its share was done')));
  });
}

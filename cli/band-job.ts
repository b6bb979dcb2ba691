/** One thread's share of a band, as plain data that can be handed to it. */
import {
  type AxisModel,
  type Band,
  BandMaker,
  type Move,
  type SimulateOptions,
  type Spread,
} from '../engine/simulate/index.ts';

export interface BandJob {
  readonly model: AxisModel;
  readonly spread: readonly Spread[];
  readonly move: Move;
  readonly runs: number;
  /** Number of its first run in the whole band. */
  readonly first: number;
  readonly options: SimulateOptions;
  /** One word of shared memory: 1 once it shall stop. */
  readonly stop: Int32Array;
}

/** The same draws every time, and the same as on the screen: a band may not jump about when nothing was changed. */
const SEED = 1;
/** Runs between two looks at the clock and at `stop`. */
const PIECE = 4;

/** Makes the share in pieces; after each `progress` hears how many runs are done, and may take a breath. */
export async function doBand(job: BandJob, progress: (done: number) => void | Promise<void>): Promise<Band> {
  const { model, spread, move, runs, first, options, stop } = job;
  const maker = new BandMaker(model, spread, move, runs, SEED, options, first);
  while (!maker.finished && Atomics.load(stop, 0) === 0) {
    maker.piece(PIECE);
    await progress(maker.done);
  }
  return maker.finish();
}

/** Workers that simulate: one answers at once, all share a band between them. */
import type { Problem } from '../../engine/quantity/types.ts';
import { type AxisModel, type Band, joinBands } from '../../engine/simulate/index.ts';
import { Asking } from './asking.ts';
import type { MoveAsked, MoveReply } from './move-protocol.ts';

/** The model or the move cannot be, and why, field by field. */
export class CannotMove extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[]) {
    super(problems.map(({ message }) => message).join(' '));
    this.problems = problems;
  }
}

class MoveWorker extends Asking<MoveAsked, MoveReply> {
  constructor() {
    super(new Worker(new URL('./move-worker.ts', import.meta.url), { type: 'module' }), (data) => {
      if ('progress' in data) return { progress: data.progress };
      return 'problems' in data ? { failed: new CannotMove(data.problems) } : { done: data.answer };
    });
  }
}

export class Movers {
  readonly #first = new MoveWorker();
  #others: MoveWorker[] = [];
  #atRest: MoveWorker | undefined;

  run(ask: MoveAsked['run']['ask']): Promise<MoveAsked['run']['answer']> {
    return this.#first.ask('run', ask);
  }

  loop(model: AxisModel): Promise<MoveAsked['loop']['answer']> {
    return this.#first.ask('loop', { model });
  }

  /** Whether it hunts: that may take seconds, so it has a worker of its own, and a newer question ends the older. */
  hunting(model: AxisModel): Promise<MoveAsked['hunting']['answer']> {
    this.#atRest?.stop();
    this.#atRest = new MoveWorker();
    return this.#atRest.ask('hunting', { model });
  }

  /** `runs` variants over all cores; `progress` hears how many are done. */
  async band(
    ask: Omit<MoveAsked['band']['ask'], 'first'>,
    progress: (done: number) => void,
    signal: AbortSignal,
  ): Promise<Band> {
    // One core stays free for the page.
    const cores = Math.max(1, Math.min(16, (navigator.hardwareConcurrency || 2) - 1));
    while (this.#others.length < cores) this.#others.push(new MoveWorker());
    const shares = this.#others
      .map((_, at) => Math.floor((ask.runs + at) / this.#others.length))
      .filter(Boolean);
    const done = shares.map(() => 0);
    // Each worker goes on where the one before stops, so the band is the same on any number of cores.
    const firsts = shares.map((_, at) => shares.slice(0, at).reduce((sum, each) => sum + each, 0));
    const bands = await Promise.all(
      shares.map((runs, at) =>
        this.#others[at]!.ask(
          'band',
          { ...ask, runs, first: firsts[at]! },
          {
            signal,
            progress: (count) => {
              done[at] = count;
              progress(done.reduce((sum, each) => sum + each, 0));
            },
          },
        ),
      ),
    );
    return joinBands(bands);
  }

  close(): void {
    for (const worker of [this.#first, ...this.#others]) worker.stop();
    this.#atRest?.stop();
    this.#others = [];
  }
}

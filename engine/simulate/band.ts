/** Many runs of the same move with what is uncertain drawn anew each time: where the error lies, and how often it trips. */

import { type Fill, normals, uniforms } from '../metrology/index.ts';
import { own } from '../quantity/own.ts';
import { checkModel, checkMove } from './check-model.ts';
import type { AxisModel } from './model.ts';
import { ModelError } from './model-error.ts';
import type { Move } from './moves.ts';
import type { Run } from './run.ts';
import { type SimulateOptions, simulate, timeOf } from './simulate.ts';

/** How far a parameter may be off. */
export interface Spread {
  /** 'slide.coulomb'. */
  readonly path: string;
  /** One standard deviation (normal), or half the width (even), as a share of the value. */
  readonly share: number;
  readonly form: 'normal' | 'even';
}

export interface Band {
  readonly time: Float64Array;
  /** Following error in m, at each time the value below which 5, 50 and 95 % of the runs lie. */
  readonly low: Float64Array;
  readonly middle: Float64Array;
  readonly high: Float64Array;
  /** Shares of the runs that tripped, stalled or were unstable. */
  readonly tripped: number;
  readonly stalled: number;
  readonly unstable: number;
  /** m, peak following error of each run in the order they were drawn. */
  readonly peaks: Float64Array;
  /** Runs made, fewer than asked where it was stopped. */
  readonly runs: number;
  /** Variants drawn that could not be, such as a negative friction; they were drawn again. */
  readonly drawnAgain: number;
  /** Following error in m of each run at each time, run by run: what bands are joined from. */
  readonly drawn: Float32Array;
}

const TIMES = 400;
const PIECE = 20;

/** Runs at a time, so that it can be followed and stopped between pieces. */
export class BandMaker {
  private readonly model: AxisModel;
  private readonly spread: readonly Spread[];
  private readonly move: Move;
  private readonly options: SimulateOptions;
  private readonly wanted: number;
  private readonly seed: number;
  private readonly first: number;
  private readonly grid: Float32Array;
  private readonly peaks: Float64Array;
  private readonly time: Float64Array;
  private tripped = 0;
  private stalled = 0;
  private unstable = 0;
  private again = 0;
  done = 0;

  /**
   * Throws ModelError for a model, move or spread that cannot be. What a run draws depends on the seed and its number alone,
   * so parts of one band can be made side by side: `first` is the number of the first run here.
   */
  constructor(
    model: AxisModel,
    spread: readonly Spread[],
    move: Move,
    n: number,
    seed: number,
    options: SimulateOptions = {},
    first = 0,
  ) {
    const problems = [...checkModel(model), ...checkMove(move), ...spreadProblems(model, spread)];
    if (!(Number.isInteger(n) && n >= 1 && n <= 100_000))
      problems.push({
        code: 'out-of-domain',
        where: 'n',
        message: 'Between 1 and 100 000 runs can be made.',
      });
    if (problems.length > 0) throw new ModelError(problems);
    this.model = model;
    this.spread = spread;
    this.move = move;
    // All runs share one time, whatever each draws.
    this.options = { ...options, until: options.until ?? timeOf(model, move, options) };
    this.wanted = n;
    this.seed = seed;
    this.first = first;
    this.grid = new Float32Array(n * TIMES);
    this.peaks = new Float64Array(n);
    this.time = new Float64Array(TIMES);
  }

  get finished(): boolean {
    return this.done >= this.wanted;
  }

  /** Makes up to `count` more runs. */
  piece(count = PIECE): void {
    const end = Math.min(this.wanted, this.done + count);
    for (; this.done < end; this.done++) {
      const drawn = variantOf(this.model, this.spread, this.seed, this.first + this.done);
      this.again += drawn.again;
      const run = simulate(drawn.model, this.move, { ...this.options, followingAt: TIMES, books: false });
      this.take(run);
    }
  }

  private take(run: Run): void {
    if (this.done === 0) this.time.set(run.time);
    this.grid.set(run.following, this.done * TIMES);
    this.peaks[this.done] = run.summary.peakFollowing;
    const mainsOff = run.summary.runOut?.mainsOff?.at ?? Number.POSITIVE_INFINITY;
    if (run.trips.some(({ at }) => at < mainsOff)) this.tripped++;
    if (run.summary.stalled) this.stalled++;
    if (run.summary.unstable) this.unstable++;
  }

  finish(): Band {
    const { done } = this;
    const share = (count: number): number => (done > 0 ? count / done : 0);
    const drawn = this.grid.slice(0, done * TIMES);
    return {
      time: this.time,
      ...quantiles(drawn, done),
      tripped: share(this.tripped),
      stalled: share(this.stalled),
      unstable: share(this.unstable),
      peaks: this.peaks.slice(0, done),
      runs: done,
      drawnAgain: this.again,
      drawn,
    };
  }
}

/**
 * A model with what is uncertain drawn anew; the same seed and number draw the same. `again`: variants that could not be, such
 * as a negative friction, and were drawn once more. Throws ModelError where hardly any can be.
 */
export function variantOf(
  model: AxisModel,
  spread: readonly Spread[],
  seed: number,
  number: number,
): { readonly model: AxisModel; readonly again: number } {
  const evens = oneByOne(uniforms(seed, 2 * number));
  const draw = oneByOne(normals(seed, 2 * number + 1));
  for (let again = 0; again < 100; again++) {
    const out = structuredClone(model) as unknown as Record<string, Record<string, number>>;
    for (const { path, share, form } of spread) {
      const [group, name] = path.split('.') as [string, string];
      const by = form === 'normal' ? draw() : 2 * evens() - 1;
      out[group]![name] = out[group]![name]! * (1 + share * by);
    }
    const made = out as unknown as AxisModel;
    if (checkModel(made).length === 0) return { model: made, again };
  }
  throw new ModelError([
    {
      code: 'out-of-domain',
      where: 'spread',
      message: 'Hardly any variant within this spread can be; make the spread smaller.',
    },
  ]);
}

/** At each time the values below which 5, 50 and 95 % of the runs lie. */
function quantiles(drawn: Float32Array, runs: number): Pick<Band, 'low' | 'middle' | 'high'> {
  const low = new Float64Array(TIMES);
  const middle = new Float64Array(TIMES);
  const high = new Float64Array(TIMES);
  const column = new Float32Array(runs);
  for (let k = 0; k < TIMES && runs > 0; k++) {
    for (let run = 0; run < runs; run++) column[run] = drawn[run * TIMES + k]!;
    column.sort();
    low[k] = quantile(column, 0.05);
    middle[k] = quantile(column, 0.5);
    high[k] = quantile(column, 0.95);
  }
  return { low, middle, high };
}

/**
 * Bands of the same model, spread and move made side by side, as one: the very band that one maker would have made of all
 * these runs, since its lines are drawn anew from every run.
 */
export function joinBands(bands: readonly Band[]): Band {
  const [first] = bands;
  if (!first) throw new RangeError('There is no band to join.');
  const runs = bands.reduce((sum, each) => sum + each.runs, 0);
  const share = (of: (each: Band) => number): number =>
    runs > 0 ? bands.reduce((sum, each) => sum + Math.round(of(each) * each.runs), 0) / runs : 0;
  const peaks = new Float64Array(runs);
  const drawn = new Float32Array(runs * TIMES);
  let at = 0;
  for (const each of bands) {
    peaks.set(each.peaks, at);
    drawn.set(each.drawn, at * TIMES);
    at += each.runs;
  }
  return {
    time: (bands.find((each) => each.runs > 0) ?? first).time,
    ...quantiles(drawn, runs),
    tripped: share((each) => each.tripped),
    stalled: share((each) => each.stalled),
    unstable: share((each) => each.unstable),
    peaks,
    runs,
    drawnAgain: bands.reduce((sum, each) => sum + each.drawnAgain, 0),
    drawn,
  };
}

/** All runs at once, in pieces: `onProgress` hears the share done, `shouldStop` is asked between pieces. */
export function band(
  model: AxisModel,
  spread: readonly Spread[],
  move: Move,
  n: number,
  seed: number,
  onProgress: (share: number) => void = () => {},
  shouldStop: () => boolean = () => false,
  options: SimulateOptions = {},
): Band {
  const maker = new BandMaker(model, spread, move, n, seed, options);
  while (!maker.finished && !shouldStop()) {
    maker.piece();
    onProgress(maker.done / n);
  }
  return maker.finish();
}

/** The numbers of a stream one after another. */
function oneByOne(fill: Fill): () => number {
  const some = new Float64Array(16);
  let at = some.length;
  return () => {
    if (at === some.length) {
      fill(some);
      at = 0;
    }
    return some[at++]!;
  };
}

/** Sorted values; between two of them in a straight line. */
function quantile(sorted: Float32Array, share: number): number {
  const at = share * (sorted.length - 1);
  const below = Math.floor(at);
  const above = Math.min(sorted.length - 1, below + 1);
  return sorted[below]! + (at - below) * (sorted[above]! - sorted[below]!);
}

function spreadProblems(model: AxisModel, spread: readonly Spread[]): ModelError['problems'] {
  return spread.flatMap(({ path, share, form }) => {
    const [group = '', name = '', ...rest] = path.split('.');
    const values = Object.hasOwn(model, group)
      ? (model as unknown as Record<string, Record<string, unknown> | null>)[group]
      : null;
    const value = values && own(values, name);
    const say = (message: string) => [{ code: 'out-of-domain' as const, where: `spread.${path}`, message }];
    if (rest.length > 0 || typeof value !== 'number' || !Number.isFinite(value))
      return say('A spread names a parameter of this model that has a finite number, such as slide.coulomb.');
    if (path === 'control.sample') return say('All runs share one sample time; leave it out of the spread.');
    if (!(share >= 0 && share <= 10))
      return say('The spread is a share of the value, such as 0.2 for ±20 %.');
    if (form !== 'normal' && form !== 'even') return say('The form of a spread is normal or even.');
    return [];
  });
}

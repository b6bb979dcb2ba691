/**
 * What a run keeps for plotting: plain arrays that post cheaply from a worker. Where there are more samples than points
 * wanted, each stretch keeps the least and the greatest of every quantity in the order they came, so no peak is lost.
 */
import * as ioPlaces from './io.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { ACTUAL, AMPERES, BUS, COMMANDED, FOLLOWING, SPEED, T } = ioPlaces;

export interface Trace {
  /** m: where the command, and where the slide is. */
  readonly commanded: Float64Array;
  readonly actual: Float64Array;
  /** m: command less what the position loop sees. */
  readonly following: Float64Array;
  /** rad/s of the motor, and A. */
  readonly speed: Float64Array;
  readonly current: Float64Array;
  readonly bus: Float64Array;
}

export const CHANNELS = ['commanded', 'actual', 'following', 'speed', 'current', 'bus'] as const;
const COUNT = CHANNELS.length;

export class Recorder {
  private readonly now = new Float64Array(COUNT);
  private readonly stretch: number;
  private readonly low = new Float64Array(COUNT);
  private readonly high = new Float64Array(COUNT);
  private readonly lowAt = new Int32Array(COUNT);
  private readonly highAt = new Int32Array(COUNT);
  private readonly rows: Float64Array;
  private readonly times: Float64Array;
  private filled = 0;
  private points = 0;
  private from = 0;

  /** `samples` will come; at most about `points` are kept. */
  constructor(samples: number, points: number) {
    const plain = samples <= points;
    this.stretch = plain ? 1 : Math.ceil((2 * samples) / points);
    const most = plain ? samples + 1 : 2 * (Math.ceil(samples / this.stretch) + 1);
    this.times = new Float64Array(most);
    this.rows = new Float64Array(most * COUNT);
  }

  /** Takes what an axis handed over at a look; see io.ts. */
  takeFrom(io: Float64Array): void {
    const time = io[T]!;
    const { now, low, high, lowAt, highAt } = this;
    now[0] = io[COMMANDED]!;
    now[1] = io[ACTUAL]!;
    now[2] = io[FOLLOWING]!;
    now[3] = io[SPEED]!;
    now[4] = io[AMPERES]!;
    now[5] = io[BUS]!;
    if (this.stretch === 1) {
      this.row(time, now);
      return;
    }
    if (this.filled === 0) {
      this.from = time;
      low.set(now);
      high.set(now);
      lowAt.fill(0);
      highAt.fill(0);
    } else {
      for (let at = 0; at < COUNT; at++) {
        const value = now[at]!;
        if (value < low[at]!) {
          low[at] = value;
          lowAt[at] = this.filled;
        } else if (value > high[at]!) {
          high[at] = value;
          highAt[at] = this.filled;
        }
      }
    }
    this.filled++;
    if (this.filled === this.stretch) this.flush(time);
  }

  private row(time: number, values: Float64Array): void {
    if (this.points >= this.times.length) return;
    this.times[this.points] = time;
    this.rows.set(values, this.points * COUNT);
    this.points++;
  }

  private flush(time: number): void {
    const { low, high, lowAt, highAt } = this;
    for (let at = 0; at < COUNT; at++) {
      if (lowAt[at]! <= highAt[at]!) continue;
      const swap = low[at]!;
      low[at] = high[at]!;
      high[at] = swap;
    }
    this.row(this.from, low);
    if (this.filled > 1) this.row(time, high);
    this.filled = 0;
  }

  finish(time: number): { readonly time: Float64Array; readonly trace: Trace } {
    if (this.filled > 0) this.flush(time);
    const { points, rows } = this;
    const channel = (at: number): Float64Array => {
      const out = new Float64Array(points);
      for (let row = 0; row < points; row++) out[row] = rows[row * COUNT + at]!;
      return out;
    };
    const [commanded, actual, following, speed, current, bus] = CHANNELS.map((_, at) => channel(at)) as [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    return {
      time: this.times.slice(0, points),
      trace: { commanded, actual, following, speed, current, bus },
    };
  }
}

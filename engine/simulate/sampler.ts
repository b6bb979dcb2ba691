/** Keeps the following error alone, at even times: all that a band of many runs wants of each. */
import * as ioPlaces from './io.ts';
import type { Trace } from './record.ts';

const { FOLLOWING, T } = ioPlaces;
const NONE = new Float64Array(0);

export class Sampler {
  private readonly time: Float64Array;
  private readonly following: Float64Array;
  private next = 0;
  private last = 0;

  /** `count` times from 0 to `until` s; at each the error of the last look before it. */
  constructor(until: number, count: number) {
    this.time = Float64Array.from({ length: count }, (_, k) => (until * k) / (count - 1));
    this.following = new Float64Array(count);
  }

  takeFrom(io: Float64Array): void {
    const { time, following } = this;
    while (this.next < time.length && time[this.next]! < io[T]!) following[this.next++] = this.last;
    this.last = io[FOLLOWING]!;
  }

  finish(): { readonly time: Float64Array; readonly trace: Trace } {
    this.following.fill(this.last, this.next);
    const trace = { commanded: NONE, actual: NONE, speed: NONE, current: NONE, bus: NONE };
    return { time: this.time, trace: { ...trace, following: this.following } };
  }
}

/** The command the axis gets: a new place at every look of the control, straight lines between. */
import { REFERENCE, REFERENCE1, REFERENCE2, T } from '../io.ts';
import type { Reference } from '../reference.ts';

/** Shared by the views of one command in different units. */
interface Line {
  from: number;
  place: number;
  speed: number;
}

const NEVER = Number.POSITIVE_INFINITY;

export class Follower implements Reference {
  readonly breaks: readonly number[] = [];
  readonly marks: readonly number[] = [];
  /** It never comes to rest by itself. */
  readonly end = NEVER;
  private readonly line: Line;
  private readonly by: number;

  constructor(line: Line = { from: 0, place: 0, speed: 0 }, by = 1) {
    this.line = line;
    this.by = by;
  }

  scaled(by: number): Follower {
    return new Follower(this.line, this.by * by);
  }

  /** From where the command is at `now`, straight to `place` in `span` s. */
  goTo(place: number, now: number, span: number): void {
    const { line } = this;
    const here = line.place + line.speed * (now - line.from);
    line.from = now;
    line.place = here;
    line.speed = (place - here) / span;
  }

  place(t: number): number {
    const { line } = this;
    return line.place + line.speed * (t - line.from);
  }

  get speed(): number {
    return this.line.speed;
  }

  at(io: Float64Array): void {
    io[REFERENCE] = this.place(io[T]!) * this.by;
    io[REFERENCE1] = this.line.speed * this.by;
    io[REFERENCE2] = 0;
  }

  series(t: number, out: Float64Array): void {
    out.fill(0);
    out[0] = this.place(t) * this.by;
    if (out.length > 1) out[1] = this.line.speed * this.by;
  }
}

/** Measures how round a circle came out, while it is run. */
import type { AxisRun } from './axis-run.ts';
import { ACTUAL } from './io.ts';
import type { Move } from './moves.ts';
import { reachable } from './reference.ts';
import type { DeviationParts, Roundness } from './run.ts';

/** Only what is run at full speed counts: the rises at either end are left out. */
export class CircleGauge {
  private readonly radius: number;
  private readonly from: number;
  private readonly to: number;
  private readonly byDegree = new Float64Array(360);
  private readonly axes: readonly AxisRun[];
  /** m where the slides stand at the start, and of what their errors are made there. */
  private origin: readonly [number, number] | undefined;
  private atStart: readonly DeviationParts[] = [];
  private smallest = Number.POSITIVE_INFINITY;
  private largest = Number.NEGATIVE_INFINITY;
  private inmost: DeviationParts = NOTHING;
  private outmost: DeviationParts = NOTHING;
  private total = 0;
  private count = 0;

  constructor(move: Extract<Move, { kind: 'circle' }>, axes: readonly AxisRun[]) {
    this.axes = axes;
    this.radius = move.radius;
    const way = 2 * Math.PI * move.radius * move.turns;
    const speed = reachable(way, move);
    const jerk = move.jerk > 0 ? Math.min(move.acceleration / move.jerk, Math.sqrt(speed / move.jerk)) : 0;
    const rise = jerk > 0 ? jerk + speed / (jerk * move.jerk) : speed / move.acceleration;
    const cruise = (way - speed * rise) / speed;
    // The loop needs a while to forget the start; the last whole turn at speed is judged where there is one.
    const turn = (2 * Math.PI * move.radius) / speed;
    this.to = rise + Math.max(0, cruise);
    this.from = Math.max(rise + Math.min(0.1, 0.2 * Math.max(0, cruise)), this.to - turn);
  }

  take(t: number): void {
    const [first, second] = this.axes as readonly [AxisRun, AxisRun];
    // The machinist sets zero with the weight on: what it bends at the start is no fault of the circle.
    this.origin ??= [first.io[ACTUAL]!, second.io[ACTUAL]!];
    if (this.atStart.length === 0) this.atStart = this.axes.map((axis) => axis.errorParts());
    if (t < this.from || t > this.to) return;
    const R = this.radius;
    const x = first.io[ACTUAL]! - this.origin[0];
    const y = second.io[ACTUAL]! - this.origin[1] - R;
    const far = Math.hypot(x, y);
    const deviation = far - R;
    if (deviation < this.smallest) {
      this.smallest = deviation;
      this.inmost = this.parts(x / far, y / far);
    }
    if (deviation > this.largest) {
      this.largest = deviation;
      this.outmost = this.parts(x / far, y / far);
    }
    this.total += deviation;
    this.count++;
    const angle = Math.atan2(x, -y);
    const degree = Math.floor(((angle < 0 ? angle + 2 * Math.PI : angle) * 180) / Math.PI) % 360;
    this.byDegree[degree] = deviation;
  }

  /** What the deviation is made of where outwards is the way (nx, ny). */
  private parts(nx: number, ny: number): DeviationParts {
    const [x, y] = this.axes.map((axis, at) => {
      const now = axis.errorParts();
      const start = this.atStart[at]!;
      return {
        lag: now.lag - start.lag,
        play: now.play - start.play,
        yielding: now.yielding - start.yielding,
      };
    }) as [DeviationParts, DeviationParts];
    return {
      lag: -nx * x.lag - ny * y.lag,
      play: -nx * x.play - ny * y.play,
      yielding: -nx * x.yielding - ny * y.yielding,
    };
  }

  finish(): Roundness | null {
    if (this.count === 0) return null;
    const { outmost, inmost } = this;
    return {
      roundness: this.largest - this.smallest,
      parts: {
        lag: outmost.lag - inmost.lag,
        play: outmost.play - inmost.play,
        yielding: outmost.yielding - inmost.yielding,
      },
      smallest: this.smallest,
      largest: this.largest,
      meanRadius: this.total / this.count,
      byDegree: this.byDegree,
    };
  }
}

const NOTHING: DeviationParts = { lag: 0, play: 0, yielding: 0 };

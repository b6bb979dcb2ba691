/** Measures how round a circle came out, while it is run. */
import type { Move } from './moves.ts';
import { reachable } from './reference.ts';
import type { Roundness } from './run.ts';

/** Only what is run at full speed counts: the rises at either end are left out. */
export class CircleGauge {
  private readonly radius: number;
  private readonly from: number;
  private readonly to: number;
  private readonly byDegree = new Float64Array(360);
  private smallest = Number.POSITIVE_INFINITY;
  private largest = Number.NEGATIVE_INFINITY;
  private total = 0;
  private count = 0;

  constructor(move: Extract<Move, { kind: 'circle' }>) {
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

  take(t: number, x: number, y: number): void {
    if (t < this.from || t > this.to) return;
    const R = this.radius;
    const deviation = Math.hypot(x, y - R) - R;
    if (deviation < this.smallest) this.smallest = deviation;
    if (deviation > this.largest) this.largest = deviation;
    this.total += deviation;
    this.count++;
    const angle = Math.atan2(x, R - y);
    const degree = Math.floor(((angle < 0 ? angle + 2 * Math.PI : angle) * 180) / Math.PI) % 360;
    this.byDegree[degree] = deviation;
  }

  finish(): Roundness | null {
    if (this.count === 0) return null;
    return {
      roundness: this.largest - this.smallest,
      smallest: this.smallest,
      largest: this.largest,
      meanRadius: this.total / this.count,
      byDegree: this.byDegree,
    };
  }
}

/** Notes how an axis runs on once nothing drives it after its command any more: the mains have failed, or its drive is off. */
import type { Moment, RunOut } from './run.ts';

/** m/s below which the slide counts as standing. */
export const STANDS = 1e-6;

export class RunningOn {
  private mains: Moment | null = null;
  private drive: Moment | null = null;
  private from = 0;
  private way = 0;
  private farthest = 0;
  /** s at which it was last seen to move. */
  lastMoving = 0;
  /** Whether there is anything to note. */
  begun = false;

  /** The mains fail, or the drive lets go, with the slide at `place` (m) and `speed` (m/s). */
  begin(what: 'mains' | 'drive', at: number, place: number, speed: number): void {
    this[what] ??= { at, place, speed };
    if (this.begun) return;
    this.begun = true;
    this.from = place;
    this.farthest = place;
    this.way = Math.sign(speed);
    this.lastMoving = at;
  }

  observe(t: number, place: number, speed: number): void {
    if (speed > STANDS || speed < -STANDS) this.lastMoving = t;
    // From rest the first way it takes is its way.
    if (this.way === 0) this.way = Math.sign(place - this.from);
    if ((place - this.farthest) * this.way > 0) this.farthest = place;
  }

  /** With where the slide is (m), and how fast (m/s), at the end of the run. */
  finish(place: number, speed: number): RunOut | null {
    if (!this.begun) return null;
    const stands = Math.abs(speed) <= STANDS;
    return {
      mainsOff: this.mains,
      driveOff: this.drive,
      farthest: this.farthest,
      end: place,
      restAt: stands ? this.lastMoving : null,
      speed: stands ? 0 : speed,
    };
  }
}

/** What is noted of one axis while it runs: peaks, limits, settling, lost motion. */

import * as ioPlaces from './io.ts';
import type { EnergyBalance, RunOut, Summary } from './run.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { ACTUAL, AMPERES, COMMANDED, FOLLOWING, REFERENCE1, SPEED, T } = ioPlaces;

/** A limit let go for less than this is still the same episode, s. */
const EPISODE = 0.005;
/** A loop that swings from limit to limit so often, each time within `SWING` seconds, is unstable. */
const SWINGS = 10;
const SWING = 0.05;

export class Notes {
  peakFollowing = 0;
  peakFollowingAt = 0;
  /** −1 ahead of its command at that moment, 1 behind it; 0 where the command goes no way. */
  peakFollowingSide = 0;
  peakSlideError = 0;
  overshoot = 0;
  lastOutside = 0;
  peakCurrent = 0;
  peakSpeed = 0;
  atCurrentLimit = 0;
  atVoltageLimit = 0;
  unstable: { from: number; says: string } | null = null;
  stalledAt = Number.POSITIVE_INFINITY;
  /** m where the slide stood at each mark of the reference. */
  readonly places: number[] = [];
  private way = 0;
  /** m of following error when it was let go, NaN while it still follows its command. */
  private leftAt = Number.NaN;
  private follows = true;
  private lastCurrentCut = Number.NEGATIVE_INFINITY;
  private lastVoltageCut = Number.NEGATIVE_INFINITY;
  private lastSwing = Number.NEGATIVE_INFINITY;
  private side = 0;
  private swings = 0;
  private swingsFrom = 0;
  private readonly settleBand: number;

  constructor(settleBand: number) {
    this.settleBand = settleBand;
  }

  /** Takes the numbers of one look; `over` once the command has come to rest. */
  observe(io: Float64Array, over: boolean): void {
    const t = io[T]!;
    const commanded = io[COMMANDED]!;
    const actual = io[ACTUAL]!;
    const following = io[FOLLOWING]!;
    const rate = io[REFERENCE1]!;
    const current = io[AMPERES]!;
    const speed = io[SPEED]!;
    if (this.follows) {
      const size = following < 0 ? -following : following;
      if (!over && rate !== 0) this.way = rate > 0 ? 1 : -1;
      else if (over && this.way === 0) this.way = Math.sign(commanded);
      if (size > this.peakFollowing) {
        this.peakFollowing = size;
        this.peakFollowingAt = t;
        this.peakFollowingSide = following * this.way;
      }
      if (size > this.settleBand) this.lastOutside = t;
      const off = commanded > actual ? commanded - actual : actual - commanded;
      if (off > this.peakSlideError) this.peakSlideError = off;
      if (over) {
        const beyond = -following * this.way;
        if (beyond > this.overshoot) this.overshoot = beyond;
      }
    }
    const i = current < 0 ? -current : current;
    if (i > this.peakCurrent) this.peakCurrent = i;
    const w = speed < 0 ? -speed : speed;
    if (w > this.peakSpeed) this.peakSpeed = w;
  }

  /** From here on nothing drives it after its command, so nothing more is held against that. */
  letGo(following: number): void {
    if (!this.follows) return;
    this.follows = false;
    this.leftAt = following;
  }

  /** A sample with a command cut at a limit; whether an episode begins. */
  cutCurrent(t: number, h: number, side: number): boolean {
    this.atCurrentLimit += h;
    const begins = t - this.lastCurrentCut > EPISODE;
    this.lastCurrentCut = t;
    this.swing(t, side);
    return begins;
  }

  cutVoltage(t: number, h: number, side: number): boolean {
    this.atVoltageLimit += h;
    const begins = t - this.lastVoltageCut > EPISODE;
    this.lastVoltageCut = t;
    this.swing(t, side);
    return begins;
  }

  private swing(t: number, side: number): void {
    if (side === this.side) return;
    if (t - this.lastSwing > SWING) {
      this.swings = 0;
      this.swingsFrom = t;
    }
    this.side = side;
    this.lastSwing = t;
    if (++this.swings === SWINGS && !this.unstable)
      this.unstable = {
        from: this.swingsFrom,
        says: `unstable: it swings from limit to limit from ${seconds(this.swingsFrom)} on`,
      };
  }

  summary(end: {
    readonly until: number;
    readonly referenceEnd: number;
    readonly finalFollowing: number;
    readonly rmsCurrent: number | null;
    readonly sticks: number;
    readonly slips: number;
    readonly distance: number | null;
    readonly travelAfterOff: number | null;
    readonly runOut: RunOut | null;
    readonly stepsLost: number;
    readonly energy: EnergyBalance | null;
  }): Summary {
    const { places } = this;
    const settled = this.follows && this.lastOutside < end.until - 1e-9 && end.until > end.referenceEnd;
    return {
      peakFollowing: this.peakFollowing,
      peakFollowingAt: this.peakFollowingAt,
      peakFollowingSide: this.peakFollowingSide > 0 ? 'behind' : this.peakFollowingSide < 0 ? 'ahead' : 'off',
      peakSlideError: this.peakSlideError,
      overshoot: this.overshoot,
      finalFollowing: this.follows ? end.finalFollowing : this.leftAt,
      settled: settled ? Math.max(0, this.lastOutside - end.referenceEnd) : null,
      settleBand: this.settleBand,
      peakCurrent: this.peakCurrent,
      rmsCurrent: end.rmsCurrent,
      peakSpeed: this.peakSpeed,
      atCurrentLimit: this.atCurrentLimit,
      atVoltageLimit: this.atVoltageLimit,
      sticks: end.sticks,
      slips: end.slips,
      lostMotion:
        end.distance !== null && places.length >= 4
          ? Math.abs(end.distance - (places[2]! - places[3]!))
          : null,
      travelAfterOff: end.travelAfterOff,
      runOut: end.runOut,
      stalled: Number.isFinite(this.stalledAt) ? { at: this.stalledAt, stepsLost: end.stepsLost } : null,
      unstable: this.unstable,
      energy: end.energy,
    };
  }
}

/** Three figures, as people read a time. */
export const seconds = (t: number): string => `${Number(t.toPrecision(3))} s`;

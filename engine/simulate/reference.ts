/**
 * Where a move wants the axis to be: cubic pieces in time, read by a cursor that only goes forward.
 * A circle is the same along its arc, bent into two coordinates.
 */

import * as ioPlaces from './io.ts';
import type { Move, Profile } from './moves.ts';

// Constants of the file's own: an imported name is looked up and checked at every use, which tells in these loops.
const { REFERENCE, REFERENCE1, REFERENCE2, T } = ioPlaces;

/** What `series` writes of each quantity: value and time derivatives over factorials. */
const REFERENCE_ORDER = 16;

export interface Reference {
  /** s; the command changes its law here, in rising order. */
  readonly breaks: readonly number[];
  /** s when the command has come to rest for good. */
  readonly end: number;
  /** s at which each pause of a move there and back is over. */
  readonly marks: readonly number[];
  /** Writes position, speed and acceleration at the time in `io` into it. Times must not fall. */
  at(io: Float64Array): void;
  /** The same in other units: `by` of ours for one of its. */
  scaled(by: number): Reference;
  /** Taylor coefficients of the position about `t`, as far as `out` is long; from the right at a break. */
  series(t: number, out: Float64Array): void;
}

/** Cubic pieces under way. */
class Path implements Reference {
  readonly marks: number[] = [];
  private readonly starts: number[] = [0];
  /** Four coefficients a piece. */
  private readonly cubic: number[] = [];
  private time = 0;
  private position = 0;
  private speed = 0;
  private cursor = 0;

  get breaks(): readonly number[] {
    return this.starts;
  }

  get end(): number {
    return this.time;
  }

  /** Goes on for `dt` with this acceleration and jerk. */
  go(dt: number, acceleration = 0, jerk = 0): this {
    if (!(dt > 0)) return this;
    this.cubic.push(this.position, this.speed, acceleration / 2, jerk / 6);
    this.time += dt;
    this.starts.push(this.time);
    this.position += dt * (this.speed + dt * (acceleration / 2 + (dt * jerk) / 6));
    this.speed += dt * (acceleration + (dt * jerk) / 2);
    return this;
  }

  mark(): this {
    this.marks.push(this.time);
    return this;
  }

  jump(position: number, speed = 0): this {
    this.position += position;
    this.speed = speed;
    return this;
  }

  private seek(t: number): number {
    while (this.cursor + 1 < this.starts.length && this.starts[this.cursor + 1]! <= t) this.cursor++;
    return this.cursor;
  }

  at(io: Float64Array): void {
    const t = io[T]!;
    const piece = this.seek(t);
    const { cubic } = this;
    if (4 * piece >= cubic.length) {
      io[REFERENCE] = this.position;
      io[REFERENCE1] = 0;
      io[REFERENCE2] = 0;
      return;
    }
    const s = t - this.starts[piece]!;
    const c1 = cubic[4 * piece + 1]!;
    const c2 = cubic[4 * piece + 2]!;
    const c3 = cubic[4 * piece + 3]!;
    io[REFERENCE] = cubic[4 * piece]! + s * (c1 + s * (c2 + s * c3));
    io[REFERENCE1] = c1 + s * (2 * c2 + 3 * s * c3);
    io[REFERENCE2] = 2 * c2 + 6 * s * c3;
  }

  /** The same path in other units: `by` of ours for one of its. */
  scaled(by: number): Path {
    const path = new Path();
    path.marks.push(...this.marks);
    path.starts.splice(0, 1, ...this.starts);
    path.cubic.push(...this.cubic.map((each) => each * by));
    path.time = this.time;
    path.position = this.position * by;
    return path;
  }

  series(t: number, out: Float64Array): void {
    const piece = this.seek(t);
    out.fill(0);
    if (4 * piece >= this.cubic.length) {
      out[0] = this.position;
      return;
    }
    const s = t - this.starts[piece]!;
    const c1 = this.cubic[4 * piece + 1]!;
    const c2 = this.cubic[4 * piece + 2]!;
    const c3 = this.cubic[4 * piece + 3]!;
    out[0] = this.cubic[4 * piece]! + s * (c1 + s * (c2 + s * c3));
    out[1] = c1 + s * (2 * c2 + 3 * s * c3);
    out[2] = c2 + 3 * s * c3;
    out[3] = c3;
  }
}

/** One coordinate of a circle of radius R run along an arc path: R sin(s/R) or R (1 − cos(s/R)). */
class Round implements Reference {
  private readonly arc: Path;
  private readonly radius: number;
  private readonly second: boolean;
  private readonly along = new Float64Array(REFERENCE_ORDER + 1);
  private readonly sine = new Float64Array(REFERENCE_ORDER + 1);
  private readonly cosine = new Float64Array(REFERENCE_ORDER + 1);

  constructor(arc: Path, radius: number, second: boolean) {
    this.arc = arc;
    this.radius = radius;
    this.second = second;
  }

  get breaks(): readonly number[] {
    return this.arc.breaks;
  }

  get end(): number {
    return this.arc.end;
  }

  get marks(): readonly number[] {
    return this.arc.marks;
  }

  at(io: Float64Array): void {
    this.arc.at(io);
    const R = this.radius;
    const angle = io[REFERENCE]! / R;
    const w = io[REFERENCE1]! / R;
    const dw = io[REFERENCE2]! / R;
    const s = Math.sin(angle);
    const c = Math.cos(angle);
    if (this.second) {
      io[REFERENCE] = R * (1 - c);
      io[REFERENCE1] = R * s * w;
      io[REFERENCE2] = R * (c * w * w + s * dw);
    } else {
      io[REFERENCE] = R * s;
      io[REFERENCE1] = R * c * w;
      io[REFERENCE2] = R * (c * dw - s * w * w);
    }
  }

  scaled(by: number): Round {
    return new Round(this.arc.scaled(by), this.radius * by, this.second);
  }

  series(t: number, out: Float64Array): void {
    const { along: u, sine: s, cosine: c, radius: R } = this;
    this.arc.series(t, u);
    for (let k = 0; k < u.length; k++) u[k] = u[k]! / R;
    s[0] = Math.sin(u[0]!);
    c[0] = Math.cos(u[0]!);
    const last = Math.min(REFERENCE_ORDER, out.length - 1);
    for (let k = 1; k <= last; k++) {
      let up = 0;
      let down = 0;
      for (let j = 1; j <= k; j++) {
        up += j * u[j]! * c[k - j]!;
        down -= j * u[j]! * s[k - j]!;
      }
      s[k] = up / k;
      c[k] = down / k;
    }
    for (let k = 0; k <= last; k++) out[k] = this.second ? (k === 0 ? R : 0) - R * c[k]! : R * s[k]!;
  }
}

/** Time from rest to `speed`, and how it is shared between jerk and steady acceleration. */
function rise(speed: number, { acceleration, jerk }: Profile): { jerkTime: number; steady: number } {
  if (!(jerk > 0)) return { jerkTime: 0, steady: speed / acceleration };
  const jerkTime = Math.min(acceleration / jerk, Math.sqrt(speed / jerk));
  return { jerkTime, steady: Math.max(0, speed / (jerkTime * jerk) - jerkTime) };
}

/** From rest to `speed`, or back to rest with sign −1 of `way`; `sign` is the direction along the axis. */
function change(path: Path, speed: number, profile: Profile, sign: number): void {
  const { jerkTime, steady } = rise(speed, profile);
  const jerk = profile.jerk * sign;
  const top = profile.jerk > 0 ? jerk * jerkTime : profile.acceleration * sign;
  path.go(jerkTime, 0, jerk).go(steady, top).go(jerkTime, top, -jerk);
}

/** The speed that a move of this length can reach. */
export function reachable(distance: number, profile: Profile): number {
  const needed = (speed: number): number => {
    const { jerkTime, steady } = rise(speed, profile);
    return speed * (2 * jerkTime + steady);
  };
  if (needed(profile.speed) <= distance) return profile.speed;
  if (!(profile.jerk > 0)) return Math.sqrt(distance * profile.acceleration);
  let low = 0;
  let high = profile.speed;
  for (let turn = 0; turn < 200 && low < high; turn++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (needed(middle) > distance) high = middle;
    else low = middle;
  }
  return low;
}

function travel(path: Path, distance: number, profile: Profile): void {
  const sign = Math.sign(distance);
  const far = Math.abs(distance);
  if (far === 0) return;
  const speed = reachable(far, profile);
  const { jerkTime, steady } = rise(speed, profile);
  change(path, speed, profile, sign);
  path.go((far - speed * (2 * jerkTime + steady)) / speed);
  change(path, speed, profile, -sign);
}

function single(move: Exclude<Move, { kind: 'circle' }>): Path {
  const path = new Path();
  switch (move.kind) {
    case 'rapid':
      travel(path, move.distance, move);
      return path;
    case 'step':
      return path.jump(move.distance);
    case 'ramp':
      return path.jump(0, move.speed).go(move.duration).jump(0);
    case 'reversal':
      // Once there and back first, so that the play is taken up on a known side.
      for (const way of [1, -1, 1, -1]) {
        travel(path, way * move.distance, move);
        path.go(move.pause).mark();
      }
      return path;
    case 'small-steps':
      for (let step = 0; step < move.count; step++) path.jump(move.size).go(move.pause);
      return path;
    case 'force-step':
      return path.go(move.at + move.duration);
    case 'brake-from-rapid': {
      change(path, move.speed, move, 1);
      path.go(move.cruise).go(move.speed / move.stop, -move.stop);
      return path.jump(0);
    }
    case 'power-cut':
      change(path, move.speed, move, 1);
      // The command runs on for as long as anything may: nobody reads it any more.
      return path.go(move.cruise).go(6);
    case 'drop':
      return path.go(move.at);
  }
}

/** One reference in m, or two for a circle. Each is read by one reader only. */
export function referencesOf(move: Move): readonly [Reference] | readonly [Reference, Reference] {
  if (move.kind !== 'circle') return [single(move)];
  const arc = (): Path => {
    const path = new Path();
    travel(path, 2 * Math.PI * move.radius * move.turns, move);
    return path;
  };
  return [new Round(arc(), move.radius, false), new Round(arc(), move.radius, true)];
}

/** s into a move at which the mains fail, the drive is switched off, or a force sets in and ends. */
export interface Happenings {
  readonly mainsOff: number;
  readonly driveOff: number;
  readonly force: number;
  readonly forceFrom: number;
  readonly forceTo: number;
}

const NEVER = Number.POSITIVE_INFINITY;

export function happeningsOf(move: Move): Happenings {
  const calm = { mainsOff: NEVER, driveOff: NEVER, force: 0, forceFrom: NEVER, forceTo: NEVER };
  switch (move.kind) {
    case 'force-step':
      return { ...calm, force: move.force, forceFrom: move.at, forceTo: move.at + move.duration };
    case 'drop':
      return { ...calm, driveOff: move.at };
    case 'power-cut': {
      const { jerkTime, steady } = rise(move.speed, move);
      return { ...calm, mainsOff: 2 * jerkTime + steady + move.cruise };
    }
    default:
      return calm;
  }
}

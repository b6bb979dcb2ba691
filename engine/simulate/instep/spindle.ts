/** The spindle in time: its drive with its torque at each speed, its inertia, drag and the torque of the cut. */
import { type SpindleInStep, torqueAt } from './model.ts';

/** Longest step of the spindle alone, s. */
const STEP = 5e-5;
const NEVER = Number.POSITIVE_INFINITY;

export interface SpindleEnergy {
  /** J from the drive, back into it while it brakes, lost in bearings, spent in the cut. */
  readonly given: number;
  readonly braked: number;
  readonly drag: number;
  readonly cut: number;
  /** J that the turning mass holds more than at the start. */
  readonly stored: number;
  /** J that do not add up. */
  readonly residual: number;
}

export class SpindleRun {
  /** rad and rad/s. */
  angle = 0;
  speed: number;
  /** N·m of the drive in the last step. */
  torque = 0;
  private readonly of: SpindleInStep;
  private readonly startSpeed: number;
  private readonly proportional: number;
  private readonly integral: number;
  private wanted: number;
  private next = 0;
  private nextAt = NEVER;
  private held = 0;
  private given = 0;
  private braked = 0;
  private dragged = 0;
  private cut = 0;

  /** Turns at `speed`, as if it had done so for long, or stands at 0. */
  constructor(of: SpindleInStep, speed: number) {
    this.of = of;
    this.speed = speed;
    this.startSpeed = speed;
    this.wanted = speed;
    // Two equal poles at half the bandwidth each: quick, without swinging over.
    this.proportional = of.inertia * of.bandwidth;
    this.integral = (of.inertia * of.bandwidth ** 2) / 4;
    this.held = speed === 0 ? 0 : Math.sign(speed) * of.drag;
  }

  /** Asks for another speed; the drive acts on it after its delay. */
  ask(speed: number, now: number): void {
    this.next = speed;
    this.nextAt = now + this.of.delay;
  }

  /** Whether a speed has been asked on which the drive does not act yet. */
  get waits(): boolean {
    return this.nextAt < NEVER;
  }

  /** Goes on from `from` for `span` s against a cut that takes `cut` N·m in either direction. */
  advance(from: number, span: number, cut: number): void {
    const end = from + span;
    let t = from;
    while (end - t > 1e-12) {
      if (t >= this.nextAt - 1e-12) {
        this.wanted = this.next;
        this.nextAt = NEVER;
      }
      const until = Math.min(end, t + STEP, Math.max(t + 1e-9, this.nextAt));
      this.step(until - t, cut);
      t = until;
    }
  }

  /** What the drive makes at a speed, N·m, and whether a limit cut it. */
  private drive(speed: number): readonly [torque: number, cut: boolean] {
    const { driving, braking } = this.of;
    const asked = this.proportional * (this.wanted - speed) + this.held;
    const way = speed === 0 ? Math.sign(asked) : Math.sign(speed);
    const size = Math.abs(speed);
    const most = asked * way >= 0 ? torqueAt(driving, size) : torqueAt(braking, size);
    return Math.abs(asked) <= most ? [asked, false] : [Math.sign(asked) * most, true];
  }

  private step(dt: number, cut: number): void {
    const { inertia, drag } = this.of;
    const before = this.speed;
    const friction = drag + cut;
    const [first, isCut] = this.drive(before);
    if (!isCut) this.held += this.integral * (this.wanted - before) * dt;
    if (before === 0) {
      this.fromRest(dt, first, friction, cut);
      return;
    }
    const way = Math.sign(before);
    // Torque in the middle of the step, by the speed it has there.
    const half = before + ((first - way * friction) / inertia) * (dt / 2);
    const [torque] = half * way > 0 ? this.drive(half) : [first];
    const rate = (torque - way * friction) / inertia;
    const after = before + rate * dt;
    if (after * way > 0) {
      this.book(torque, ((before + after) / 2) * dt, friction, cut);
      this.speed = after;
      return;
    }
    // It stands within the step: friction turns round only if the drive overcomes it.
    const stop = Math.min(dt, -before / rate);
    this.book(torque, (before / 2) * stop, friction, cut);
    this.speed = 0;
    if (dt - stop > 1e-12) this.fromRest(dt - stop, this.drive(0)[0], friction, cut);
  }

  private fromRest(dt: number, torque: number, friction: number, cut: number): void {
    this.torque = torque;
    if (Math.abs(torque) <= friction) return;
    const rate = (torque - Math.sign(torque) * friction) / this.of.inertia;
    this.book(torque, (rate * dt * dt) / 2, friction, cut);
    this.speed = rate * dt;
  }

  private book(torque: number, turned: number, friction: number, cut: number): void {
    this.torque = torque;
    this.angle += turned;
    const work = torque * turned;
    if (work >= 0) this.given += work;
    else this.braked -= work;
    const size = Math.abs(turned);
    this.cut += cut * size;
    this.dragged += (friction - cut) * size;
  }

  energy(): SpindleEnergy {
    const { given, braked, dragged: drag, cut } = this;
    const stored = (this.of.inertia * (this.speed ** 2 - this.startSpeed ** 2)) / 2;
    return { given, braked, drag, cut, stored, residual: given - braked - drag - cut - stored };
  }
}

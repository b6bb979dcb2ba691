/** In which order enable, power, brake and lock went after an act. */
import { standingOf } from './acts.ts';
import type { Model } from './model.ts';
import type { State } from './state.ts';

/** A drive that has this long to brake before it can no more counts as braking, in seconds. */
const TIME_TO_BRAKE = 0.1;
/** Seconds without drive and brake that count as a drop. */
const DROP = 0.005;

/** Seconds after the act for each motion; Infinity for not. `watch` is handed to the simulation. */
export class StopOrder {
  readonly #model: Model;
  readonly enableOff: number[];
  readonly torqueOff: number[];
  readonly brakeOn: number[];
  /** When the drive no longer holds it. */
  readonly letGo: number[];
  /** For each lock. */
  readonly unlocked: number[];
  /** Whether each was driven when the act began. */
  readonly moved: readonly boolean[];
  readonly #began: number;

  constructor(model: Model, state: State) {
    this.#model = model;
    this.#began = state.time;
    this.moved = model.motions.map((_, at) => standingOf(model, state, at).driven);
    const never = () => model.motions.map(() => Number.POSITIVE_INFINITY);
    this.enableOff = never();
    this.torqueOff = never();
    this.brakeOn = never();
    this.letGo = never();
    this.unlocked = model.locks.map(() => Number.POSITIVE_INFINITY);
  }

  watch = (state: State): void => {
    const after = state.time - this.#began;
    for (let at = 0; at < this.#model.motions.length; at++) {
      const { torque, driven, open, holds } = standingOf(this.#model, state, at);
      if (!driven) first(this.enableOff, at, after);
      if (!torque) first(this.torqueOff, at, after);
      if (!holds) first(this.letGo, at, after);
      if (!open && this.#model.motions[at]!.brake >= 0) first(this.brakeOn, at, after);
    }
    for (const [at, { lock }] of this.#model.locks.entries())
      if (state.at[lock] === 1) first(this.unlocked, at, after);
  };

  /** For a load that falls: the drive let go before the brake held. */
  drops(at: number): boolean {
    const letGo = this.letGo[at]!;
    return Number.isFinite(letGo) && this.brakeOn[at]! - letGo > DROP;
  }

  /** The drive is told to stop and has time to before it can no more. */
  controlled(at: number): boolean {
    const { brakes } = this.#model.drives[this.#model.motions[at]!.drive]!;
    return brakes && this.torqueOff[at]! - this.enableOff[at]! > TIME_TO_BRAKE;
  }
}

function first(times: number[], at: number, now: number): void {
  if (now < times[at]!) times[at] = now;
}

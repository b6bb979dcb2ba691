/** Rigid tapping: torque, how far the tap runs on, how deep to drill, and the highest speed for a hole. */
import { tapDepth } from '../handbook/tap-depth.ts';
import { tapStop } from '../handbook/tap-stop.ts';
import { tapTorque } from '../handbook/tap-torque.ts';
import { tapTorqueSimple } from '../handbook/tap-torque-simple.ts';
import { largest } from './bisect.ts';
import { work } from './dimensions.ts';
import type { Thread } from './types.ts';

/** The spindle as seen at its nose; SI. */
export interface TapSpindle {
  /** kg·m². */
  readonly inertia: number;
  /** Braking torque, N·m. */
  readonly torque: number;
  /** Speed above which the torque falls, rad/s. */
  readonly baseSpeed: number;
  /** Time until it begins to brake, s. */
  readonly delay: number;
  readonly highest: number;
  /** Gains of axis and spindle, 1/s. */
  readonly gains: readonly [axis: number, spindle: number];
}

export interface TapHole {
  /** Full thread wanted, metres. */
  readonly thread: number;
  /** Threads of the tap's chamfer. */
  readonly chamfer: number;
  readonly chips: number;
  /** Depth that may be drilled; absent for a through hole. */
  readonly deepest?: number;
  /** Float of the tap holder; absent where the axis follows the spindle. */
  readonly float?: number;
}

export interface TapPlan {
  readonly speed: number;
  readonly overrun: number;
  readonly hole: number;
  readonly float: number;
  readonly step: number;
  readonly stopTime: number;
  /** Highest speed that keeps hole and float within what there is, rad/s; 0 where none does. */
  readonly highest: number;
}

export function planTap(thread: Thread, spindle: TapSpindle, hole: TapHole, wanted: number): TapPlan {
  const at = (n: number) => {
    const stop = work(tapStop, {
      J: spindle.inertia,
      T: spindle.torque,
      n_b: spindle.baseSpeed,
      n,
      P: thread.lead,
      t_d: spindle.delay,
      d: thread.pitch,
    });
    const depth = work(tapDepth, {
      L: hole.thread,
      P: thread.lead,
      c: (hole.chamfer * thread.pitch) / thread.lead,
      x: stop.x_all,
      chips: hole.chips,
      n,
      Kz: spindle.gains[0],
      Ks: spindle.gains[1],
    });
    return { stop, depth };
  };
  const { stop, depth } = at(wanted);
  const fits = (n: number): boolean => {
    if (n === 0) return true;
    const { depth: d } = at(n);
    return (
      (hole.deepest === undefined || d.L_hole <= hole.deepest) &&
      (hole.float === undefined || d.float <= hole.float)
    );
  };
  return {
    speed: wanted,
    overrun: stop.x_all,
    hole: depth.L_hole,
    float: depth.float,
    step: depth.e,
    stopTime: stop.t + spindle.delay,
    highest: largest(spindle.highest, fits),
  };
}

/** Torque by both published formulas, N·m; absent where the material has no factor for it. */
export function tapTorques(
  thread: Thread,
  hole: number,
  material: { readonly byHole?: number; readonly byPitch?: number },
  factor: number,
  speed: number,
): { readonly byHole?: number; readonly byPitch?: number } {
  const { diameter: d, pitch: P, flankAngle } = thread;
  return {
    ...(material.byHole === undefined
      ? {}
      : {
          byHole: work(tapTorque, {
            d,
            D0: hole,
            alpha: flankAngle / 2,
            kt: material.byHole,
            K: factor,
            n: speed,
          }).T,
        }),
    ...(material.byPitch === undefined
      ? {}
      : { byPitch: work(tapTorqueSimple, { d, P, kt: material.byPitch, n: speed }).T }),
  };
}

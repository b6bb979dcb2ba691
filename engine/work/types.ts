/** A spindle as threads, taps, cuts and the simulation in step want it: plain numbers, SI and radians, at the spindle. */
import type { Basis } from '../quantity/types.ts';

/** Torque at a speed, both at the spindle: rad/s and N·m. Speeds rise from point to point; between points, straight lines. */
export interface TorqueAtSpeed {
  readonly speed: number;
  readonly torque: number;
}

/** One belt or gear range. */
export interface SpindleRange {
  readonly id: string;
  readonly name: string;
  /** Motor turns for one turn of the spindle. */
  readonly ratio: number;
  /** Lowest speed that still gives useful torque without overheating the motor, and the highest allowed in this range, rad/s. */
  readonly lowest: number;
  readonly highest: number;
  /** All that turns, about the spindle's axis, kg·m². */
  readonly inertia: number;
  /** Torque it can hold. */
  readonly continuous: readonly TorqueAtSpeed[];
  /** Torque for starting, some seconds. */
  readonly peak: readonly TorqueAtSpeed[];
  /** Torque the drive brakes with, positive; all zero where it only runs down. */
  readonly braking: readonly TorqueAtSpeed[];
  /** Torque that bearings and belts take, N·m. */
  readonly drag: number;
}

export interface SpindleFeedbackModel {
  /** Lines of the encoder in one of its turns. */
  readonly lines: number;
  /** Encoder turns for one turn of the spindle, as a fraction of whole numbers where it is geared. */
  readonly turns: { readonly encoder: number; readonly spindle: number };
  readonly index: boolean;
  /** Highest frequency of one channel, Hz; null where it is not known. */
  readonly highestFrequency: number | null;
}

export interface SpeedLimit {
  /** 'chuck', 'jaws', 'bearing', 'pulley', 'motor', 'drive', 'feedback'. */
  readonly by: string;
  /** rad/s at the spindle; null where it is not known, which is no permission. */
  readonly speed: number | null;
}

export interface SpindleModel {
  /** Id of the chain. */
  readonly chain: string;
  readonly ranges: readonly SpindleRange[];
  /** Id of the range it is kept in; absent where it may be changed to any. */
  readonly kept?: string | undefined;
  readonly limits: readonly SpeedLimit[];
  readonly feedback: SpindleFeedbackModel | null;
  /** The weakest basis among what it was made from. */
  readonly basis: Basis;
}

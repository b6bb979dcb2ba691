/** What a simulation answers. Plain numbers, texts and typed arrays: cheap to post from a worker. */
import type { RunEvent } from './events.ts';
import type { Move } from './moves.ts';
import type { Trace } from './record.ts';

/** J of one axis over the run; `residual` is what does not add up. */
export interface EnergyBalance {
  /** Given to the motor by the drive. */
  readonly input: number;
  readonly copper: number;
  readonly motorFriction: number;
  readonly slideFriction: number;
  readonly damping: number;
  /** Work against weight and force. */
  readonly load: number;
  /** Lost where a winding is opened or flanks meet. */
  readonly switching: number;
  /** More in motion, spring and winding at the end than at the start. */
  readonly stored: number;
  readonly residual: number;
  /** The residual as a share of the largest term. */
  readonly relative: number;
}

/** How an axis runs on after the mains failed or its drive let go. */
export interface RunOut {
  /** s, m where the slide then was, and m/s then; null where the mains stayed, and where the drive stayed on. */
  readonly mainsOff: Moment | null;
  readonly driveOff: Moment | null;
  /** m of the slide's place farthest along, and at the end of the run. */
  readonly farthest: number;
  readonly end: number;
  /** s at which it came to rest; null where it still moves when the run ends. */
  readonly restAt: number | null;
  /** m/s at the end of the run. */
  readonly speed: number;
}

export interface Moment {
  readonly at: number;
  readonly place: number;
  readonly speed: number;
}

export interface Summary {
  /** m: command less what the position loop sees, at its greatest while it still follows a command, and when. */
  readonly peakFollowing: number;
  readonly peakFollowingAt: number;
  /** On which side of its command it was then, the way the command goes; `off` where that goes no way. */
  readonly peakFollowingSide: 'behind' | 'ahead' | 'off';
  /** m: command less where the slide is. */
  readonly peakSlideError: number;
  /** m beyond the end of the move. */
  readonly overshoot: number;
  /** m: following error at the end of the run, or when it was let go. */
  readonly finalFollowing: number;
  /** s after the command's end until the error stays within `settleBand`; null when it does not. */
  readonly settled: number | null;
  readonly settleBand: number;
  readonly peakCurrent: number;
  /** Null, like the energies, where none were booked. */
  readonly rmsCurrent: number | null;
  /** rad/s of the motor. */
  readonly peakSpeed: number;
  /** s at the current limit and at the voltage limit. */
  readonly atCurrentLimit: number;
  readonly atVoltageLimit: number;
  /** How often the slide came to rest and broke free again. */
  readonly sticks: number;
  readonly slips: number;
  /** m the slide stands apart when a place is reached from either side; null for other moves. */
  readonly lostMotion: number | null;
  /** m the slide runs on after the drive was switched off; null where it was not. */
  readonly travelAfterOff: number | null;
  /** Null where mains and drive stayed on. */
  readonly runOut: RunOut | null;
  /** A stepper out of step: when, and by how many full steps it is off at the end. */
  readonly stalled: { readonly at: number; readonly stepsLost: number } | null;
  readonly unstable: { readonly from: number; readonly says: string } | null;
  readonly energy: EnergyBalance | null;
}

/** m of deviation outwards, by what makes it. */
export interface DeviationParts {
  /** The motors' lag behind their commands. */
  readonly lag: number;
  /** The play of the screws. */
  readonly play: number;
  /** What the screws yield under friction, weight and inertia. */
  readonly yielding: number;
}

/** Places are counted from where the slides stand at the start, as after zeroing: what weight bends there stays out. */
export interface Roundness {
  /** m: greatest less least distance from the true circle over whole turns at speed. */
  readonly roundness: number;
  /** What the roundness is made of: greatest less least, part by part. */
  readonly parts: DeviationParts;
  readonly smallest: number;
  readonly largest: number;
  /** m by which the mean radius is off. */
  readonly meanRadius: number;
  /** m of deviation at each degree from the start, counted in the direction of travel. */
  readonly byDegree: Float64Array;
}

export interface SupplySummary {
  readonly lowest: number;
  readonly highest: number;
  readonly end: number;
  /** J taken from the mains, burnt in the dump resistor, and in the bleeder. */
  readonly taken: number;
  readonly dumped: number;
  readonly bled: number;
  /** J that do not add up. */
  readonly residual: number;
}

export interface Run extends Trace {
  readonly move: Move;
  readonly time: Float64Array;
  /** The second axis of a circle. */
  readonly second: (Trace & { readonly summary: Summary }) | null;
  readonly events: readonly RunEvent[];
  readonly summary: Summary;
  readonly trips: readonly { readonly at: number; readonly axis: number; readonly sentence: string }[];
  readonly circle: Roundness | null;
  readonly supply: SupplySummary;
  /** Why it ended before its time; null when it did not. */
  readonly stopped: string | null;
  /** s simulated, s between two looks (runs of the outer loops), looks, and steps by series. */
  readonly until: number;
  readonly look: number;
  readonly looks: number;
  readonly seriesSteps: number;
  /** Stretches with so many events that some were passed over. */
  readonly passedOver: number;
}

/** The buffers of a run, to hand over rather than copy when it is posted. */
export function buffersOf(run: Run): ArrayBuffer[] {
  const arrays = [run.time, run.commanded, run.actual, run.following, run.speed, run.current, run.bus];
  if (run.second) {
    const { commanded, actual, following, speed, current, bus } = run.second;
    arrays.push(commanded, actual, following, speed, current, bus);
  }
  if (run.circle) arrays.push(run.circle.byDegree);
  return arrays.map(({ buffer }) => buffer as ArrayBuffer);
}

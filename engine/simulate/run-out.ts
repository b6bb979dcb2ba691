/** What a run says of the end stop and of the other case beside it: run on uphill or downhill, dropped with a brake or without. */
import { weightTorque } from './constants.ts';
import { type AxisModel, travelPerRadian } from './model.ts';
import type { Move } from './moves.ts';
import type { Run } from './run.ts';

/** The model as the move takes it: a drop may leave its brake out. */
export const modelFor = (model: AxisModel, move: Move): AxisModel =>
  move.kind === 'drop' && move.brake === 'none' && model.brake !== null ? { ...model, brake: null } : model;

/** Whether it makes the move. That the drive lets go after the mains have failed is no fault of the move. */
export function doesTheMove(run: Run): boolean {
  const { summary, second, move } = run;
  const mainsOff = summary.runOut?.mainsOff;
  if (summary.stalled || summary.unstable || second?.summary.stalled || second?.summary.unstable)
    return false;
  if (run.stopped || run.trips.some(({ at }) => mainsOff == null || at < mainsOff.at)) return false;
  return !(move.kind === 'power-cut' && mainsOff && runsOn(run)! > roomOf(move));
}

/** m that the power cut leaves to the end stop; Infinity where that is not known. */
export const roomOf = (move: Move): number =>
  move.kind === 'power-cut' ? (move.room ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY;

/** m from where the mains failed to the farthest that the slide came; undefined where they did not fail. */
export function runsOn({ summary }: Run): number | undefined {
  const { runOut } = summary;
  return runOut?.mainsOff ? Math.abs(runOut.farthest - runOut.mainsOff.place) : undefined;
}

export interface EndStop {
  /** m from the moment the mains fail, and of that after the drive let go; null where the drive never did. */
  readonly fromMains: number;
  readonly fromDriveOff: number | null;
  /** m that were left to the end stop, and m/s with which it is met: null where it is not reached. Absent where not known. */
  readonly room?: { readonly left: number; readonly speed: number | null };
  /** Whether getting up to speed and running on take more than the whole travel; null where that is not known. */
  readonly anywhere: boolean | null;
}

/**
 * Whether it runs into an end stop after the mains failed; undefined where they did not, or the drive had let go before.
 * `travel`: m from stop to stop.
 */
export function coastIntoEnd(run: Run, model: AxisModel, travel?: number): EndStop | undefined {
  const fromMains = runsOn(run);
  const { runOut } = run.summary;
  if (fromMains === undefined || !runOut) return undefined;
  // A drive that let go before has told its own story.
  if (runOut.driveOff && runOut.driveOff.at < runOut.mainsOff!.at) return undefined;
  const left = roomOf(run.move);
  return {
    fromMains,
    fromDriveOff: runOut.driveOff ? Math.abs(runOut.farthest - runOut.driveOff.place) : null,
    ...(left < Number.POSITIVE_INFINITY
      ? { room: { left, speed: fromMains > left ? speedAfter(run, model, left) : null } }
      : {}),
    anywhere: travel === undefined ? null : Math.abs(runOut.farthest) > travel,
  };
}

/** m/s of the slide `distance` m after the mains failed, from what the run kept; 0 where it did not come so far. */
export function speedAfter(
  { summary, time, actual, speed }: Run,
  model: AxisModel,
  distance: number,
): number {
  const from = summary.runOut?.mainsOff;
  if (!from) return 0;
  const way = Math.sign(from.speed) || 1;
  const gone = (at: number): number => (actual[at]! - from.place) * way;
  const r = travelPerRadian(model);
  for (let at = 1; at < time.length; at++) {
    if (time[at]! < from.at || gone(at) < distance) continue;
    const step = gone(at) - gone(at - 1);
    const share = step > 0 ? Math.min(1, Math.max(0, (distance - gone(at - 1)) / step)) : 1;
    return Math.abs(speed[at - 1]! + share * (speed[at]! - speed[at - 1]!)) * r;
  }
  return 0;
}

export interface Beside {
  /** What is different, after 'the same': 'without its brake'. */
  readonly name: string;
  readonly model: AxisModel;
  readonly move: Move;
}

/** The other case that belongs beside a move, so that neither is taken for the whole; null where there is none. */
export function besideOf(model: AxisModel, move: Move): Beside | null {
  if (move.kind === 'drop' && model.brake !== null)
    return move.brake === 'none'
      ? { name: 'with its brake', model, move: { ...move, brake: 'fitted' } }
      : { name: 'without its brake', model, move: { ...move, brake: 'none' } };
  const weight = weightTorque(model);
  if (move.kind === 'power-cut' && weight !== 0)
    return {
      name: weight > 0 ? 'the other way, its weight driving it on' : 'the other way, against its weight',
      model: { ...model, slide: { ...model.slide, tilt: -model.slide.tilt } },
      move,
    };
  return null;
}

/** Turning back at the bottom of a tapped hole: overrun, depth to drill, float. */
import { largest } from '../threads/bisect.ts';
import type { Thread } from '../threads/index.ts';
import type { Habits } from './habits.ts';
import { stoppingAt } from './limits.ts';
import type { WorkAxis } from './machine.ts';
import type { SpindleModel } from './types.ts';

const TURN = 2 * Math.PI;

export interface Reversal {
  readonly range: string;
  /** s, rad and m from the order to turn back until the spindle stands. */
  readonly time: number;
  readonly angle: number;
  readonly overrun: number;
  /** m by which axis and spindle are out of step each way; it changes sign as the spindle turns back. */
  readonly step: number;
  /** m: depth to drill, and float that a holder would need. */
  readonly hole: number;
  readonly float: number;
  /** m of overrun that hole and holder leave room for; null where neither limits it. */
  readonly room: number | null;
  /** rad/s that hole and float allow at most; null where neither limits. */
  readonly highest: number | null;
}

export interface Wanted {
  readonly thread: Thread;
  readonly depth: number;
  readonly hole: number | 'through' | null;
  readonly float: number | null;
  /** Share by which the spindle may be off its speed while the axis keeps its own pace; 0 where the axis follows. */
  readonly slip: number;
  readonly chamfer: number;
  readonly habits: Habits;
}

/** m by which the axis trails the spindle, which leads. */
const outOfStep = (axis: WorkAxis | undefined, lead: number, speed: number): number =>
  ((axis?.lag.value ?? 0) * (lead * speed)) / TURN;

export function reversalAt(
  spindle: SpindleModel,
  axis: WorkAxis | undefined,
  wanted: Wanted,
  speed: number,
  highest: number | null,
): Reversal | null {
  const { thread, depth, chamfer, slip, habits } = wanted;
  const best = stoppingAt(spindle, speed, habits.delay.value);
  if (!best) return null;
  const overrun = (best.stop.angle * thread.lead) / TURN;
  const step = outOfStep(axis, thread.lead, speed);
  return {
    range: best.range.name,
    time: best.stop.time,
    angle: best.stop.angle,
    overrun,
    step,
    hole: depth + chamfer * thread.pitch + overrun + step + habits.chips.value,
    float: overrun + 2 * step + slip * (depth + overrun),
    room: roomFor(wanted, step),
    highest,
  };
}

/** m of overrun after which the tap meets the bottom or the holder is at its end, whichever comes first. */
function roomFor({ thread, depth, chamfer, hole, float, slip, habits }: Wanted, step: number): number | null {
  const rooms = [
    ...(typeof hole === 'number' ? [hole - depth - chamfer * thread.pitch - step - habits.chips.value] : []),
    ...(float === null ? [] : [(float - 2 * step - slip * depth) / (1 + slip)]),
  ];
  return rooms.length === 0 ? null : Math.max(0, Math.min(...rooms));
}

/** rad/s up to which hole and float take the overrun; null where nothing limits it. */
export function highestFor(
  spindle: SpindleModel,
  axis: WorkAxis | undefined,
  wanted: Wanted,
  most: number,
): number | null {
  if (typeof wanted.hole !== 'number' && wanted.float === null) return null;
  return largest(most, (speed) => {
    if (speed === 0) return true;
    // Below the slowest speed of every range the nearest one stands in.
    const at = reversalAt(spindle, axis, wanted, speed, null) ?? slowest(spindle, axis, wanted, speed);
    return (
      (typeof wanted.hole !== 'number' || at.hole <= wanted.hole) &&
      (wanted.float === null || at.float <= wanted.float)
    );
  });
}

function slowest(spindle: SpindleModel, axis: WorkAxis | undefined, wanted: Wanted, speed: number): Reversal {
  const open: SpindleModel = {
    ...spindle,
    ranges: spindle.ranges.map((each) => ({ ...each, lowest: 0, highest: Number.MAX_VALUE })),
  };
  return reversalAt(open, axis, wanted, speed, null)!;
}

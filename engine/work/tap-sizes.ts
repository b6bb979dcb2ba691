/** How fast common taps may turn on this machine: by overrun, by torque of a worn tap, by the links. */
import type { Work } from '../refit/types.ts';
import { torqueAt } from '../simulate/instep/index.ts';
import { METRIC_SIZES } from '../tables/thread-metric.ts';
import { largest } from '../threads/bisect.ts';
import { cutOf, parseThread } from '../threads/index.ts';
import { leadLimits, sorted, spindleLimits, stoppingAt } from './limits.ts';
import type { WorkAxis, WorkMachine } from './machine.ts';
import type { SpindleModel, SpindleRange } from './types.ts';

const TURN = 2 * Math.PI;
/** Speeds of a range at which its torque is looked at. */
const LOOKS = 60;
/** Sizes of the table, mm. */
const COMMON: readonly number[] = [3, 4, 5, 6, 8, 10, 12, 16, 20, 24];

export interface TapSize {
  readonly name: string;
  /** rad/s by overrun of two pitches, by torque of a worn tap, by links; the least of them. */
  readonly byOverrun: number;
  readonly byTorque: number;
  readonly byLinks: number | null;
  readonly speed: number;
}

/** The fastest speed of a range at which it holds a torque; 0 where it never does. */
function fastestWith({ lowest, highest, continuous, drag }: SpindleRange, torque: number): number {
  for (let look = LOOKS; look >= 0; look--) {
    const speed = lowest + ((highest - lowest) * look) / LOOKS;
    if (torqueAt(continuous, speed) - drag >= torque) return speed;
  }
  return 0;
}

/** Highest speed of common taps in a blind hole with two pitches to spare for the overrun. */
export function tapSizes(
  machine: WorkMachine,
  spindle: SpindleModel,
  axis: WorkAxis | undefined,
  work: Work,
): readonly TapSize[] {
  const rows: TapSize[] = [];
  const { delay, worn } = machine.habits;
  const top = sorted(spindleLimits(machine))[0]?.speed ?? 0;
  for (const { d, coarse } of METRIC_SIZES) {
    if (coarse === undefined || !COMMON.includes(d)) continue;
    const read = parseThread(`M${d}`);
    if (!read.ok) continue;
    const thread = read.value;
    const links = sorted([
      ...spindleLimits(machine),
      ...(axis ? leadLimits(machine, axis, thread.lead) : []),
    ])[0]?.speed;
    const byOverrun = largest(top, (speed) => {
      if (speed === 0) return true;
      const angles = spindle.ranges.map(
        (range) =>
          stoppingAt(
            { ...spindle, ranges: [{ ...range, lowest: 0, highest: Number.MAX_VALUE }] },
            speed,
            delay.value,
          )!.stop.angle,
      );
      return Math.min(...angles) <= 2 * TURN;
    });
    const cut = cutOf('tapping', {
      material: work.settings.material?.trim() || 'c45',
      thread: thread.designation,
      speed: '100 r/min',
    });
    const torque = cut.ok ? (cut.value.asked.find(({ id }) => id === 'torque')?.value ?? 0) : 0;
    const byTorque = Math.max(0, ...spindle.ranges.map((range) => fastestWith(range, worn.value * torque)));
    rows.push({
      name: thread.designation,
      byOverrun,
      byTorque,
      byLinks: links ?? null,
      speed: Math.min(byOverrun, byTorque, links ?? Number.POSITIVE_INFINITY),
    });
  }
  return rows;
}

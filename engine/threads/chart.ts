/** Which leads a machine can cut at which spindle speed: the chart for the wall. */

import { threadRunIn } from '../handbook/thread-run-in.ts';
import { largest } from './bisect.ts';
import { work } from './dimensions.ts';
import { AXIS_SHARE, type Machine, USUAL_GAIN, USUAL_LEAD_ERROR } from './plan.ts';
import { MM } from './text.ts';

export interface ChartRow {
  /** Lead, metres. */
  readonly lead: number;
  /** Speed the axis allows, rad/s. */
  readonly axis: number;
  /** Highest speed of all limits. */
  readonly speed: number;
  /** Run-in needed at that speed, metres. */
  readonly runIn: number;
}

/** Leads of the wall chart, mm: the usual pitches and the usual multi-start leads. */
export const CHART_LEADS = [
  0.25, 0.35, 0.5, 0.7, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4, 5, 6, 8, 10, 12, 16, 24,
] as const;

/** One row for each lead; `room` is the free length before the thread where it is limited. */
export function chartOf(
  machine: Machine,
  room?: number,
  leads: readonly number[] = CHART_LEADS.map((each) => each * MM),
): readonly ChartRow[] {
  const Kv = machine.gain ?? USUAL_GAIN;
  return leads.map((lead) => {
    const runInAt = (n: number): number =>
      work(threadRunIn, { n, Ph: lead, Kv, a: machine.acceleration, e: USUAL_LEAD_ERROR }).L_in;
    const axis = (2 * Math.PI * AXIS_SHARE * machine.rapid) / lead;
    const top = Math.min(axis, machine.spindle ?? axis);
    const speed = room === undefined ? top : largest(top, (n) => n === 0 || runInAt(n) <= room);
    return { lead, axis, speed, runIn: speed > 0 ? runInAt(speed) : 0 };
  });
}

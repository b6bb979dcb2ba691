/** The chart for the wall: travel of one turn against spindle speed, and what limits it on this machine. */
import { CHART_LEADS } from '../threads/index.ts';
import type { JudgedWork } from './judge.ts';
import { type LinkLimit, leadLimits, sorted, spindleLimits } from './limits.ts';
import type { WorkMachine } from './machine.ts';
import { axisFor } from './thread-axis.ts';

export interface WorkChartRow {
  /** m in one turn. */
  readonly lead: number;
  /** rad/s at most; null where no link is known. */
  readonly speed: number | null;
  /** The link that gives way first. */
  readonly by: string;
}

export interface WorkChartPoint {
  readonly id: string;
  readonly name: string;
  readonly lead: number;
  readonly speed: number;
  readonly verdict: JudgedWork['verdict'];
}

export interface WorkChart {
  readonly axis: string;
  readonly rows: readonly WorkChartRow[];
  /** rad/s below which no range of the spindle is of use; 0 where it is not known. */
  readonly slowest: number;
  /** Links whose limit is not known: what the chart says holds only as far as they allow. */
  readonly unknown: readonly string[];
  /** Wanted threads and taps at the speed they are planned at. */
  readonly points: readonly WorkChartPoint[];
}

const MM = 1e-3;

/** Null where the machine has no such axis. */
export function chartFor(
  machine: WorkMachine,
  judged: readonly JudgedWork[] = [],
  axisId = 'Z',
): WorkChart | null {
  const axis = axisFor(machine, axisId);
  if (!axis) return null;
  const ofSpindle = machine.spindle ? spindleLimits(machine.spindle) : [];
  const all = (lead: number): readonly LinkLimit[] => [...ofSpindle, ...leadLimits(machine, axis, lead)];
  const points = judged.flatMap(({ work, detail, verdict }): readonly WorkChartPoint[] =>
    detail && (detail.kind === 'thread' || detail.kind === 'tap') && detail.speed !== null && detail.speed > 0
      ? [
          {
            id: work.id,
            name: work.name || detail.thread.designation,
            lead: detail.thread.lead,
            speed: detail.speed,
            verdict,
          },
        ]
      : [],
  );
  return {
    axis: axis.id,
    rows: CHART_LEADS.map((each) => {
      const lowest = sorted(all(each * MM))[0];
      return { lead: each * MM, speed: lowest?.speed ?? null, by: lowest?.name ?? '' };
    }),
    slowest: machine.spindle ? Math.min(...machine.spindle.ranges.map(({ lowest }) => lowest)) : 0,
    unknown: [
      ...(machine.spindle ? [] : ['the spindle']),
      ...all(MM)
        .filter(({ speed }) => speed === null)
        .map(({ name }) => name),
    ],
    points,
  };
}

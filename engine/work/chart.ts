/** The chart for the wall: travel of one turn against spindle speed, and what limits it on this machine. */
import { CHART_LEADS } from '../threads/index.ts';
import type { JudgedWork } from './judge.ts';
import { type LinkLimit, leadLimits, noPermission, sorted, spindleLimits } from './limits.ts';
import type { WorkMachine } from './machine.ts';
import { axisFor } from './thread-axis.ts';

export interface WorkChartRow {
  /** m in one turn. */
  readonly lead: number;
  /** rad/s at most; null where any link is unknown: what is unknown is no permission, however fast the others are. */
  readonly speed: number | null;
  /** The link that gives way first; empty without a speed. */
  readonly by: string;
}

export interface WorkChartPoint {
  readonly id: string;
  readonly name: string;
  readonly lead: number;
  /** rad/s it is planned at; null where no speed is permitted. */
  readonly speed: number | null;
  readonly verdict: JudgedWork['verdict'];
}

export interface WorkChart {
  readonly axis: string;
  readonly rows: readonly WorkChartRow[];
  /** rad/s below which no range of the spindle is of use; 0 where it is not known. */
  readonly slowest: number;
  /** Links whose limit is not known. */
  readonly unknown: readonly string[];
  /** 'no permission: the chuck’s limit is unknown': stands in place of every speed. Null where all is known. */
  readonly noPermission: string | null;
  /** What is known of the spindle itself while there is no permission, the lowest first, rad/s: it limits all the same. */
  readonly known: readonly { readonly name: string; readonly speed: number }[];
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
  const ofSpindle = spindleLimits(machine);
  const all = (lead: number): readonly LinkLimit[] => [...ofSpindle, ...leadLimits(machine, axis, lead)];
  const refused =
    noPermission(all(MM)) ?? (machine.spindle ? null : 'no permission: the spindle is not known well enough');
  const points = judged.flatMap(({ work, detail, verdict }): readonly WorkChartPoint[] =>
    detail && (detail.kind === 'thread' || detail.kind === 'tap') && detail.speed !== null && detail.speed > 0
      ? [
          {
            id: work.id,
            name: work.name || detail.thread.designation,
            lead: detail.thread.lead,
            speed: refused === null ? detail.speed : null,
            verdict,
          },
        ]
      : [],
  );
  return {
    axis: axis.id,
    rows: CHART_LEADS.map((each) => {
      if (refused !== null) return { lead: each * MM, speed: null, by: '' };
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
    noPermission: refused,
    known:
      refused === null
        ? []
        : sorted(ofSpindle).flatMap(({ name, speed }) => (speed === null ? [] : [{ name, speed }])),
    points,
  };
}

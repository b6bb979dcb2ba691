/** Limit and home switches at both ends of every axis. */
import type { Drawn } from '../draw.ts';
import type { MotionWanted } from './pattern.ts';

export interface AxisSwitches {
  readonly axis: MotionWanted;
  /** Position among the motions. */
  readonly at: number;
  /** 'S11' at the lower end, 'S12' at the upper one. */
  readonly lower: string;
  readonly upper: string;
  readonly home: string;
}

/** S11, S12 and S13 for the first axis, S21, S22 and S23 for the second. */
export const switchesFor = (motions: readonly MotionWanted[]): readonly AxisSwitches[] =>
  motions
    .map((axis, at) => ({ axis, at }))
    .filter(({ axis }) => axis.kind === 'axis')
    .map((each, n) => ({
      ...each,
      lower: `S${n + 1}1`,
      upper: `S${n + 1}2`,
      home: `S${n + 1}3`,
    }));

/** The switches as elements, each limit switch with two contacts that open; `no`: contacts of it that close. */
export const drawnSwitches = (switches: readonly AxisSwitches[], no = '0'): readonly Drawn[] =>
  switches.flatMap(({ axis, lower, upper, home }): Drawn[] => [
    [`${lower} limit`, `Lower limit switch of ${axis.name}`, limitOf(axis.id, 'lower', no)],
    [`${upper} limit`, `Upper limit switch of ${axis.name}`, limitOf(axis.id, 'upper', no)],
    [`${home} home`, `Home switch of ${axis.name}`, { axis: axis.id }],
  ]);

const limitOf = (axis: string, end: 'lower' | 'upper', no: string) => ({
  nc: '2',
  ...(no === '0' ? {} : { no }),
  axis,
  end,
});

/** Home switches go to the control and nowhere else. */
export const homeRuns = (switches: readonly AxisSwitches[]): readonly string[] =>
  switches.flatMap(({ home }, n) => [`F1.2 ${home}.13`, `${home}.14 A1.home${n + 1}`]);

/** The most axes whose home switches a control takes. */
export const MOST_HOMES = 6;

/** Terminals of one contact of every switch in a row, in and out in turn: 'S11.11', 'S11.12', 'S12.11', …; `pole` 1 or 2. */
export const throughSwitches = (switches: readonly AxisSwitches[], pole: 1 | 2): readonly string[] =>
  switches.flatMap(({ lower, upper }) =>
    [lower, upper].flatMap((id) => [`${id}.${pole}1`, `${id}.${pole}2`]),
  );

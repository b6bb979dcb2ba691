/** Torque and power of a spindle against its speed, range by range, with what is asked of it. */

import { fact } from '../../checks/refs.ts';
import { atCut, cut, RANGES } from '../../checks/spindle-chain.ts';
import { andList } from '../../quantity/words.ts';
import type { Worked } from '../work.ts';
import { draw, type Line, spread } from './chart.ts';
import { blank, type Ground, idsOf, numberOf, type Stopped, stopped, worst } from './ground.ts';
import { numbers, sweep } from './sweep.ts';
import type { ChartPicture, Demand, Mark, Scale } from './types.ts';

const NAMES = ['first range', 'second range', 'third range', 'fourth range'] as const;
const CHECKS = ['spindle-torque', 'spindle-cooling', 'lowest-speed', 'reach', 'overspeed', 'range-step'];
const X: Scale = { name: 'spindle speed', unit: 'r/min' };

interface Range {
  readonly name: string;
  readonly worked: Worked;
  /** rad/s at the spindle. */
  readonly lowest: number;
  readonly highest: number;
  readonly corners: readonly number[];
}

/** The ranges that are there and known, or why there are none. */
function rangesOf(ground: Ground): readonly Range[] | Stopped {
  const ranges: Range[] = [];
  for (const range of RANGES) {
    const worked = ground.worked(atCut[range - 1]!.id);
    // The speed itself is what the picture runs over.
    const inputs = [...worked.inputs].flatMap(([symbol, value]) => (symbol === 'n' ? [] : [value]));
    const stop = stopped(inputs);
    if (stop?.why === 'inapplicable') continue;
    if (stop) return stop;
    const given = numbers(worked) as Record<string, number>;
    const { i, n_l, n_h, n_b, n_f } = given as Record<'i' | 'n_l' | 'n_h' | 'n_b' | 'n_f', number>;
    ranges.push({
      name: NAMES[range - 1]!,
      worked,
      lowest: n_l / i,
      highest: n_h / i,
      corners: [n_l / i, (n_f / i) * (1 - 1e-9), n_f / i, n_b / i, n_h / i],
    });
  }
  return ranges.length > 0 ? ranges : { why: 'inapplicable' };
}

/** Torque from a range at speeds of the spindle; no number where the range does not reach. */
const torque =
  ({ worked }: Range, symbol: 'T_c' | 'T_p') =>
  (xs: Float64Array): Float64Array =>
    sweep(worked, 'n', xs, symbol).map((each) => (each > 0 ? each : Number.NaN));

const best = (lines: readonly Line[]) => (xs: Float64Array) => {
  const all = lines.map(({ at }) => at(xs));
  return xs.map((_, k) => {
    const there = all.map((line) => line[k]!).filter(Number.isFinite);
    return there.length > 0 ? Math.max(...there) : Number.NaN;
  });
};

const timesSpeed =
  (at: Line['at']): Line['at'] =>
  (xs) =>
    at(xs).map((each, k) => each * xs[k]!);

/** What is asked: the heaviest cut of the duty, and the work entered. */
function marksOf(ground: Ground, demands: readonly Demand[], of: 'torque' | 'power'): Mark[] {
  const speed = numberOf(ground.value(fact('spindle-duty', 'cutSpeed')));
  const asked = numberOf(ground.value(cut.get('T')));
  const finding = ground.finding('spindle-cooling') ?? ground.finding('spindle-torque');
  const marks: Mark[] = [];
  if (speed !== undefined && asked !== undefined)
    marks.push({
      name: 'heaviest cut',
      x: speed,
      y: of === 'torque' ? asked : asked * speed,
      role: 'asked',
      ...(finding ? { verdict: finding.verdict, finding: finding.id } : {}),
    });
  for (const demand of demands)
    marks.push({
      name: demand.name,
      x: demand.speed,
      y: of === 'torque' ? demand.torque : demand.torque * demand.speed,
      role: 'asked',
      verdict: demand.verdict,
    });
  return marks;
}

function picture(
  ground: Ground,
  demands: readonly Demand[],
  of: 'torque' | 'power',
): ChartPicture | undefined {
  const head =
    of === 'torque'
      ? {
          id: 'spindle-torque',
          title: 'Torque at the spindle against its speed',
          question: 'Has the spindle the torque for its cuts?',
        }
      : {
          id: 'spindle-power',
          title: 'Power at the spindle against its speed',
          question: 'At which speeds is the power there?',
        };
  const unit = of === 'torque' ? 'N·m' : 'kW';
  const findings = CHECKS.map((id) => ground.finding(id));
  const ranges = rangesOf(ground);
  if ('why' in ranges) {
    if (ranges.why === 'inapplicable') return undefined;
    return blank({ ...head, x: X, y: { name: of, unit } }, idsOf(findings), ranges);
  }
  const forHours = ranges.map(
    (range): Line => ({ name: range.name, role: 'limit', at: torque(range, 'T_c') }),
  );
  const forSeconds: Line = {
    name: 'best range, for seconds',
    role: 'high',
    at: best(ranges.map((range): Line => ({ name: range.name, role: 'high', at: torque(range, 'T_p') }))),
  };
  const lines = [...forHours, forSeconds].map((line) =>
    of === 'torque' ? line : { ...line, at: timesSpeed(line.at) },
  );
  const marks = marksOf(ground, demands, of);
  const to = 1.03 * Math.max(...ranges.map(({ highest }) => highest), ...marks.map(({ x }) => x));
  const from = Math.min(...ranges.map(({ lowest }) => lowest));
  const most = Math.max(
    ...lines.flatMap(({ at }) => [...at(Float64Array.from([from, to / 4, to / 2]))].filter(Number.isFinite)),
    0,
  );
  const least = Math.min(...marks.map(({ y }) => y).filter((y) => y > 0), most);
  const y: Scale = { name: `${of} at the spindle`, unit, log: of === 'torque' && spread(least, most) };
  const { series, table } = draw(
    X,
    y,
    { from: 0, to, through: ranges.flatMap(({ corners }) => corners) },
    lines,
    marks,
  );
  return {
    kind: 'chart',
    ...head,
    x: X,
    y,
    says: of === 'torque' ? sayTorque(ground, ranges, demands) : sayPower(ground, ranges),
    note: 'Lines: for hours, each range, from its lowest useful speed to its highest. A step at the left is the motor’s own fan, which blows too little there. Dotted: for starting and for moments.',
    verdict: worst([...findings, ...demands]) ?? 'unknown',
    findings: idsOf(findings),
    missing: [],
    series,
    marks,
    table,
  };
}

const span = (ground: Ground, { name, lowest, highest }: Range): string =>
  `${name} ${ground.say(lowest, 'r/min')} to ${ground.say(highest, 'r/min')}`;

function sayTorque(ground: Ground, ranges: readonly Range[], demands: readonly Demand[]): string {
  const finding = ground.finding('spindle-cooling');
  const reach = `Useful speeds: ${ranges.map((range) => span(ground, range)).join('; ')}.`;
  const failing = demands.filter(({ verdict }) => verdict === 'fails').map(({ name }) => `“${name}”`);
  const beyond = failing.length === 0 ? '' : ` More than it gives: ${andList(failing)}.`;
  return `${finding && finding.verdict !== 'unknown' ? `${finding.sentence} ` : ''}${reach}${beyond}`;
}

function sayPower(ground: Ground, ranges: readonly Range[]): string {
  const full = ranges.map(({ name, worked }) => {
    const { n_b, i } = numbers(worked) as Record<'n_b' | 'i', number>;
    return `from ${ground.say(n_b / i, 'r/min')} in the ${name}`;
  });
  return `The whole power is there only ${full.join(', ')}. Below, it falls with the speed: the kilowatts of the plate are not there at a slow spindle.`;
}

export const spindleTorque = (ground: Ground, demands: readonly Demand[]) =>
  picture(ground, demands, 'torque');
export const spindlePower = (ground: Ground, demands: readonly Demand[]) => picture(ground, demands, 'power');

/** Speed of the spindle while it starts, stops and runs down, against time. */
import { kneesOf, motorTorque, rampTime, type TorqueAt } from '../../handbook/speed-ramp.ts';
import { draw, type Line } from './chart.ts';
import { blank, type Ground, idsOf, stopped, worst } from './ground.ts';
import { numbers } from './sweep.ts';
import type { ChartPicture, Mark, Scale } from './types.ts';

const HEAD = {
  id: 'spindle-times',
  title: 'Speed of the spindle while it starts and stops',
  question: 'How long does it take to start and to stop?',
} as const;
const X: Scale = { name: 'time', unit: 's' };
const Y: Scale = { name: 'spindle speed', unit: 'r/min' };
const POINTS = 60;

type Point = readonly [time: number, speed: number];

/** Speed against time as a line: straight between its points, ended where they end. */
const through =
  (points: readonly Point[]): Line['at'] =>
  (xs) =>
    xs.map((t) => {
      const k = points.findIndex(([time]) => time >= t);
      if (k < 0) return Number.NaN;
      const [t1, w1] = points[k]!;
      const [t0, w0] = points[k - 1] ?? points[k]!;
      return t1 === t0 ? w1 : w0 + ((w1 - w0) * (t - t0)) / (t1 - t0);
    });

/** Times at which each of evenly spaced speeds from rest is reached. */
function rising(J: number, net: TorqueAt, top: number, knees: readonly number[]): Point[] {
  const points: Point[] = [[0, 0]];
  for (let k = 1; k <= POINTS; k++) {
    const [from, to] = [(top * (k - 1)) / POINTS, (top * k) / POINTS];
    points.push([points.at(-1)![0] + rampTime(J, net, from, to, knees), to]);
  }
  return points;
}

/** The same backwards: a stop from the top. */
const falling = (points: readonly Point[]): Point[] => {
  const [whole] = points.at(-1)!;
  return points.map(([time, speed]): Point => [whole - time, speed]).reverse();
};

export function spindleTimes(ground: Ground): ChartPicture | undefined {
  const findings = ['run-up', 'spindle-stop', 'run-down'].map((id) => ground.finding(id));
  const up = ground.worked('spindle-run-up');
  const down = ground.worked('spindle-stop');
  const results = [up.results.get('t')!, down.results.get('t_b')!];
  const stop = stopped(results);
  if (stop?.why === 'inapplicable') return undefined;
  if (stop) return blank({ ...HEAD, x: X, y: Y }, idsOf(findings), stop);
  const { J, T, T_k, T_d, n_b, n } = numbers(up) as Record<'J' | 'T' | 'T_k' | 'T_d' | 'n_b' | 'n', number>;
  const { T_b, P_b, T_f } = numbers(down) as Record<'T_b' | 'P_b' | 'T_f', number>;
  const drives = motorTorque(T, T_k, n_b);
  const brakes = motorTorque(T_b, T_k, n_b);
  const starting = rising(J, (w) => drives(w) - T_d, n, kneesOf(T, T_k, n_b));
  const net: TorqueAt = (w) => Math.min(brakes(w), w > 0 ? P_b / w : Number.POSITIVE_INFINITY) + T_f;
  const stopping = falling(rising(J, net, n, T_b > 0 ? [...kneesOf(T_b, T_k, n_b), P_b / T_b] : []));
  const t_alone = T_f > 0 ? (J * n) / T_f : undefined;
  const lines: Line[] = [
    { name: 'starting', role: 'asked', at: through(starting) },
    { name: 'stopping', role: 'limit', at: through(stopping) },
    ...(t_alone === undefined
      ? []
      : [
          {
            name: 'power gone, running down',
            role: 'high' as const,
            at: through([
              [0, n],
              [t_alone, 0],
            ]),
          },
        ]),
  ];
  const [t_up, t_down] = [starting.at(-1)![0], stopping.at(-1)![0]];
  const [runUp, braked, runDown] = findings;
  const judged = (finding: typeof runUp) =>
    finding ? { verdict: finding.verdict, finding: finding.id } : {};
  const marks: Mark[] = [
    { name: 'at top speed', x: t_up, y: n, role: 'asked', ...judged(runUp) },
    { name: 'stands', x: t_down, y: 0, role: 'limit', ...judged(braked) },
  ];
  // A long run-down would press the rest against the edge.
  const to = 1.05 * Math.max(t_up, t_down, Math.min(t_alone ?? 0, 6 * Math.max(t_up, t_down)));
  if (t_alone !== undefined && t_alone <= to)
    marks.push({ name: 'stands at last', x: t_alone, y: 0, role: 'high', ...judged(runDown) });
  const { series, table } = draw(
    X,
    Y,
    { from: 0, to, through: [t_up, t_down, ...(t_alone ? [t_alone] : [])] },
    lines,
    marks,
  );
  return {
    kind: 'chart',
    ...HEAD,
    x: X,
    y: Y,
    says: `To ${ground.say(n, 'r/min')} in ${ground.say(t_up, 's')}, stopped in ${ground.say(t_down, 's')}${t_alone === undefined ? '.' : `; with the power gone it turns for ${ground.say(t_alone, 's')}.`}`,
    note: 'In the fastest range, with the heaviest work in the chuck, as fast as motor, drive and resistor allow. Set the ramps of the drive no shorter than these.',
    verdict: worst(findings) ?? 'unknown',
    findings: idsOf(findings),
    missing: [],
    series,
    marks,
    table,
  };
}

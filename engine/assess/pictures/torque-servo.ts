/** A servo motor's torque against its speed: current limit at low speed, volts at high speed. */
import { CONTINUOUS_TORQUE, PEAK_TORQUE } from '../../checks/motor-constants.ts';
import { draw, type Line, level } from './chart.ts';
import { blank, type Ground, idsOf, numberOf, stopped, worst } from './ground.ts';
import type { Mains } from './mains.ts';
import { markOf, momentsOf } from './moments.ts';
import { sweep } from './sweep.ts';
import type { ChartPicture, Scale } from './types.ts';

export const MAINS: readonly (readonly [Mains, string])[] = [
  ['low', 'mains low'],
  ['nominal', 'mains as usual'],
  ['high', 'mains high'],
];

const CHECKS = ['volts', 'speed', 'drive-peak', 'peak-torque', 'cut', 'cut-volts', 'heat'];

export function torqueServo(
  ground: Ground,
  head: Pick<ChartPicture, 'id' | 'title' | 'question'>,
): ChartPicture | undefined {
  const at = (mains: Mains) => ground.worked('servo-acceleration', mains);
  const low = at('low');
  const findings = CHECKS.map((id) => ground.finding(id));
  const x: Scale = { name: 'motor speed', unit: 'r/min' };
  const y: Scale = { name: 'torque at the motor', unit: 'N·m' };
  const values = ['T_av', 'w_0', 'w_knee'].map((symbol) => low.results.get(symbol)!);
  const inputs = ['w_req', 'TL'].map((symbol) => low.inputs.get(symbol)!);
  const stop = stopped([...values, ...inputs]);
  if (stop?.why === 'inapplicable') return undefined;
  if (stop) return blank({ ...head, x, y }, idsOf(findings), stop);
  const [there, last, knee] = values.map(numberOf) as [number, number, number];
  const [rapid, asked] = inputs.map(numberOf) as [number, number];

  const bends: number[] = [];
  const lines: Line[] = MAINS.flatMap(([mains, name]) => {
    const worked = at(mains);
    for (const symbol of ['w_knee', 'w_0']) {
      const speed = numberOf(worked.results.get(symbol)!);
      if (speed !== undefined) bends.push(speed);
    }
    if (worked.results.get('T_av')?.state !== 'known') return [];
    const torque = (xs: Float64Array): Float64Array =>
      // Below nothing the motor no longer drives; at the speed without load rounding may leave a trace of it.
      sweep(worked, 'w_req', xs, 'T_av').map((t) => (t > -1e-9 ? Math.max(0, t) : Number.NaN));
    return [{ name, role: mains, at: torque }];
  });
  for (const [name, ref] of [
    ['the motor bears for hours', CONTINUOUS_TORQUE],
    ['the motor bears for a moment', PEAK_TORQUE],
  ] as const) {
    const torque = numberOf(ground.value(ref));
    if (torque !== undefined) lines.push(level(name, 'limit', torque));
  }
  const moments = momentsOf(ground, {
    gaining: ['volts', 'drive-peak', 'peak-torque'],
    running: ['speed'],
    cutting: ['cut-volts', 'cut'],
  });
  const marks = moments.map(markOf);
  const to = Math.max(...bends, ...marks.map((mark) => mark.x)) * 1.04;
  const { series, table } = draw(x, y, { from: 0, to, through: [...bends, rapid] }, lines, marks);

  const n = ground.say(rapid, 'r/min');
  const t = (torque: number): string => ground.say(torque, 'N·m');
  const says =
    there <= 0
      ? `With the mains low the motor does not reach ${n} at all: it ends at ${ground.say(Math.max(0, last), 'r/min')}. Gaining speed there takes ${t(asked)}.`
      : `At ${n}, with the mains low, the motor gives ${t(there)}; gaining speed takes ${t(asked)}${there >= asked ? '' : ', and it falls short'}.${knee > 0 ? ` Its full torque lasts up to ${ground.say(knee, 'r/min')}.` : ''}`;
  return {
    kind: 'chart',
    ...head,
    x,
    y,
    says,
    note: 'Torque at the shaft, winding warm, all axes pulling on the bus at once. Flat part: the drive’s current limit. Falling part: the volts.',
    verdict: worst(findings) ?? 'unknown',
    findings: idsOf(findings),
    missing: [],
    series,
    marks,
    table,
  };
}

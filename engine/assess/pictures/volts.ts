/** Volts a servo motor needs against its speed, and the volts there are. */
import { draw, type Line, level } from './chart.ts';
import { blank, type Ground, idsOf, numberOf, stopped, worst } from './ground.ts';
import { sweep } from './sweep.ts';
import { MAINS } from './torque-servo.ts';
import type { ChartPicture, Mark, Scale } from './types.ts';

const CHECKS = ['volts', 'speed'];

/** The voltage at the motor is the bus times the share of it that the drive can pass on. */
export function volts(ground: Ground): ChartPicture | undefined {
  const findings = CHECKS.map((id) => ground.finding(id));
  const x: Scale = { name: 'motor speed', unit: 'r/min' };
  const y: Scale = { name: 'volts at the motor', unit: 'V' };
  const head = { id: 'volts', title: 'Volts against speed', question: 'Are there volts enough?', x, y };
  const type = ground.choice('motor', 'type');
  if (type === 'stepper') return undefined;
  if (typeof type !== 'string')
    return type.why === 'inapplicable' ? undefined : blank(head, idsOf(findings), type);

  const gaining = ground.worked('servo-acceleration');
  const running = ground.worked('servo-rapid');
  const values = [
    gaining.results.get('V_need')!,
    gaining.results.get('V_av')!,
    gaining.results.get('w')!,
    running.results.get('V_need')!,
    gaining.inputs.get('w_req')!,
  ];
  const stop = stopped(values);
  if (stop?.why === 'inapplicable') return undefined;
  if (stop) return blank(head, idsOf(findings), stop);
  const [asked, there, reached, calm, rapid] = values.map(numberOf) as [
    number,
    number,
    number,
    number,
    number,
  ];

  const lines: Line[] = [
    {
      name: 'needed gaining speed',
      role: 'asked',
      at: (xs) => sweep(gaining, 'w_req', xs, 'V_need'),
    },
    { name: 'needed running', role: 'asked', at: (xs) => sweep(running, 'w_req', xs, 'V_need') },
  ];
  const bus: string[] = [];
  for (const [mains, name] of MAINS) {
    const volt = numberOf(ground.worked('servo-acceleration', mains).results.get('V_av')!);
    if (volt === undefined) continue;
    lines.push(level(name, mains, volt));
    if (mains !== 'low') bus.push(`${ground.say(volt, 'V')} with the ${name}`);
  }
  const mark = (name: string, volt: number, which: number): Mark => ({
    name,
    x: rapid,
    y: volt,
    role: 'asked',
    ...(findings[which] ? { verdict: findings[which].verdict, finding: findings[which].id } : {}),
  });
  const marks = [mark('gaining speed', asked, 0), mark('running', calm, 1)];
  const to = Math.max(rapid * 1.25, Math.min(reached * 1.1, rapid * 3));
  const { series, table } = draw(x, y, { from: 0, to, through: [rapid, reached] }, lines, marks);

  const v = (volt: number): string => ground.say(volt, 'V');
  const n = ground.say(rapid, 'r/min');
  const short = asked > there;
  const more = bus.length > 0 ? ` There are ${bus.join(' and ')}.` : '';
  const ends =
    reached > 0
      ? ` With the mains low the volts last up to ${ground.say(reached, 'r/min')} while it gains speed.`
      : ' With the mains low there are not volts enough to gain speed at all.';
  return {
    kind: 'chart',
    ...head,
    says: `At ${n} the motor needs ${v(asked)} while it still gains speed and ${v(calm)} once it runs; with the mains low there ${short ? 'are only' : 'are'} ${v(there)}.${more}${ends}`,
    note: 'The volts there are hold for the loaded bus, at the bottom of its ripple, all axes speeding up at once.',
    verdict: worst(findings) ?? 'unknown',
    findings: idsOf(findings),
    missing: [],
    series,
    marks,
    table,
  };
}

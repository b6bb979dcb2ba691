/** How fast the screw may turn, by where the nut stands. */
import { screwAtRapid } from '../../checks/motion.ts';
import { when } from '../../checks/refs.ts';
import { SCREW_ENDS } from '../../tables/screw-ends.ts';
import type { Worked } from '../work.ts';
import { draw, level, spread } from './chart.ts';
import { blank, type Ground, idsOf, numberOf, stopped, worst } from './ground.ts';
import { numbers, sweep } from './sweep.ts';
import type { ChartPicture, Mark, Scale } from './types.ts';

const lambdaOf = (id: (typeof SCREW_ENDS)[number]['id']): number =>
  SCREW_ENDS.find((row) => row.id === id)!.whirl.lambda;

/** End-fixing factors of the stretch from the thrust bearing to the nut, and from the nut to the far end. */
function stretches(lambda: number): readonly [number, number] | undefined {
  const ends = SCREW_ENDS.find((row) => row.whirl.lambda === lambda)?.id;
  const hinged = lambdaOf('supported-supported');
  const clamped = lambdaOf('fixed-supported');
  if (ends === 'fixed-fixed') return [clamped, clamped];
  if (ends === 'fixed-supported') return [clamped, hinged];
  if (ends === 'supported-supported') return [hinged, hinged];
  return undefined;
}

/**
 * Allowed speed with the nut at each distance x (SI) from the thrust bearing.
 *
 * The nut is taken as a support that holds the screw sideways but lets it tilt. Two rules of natural frequencies
 * (Rayleigh: adding a constraint lowers none, taking one away raises none; derivation) then bound the truth from below:
 * - The screw without the nut has one constraint less. That is the check 'whirl', free length and ends as they are.
 * - Cut through at the nut, each stretch hinged there, the screw has one constraint less too (the two stretches no
 *   longer tilt together). The slower stretch counts, which is the longer one where both ends are held alike.
 * The larger of the two lower bounds is drawn. With the nut at either end of the free length it is the check's value.
 * A free end beyond the nut is no stretch between supports: there only the first bound holds.
 */
function allowedSpeed(worked: Worked, whole: number): (xs: Float64Array) => Float64Array {
  const given = numbers(worked);
  const length = given.L as number;
  const factors = stretches(given.lambda as number);
  return (xs) => {
    if (!factors) return new Float64Array(xs.length).fill(whole);
    const near = sweep(worked, 'L', xs, 'n_allow', { lambda: factors[0] });
    const far = sweep(
      worked,
      'L',
      xs.map((x) => length - x),
      'n_allow',
      { lambda: factors[1] },
    );
    // A stretch of no length has no answer, and does not whirl.
    const or = (n: number): number => (Number.isFinite(n) ? n : Number.POSITIVE_INFINITY);
    return xs.map((_, i) => {
      const slower = Math.min(or(near[i]!), or(far[i]!));
      return Number.isFinite(slower) ? Math.max(whole, slower) : whole;
    });
  };
}

export function whirl(ground: Ground): ChartPicture | undefined {
  const worked = ground.worked('whirl');
  const findings = [ground.finding('whirl'), ground.finding('balls')];
  const x: Scale = { name: 'nut, from the thrust bearing', unit: ground.unit('mm') };
  const y: Scale = { name: 'screw speed', unit: 'r/min' };
  const head = { id: 'whirl', title: 'Whirling of the screw', question: 'Will the screw whirl?', x, y };
  const turns = ground.value(when('screw', 'driven', { screw: screwAtRapid.get('n_set') }));
  const values = [turns, worked.results.get('n_allow')!];
  const stop = stopped(values);
  if (stop?.why === 'inapplicable') return undefined;
  if (stop) return blank(head, idsOf(findings), stop);
  const [asked, whole] = values.map(numberOf) as [number, number];
  const length = numbers(worked).L as number;
  const speed = allowedSpeed(worked, whole);
  const balls = findings[1] ? numberOf(ground.worked('balls').results.get('n_DN')!) : undefined;

  const lines = [
    { name: 'may turn before it whirls', role: 'limit' as const, at: speed },
    ...(balls === undefined ? [] : [level('the balls stand', 'limit', balls)]),
    level('asked at rapid', 'asked', asked),
  ];
  const verdict = worst(findings) ?? 'unknown';
  const marks: Mark[] = [
    {
      name: 'asked, nut at the far end',
      x: length,
      y: asked,
      role: 'asked',
      verdict: findings[0]?.verdict ?? verdict,
      ...(findings[0] ? { finding: findings[0].id } : {}),
    },
  ];
  const { series, table } = draw(x, y, { from: 0, to: length }, lines, marks);
  const curve = series[0]!.points;
  const says = [saysSpeed(ground, asked, whole, curve)];
  if (balls !== undefined)
    says.push(
      balls < asked
        ? `Its balls stand only ${ground.say(balls, 'r/min')}.`
        : `Its balls stand ${ground.say(balls, 'r/min')}.`,
    );
  const free = stretches(numbers(worked).lambda as number) === undefined;
  return {
    kind: 'chart',
    ...head,
    y: { ...y, log: spread(asked, Math.max(...curve.map(([, speed]) => speed))) },
    says: says.join(' '),
    note: free
      ? 'One end hangs free, so the nut is not counted as a support.'
      : 'The nut is counted as a support that holds the screw sideways but lets it tilt. A worn nut holds less: then only the lowest value is sure.',
    verdict,
    findings: idsOf(findings),
    missing: [],
    series,
    marks,
    table,
  };
}

function saysSpeed(
  ground: Ground,
  asked: number,
  whole: number,
  curve: readonly (readonly [number, number])[],
): string {
  const n = (value: number): string => ground.say(value, 'r/min');
  const [, best] = curve.reduce((a, b) => (b[1] > a[1] ? b : a));
  const ends = 'with the nut at an end of the screw, the worst place';
  if (asked <= whole) {
    const more = best > whole ? `, and ${n(best)} with it where it helps most` : '';
    return `At rapid the screw turns at ${n(asked)}. It may turn at ${n(whole)} ${ends}${more}.`;
  }
  const steady = curve.filter(([, speed]) => speed >= asked);
  if (steady.length === 0)
    return `At rapid the screw would turn at ${n(asked)}, but it whirls above ${n(best)} wherever the nut stands.`;
  const reach = `${ground.say(steady[0]![0], 'mm')} and ${ground.say(steady.at(-1)![0], 'mm')}`;
  return `At rapid the screw would turn at ${n(asked)}, but it whirls above ${n(whole)} ${ends}. It runs quietly only while the nut is between ${reach} from the thrust bearing.`;
}

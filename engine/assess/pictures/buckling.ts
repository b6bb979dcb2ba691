/** How hard the screw may be pushed, by where the nut stands. */
import { forces } from '../../checks/motion.ts';
import { draw, level, spread } from './chart.ts';
import { blank, type Ground, idsOf, numberOf, stopped, worst } from './ground.ts';
import { numbers, sweep } from './sweep.ts';
import type { ChartPicture, Mark, Scale } from './types.ts';

/** The drawing begins this share of the length away from the bearing: a column of no length has no answer. */
const FIRST = 0.02;

/**
 * Only the stretch between the thrust bearing and the nut is pushed, so it is the column. It keeps the end-fixing factor
 * of the check: the nut stands where the far bearing stood. With the nut at the end of the free length it is the check.
 */
export function buckling(ground: Ground): ChartPicture | undefined {
  const worked = ground.worked('buckling');
  const findings = [ground.finding('buckling')];
  const x: Scale = { name: 'nut, from the thrust bearing', unit: ground.unit('mm') };
  const y: Scale = { name: 'push', unit: ground.unit('N') };
  const head = {
    id: 'buckling',
    title: 'Buckling of the screw',
    question: 'Can the screw take the push?',
    x,
  };
  const values = [ground.value(forces.get('F_max')), worked.results.get('F_allow')!];
  const stop = stopped(values);
  if (stop?.why === 'inapplicable') return undefined;
  if (stop) return blank({ ...head, y }, idsOf(findings), stop);
  const [asked, least] = values.map(numberOf) as [number, number];
  const length = numbers(worked).L as number;
  const crush = numberOf(worked.results.get('F_yield')!);
  const column = (symbol: string) => (xs: Float64Array) => sweep(worked, 'L', xs, symbol);
  const verdict = worst(findings) ?? 'unknown';
  const marks: Mark[] = [
    {
      name: 'asked, nut at the far end',
      x: length,
      y: asked,
      role: 'asked',
      verdict,
      ...(findings[0] ? { finding: findings[0].id } : {}),
    },
  ];
  const lines = [
    { name: 'the screw stands', role: 'limit' as const, at: column('F_allow') },
    level('hardest push asked', 'asked', asked),
  ];
  const { series, table } = draw(x, y, { from: length * FIRST, to: length }, lines, marks);
  const most = series[0]!.points[0]?.[1] ?? least;
  const f = (force: number): string => ground.say(force, 'N');
  const shape =
    crush !== undefined && least >= crush * (1 - 1e-9)
      ? 'It is so stout that it would crush before it bends.'
      : `Nearer the thrust bearing it stands more, up to ${f(most)}.`;
  const says =
    asked <= least
      ? `The hardest push is ${f(asked)}; with the nut farthest from the thrust bearing the screw stands ${f(least)}. ${shape}`
      : `The hardest push is ${f(asked)}, but with the nut farthest from the thrust bearing the screw stands only ${f(least)}. ${shape}`;
  return {
    kind: 'chart',
    ...head,
    y: { ...y, log: spread(asked, most) },
    says,
    note: 'Pulled, a screw cannot buckle; only the part between thrust bearing and nut is pushed.',
    verdict,
    findings: idsOf(findings),
    missing: [],
    series,
    marks,
    table,
  };
}

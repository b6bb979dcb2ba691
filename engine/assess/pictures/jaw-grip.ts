/** Grip of the jaws against the speed of the spindle: what the speed takes from it, and what the cut needs. */
import { fact, policy } from '../../checks/refs.ts';
import { cut } from '../../checks/spindle-chain.ts';
import { draw, type Line, level } from './chart.ts';
import { blank, type Ground, idsOf, numberOf, stopped, worst } from './ground.ts';
import type { ChartPicture, Mark, Scale } from './types.ts';

const HEAD = {
  id: 'jaw-grip',
  title: 'Grip of the jaws against the spindle’s speed',
  question: 'Do the jaws still hold at speed?',
} as const;
const X: Scale = { name: 'spindle speed', unit: 'r/min' };
const Y: Scale = { name: 'grip of all jaws', unit: 'kN' };

export function jawGrip(ground: Ground): ChartPicture | undefined {
  const type = ground.choice('chuck', 'type');
  if (type === 'collet' || type === 'holder') return undefined;
  const findings = ['jaw-grip', 'overspeed'].map((id) => ground.finding(id));
  const values = (['grip', 'jaws', 'jawMass', 'jawRadius'] as const).map((name) =>
    ground.value(fact('chuck', name)),
  );
  const stop = typeof type === 'string' ? stopped(values) : type;
  if (stop?.why === 'inapplicable') return undefined;
  if (stop) return blank({ ...HEAD, x: X, y: Y }, idsOf(findings), stop);
  const [atRest, jaws, mass, radius] = values.map(numberOf) as [number, number, number, number];
  const moment = jaws * mass * radius;
  const safety = numberOf(ground.value(policy('grip'))) ?? 1;
  const cutSafety = numberOf(ground.value(policy('grip-cut'))) ?? 1;
  const needed = numberOf(ground.value(cut.get('F_z')));
  const cutSpeed = numberOf(ground.value(fact('spindle-duty', 'cutSpeed')));
  const marked = numberOf(ground.value(fact('chuck', 'topSpeed')));
  const wanted = numberOf(ground.value(fact('spindle-duty', 'topSpeed')));

  const empty = Math.sqrt(atRest / moment);
  const twoThirds = Math.sqrt((0.67 * atRest) / moment);
  const left = (share: number) => (xs: Float64Array) =>
    xs.map((n) => (atRest / share - moment * n * n >= 0 ? atRest / share - moment * n * n : Number.NaN));
  const lines: Line[] = [
    { name: 'grip left', role: 'limit', at: left(1) },
    { name: 'with the chuck’s safety', role: 'limit', at: left(safety) },
    level('a third of the grip at rest', 'limit', 0.33 * atRest),
  ];
  if (needed !== undefined)
    lines.push(level('the heaviest cut, with its safety', 'asked', cutSafety * needed));
  const marks: Mark[] = [];
  const [grip, overspeed] = findings;
  if (needed !== undefined && cutSpeed !== undefined)
    marks.push({
      name: 'heaviest cut',
      x: cutSpeed,
      y: cutSafety * needed,
      role: 'asked',
      ...(grip ? { verdict: grip.verdict, finding: grip.id } : {}),
    });
  if (wanted !== undefined && wanted < empty)
    marks.push({
      name: 'top speed wanted',
      x: wanted,
      y: Math.max(0, atRest - moment * wanted * wanted),
      role: 'asked',
      ...(overspeed ? { verdict: overspeed.verdict, finding: overspeed.id } : {}),
    });
  const interesting = Math.max(...marks.map(({ x }) => x), marked ?? 0, 0.4 * twoThirds);
  const to = Math.min(empty, 1.15 * interesting);
  const { series, table } = draw(X, Y, { from: 0, to, through: [twoThirds] }, lines, marks);
  const slowest = needed === undefined ? undefined : atRest / safety - cutSafety * needed;
  const forCut =
    slowest === undefined
      ? ''
      : slowest > 0
        ? ` For the heaviest cut they hold up to ${ground.say(Math.sqrt(slowest / moment), 'r/min')}.`
        : ' For the heaviest cut they do not hold at any speed.';
  return {
    kind: 'chart',
    ...HEAD,
    x: X,
    y: Y,
    says: `At rest ${ground.say(atRest, 'kN')}; two thirds of that are gone at ${ground.say(twoThirds, 'r/min')}.${forCut} ${marked === undefined ? 'What is marked on the chuck is not known, and that is no permission.' : `Marked on the chuck: ${ground.say(marked, 'r/min')}, never more.`}`,
    note: 'For jaws that grip from outside, as the chuck was measured. Soft jaws are heavier and sit further out; a dry chuck grips with half.',
    verdict: worst(findings) ?? 'unknown',
    findings: idsOf(findings),
    missing: [],
    series,
    marks,
    table,
  };
}

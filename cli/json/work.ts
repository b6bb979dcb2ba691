/** Wanted work as JSON and CSV for scripts: everything SI and radians. */
import type { Refit } from '../../engine/refit/index.ts';
import type { InStepAnswer, JudgedWork, WorkChart } from '../../engine/work/index.ts';

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

export const workJson = ({ id, name }: Refit, all: readonly JudgedWork[], whole = false) => ({
  format: 'fettle-work',
  version: 1,
  refit: { id, name },
  work: all.map(({ work, verdict, summary, findings, detail, ways, draws }) => ({
    ...work,
    verdict,
    summary,
    findings: findings.map((each) => ({
      ...each,
      ...(typeof each.margin === 'number' ? { margin: finite(each.margin) } : {}),
      ...(each.marginRange ? { marginRange: each.marginRange.map(finite) } : {}),
    })),
    ways,
    ...(draws ? { draws } : {}),
    ...(whole ? { detail } : {}),
  })),
});

export const chartJson = (chart: WorkChart) => ({ format: 'fettle-work-chart', version: 1, ...chart });

export function inStepJson({ work, verdict }: JudgedWork, { of, sentences, assumed }: InStepAnswer) {
  const { trace, ...run } = of.run;
  return {
    format: 'fettle-in-step',
    version: 1,
    id: work.id,
    verdict,
    ...of,
    run: {
      ...run,
      trace: Object.fromEntries(Object.entries(trace).map(([key, values]) => [key, [...values]])),
    },
    sentences,
    assumed,
  };
}

/** Seconds, turns, r/min, millimetres. */
export function inStepCsv({ of }: InStepAnswer): string {
  const { time, angle, speed, place, ideal } = of.run.trace;
  const rows = ['time s,spindle turns,spindle r/min,tool mm,groove mm,error mm'];
  for (let at = 0; at < time.length; at++)
    rows.push(
      [
        time[at]!.toFixed(6),
        (angle[at]! / (2 * Math.PI)).toFixed(6),
        ((speed[at]! * 30) / Math.PI).toFixed(3),
        (place[at]! * 1e3).toFixed(6),
        (ideal[at]! * 1e3).toFixed(6),
        ((place[at]! - ideal[at]!) * 1e3).toFixed(6),
      ].join(','),
    );
  return `${rows.join('\n')}\n`;
}

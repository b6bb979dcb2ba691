/** Wanted work as JSON and CSV for scripts: everything SI and radians. */
import type { Refit } from '../../engine/refit/index.ts';
import { type InStepAnswer, inStepRows, type JudgedWork, type WorkChart } from '../../engine/work/index.ts';

const micrometres = (off: number | null): string => (off === null ? '' : (off * 1e6).toFixed(3));
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

export function inStepJson({ work, verdict }: JudgedWork, answer: InStepAnswer) {
  const { of, sentences, assumed } = answer;
  const { trace, ...run } = of.run;
  return {
    format: 'fettle-in-step',
    version: 1,
    id: work.id,
    verdict,
    ...of,
    run: {
      ...run,
      trace: {
        ...Object.fromEntries(Object.entries(trace).map(([key, values]) => [key, [...values]])),
        /** m off the groove, null while the tool does not cut. */
        off: inStepRows(answer).map(({ off }) => off),
      },
    },
    sentences,
    assumed,
  };
}

/** Seconds, turns, r/min, millimetres, micrometres; the last column is empty while the tool does not cut. */
export function inStepCsv(answer: InStepAnswer): string {
  const { time, angle, speed, place, ideal } = answer.of.run.trace;
  const off = inStepRows(answer);
  const rows = ['time s,spindle turns,spindle r/min,tool mm,groove mm,off groove in the cut um'];
  for (let at = 0; at < time.length; at++)
    rows.push(
      [
        time[at]!.toFixed(6),
        (angle[at]! / (2 * Math.PI)).toFixed(6),
        ((speed[at]! * 30) / Math.PI).toFixed(3),
        (place[at]! * 1e3).toFixed(6),
        (ideal[at]! * 1e3).toFixed(6),
        micrometres(off[at]!.off),
      ].join(','),
    );
  return `${rows.join('\n')}\n`;
}

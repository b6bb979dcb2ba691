/** A looked-through stop circuit as JSON; docs/command-line.md says what is in it. Infinity is written as null. */
import { type FaultPair, type StopAnalysis, stopAnswer } from '../../engine/circuit/stop/index.ts';

export function stopJson(
  pattern: string | null,
  { base, findings, stops, faults, truth, races, axes, guards, estimate, notExamined }: StopAnalysis,
  pairs: readonly FaultPair[] | undefined,
) {
  return {
    format: 'fettle-stop',
    version: 1,
    pattern,
    answer: stopAnswer({ findings, faults }),
    findings,
    stops: stops.map(({ act, role, stops: own, doesNotStop }) => ({
      act: act.says,
      role,
      doesNotStop,
      stops: own.map(({ run: _run, ...stop }) => stop),
    })),
    faults: faults.map(({ fault, judged, says, catches, next }) => ({
      id: fault.id,
      group: fault.group,
      element: fault.element,
      verdict: judged.verdict,
      says,
      catches,
      mayExclude: fault.mayExclude ?? null,
      hiddenByPower: judged.hiddenByPower,
      noticedBy: judged.noticedBy,
      next: next?.fault.id ?? null,
    })),
    truth: {
      states: truth.states,
      complete: truth.complete,
      rows: truth.rows.map((row) => ({ ...row, stops: row.stops.map(({ run: _run, ...stop }) => stop) })),
    },
    numbers: base.model.motions.map(({ id, numbers }) => ({ motion: id, rows: numbers.rows })),
    races,
    axes,
    guards,
    estimate,
    ...(pairs
      ? {
          pairs: pairs.map(({ first, second, judged }) => ({
            first: first.id,
            second: second.id,
            happenings: judged.happenings,
          })),
        }
      : {}),
    notExamined,
  };
}

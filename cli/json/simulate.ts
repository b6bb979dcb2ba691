/** A run as JSON and as a table of comma-separated values. All SI; angles of the motor in radians. */
import type { Hunting, Move, Run } from '../../engine/simulate/index.ts';

export function runJson(
  name: string,
  move: Move,
  run: Run,
  notes: readonly string[],
  atRest: Hunting | null,
): object {
  return {
    format: 'fettle-simulation',
    version: 1,
    name,
    move,
    assumed: notes,
    until: run.until,
    stopped: run.stopped,
    summary: run.summary,
    second: run.second?.summary ?? null,
    trips: run.trips,
    circle: run.circle && { ...run.circle, byDegree: [...run.circle.byDegree] },
    supply: run.supply,
    events: run.events,
    atRest,
  };
}

export function runCsv(run: Run): string {
  const columns: [string, Float64Array][] = [
    ['time s', run.time],
    ['commanded m', run.commanded],
    ['actual m', run.actual],
    ['following error m', run.following],
    ['motor speed rad/s', run.speed],
    ['current A', run.current],
    ['bus V', run.bus],
  ];
  if (run.second)
    columns.push(['second commanded m', run.second.commanded], ['second actual m', run.second.actual]);
  const lines = [columns.map(([name]) => name).join(',')];
  for (let row = 0; row < run.time.length; row++)
    lines.push(columns.map(([, values]) => String(values[row])).join(','));
  return `${lines.join('\n')}\n`;
}

/** A run as a table that a person reads, and the list of moves. */
import { formatQuantity } from '../../engine/quantity/index.ts';
import { MOVES, type Move, type Run } from '../../engine/simulate/index.ts';
import type { Page } from './page.ts';

const INDENT = '    ';
const MOST_EVENTS = 16;
/** Below a nanometre, a microamp and the like nothing is told apart. */
const show = (value: number, unit: string): string =>
  formatQuantity(Math.abs(value) < 1e-12 ? 0 : value, unit, { digits: 3 });

export function printMoves(page: Page): void {
  for (const [kind, { says, fields }] of Object.entries(MOVES)) {
    page.prose(`${page.paint('bold', kind)}: ${says}`, '', INDENT);
    for (const [name, field] of Object.entries(fields))
      page.prose(`${name}: ${field.name}; usual ${field.usual}`, INDENT, INDENT.repeat(2));
  }
}

/** Label, value, and what it means where that is not plain. */
type Row = readonly [label: string, value: string, says?: string];

function rowsOf({ summary: s, supply, circle }: Run, move: Move): Row[] {
  const rows: Row[] = [
    [
      'greatest following error',
      show(s.peakFollowing, 'mm'),
      `at ${show(s.peakFollowingAt, 's')}; command less what the loop sees`,
    ],
    ['greatest error of the slide', show(s.peakSlideError, 'mm'), 'command less where the slide is'],
    ['beyond the end', show(s.overshoot, 'mm')],
    [
      'settled',
      s.settled === null ? 'not within the time' : show(s.settled, 's'),
      `until it stays within ${show(s.settleBand, 'µm')}`,
    ],
    [
      'greatest current',
      show(s.peakCurrent, 'A'),
      s.rmsCurrent === null ? '' : `r.m.s. ${show(s.rmsCurrent, 'A')}`,
    ],
    ['greatest motor speed', show(s.peakSpeed, 'r/min')],
    ['time at the current limit', show(s.atCurrentLimit, 's')],
    ['time at the voltage limit', show(s.atVoltageLimit, 's')],
    ['bus', `${show(supply.lowest, 'V')} to ${show(supply.highest, 'V')}`],
  ];
  if (supply.dumped > 0) rows.push(['burnt in the dump resistor', show(supply.dumped, 'J')]);
  if (s.slips > 0) rows.push(['came to rest, broke free', `${s.sticks} and ${s.slips} times`]);
  if (s.lostMotion !== null)
    rows.push(['lost motion', show(s.lostMotion, 'µm'), 'between reaching a place from either side']);
  if (s.travelAfterOff !== null) rows.push(['ran on after switching off', show(s.travelAfterOff, 'mm')]);
  if (circle)
    rows.push(
      ['roundness', show(circle.roundness, 'µm'), 'greatest less least distance from the true circle'],
      ['radius off by', show(circle.meanRadius, 'µm')],
    );
  if (s.stalled)
    rows.push([
      'out of step',
      `at ${show(s.stalled.at, 's')}`,
      `${s.stalled.stepsLost} full steps off at the end`,
    ]);
  if (move.kind === 'circle') return rows.filter(([label]) => label !== 'beyond the end');
  return rows;
}

/** The answer in one sentence. */
function answer({ summary, second, trips, stopped }: Run): string {
  const unstable = summary.unstable ?? second?.summary.unstable;
  if (unstable) return `The loop is ${unstable.says}.`;
  if (summary.stalled || second?.summary.stalled)
    return 'The motor falls out of step: it does not make this move.';
  if (trips[0]) return `It does not make this move. ${trips[0].sentence}`;
  if (stopped) return stopped;
  const limits = [
    ...(summary.atCurrentLimit > 0 ? ['current'] : []),
    ...(summary.atVoltageLimit > 0 ? ['voltage'] : []),
  ];
  return limits.length > 0
    ? `It makes the move, but reaches the limit of ${limits.join(' and ')} on the way.`
    : 'It makes the move within its limits.';
}

export function printRun(page: Page, name: string, move: Move, run: Run, notes: readonly string[]): void {
  page.prose(page.paint('bold', `${name}: ${move.kind}`));
  page.prose(answer(run));
  page.line();
  const rows = rowsOf(run, move);
  for (const [label, value, says] of rows)
    page.prose(`${label}: ${value}${says ? ` (${says})` : ''}`, '', INDENT);
  page.heading('What happened');
  if (run.events.length === 0) page.prose('Nothing out of the ordinary.');
  for (const { time, sentence } of run.events.slice(0, MOST_EVENTS))
    page.prose(`${show(time, 's')}: ${sentence}`, '', INDENT);
  if (run.events.length > MOST_EVENTS)
    page.prose(`… and ${run.events.length - MOST_EVENTS} more; --json has them.`);
  if (notes.length === 0) return;
  page.heading('What this rests on');
  for (const note of notes) page.prose(note, '', INDENT);
}

/** A looked-through stop circuit on a terminal. */
import {
  AS_WIRED,
  ESTIMATE_TITLE,
  FAULT_GROUPS,
  type FaultGroup,
  type FaultPair,
  type FaultReport,
  groupOf,
  type NumberRow,
  type StopAnalysis,
  type StopFinding,
  sayEstimate,
  sayGuard,
  sayPair,
  sayPlace,
  sayReserve,
  sayRow,
  sayRunOn,
  sayStopAnswer,
  stopAnswer,
} from '../../engine/circuit/stop/index.ts';
import type { Page } from './page.ts';
import { plural } from './text.ts';

const INDENT = '    ';
const COLOURS = { fails: 'red', tight: 'yellow', fits: 'green', unknown: 'cyan' } as const;

/** The answer in a sentence, before everything it rests on. */
export function printStopAnswer(page: Page, looked: StopAnalysis): void {
  const answer = stopAnswer(looked);
  page.prose(
    `${page.paint(COLOURS[answer.verdict], answer.verdict.padEnd(8))}${sayStopAnswer(answer)}`,
    '',
    INDENT,
  );
  page.line();
}

export function printStopFindings(page: Page, { findings }: StopAnalysis): void {
  for (const finding of findings) printStopFinding(page, finding);
}

/** `was`: the verdict before a change, to be shown beside it. */
export function printStopFinding(
  page: Page,
  { id, verdict, title, sentence, pieces, remedy, caution }: StopFinding,
  was?: string,
): void {
  const before = was === undefined ? '' : `, was ${was}`;
  page.prose(`${page.paint(COLOURS[verdict], verdict.padEnd(8))}${title} (${id}${before})`, '', INDENT);
  if (pieces && id === AS_WIRED) for (const piece of pieces) page.prose(piece, INDENT, INDENT);
  else page.prose(sentence, INDENT);
  if (caution) page.prose(`${page.paint('bold', 'First:')} ${caution}`, INDENT);
  if (remedy) page.prose(`What would do: ${remedy}`, INDENT);
}

/** One finding with what it rests on: the faults that were tried, or the numbers of what moves. */
export function printStopWhy(page: Page, finding: StopFinding, looked: StopAnalysis): void {
  printStopFinding(page, finding);
  const { faults, base } = looked;
  const group = GROUPS_OF[finding.id];
  if (group) {
    printFaults(
      page,
      faults.filter((each) => group.includes(groupOf(each))),
    );
    return;
  }
  const { motions } = base.model;
  const own = motions.filter(({ id }) => finding.id.startsWith(`stop.${id}.`));
  const all = finding.id.startsWith('stop.act.') || finding.id === 'stop.power' ? motions : own;
  for (const { name, numbers } of all) printNumbersOf(page, name, numbers.rows);
}

/** The faults that a finding counts. */
const GROUPS_OF: Readonly<Record<string, readonly FaultGroup[]>> = {
  'stop.faults': ['dangerous', 'rests'],
  'stop.unnoticed': ['adds-up', 'unnoticed'],
};

export function printFaults(page: Page, faults: readonly FaultReport[]): void {
  for (const { group, title } of FAULT_GROUPS) {
    const own = faults.filter((each) => groupOf(each) === group);
    if (own.length === 0) continue;
    page.heading(`${title}: ${own.length}`);
    for (const { fault, says, catches } of own) {
      page.prose(`${fault.id}: ${says}`, '', INDENT);
      if (group !== 'stops' && group !== 'noticed') page.prose(`What catches it: ${catches}`, INDENT);
    }
  }
}

export function printTruth(page: Page, { truth }: StopAnalysis): void {
  page.heading(
    `${plural(truth.rows.length, 'act')} in ${plural(truth.states, 'state')}${truth.complete ? '' : ', not all there are'}`,
  );
  let from = '';
  for (const row of truth.rows) {
    if (row.from !== from) page.prose(page.paint('bold', row.from));
    from = row.from;
    const what = sayRow(row);
    page.prose(
      `${row.act} → held: ${row.held.join(', ') || 'nothing'}${what.length > 0 ? `; ${what.join('; ')}` : ''}`,
      INDENT,
      `${INDENT}${INDENT}`,
    );
  }
}

export function printPairs(page: Page, pairs: readonly FaultPair[]): void {
  page.heading(`Two faults, the first unnoticed: ${plural(pairs.length, 'dangerous pair')}`);
  for (const pair of pairs) page.prose(sayPair(pair), '', INDENT);
}

/** The numbers that run-on rests on, and where each comes from. */
export function printNumbers(page: Page, { base, estimate }: StopAnalysis): void {
  for (const { name, numbers } of base.model.motions) printNumbersOf(page, name, numbers.rows);
  page.heading('Numbers of the standard');
  for (const { what, source } of estimate.sources) page.prose(`${what}: ${source}`, '', INDENT);
}

function printNumbersOf(page: Page, name: string, rows: readonly NumberRow[]): void {
  page.heading(`Numbers of ${name}`);
  for (const row of rows)
    page.prose(`${row.name}: ${row.says || '?'} (${row.from})`, INDENT, `${INDENT}${INDENT}`);
}

export function printPlaces(page: Page, { axes, guards }: StopAnalysis): void {
  for (const axis of axes) {
    page.heading(`Where the switches of ${axis.motion} must stand`);
    page.prose(sayRunOn(axis));
    for (const mark of axis.marks)
      if (mark.at !== undefined || mark.needed !== undefined)
        page.prose([`${mark.name} ${sayPlace(mark)}`, sayReserve(mark)].filter(Boolean).join(', '), INDENT);
  }
  for (const guard of guards) {
    page.heading(`How far the guard of ${guard.motion} must stand`);
    page.prose(sayGuard(guard));
  }
}

export function printEstimate(page: Page, { estimate, notExamined }: StopAnalysis): void {
  page.heading(ESTIMATE_TITLE);
  for (const each of sayEstimate(estimate)) page.prose(each);
  for (const { element, says, source } of estimate.parts)
    page.prose(`${element}: ${says}; ${source}`, INDENT);
  for (const each of estimate.missing) page.prose(`– ${each}`, '', INDENT);
  page.heading('What was not examined');
  for (const each of notExamined) page.prose(`– ${each}`, '', INDENT);
}

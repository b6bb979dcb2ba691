/** A looked-through stop circuit on a terminal. */
import {
  type FaultPair,
  type FaultReport,
  type StopAnalysis,
  sayStopping,
  type Verdict,
} from '../../engine/circuit/stop/index.ts';
import { formatQuantity } from '../../engine/quantity/index.ts';
import type { StopCircuit } from '../../engine/refit/index.ts';
import type { Page } from './page.ts';
import { plural } from './text.ts';

const INDENT = '    ';
const VERDICTS: Readonly<Record<Verdict, string>> = {
  dangerous: 'Dangerous',
  unnoticed: 'Still stops, and nobody is told',
  noticed: 'Still stops, and does not start again',
  stops: 'Stops it, or keeps it from starting',
};

export function printStopFindings(page: Page, { findings }: StopAnalysis): void {
  for (const { id, verdict, title, sentence, remedy } of findings) {
    const colour =
      verdict === 'fails' ? 'red' : verdict === 'tight' ? 'yellow' : verdict === 'fits' ? 'green' : 'cyan';
    page.prose(`${page.paint(colour, verdict.padEnd(8))}${title} (${id})`, '', INDENT);
    page.prose(sentence, INDENT);
    if (remedy) page.prose(`What would do: ${remedy}`, INDENT);
  }
}

export function printFaults(page: Page, faults: readonly FaultReport[]): void {
  for (const [verdict, title] of Object.entries(VERDICTS)) {
    const own = faults.filter(({ judged }) => judged.verdict === verdict);
    if (own.length === 0) continue;
    page.heading(`${title}: ${own.length}`);
    for (const { fault, says, catches } of own) {
      page.prose(`${fault.id}: ${says}`, '', INDENT);
      if (verdict !== 'stops' && verdict !== 'noticed') page.prose(`What catches it: ${catches}`, INDENT);
    }
  }
}

export function printTruth(page: Page, { truth }: StopAnalysis, circuit: StopCircuit): void {
  page.heading(
    `${plural(truth.rows.length, 'act')} in ${plural(truth.states, 'state')}${truth.complete ? '' : ', not all there are'}`,
  );
  let from = '';
  for (const row of truth.rows) {
    if (row.from !== from) page.prose(page.paint('bold', row.from));
    from = row.from;
    const what = [
      ...row.stops.map((stop) => sayStopping(stop, circuit.motions[stop.motion]?.kind === 'spindle')),
      ...(row.starts.length > 0 ? [`starts ${row.starts.join(', ')}${row.unasked ? ' UNASKED' : ''}`] : []),
      ...(row.restless.length > 0 ? [`${row.restless.join(', ')} chatters`] : []),
    ];
    page.prose(
      `${row.act} → held: ${row.held.join(', ') || 'nothing'}${what.length > 0 ? `; ${what.join('; ')}` : ''}`,
      INDENT,
      `${INDENT}${INDENT}`,
    );
  }
}

export function printPairs(page: Page, pairs: readonly FaultPair[]): void {
  page.heading(`Two faults, the first unnoticed: ${plural(pairs.length, 'dangerous pair')}`);
  for (const { first, second, judged } of pairs)
    page.prose(
      `${first.id}, then ${second.id}: ${judged.happenings[0]?.motions.join(', ') ?? ''} after “${judged.happenings[0]?.after ?? ''}”`,
      '',
      INDENT,
    );
}

export function printPlaces(page: Page, { axes, guards }: StopAnalysis): void {
  const mm = (metres: number) => formatQuantity(metres, 'mm', { digits: 3 });
  for (const { motion, runOn, because, marks, needs } of axes) {
    page.heading(`Where the switches of ${motion} must stand`);
    page.prose(
      runOn === undefined
        ? `How far it runs on is not known: ${needs.join(', ')}.`
        : `It runs on ${mm(runOn)}: ${because}.`,
    );
    for (const { name, at, reserve } of marks)
      if (at !== undefined)
        page.prose(
          `${name} at ${mm(at)}${reserve === undefined ? '' : `, ${reserve < 0 ? `${mm(-reserve)} too little` : `${mm(reserve)} left over`}`}`,
          INDENT,
        );
  }
  for (const { motion, time, needed, says } of guards) {
    page.heading(`How far the guard of ${motion} must stand`);
    if (time !== undefined && needed !== undefined)
      page.prose(
        `It stands after ${formatQuantity(time, 's', { digits: 3 })}: ${formatQuantity(needed, 'm', { digits: 3 })} without a lock (ISO 13855).`,
      );
    page.prose(says);
  }
}

export function printEstimate(page: Page, { estimate, notExamined }: StopAnalysis): void {
  page.heading('What it resembles (an indication, no certificate)');
  page.prose(`${estimate.why} That resembles category ${estimate.resembles} of ISO 13849-1.`);
  if (estimate.mttfd !== undefined)
    page.prose(
      `Years to a dangerous failure of a channel: ${estimate.mttfd.toPrecision(3)}${estimate.coverage === undefined ? '' : `; coverage ${(100 * estimate.coverage).toFixed(0)} %`}; points against a common cause: ${estimate.commonCause}.`,
    );
  page.prose(
    estimate.level
      ? `The simplified chart would give level ${estimate.level}.`
      : 'The simplified chart gives no level.',
  );
  for (const each of estimate.missing) page.prose(`– ${each}`, '', INDENT);
  page.prose(estimate.source, '', INDENT);
  page.heading('What was not examined');
  for (const each of notExamined) page.prose(`– ${each}`, '', INDENT);
}

/** The test sheet: one action a line, what must happen, and room to sign. */

import { capital } from '../../quantity/words.ts';
import { escaped } from '../../refit/sheets/node.ts';
import type { StopCircuit } from '../../refit/types.ts';
import type { StopAnalysis } from './analyse.ts';
import { sayStopping } from './say-stopping.ts';
import { stopFindingId } from './stop-findings.ts';

export interface TestLine {
  readonly number: number;
  readonly part: string;
  readonly act: string;
  readonly expected: string;
  /** What to check before touching anything, where it can hurt. */
  readonly caution?: string;
}

export interface TestSheet {
  readonly machine: string;
  readonly made: string;
  /** The day by which it is due again; also after every change. */
  readonly due: string;
  readonly months: number;
  readonly before: readonly string[];
  readonly lines: readonly TestLine[];
}

const LOCKED =
  'Power off, main switch locked, wait until the drives have discharged, measure less than 60 V and that nothing else is live.';

/** `today` is an ISO date, given by the caller. */
export function testSheet(
  name: string,
  circuit: StopCircuit,
  { base, stops, faults, findings }: StopAnalysis,
  today: string,
): TestSheet {
  const months = Number(circuit.settings['test-months'] ?? '12') || 12;
  const lines: Omit<TestLine, 'number'>[] = [];
  const slow = 'Slowly, without tool or work, nobody in reach of what moves. A hand on the main switch.';
  for (const { act, role, stops: own } of stops) {
    const part = role === 'power' ? 'Power failure' : `Stop: ${act.says}`;
    const back = base.demands.find((each) => each.act === act)!.back.says;
    const expected = own.map(sayStopping).join('. ');
    const id = stopFindingId(base.model, act);
    const prop = findings.find((each) => each.id === id)?.caution;
    lines.push({
      part,
      act: `Machine runs slowly. ${sentence(act.says)}`,
      expected: `${expected}. Write down the time: ______ s`,
      caution: prop === undefined ? slow : `${prop} ${slow}`,
    });
    lines.push({ part, act: sentence(back), expected: 'Nothing starts.' });
    lines.push({ part, act: 'Press start, let go, start a program.', expected: 'It starts, and only now.' });
  }
  for (const { act } of base.barred)
    lines.push({
      part: 'Locked door',
      act: `Machine runs slowly. Try to ${act.says}.`,
      expected: 'It does not open until all stands.',
      caution: slow,
    });
  for (const { fault, judged } of faults) {
    if (judged.verdict !== 'noticed' && judged.verdict !== 'stops') continue;
    if (fault.group !== 'wire' || !fault.id.endsWith(' off') || !CHANNEL.test(fault.says)) continue;
    lines.push({
      part: 'Each channel by itself',
      act: `Take off: ${fault.says.replace(/ has come off$/, '')}. Power on, try to start. Then power off, lock, put it back.`,
      expected: 'It does not start.',
      caution: LOCKED,
    });
  }
  for (const { element } of base.model.contacts.filter(
    ({ linked, closedAt, main }) => linked && closedAt === 0 && !main,
  ))
    if (!lines.some(({ act }) => act.includes(`armature of ${element} `)))
      lines.push({
        part: 'Contacts that tell the truth',
        act: `Push the armature of ${element} in by hand and measure its contacts that open.`,
        expected: 'They open before the others close.',
        caution: LOCKED,
      });
  for (const { id, vertical, brake } of base.model.motions)
    if (vertical && brake >= 0)
      lines.push({
        part: `Brake of ${id}`,
        act: `Raise ${id}, put a prop 20 mm below it, press the emergency stop and read the sag on an indicator.`,
        expected: 'It stays where it is; sag: ______ mm',
        caution: 'Nobody under it or reaching under it. Block it before motor or brake is taken off.',
      });
  lines.push(...ELECTRICAL);
  return {
    machine: name,
    made: today,
    due: addMonths(today, months),
    months,
    before: [
      'To be done after every change of the stop circuit, and by the date given.',
      'Whoever tests must know the machine. Mains wiring and its tests are for a licensed electrician; local rules come first.',
      'This sheet shows what was drawn. It makes the machine neither safe nor certified.',
    ],
    lines: lines.map((line, at) => ({ number: at + 1, ...line })),
  };
}

/** IEC 60204-1:2016, 6.2.4 and clause 18; limits as quoted in testers' manuals, the rest recalled. */
const ELECTRICAL: readonly Omit<TestLine, 'number'>[] = [
  {
    part: 'Stored charge',
    act: 'Switch off, wait 5 s, measure the voltage of every d.c. bus.',
    expected: 'At most 60 V (IEC 60204-1:2016, 6.2.4).',
    caution: 'A meter fit for the voltage, covers on until then, one hand, not alone.',
  },
  {
    part: 'Earth and insulation, by a licensed electrician',
    act: 'Measure the protective conductor from the supply to every part that can be touched.',
    expected: 'As its length and cross-section let expect (IEC 60204-1:2016, 18.2). Written down: ______ ohm',
  },
  {
    part: 'Earth and insulation, by a licensed electrician',
    act: 'Measure the insulation between power circuits and the protective conductor at 500 V d.c., electronics taken off.',
    expected: 'At least 1 megohm (IEC 60204-1:2016, 18.3). Written down: ______ megohm',
  },
];

/** Wires that run to a button, a door, a switch or a start loop. */
const CHANNEL = /\((?:[^)]*\b(?:S\d+|U\d+)\.)/;

const sentence = (act: string): string => `${capital(act)}.`;

/** The same day some months later, or the last of that month. */
export function addMonths(day: string, months: number): string {
  const [year = 2000, month = 1, date = 1] = day.slice(0, 10).split('-').map(Number);
  const first = new Date(Date.UTC(year, month - 1 + months, 1));
  const last = new Date(Date.UTC(first.getUTCFullYear(), first.getUTCMonth() + 1, 0)).getUTCDate();
  first.setUTCDate(Math.min(date, last));
  return first.toISOString().slice(0, 10);
}

/** As plain text. */
export function testSheetText({ machine, made, due, before, lines }: TestSheet): string {
  return `${[
    `Test sheet of the stop circuit: ${machine}`,
    `Made ${made}. Due again ${due}, and after every change.`,
    ...before,
    '',
    ...lines.flatMap(({ number, part, act, expected, caution }) => [
      `${number}. ${part}`,
      ...(caution ? [`   First: ${caution}`] : []),
      `   Do: ${act}`,
      `   Must: ${expected}`,
      '   Date, signature: ____________________',
    ]),
  ].join('\n')}\n`;
}

/** As a page to print. Everything from the refit is escaped; there is no script in it. */
export function testSheetHtml(sheet: TestSheet): string {
  const { machine, made, due, before, lines } = sheet;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>Test sheet: ${escaped(machine)}</title>
<style>
body{font:12pt/1.4 system-ui,sans-serif;margin:1.5cm;color:#000;background:#fff}
table{border-collapse:collapse;width:100%}
th,td{border:1px solid #444;padding:.3em .5em;text-align:left;vertical-align:top}
td:last-child{min-width:9em}
tr{break-inside:avoid}
.first{font-weight:600;margin:0 0 .3em}
thead{display:table-header-group}
@page{margin:1.5cm}
</style>
</head>
<body>
<h1>Test sheet of the stop circuit: ${escaped(machine)}</h1>
<p>Made ${escaped(made)}. <strong>Due again ${escaped(due)}, and after every change.</strong></p>
<ul>
${before.map((each) => `<li>${escaped(each)}</li>`).join('\n')}
</ul>
<table>
<thead><tr><th>No.</th><th>Part</th><th>Do</th><th>What must happen</th><th>Date, signature</th></tr></thead>
<tbody>
${lines
  .map(
    ({ number, part, act, expected, caution }) =>
      `<tr><td>${number}</td><td>${escaped(part)}</td><td>${caution ? `<p class="first">First: ${escaped(caution)}</p>` : ''}${escaped(act)}</td><td>${escaped(expected)}</td><td></td></tr>`,
  )
  .join('\n')}
</tbody>
</table>
</body>
</html>
`;
}

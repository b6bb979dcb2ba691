/** A looked-through wiring, its lists and a proposal on a terminal. */

import type { List } from '../../engine/circuit/lists/index.ts';
import { type Looked, sayAbout, sayNeeds } from '../../engine/circuit/whole/index.ts';
import type { ReadWiring, Verdict, WiringFinding } from '../../engine/circuit/wiring/index.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import type { Page } from './page.ts';
import { plural } from './text.ts';

const INDENT = '    ';
/** Wires of a finding that are told with their ends. */
const SHOWN = 4;
const COLOURS = { fails: 'red', tight: 'yellow', fits: 'green', unknown: 'cyan' } as const satisfies Record<
  Verdict,
  string
>;

export function printLooked(page: Page, { read, findings, problems, sizes }: Looked, all: boolean): void {
  const counts = countVerdicts(findings);
  page.prose(
    `${plural(read.devices.size, 'device')}, ${plural(read.terminals.size, 'terminal')}, ${plural(read.wires.size, 'wire')}, ${plural(read.cables.size, 'cable')}.`,
  );
  page.prose(
    `${plural(findings.length, 'answer')}: ${counts.fails} fails, ${counts.unknown} unknown, ${counts.tight} tight, ${counts.fits} fits.`,
  );
  for (const { where, message } of problems) page.prose(`${where}: ${message}`, '', INDENT);
  printWiringFindings(
    page,
    findings.filter(({ verdict }) => all || verdict !== 'fits'),
    read,
  );
  if (!all && counts.fits > 0) {
    page.line();
    page.prose(`What fits is left out; --all shows it.`);
  }
  if (sizes.length > 0) page.heading('What to buy for the supply');
  for (const { sentence } of sizes) page.prose(`– ${sentence}`, '', INDENT);
}

/** `read`: where the wires that findings speak of run. */
export function printWiringFindings(page: Page, findings: readonly WiringFinding[], read: ReadWiring): void {
  for (const { id, about, verdict, title, sentence, remedy, needs } of findings) {
    page.prose(`${page.paint(COLOURS[verdict], verdict.padEnd(8))}${title} (${id})`, '', INDENT);
    page.prose(sentence, INDENT);
    if (remedy) page.prose(`What would make it right: ${remedy}`, INDENT);
    const wires = about.filter((each) => read.wires.has(each)).slice(0, SHOWN);
    if (wires.length > 0)
      page.prose(`Where: ${wires.map((each) => sayAbout(read, each)).join('; ')}.`, INDENT);
    if (needs && needs.length > 0) page.prose(`Waits for: ${sayNeeds(needs)}.`, INDENT);
  }
}

/** Columns as wide as what stands in them; a line that is too long for the terminal is wrapped by it. */
export function printList(page: Page, { title, about, caution, columns, groups }: List): void {
  page.prose(page.paint('bold', title));
  page.prose(about);
  if (caution) page.prose(`Take care. ${caution}`);
  if (groups.length === 0) page.prose('Nothing in it yet.');
  for (const group of groups) {
    page.heading(group.title);
    if (group.note) page.prose(group.note);
    const rows = [columns, ...group.rows.map(({ cells }) => cells)];
    const used = columns.map((_, at) => group.rows.some(({ cells }) => cells[at] !== ''));
    const widths = columns.map((_, at) => Math.max(...rows.map((row) => row[at]?.length ?? 0)));
    for (const row of rows)
      page.line(row.flatMap((cell, at) => (used[at] ? [cell.padEnd(widths[at]!)] : [])).join('  '));
  }
}

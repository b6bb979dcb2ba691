/** A looked-through wiring, its lists and a proposal on a terminal. */

import type { List } from '../../engine/circuit/lists/index.ts';
import {
  type Looked,
  type Resting,
  sayAbout,
  sayNeeds,
  sayPlace,
  type UsualHere,
} from '../../engine/circuit/whole/index.ts';
import type { ReadWiring, Verdict, WiringFinding } from '../../engine/circuit/wiring/index.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import { andList, capital } from '../../engine/quantity/words.ts';
import type { Page } from './page.ts';
import { plural, quoted } from './text.ts';

const INDENT = '    ';
/** Wires of a finding that are told with their ends. */
const SHOWN = 4;
const COLOURS = { fails: 'red', tight: 'yellow', fits: 'green', unknown: 'cyan' } as const satisfies Record<
  Verdict,
  string
>;

/** `path`: the file, for the commands that are shown. */
export function printLooked(
  page: Page,
  { read, findings, problems, sizes, resting }: Looked,
  usual: readonly UsualHere[],
  all: boolean,
  path: string,
): void {
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
    resting,
  );
  if (!all && counts.fits > 0) {
    page.line();
    page.prose(`What fits is left out; --all shows it.`);
  }
  if (sizes.length > 0) page.heading('What to buy for the supply');
  for (const { sentence } of sizes) page.prose(`– ${sentence}`, '', INDENT);
  if (usual.length > 0) printUsual(page, usual, path);
}

/** What nobody has looked at, with the command that says it is so. */
function printUsual(page: Page, usual: readonly UsualHere[], path: string): void {
  page.heading('Usual values, not looked at yet');
  page.prose(
    'Nobody stated these. Where you have looked, the command records that it is so; put what you found in place of the value where it is otherwise.',
  );
  for (const { name, value, because, places } of usual) {
    page.prose(`– ${capital(name)}: ${value}. ${because}`.trimEnd(), '', INDENT);
    page.line(
      `${INDENT}fettle wire ${quoted(path)} ${places.map((place) => `${sayPlace(place)}='${value}'`).join(' ')}`,
    );
  }
}

/** `read`: where the wires that findings speak of run. */
export function printWiringFindings(
  page: Page,
  findings: readonly WiringFinding[],
  read: ReadWiring,
  resting?: Resting,
): void {
  for (const { id, about, verdict, title, sentence, remedy, needs } of findings) {
    page.prose(`${page.paint(COLOURS[verdict], verdict.padEnd(8))}${title} (${id})`, '', INDENT);
    page.prose(sentence, INDENT);
    const rests = resting?.get(id);
    if (rests) page.prose(`It rests on ${andList(rests)}; nobody has looked at that yet.`, INDENT);
    if (remedy) page.prose(`What would make it right: ${remedy}`, INDENT);
    const wires = about.filter((each) => read.wires.has(each)).slice(0, SHOWN);
    if (wires.length > 0)
      page.prose(`Where: ${wires.map((each) => sayAbout(read, each)).join('; ')}.`, INDENT);
    if (needs && needs.length > 0) page.prose(`Waits for: ${sayNeeds(needs, read)}.`, INDENT);
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

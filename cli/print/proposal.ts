/** A proposed wiring on a terminal: what it asks and how each is answered, what it lays, what would still not be fine. */

import {
  type AskGroup,
  exampleOf,
  type Settled,
  sayPlace,
  specAt,
  type Taken,
  takenGroups,
} from '../../engine/circuit/whole/index.ts';
import { type Proposal, readWiring } from '../../engine/circuit/wiring/index.ts';
import { capital } from '../../engine/quantity/words.ts';
import type { Wiring } from '../../engine/refit/types.ts';
import type { Page } from './page.ts';
import { plural, quoted } from './text.ts';
import { printWiringFindings } from './wiring.ts';

const INDENT = '    ';

export function printProposal(
  page: Page,
  { changes, left, reasons }: Proposal,
  { open, groups, answered, taken, findings, wiring, waiting, everything }: Settled,
  path: string,
  kept: boolean,
): void {
  const wires = changes.flatMap((change) => (change.do === 'wire' && change.new ? [change.new] : []));
  const held = new Set(open.flatMap((each) => each.wires));
  page.prose(sayWhat(changes, wires.length));
  for (const { id, from, to, settings } of wires) {
    const words = [...Object.values(settings), ...(held.has(id) ? ['waits for an answer'] : [])];
    const because = reasons[id] === undefined ? [] : [reasons[id]];
    page.prose(`${from} to ${to}: ${[words.join(', '), ...because].join('; ')}`, INDENT, `${INDENT}    `);
  }
  if (groups.length > 0) {
    page.heading('What it has to be told');
    page.prose(
      `${answered} of ${answered + groups.length} answered. Put what you know in place of “…”; what is only a guess can wait. Where several places are named and one answer does not suit all, write each by itself.`,
    );
    let stage: string | undefined;
    for (const group of groups) {
      if (group.stage !== stage) page.prose(page.paint('bold', `${group.stage}:`));
      stage = group.stage;
      printGroup(page, group, wiring, path);
    }
  }
  if (taken.length > 0) printTaken(page, taken, wiring, path);
  if (left.length > 0) page.heading('What is left out');
  for (const each of left) page.prose(`– ${each}`, '', INDENT);
  const bad = findings.filter(({ verdict }) => verdict !== 'fits');
  if (bad.length > 0) page.heading('What would not be fine with it');
  printWiringFindings(page, bad, readWiring(wiring));
  if (kept || everything.length === 0) return;
  page.heading('To record it');
  if (waiting > 0)
    page.prose(
      `${plural(waiting, 'wire')} ${waiting === 1 ? 'waits' : 'wait'} for an answer and ${waiting === 1 ? 'stays' : 'stay'} unmade.`,
    );
  page.line(`${INDENT}fettle wiring ${quoted(path)} --propose --keep`);
}

/** How much there is of it, and between what. */
function sayWhat(changes: Proposal['changes'], wires: number): string {
  const devices = changes.filter((each) => each.do === 'device' && each.old === null).length;
  if (wires === 0 && devices === 0) return 'Nothing is missing: no wire and no device is proposed.';
  return devices === 0
    ? `${plural(wires, 'wire')} proposed between the devices that are there.`
    : `${plural(wires, 'wire')} proposed, and ${plural(devices, 'device')} with them that ${devices === 1 ? 'is' : 'are'} not here yet: of the parts that are chosen, and what every machine needs.`;
}

function printGroup(
  page: Page,
  { asks, waits, facts, members }: AskGroup,
  wiring: Wiring,
  path: string,
): void {
  page.prose(`– ${asks} ${waits}`, '', INDENT);
  if (members.length > 1) page.prose(`That is: ${members.join('; ')}.`, INDENT);
  const places = facts.flatMap(({ questions }) => questions.map(({ place }) => `${sayPlace(place)}='…'`));
  page.line(`${INDENT}fettle wire ${quoted(path)} ${places.join(' ')}`);
  for (const { name, options, questions } of facts) {
    const spec = specAt(questions[0]!.place, wiring);
    const ways = options ? `One of: ${options.join('; ')}.` : spec ? `Written like ${exampleOf(spec)}.` : '';
    page.prose(facts.length > 1 ? `${capital(name)}: ${ways}` : ways, INDENT);
  }
}

/** What nobody was asked, with the command that changes it. */
function printTaken(page: Page, taken: readonly Taken[], wiring: Wiring, path: string): void {
  page.heading('Taken as usual');
  page.prose(
    'Nobody was asked these, since they are nearly always so, and no harm comes of it where they are not. They are recorded with the wires as usual values that nobody has looked at yet; change what you know to be otherwise, before or after.',
  );
  for (const { name, value, because, questions } of takenGroups(taken, wiring)) {
    page.prose(`– ${capital(name)}: ${value}. ${because}`, '', INDENT);
    page.line(
      `${INDENT}fettle wire ${quoted(path)} ${questions.map(({ place }) => `${sayPlace(place)}='${value}'`).join(' ')}`,
    );
  }
}

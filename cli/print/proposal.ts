/** A proposed wiring on a terminal: how much it is, what it asks and how each is answered, what it lays, what would still not be fine. */

import {
  type AskGroup,
  type Assumed,
  exampleOf,
  type Resting,
  type Settled,
  sayPlace,
  specAt,
  type Taken,
  takenGroups,
  type WireGroup,
} from '../../engine/circuit/whole/index.ts';
import { type Proposal, readWiring } from '../../engine/circuit/wiring/index.ts';
import { countVerdicts, WORST_FIRST } from '../../engine/quantity/verdict.ts';
import { andList, capital } from '../../engine/quantity/words.ts';
import type { Wiring } from '../../engine/refit/types.ts';
import type { Page } from './page.ts';
import { printProposedFindings } from './proposed-findings.ts';
import { printProposedWires } from './proposed-wires.ts';
import { plural, quoted } from './text.ts';

const INDENT = '    ';

/** All that is shown of a proposal. */
export interface Shown {
  readonly proposal: Proposal;
  readonly settled: Settled;
  readonly groups: readonly WireGroup[];
  readonly assumed: readonly Assumed[];
  readonly resting: Resting;
}

/**
 * @param path the file, for the commands that are shown
 * @param kept whether it is recorded at once
 * @param all each wire with its reason and each answer by itself
 */
export function printProposal(
  page: Page,
  { proposal, settled, groups, assumed, resting }: Shown,
  path: string,
  kept: boolean,
  all: boolean,
): void {
  const { left, reasons } = proposal;
  const { taken, findings, wiring, everything, open } = settled;
  const bad = findings.filter(({ verdict }) => verdict !== 'fits');
  printHead(page, proposal, settled, bad);
  if (settled.groups.length > 0) printQuestions(page, settled, path);
  if (assumed.length > 0) printAssumed(page, assumed, path);
  if (taken.length > 0) printTaken(page, taken, wiring, path);
  if (left.length > 0) page.heading('What is left out');
  for (const each of left) page.prose(`– ${each}`, '', INDENT);
  printDevices(page, proposal);
  if (groups.length > 0)
    printProposedWires(page, groups, { held: new Set(open.flatMap((each) => each.wires)), reasons, all });
  if (bad.length > 0) {
    page.heading('What would not be fine with it');
    printProposedFindings(page, bad, readWiring(wiring), resting, all);
  }
  if (kept || everything.length === 0) return;
  page.heading('To record it');
  const { waiting } = settled;
  if (waiting > 0)
    page.prose(
      `${plural(waiting, 'wire')} ${waiting === 1 ? 'waits' : 'wait'} for an answer and ${waiting === 1 ? 'stays' : 'stay'} unmade; with --all as well ${waiting === 1 ? 'it is' : 'they are'} recorded too, unanswered.`,
    );
  page.line(`${INDENT}fettle wiring ${quoted(path)} --propose --keep`);
  if (all) return;
  page.prose('To see each wire with its reason, and each answer:');
  page.line(`${INDENT}fettle wiring ${quoted(path)} --propose --all`);
}

/** What is laid, what waits, and what would not be fine: counted. */
function printHead(
  page: Page,
  { changes, left }: Proposal,
  { groups, waiting }: Settled,
  bad: Settled['findings'],
): void {
  const wires = changes.filter((each) => each.do === 'wire' && each.new !== null).length;
  const devices = newDevices(changes).length;
  if (wires === 0 && devices === 0) {
    page.prose('Nothing is missing: no wire and no device is proposed.');
  } else
    page.prose(
      devices === 0
        ? `${plural(wires, 'wire')} proposed between the devices that are there.`
        : `${plural(wires, 'wire')} proposed, and ${plural(devices, 'device')} with them that ${devices === 1 ? 'is' : 'are'} not here yet: of the parts that are chosen, and what every machine needs.`,
    );
  if (waiting > 0)
    page.prose(
      `${plural(wires - waiting, 'wire')} can be recorded now; ${waiting} ${waiting === 1 ? 'waits' : 'wait'} for answers.`,
    );
  const counts = countVerdicts(bad);
  const said = WORST_FIRST.flatMap((verdict) =>
    verdict === 'fits' || counts[verdict] === 0 ? [] : [`${counts[verdict]} ${verdict}`],
  );
  const open = [
    ...(groups.length > 0 ? [plural(groups.length, 'question')] : []),
    ...(left.length > 0 ? [`${plural(left.length, 'thing')} left out`] : []),
    ...(said.length > 0 ? [`answers that would not be fine with it: ${said.join(', ')}`] : []),
  ];
  if (open.length > 0) page.prose(`Still open: ${open.join('; ')}.`);
}

const newDevices = (changes: Proposal['changes']) =>
  changes.flatMap((each) => (each.do === 'device' && each.old === null && each.new ? [each.new] : []));

function printQuestions(page: Page, { groups, answered, wiring }: Settled, path: string): void {
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

/** How it is connected where nobody has said it, and the command that says otherwise. */
function printAssumed(page: Page, assumed: readonly Assumed[], path: string): void {
  page.heading('Taken for granted of how it is connected');
  for (const { says, otherwise } of assumed) {
    page.prose(`– ${says}`, '', INDENT);
    const { of, places, value } = otherwise;
    const settings = places.map((place) => `${place}=${quoted(value)}`).join(' ');
    const command = { wiring: 'wire', part: 'set', stop: 'stop' }[of];
    page.line(`${INDENT}fettle ${command} ${quoted(path)} ${settings}`);
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

function printDevices(page: Page, { changes }: Proposal): void {
  const devices = newDevices(changes);
  if (devices.length === 0) return;
  page.heading(`Devices that come with it: ${devices.length}`);
  page.prose(`${andList(devices.map(({ id, name, kind }) => `${id} (${name || kind})`))}.`, INDENT);
}

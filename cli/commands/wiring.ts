/** `fettle wiring`: what is right and wrong with the wiring; its lists, its diagrams, a proposal. */

import { supplyDrawn } from '../../engine/advice/supply-drawn.ts';
import { assess } from '../../engine/assess/index.ts';
import { LISTS, type List, type ListId, listCsv, listDocument } from '../../engine/circuit/lists/index.ts';
import {
  assumedOf,
  type Looked,
  lookThrough,
  photosOf,
  restingOf,
  settledOf,
  usualHere,
  wireGroupsOf,
} from '../../engine/circuit/whole/index.ts';
import { proposeWiring } from '../../engine/circuit/wiring/index.ts';
import { askedOfWiring } from '../../engine/control/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import { countVerdicts } from '../../engine/quantity/verdict.ts';
import type { Refit } from '../../engine/refit/index.ts';
import { shown } from '../arguments.ts';
import { type Call, type Command, TO_OUT } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit, type RefitFile } from '../files.ts';
import { wiringFindingJson } from '../json/figures.ts';
import { listJson, wiringJson } from '../json/wiring.ts';
import { writeOut } from '../output.ts';
import { type Page, pageOn } from '../print/page.ts';
import { printProposal, type Shown } from '../print/proposal.ts';
import { quoted } from '../print/text.ts';
import { printList, printLooked } from '../print/wiring.ts';
import { record } from '../record.ts';
import { Refusal } from '../refusal.ts';
import { drawInto } from '../wiring-files.ts';

const NAMES: readonly ListId[] = ['wires', 'cables', 'strips', 'labels', 'pins', 'ring-out'];

export const wiring: Command = {
  name: 'wiring',
  summary: 'asks whether what is wired goes together; lists and draws it',
  usage: [
    'wiring FILE [--all] [--json]',
    'wiring FILE --list wires|cables|strips|labels|pins|ring-out [--csv OUT.csv] [--paper OUT.html] [--force] [--json]',
    'wiring FILE --draw FOLDER',
    'wiring FILE --propose [--all] [--keep] [--json]',
  ],
  about:
    'Do levels and currents go together, is every wire thick enough and guarded, what is missing. The exit code is 0 when nothing fails and nothing is unknown, 1 when something fails, 3 when nothing fails but something is unknown or nothing is wired yet, and 2 when the file cannot be read. --draw writes a diagram a circuit and the meaning of the symbols; files it did not draw itself are left alone. --propose lays wires between the devices that are there and shows the questions first, each with the command that answers it, then devices and wires; --all shows each wire with its reason and each answer. --keep records the wires that wait for no answer, --keep --all those that wait too. It examines what is written; it makes no machine safe. The mains belong to a licensed electrician, and local rules come first.',
  options: {
    all: {
      says: 'also what fits; of a proposal each wire and answer; with --keep also the wires that wait for an answer',
    },
    wires: { says: 'every wire at both ends; the same as --list wires' },
    list: { takes: 'a name', says: `one of ${NAMES.join(', ')}` },
    csv: { takes: 'OUT.csv', writes: true, says: 'write the list as CSV' },
    paper: { takes: 'OUT.html', writes: true, says: 'write the list as a page to print' },
    draw: { takes: 'a folder', says: 'write the diagrams as SVG into this folder' },
    propose: { says: 'propose the whole wiring, and what it has to be told first' },
    keep: { says: 'record what is proposed' },
    force: { says: 'write over a list that is there' },
    json: { says: 'as JSON' },
  },
  examples: [
    'wiring lathe.refit',
    'wiring lathe.refit --list cables --csv cables.csv',
    'wiring lathe.refit --draw diagrams',
    'wiring lathe.refit --propose',
  ],
  words: [1, 1],
  run: async (call) => {
    const { io, words, text, has } = call;
    const file = openRefit(words[0]!);
    const list = listName(call);
    onlyWith(call, list);
    const looked = lookThrough(file.refit, supplyDrawn(assess(file.refit)));
    if (list !== undefined) {
      showList(call, file.refit, looked, list);
      return EXIT.fine;
    }
    const folder = text('draw');
    if (folder !== undefined) {
      if (folder === TO_OUT) throw new Refusal('--draw writes several files into a folder: give its name.');
      const page = pageOn(io);
      const names = await drawInto(folder, file.refit, looked);
      page.prose(
        names.length === 0
          ? 'There is no wire yet, so there is nothing to draw.'
          : `${shown(folder)} now holds ${names.join(', ')}.`,
      );
      return EXIT.fine;
    }
    if (has('propose')) return propose(call, file);
    const isEmpty = looked.read.devices.size === 0;
    if (has('json')) io.out(`${JSON.stringify(wiringJson(looked, usualHere(file.refit)), null, 2)}\n`);
    else {
      const page = pageOn(io);
      page.prose(page.paint('bold', `Wiring of ${file.refit.name}`));
      if (isEmpty) printNothing(page, file.path);
      else printLooked(page, looked, usualHere(file.refit), has('all'), file.path);
    }
    // Nobody can say of a machine without a wiring that nothing is wrong with it.
    return isEmpty && exitOf(looked) === EXIT.fine ? EXIT.unknown : exitOf(looked);
  },
};

function listName({ text, has }: Call): ListId | undefined {
  const typed = text('list')?.trim();
  if (typed === undefined) return has('wires') ? 'wires' : undefined;
  if (has('wires') && typed !== 'wires') throw new Refusal('--wires and --list ask for two lists; take one.');
  const found = NAMES.find((each) => each === typed);
  if (found) return found;
  const near = nearest(shown(typed), NAMES);
  throw new Refusal(
    `There is no list “${shown(typed)}”; there are: ${NAMES.join(', ')}.${near ? ` Did you mean ${near}?` : ''}`,
  );
}

/** What is asked at once must go together. */
function onlyWith({ text, has }: Call, list: ListId | undefined): void {
  for (const option of ['csv', 'paper'])
    if (text(option) !== undefined && list === undefined)
      throw new Refusal(`--${option} writes a list; say which with --list.`);
  if (has('keep') && !has('propose')) throw new Refusal('--keep records a proposal; it needs --propose.');
  const asked = [list !== undefined, text('draw') !== undefined, has('propose')].filter(Boolean).length;
  if (asked > 1) throw new Refusal('Ask for a list, the diagrams or a proposal, one at a time.');
}

function showList({ io, text, has }: Call, refit: Refit, { read }: Looked, id: ListId): void {
  const list: List = LISTS[id](read, { photos: photosOf(refit.wiring) });
  const page = pageOn(io);
  const today = io.now().slice(0, 10);
  const outputs = [
    [text('csv'), () => listCsv(list), 'the list as CSV'],
    [text('paper'), () => listDocument(refit.name, list, today), 'the list to print'],
  ] as const;
  for (const [path, make, what] of outputs) {
    if (path === undefined) continue;
    writeOut(io, path, make(), has('force'));
    page.prose(`${shown(path)} now holds ${what}.`);
  }
  if (has('json')) io.out(`${JSON.stringify(listJson(list), null, 2)}\n`);
  else if (outputs.every(([path]) => path === undefined)) printList(page, list);
}

function propose({ io, has }: Call, file: RefitFile): number {
  const proposal = proposeWiring(file.refit, askedOfWiring(file.refit), supplyDrawn(assess(file.refit)));
  const settled = settledOf(proposal, file.refit);
  const open = settled.findings.filter(({ verdict }) => verdict !== 'fits');
  const shown: Shown = {
    proposal,
    settled,
    groups: wireGroupsOf(proposal, file.refit),
    assumed: assumedOf(proposal, file.refit),
    resting: restingOf(settled, file.refit),
  };
  if (has('json')) io.out(`${JSON.stringify(proposalJson(shown), null, 2)}\n`);
  else printProposal(pageOn(io), shown, file.path, has('keep'), has('all'));
  if (has('keep')) record(io, file, has('all') ? settled.everything : settled.changes);
  const counts = countVerdicts(open);
  return counts.fails > 0
    ? EXIT.fails
    : counts.unknown > 0 || settled.open.length > 0
      ? EXIT.unknown
      : EXIT.fine;
}

/** Findings and changes are those with what is taken as usual. */
function proposalJson({ proposal, settled, assumed, resting }: Shown) {
  const { open, groups, answered, taken, findings, wiring, everything, changes } = settled;
  return {
    format: 'fettle-proposal',
    version: 1,
    ...proposal,
    wiring,
    findings: findings.map((each) => {
      const restsOn = resting.get(each.id);
      return { ...wiringFindingJson(each), ...(restsOn ? { restsOn } : {}) };
    }),
    assumed,
    changes: everything,
    open: open.map(({ question, ...rest }) => ({ ...question, ...rest })),
    groups,
    answered,
    taken: taken.map(({ question, ...rest }) => ({ ...question, ...rest })),
    now: changes,
  };
}

function printNothing(page: Page, path: string): void {
  page.prose(
    'No device is here yet, so nothing can be said of the wiring. First let it be proposed, from the parts that are chosen; nothing is recorded before you say so. On the screen devices can be added one by one as well.',
  );
  page.line(`    fettle wiring ${quoted(path)} --propose`);
}

function exitOf({ findings, problems }: Looked): number {
  const { fails, unknown } = countVerdicts(findings);
  if (problems.length > 0) return EXIT.refused;
  return fails > 0 ? EXIT.fails : unknown > 0 ? EXIT.unknown : EXIT.fine;
}

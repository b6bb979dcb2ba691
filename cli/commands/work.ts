/** `fettle work`: what the machine must cut, judged on the machine as it is. */

import { assess } from '../../engine/assess/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import type { Work } from '../../engine/refit/index.ts';
import { ModelError } from '../../engine/simulate/index.ts';
import {
  chartFor,
  fieldsOf,
  type InStepAnswer,
  type JudgedWork,
  judgeDrawn,
  judgeOne,
  judgeWork,
  type NotInStep,
  newWorkId,
  runInStep,
  WORK_FIELDS,
  WORK_KINDS,
  type WorkKind,
  type WorkMachine,
  workMachineOf,
} from '../../engine/work/index.ts';
import { noSuchField } from '../../engine/work/settings.ts';
import { shown } from '../arguments.ts';
import { assignment } from '../assignment.ts';
import type { Call, Command } from '../command.ts';
import { writeCsv } from '../csv.ts';
import { EXIT } from '../exit.ts';
import { openRefit, type RefitFile } from '../files.ts';
import { chartJson, inStepCsv, inStepJson, workJson } from '../json/work.ts';
import { entering } from '../print/enter.ts';
import { pageOn } from '../print/page.ts';
import { quoted } from '../print/text.ts';
import { printChart, printInStep, printList, printOne, printRow } from '../print/work.ts';
import { record } from '../record.ts';
import { Refusal } from '../refusal.ts';
import { askBack } from '../words-asked.ts';

const KINDS = Object.keys(WORK_KINDS) as readonly WorkKind[];
const MOST_NAME = 80;

export const work: Command = {
  name: 'work',
  summary: 'what the machine must cut: threads, taps and cuts, and which link gives way first',
  usage: [
    'work FILE [--json]',
    'work FILE --add KIND FIELD=VALUE … [--name NAME] [--anyway]',
    'work FILE --change ID FIELD=VALUE … [--anyway]',
    'work FILE --remove ID',
    'work FILE --show ID [--json]',
    'work FILE --chart [--json]',
    'work FILE --in-step ID [--csv FILE] [--json]',
  ],
  about: `KIND is ${KINDS.join(', ')}. A thread takes ${words('thread')}; a tap takes ${words('tap')}; a cut takes operation, material and the fields of its operation. FIELD= with nothing behind it empties the field. --chart is the chart for the wall: travel of one turn against spindle speed, with the link that gives way first. --in-step runs a thread or a tap in time, spindle and axis together. The exit code is that of “check”: 1 when something fails, 3 when something is unknown, 0 otherwise.`,
  options: {
    add: { takes: 'a kind (thread, tap or cut)', says: 'adds a wanted thread, tap or cut' },
    change: { takes: 'an id', says: 'changes fields of one' },
    remove: { takes: 'an id', says: 'takes one out' },
    show: { takes: 'an id', says: 'one with everything it rests on, and the ways round' },
    name: { takes: 'a name', says: 'what it is called; the thread itself where none is given' },
    chart: { says: 'the chart for the wall, as a table' },
    'in-step': { takes: 'an id', says: 'a thread or tap in time' },
    csv: { takes: 'a file', writes: true, says: 'writes the run there: time, turns, speed, place, error' },
    anyway: { says: 'record a number although it is far outside what is plausible' },
    json: { says: 'as JSON' },
  },
  examples: [
    'work lathe.refit',
    "work lathe.refit --add thread thread=M20x1.5 length=30mm material=c45 speed='400 r/min'",
    'work lathe.refit --add tap thread=M8 depth=16mm hole=24mm',
    'work lathe.refit --in-step tap-1',
  ],
  words: [1],
  run: (call) => {
    const { words: given, text, has } = call;
    const file = openRefit(given[0]!);
    const acts = ['add', 'change', 'remove', 'show', 'in-step'].filter((each) => text(each) !== undefined);
    if (has('chart')) acts.push('chart');
    if (acts.length > 1)
      throw new Refusal(`--${acts[0]} and --${acts[1]} do not go together; give one at a time.`);
    if (given.length > 1 && acts[0] !== 'add' && acts[0] !== 'change')
      throw new Refusal(`“${shown(given[1]!)}” belongs to nothing; fields go with --add or --change.`);
    if (text('csv') !== undefined && acts[0] !== 'in-step')
      throw new Refusal('--csv writes a run in time; say of what with --in-step.');
    switch (acts[0]) {
      case 'add':
        return add(call, file);
      case 'change':
        return change(call, file);
      case 'remove': {
        const old = found(file, text('remove')!);
        record(call.io, file, [{ do: 'work', id: old.id, old, new: null }]);
        return EXIT.fine;
      }
      case 'show':
        return show(call, file);
      case 'in-step':
        return inStep(call, file);
      case 'chart':
        return chart(call, file);
      default:
        return list(call, file);
    }
  },
};

function words(kind: WorkKind): string {
  return WORK_FIELDS[kind].map(({ key }) => key).join(', ');
}

function kindOf(typed: string): WorkKind {
  const word = typed.trim().toLowerCase();
  const kind = KINDS.find((each) => each === word);
  if (kind) return kind;
  const near = nearest(shown(typed), [...KINDS]);
  throw new Refusal(
    `“${shown(typed)}” is no kind of work.${near ? ` Did you mean ${near}?` : ''} There are: ${KINDS.join(', ')}.`,
  );
}

/** Fields as typed; the kind must know each. */
function fields(kind: WorkKind, typed: readonly string[]): Record<string, string> {
  const known: readonly string[] = WORK_FIELDS[kind].map(({ key }) => key);
  const settings: Record<string, string> = Object.create(null);
  for (const word of typed) {
    const [name, value] = assignment(word, 'field=value, such as length=30mm');
    const key = name.toLowerCase();
    if (!known.includes(key)) throw new Refusal(noSuchField(kind, shown(key)));
    if (Object.hasOwn(settings, key)) throw new Refusal(`${key} was given twice; give it once.`);
    if (value.length > MOST_NAME) throw new Refusal(`${key}: that is too long to be a value.`);
    settings[key] = value;
  }
  return settings;
}

const filled = (settings: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(settings).filter(([, value]) => value !== ''));

function add({ io, words: given, text, has }: Call, file: RefitFile): number {
  const kind = kindOf(text('add')!);
  const settings = filled(fields(kind, given.slice(1)));
  for (const { key, name, needed, example } of fieldsOf(kind, settings))
    if (needed && settings[key] === undefined)
      throw new Refusal(`${key} is missing: ${name}, such as ${key}=${example}.`);
  const name = nameFrom(text('name')) ?? settings.thread ?? settings.operation ?? kind;
  const id = newWorkId(file.refit, kind);
  const made: Work = { id, kind, name, settings };
  refuseUnreadable(file, made, Object.keys(settings));
  const questions = askBack(settings, has('anyway'));
  record(io, file, [{ do: 'work', id, old: null, new: made }], questions);
  answer(io, file.path, id);
  return EXIT.fine;
}

/** Refuses what was typed now and cannot be read; what stood there before is left for the findings. */
function refuseUnreadable({ refit }: RefitFile, made: Work, typed: readonly string[]): void {
  const after = { ...refit, work: { ...refit.work, [made.id]: made } };
  const { findings } = judgeOne(workMachineOf(assess(after)), made);
  for (const { link, verdict, check, sentence } of findings) {
    const key = typed.find((each) => check === `setting-${each}`);
    if (link === 'settings' && verdict === 'fails' && key !== undefined)
      throw new Refusal(`${key}: ${sentence}`);
  }
}

/** What the machine says to one that was just written. */
function answer(io: Call['io'], path: string, id: string): void {
  const one = only(openRefit(path), id).one;
  const page = pageOn(io);
  page.line();
  printRow(page, one);
  page.line(`    fettle work ${quoted(path)} --show ${id}`);
}

function nameFrom(typed: string | undefined): string | undefined {
  if (typed === undefined) return undefined;
  const name = typed.trim();
  if (name === '' || name.length > MOST_NAME)
    throw new Refusal(`--name: a name has 1 to ${MOST_NAME} characters.`);
  return name;
}

function change({ io, words: given, text, has }: Call, file: RefitFile): number {
  const old = found(file, text('change')!);
  if (given.length === 1 && text('name') === undefined)
    throw new Refusal(`Write what to change of ${old.id}, such as speed='200 r/min'.`);
  const typed = fields(old.kind, given.slice(1));
  const settings = filled({ ...old.settings, ...typed });
  const name = nameFrom(text('name')) ?? old.name;
  const made: Work = { ...old, name, settings };
  refuseUnreadable(file, made, Object.keys(typed));
  const questions = askBack(typed, has('anyway'));
  record(io, file, [{ do: 'work', id: old.id, old, new: made }], questions);
  answer(io, file.path, old.id);
  return EXIT.fine;
}

function found({ refit }: RefitFile, typed: string): Work {
  const id = typed.trim().toLowerCase();
  const all = Object.values(refit.work);
  const one =
    all.find((each) => each.id.toLowerCase() === id) ?? all.find((each) => each.name.toLowerCase() === id);
  if (one) return one;
  throw new Refusal(
    all.length === 0
      ? 'Nothing is wanted of this machine yet; add something with --add.'
      : `There is no “${shown(typed)}”; there is ${all.map((each) => each.id).join(', ')}.`,
  );
}

function judged(file: RefitFile): { machine: WorkMachine; all: readonly JudgedWork[] } {
  const assessment = assess(file.refit);
  const machine = workMachineOf(assessment);
  return { machine, all: judgeDrawn(assessment, machine, judgeWork(machine)) };
}

const exitOf = (all: readonly JudgedWork[]): number =>
  all.some(({ verdict }) => verdict === 'fails')
    ? EXIT.fails
    : all.some(({ verdict }) => verdict === 'unknown')
      ? EXIT.unknown
      : EXIT.fine;

const json = ({ io }: Call, value: unknown): void => io.out(`${JSON.stringify(value, null, 2)}\n`);

function list(call: Call, file: RefitFile): number {
  const { all } = judged(file);
  if (call.has('json')) json(call, workJson(file.refit, all));
  else printList(pageOn(call.io), file.refit.name, file.path, all);
  return exitOf(all);
}

const one = (file: RefitFile, typed: string) => only(file, found(file, typed).id);

/** One piece of work alone: the others need not be drawn for it. */
function only(file: RefitFile, id: string): { machine: WorkMachine; one: JudgedWork } {
  const assessment = assess(file.refit);
  const machine = workMachineOf(assessment);
  const judgedOne = judgeOne(machine, file.refit.work[id]!);
  return { machine, one: judgeDrawn(assessment, machine, [judgedOne])[0]! };
}

function show(call: Call, file: RefitFile): number {
  const { one: each } = one(file, call.text('show')!);
  if (call.has('json')) json(call, workJson(file.refit, [each], true));
  else printOne(pageOn(call.io), each);
  return exitOf([each]);
}

function chart(call: Call, file: RefitFile): number {
  const { machine, all } = judged(file);
  const made = chartFor(machine, all);
  if (!made) throw new Refusal('The chart is along the Z axis, and this refit has none.');
  if (call.has('json')) json(call, chartJson(made));
  else printChart(pageOn(call.io), file.refit.name, made);
  return EXIT.fine;
}

function inStep(call: Call, file: RefitFile): number {
  const { machine, one: each } = one(file, call.text('in-step')!);
  const answer = run(machine, each);
  if ('says' in answer) {
    const { says, needs } = answer;
    if (call.has('json'))
      json(call, { format: 'fettle-in-step', version: 1, id: each.work.id, unknown: says, needs });
    else {
      const page = pageOn(call.io);
      page.prose(says);
      for (const path of needs) {
        const { command, write } = entering(file.path, path);
        page.line(`    ${command}`);
        page.prose(write, '    ');
      }
    }
    return EXIT.unknown;
  }
  const csv = call.text('csv');
  if (csv !== undefined) writeCsv(call.io, csv, inStepCsv(answer));
  if (call.has('json')) json(call, inStepJson(each, answer));
  else printInStep(pageOn(call.io), each, answer);
  return answer.of.run.faults.length > 0 ? EXIT.fails : EXIT.fine;
}

function run(machine: WorkMachine, each: JudgedWork): InStepAnswer | NotInStep {
  try {
    return runInStep(machine, each);
  } catch (fault) {
    if (fault instanceof ModelError)
      return {
        says: `It cannot be simulated. ${fault.problems.map(({ message }) => message).join(' ')}`,
        needs: [],
      };
    throw fault;
  }
}

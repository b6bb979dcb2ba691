/** `fettle auxiliary`: turret, chuck and what else moves besides axes and spindle: steps, and where they can hang. */

import {
  chartsOf,
  checkAuxiliaries,
  KINDS,
  kindOf,
  openAll,
  openAuxiliary,
  together,
} from '../../engine/control/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import { askBackOfSetting, readNamed } from '../../engine/quantity/read-setting.ts';
import { capital } from '../../engine/quantity/words.ts';
import { LIMITS, type Refit } from '../../engine/refit/index.ts';
import type { Auxiliary } from '../../engine/refit/types.ts';
import { shown } from '../arguments.ts';
import { ANYWAY, refuseSlip } from '../ask-back.ts';
import { assignment } from '../assignment.ts';
import type { Call, Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit, type RefitFile } from '../files.ts';
import { printAuxiliaryFindings, printChart, problemLine } from '../print/control.ts';
import { pageOn } from '../print/page.ts';
import { record } from '../record.ts';
import { need, Refusal } from '../refusal.ts';

const ACTS = ['add', 'set', 'remove', 'chart', 'check'];

export const auxiliary: Command = {
  name: 'auxiliary',
  summary: 'turret, chuck and the like: their steps, and where they can hang or do harm',
  usage: [
    'auxiliary FILE',
    'auxiliary FILE add KIND [SETTING=VALUE …] [--name NAME] [--anyway]',
    'auxiliary FILE set ID SETTING=VALUE … [--name NAME] [--anyway]',
    'auxiliary FILE remove ID',
    'auxiliary FILE chart ID [--json]',
    'auxiliary FILE check [ID] [--all] [--json]',
  ],
  about: `KIND is ${KINDS.map(({ id }) => id).join(', ')}. “chart” shows the steps: what switches, what is waited for, how long, and what if it does not come. “check” goes through every state, with no fault and with each single one: where it can hang, what can do harm, whether auxiliaries can wait for each other for ever. SETTING= with nothing behind it takes what is usual. What lies far outside what is usual is asked back, and not recorded without --anyway. The exit code of “check” is 1 when something fails, 3 when something is not known, 0 otherwise. It examines steps as they are described; it makes no machine safe.`,
  options: {
    name: { takes: 'a name', says: 'what it is called' },
    ...ANYWAY,
    all: { says: 'also what fits, every fault, and how each comes about' },
    json: { says: 'as JSON' },
  },
  examples: [
    'auxiliary lathe.refit add turret positions=8 code=binary',
    "auxiliary lathe.refit set turret turn-limit='15 s'",
    'auxiliary lathe.refit chart turret',
    'auxiliary lathe.refit check',
  ],
  words: [1],
  run: (call) => {
    const [path, act, ...rest] = call.words as [string, ...string[]];
    const file = openRefit(path);
    if (act !== undefined && !ACTS.includes(act)) {
      const near = nearest(shown(act), ACTS);
      throw new Refusal(
        `“fettle auxiliary” does ${ACTS.join(', ')}, not “${shown(act)}”.${near ? ` Did you mean ${near}?` : ''}`,
      );
    }
    if (call.text('name') !== undefined && act !== 'add' && act !== 'set')
      throw new Refusal('--name goes with add and set.');
    switch (act) {
      case 'add':
        return add(call, file, rest);
      case 'set':
        return change(call, file, rest);
      case 'remove': {
        const old = found(file.refit, rest);
        record(call.io, file, [{ do: 'auxiliary', id: old.id, old, new: null }]);
        return EXIT.fine;
      }
      case 'chart':
        return chart(call, file.refit, rest);
      case 'check':
        return check(call, file.refit, rest);
      default:
        return show(call, file.refit);
    }
  },
};

function found({ auxiliaries }: Refit, [id, more]: readonly string[]): Auxiliary {
  const ids = Object.keys(auxiliaries);
  if (id === undefined) throw new Refusal(`Which one? There are: ${ids.join(', ') || 'none yet'}.`);
  if (more !== undefined && !more.includes('=')) throw new Refusal(`“${shown(more)}” is too much here.`);
  const key = ids.find((each) => each.toLowerCase() === id.toLowerCase());
  if (key !== undefined) return auxiliaries[key]!;
  const near = nearest(shown(id), ids);
  throw new Refusal(
    `There is no auxiliary “${shown(id)}”. ${near ? `Did you mean ${near}? ` : ''}There are: ${ids.join(', ') || 'none yet'}.`,
  );
}

/** 'positions=8' each, read against the kind. */
function settingsOf(
  { has }: Call,
  kind: string,
  words: readonly string[],
  old: Readonly<Record<string, string>>,
): Record<string, string> {
  const settings: Record<string, string> = { ...old };
  const specs = kindOf(kind)?.settings ?? {};
  for (const word of words) {
    const [id, value] = assignment(word, `SETTING=VALUE, such as ${Object.keys(specs)[0] ?? 'name'}=…`);
    need(readNamed(specs, id, value));
    if (!has('anyway')) refuseSlip(id, askBackOfSetting(specs[id]!, value));
    if (value === '') delete settings[id];
    else settings[id] = value;
  }
  return settings;
}

function nameOf({ text }: Call, usual: string): string {
  const name = (text('name') ?? usual).trim();
  if (name === '' || name.length > LIMITS.name)
    throw new Refusal(`An auxiliary needs a name of 1 to ${LIMITS.name} characters.`);
  return name;
}

/** Refuses what would be recorded and could not be read again. */
function whole(refit: Refit, made: Auxiliary): void {
  need(openAuxiliary(made));
  const after = { ...refit, auxiliaries: { ...refit.auxiliaries, [made.id]: made } };
  const problem = together(openAll(after)).problems.get(made.id);
  if (problem) throw new Refusal(`${problem.where}: ${problem.message}`);
}

function add(call: Call, file: RefitFile, [kindText, ...words]: readonly string[]): number {
  if (kindText === undefined)
    throw new Refusal(`Write which kind to add: ${KINDS.map(({ id }) => id).join(', ')}.`);
  const kind = kindOf(kindText.toLowerCase());
  if (!kind) {
    const names = KINDS.map(({ id }) => id);
    const near = nearest(shown(kindText), names);
    throw new Refusal(
      `There is no kind of auxiliary “${shown(kindText)}”. ${near ? `Did you mean ${near}? ` : ''}There are: ${names.join(', ')}.`,
    );
  }
  let id = kind.id;
  for (let n = 2; Object.hasOwn(file.refit.auxiliaries, id); n++) id = `${kind.id}-${n}`;
  const usual = capital(kind.name);
  const made: Auxiliary = {
    id,
    kind: kind.id,
    name: nameOf(call, usual),
    settings: settingsOf(call, kind.id, words, {}),
  };
  whole(file.refit, made);
  record(call.io, file, [{ do: 'auxiliary', id, old: null, new: made }]);
  return EXIT.fine;
}

function change(call: Call, file: RefitFile, rest: readonly string[]): number {
  const old = found(file.refit, rest);
  if (rest.length === 1 && call.text('name') === undefined)
    throw new Refusal(
      `Write what to set of ${old.id} as SETTING=VALUE; “fettle auxiliary FILE” lists its settings.`,
    );
  const made: Auxiliary = {
    ...old,
    name: nameOf(call, old.name),
    settings: settingsOf(call, old.kind, rest.slice(1), old.settings),
  };
  whole(file.refit, made);
  record(call.io, file, [{ do: 'auxiliary', id: old.id, old, new: made }]);
  return EXIT.fine;
}

function show({ io, has }: Call, refit: Refit): number {
  const page = pageOn(io);
  const reports = openAll(refit);
  if (has('json')) {
    io.out(`${JSON.stringify(Object.values(refit.auxiliaries), null, 2)}\n`);
    return EXIT.fine;
  }
  if (reports.length === 0)
    page.prose(`There are no auxiliaries yet. Add one of: ${KINDS.map(({ id }) => id).join(', ')}.`);
  for (const { auxiliary: each, opened, problem } of reports) {
    page.prose(
      opened
        ? `${each.id} (${opened.kind.name}): ${each.name}. ${opened.machine.inputs.filter(({ inside }) => !inside).length} inputs, ${opened.machine.outputs.length} outputs.`
        : `${each.id}: ${each.name}. ${problem?.message ?? ''}`,
      '',
      '    ',
    );
    if (opened)
      for (const [id, spec] of Object.entries(opened.kind.settings)) {
        const typed = each.settings[id];
        page.prose(
          `${id} = ${typed ?? (spec.usual || 'nothing')}${typed === undefined ? ' (usual)' : ''}: ${spec.name}`,
          '    ',
          '        ',
        );
      }
  }
  return EXIT.fine;
}

function chart({ io, has }: Call, refit: Refit, rest: readonly string[]): number {
  const opened = need(openAuxiliary(found(refit, rest)));
  const charts = chartsOf(opened.machine);
  if (has('json')) io.out(`${JSON.stringify(charts, null, 2)}\n`);
  else {
    const page = pageOn(io);
    page.prose(page.paint('bold', opened.auxiliary.name));
    for (const each of charts) printChart(page, each);
  }
  return EXIT.fine;
}

function check({ io, has }: Call, refit: Refit, rest: readonly string[]): number {
  const only = rest.length > 0 ? found(refit, rest).id : undefined;
  const report = checkAuxiliaries(refit, only);
  const own = report.each.filter(({ auxiliary: { id } }) => only === undefined || id === only);
  const findings = [...own.flatMap(({ checked }) => checked?.findings ?? []), ...report.together];
  const problems = own.flatMap(({ auxiliary: { id }, problem }) =>
    problem ? [{ id, message: problem.message }] : [],
  );
  if (has('json'))
    io.out(
      `${JSON.stringify({ format: 'fettle-auxiliaries', version: 1, auxiliaries: own.map(({ auxiliary: { id, name }, checked }) => ({ id, name, ...checked })), together: report.together, problems }, null, 2)}\n`,
    );
  else {
    const page = pageOn(io);
    if (own.length === 0) page.prose('There are no auxiliaries yet.');
    for (const { auxiliary: each, checked, problem } of own) {
      page.heading(each.name);
      if (problem) page.prose(problemLine(problem.where ?? each.id, problem.message), '  ', '    ');
      if (!checked) continue;
      printAuxiliaryFindings(page, checked.findings, has('all'));
      page.prose(`${checked.states} states gone through, with ${checked.faults} single faults.`, '  ');
    }
    if (report.together.length > 0) {
      page.heading('Waiting for each other');
      printAuxiliaryFindings(page, report.together, has('all'));
    }
  }
  const has1 = (verdict: string): boolean => findings.some((each) => each.verdict === verdict);
  return has1('fails') ? EXIT.fails : problems.length > 0 || has1('unknown') ? EXIT.unknown : EXIT.fine;
}

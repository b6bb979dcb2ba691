/** `fettle sheet`: one page of formulas with numbers of one's own. */
import { HANDBOOK } from '../../engine/handbook/index.ts';
import { BASES } from '../../engine/quantity/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import { readBasis } from '../../engine/refit/set.ts';
import { describeSheet, evaluate, type Outcome, type Sheet } from '../../engine/sheet/index.ts';
import { shown } from '../arguments.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { answersJson } from '../json/sheet.ts';
import { pageOn } from '../print/page.ts';
import { describeOnPage, printAnswers, printSheetList } from '../print/sheet.ts';
import { need, Refusal } from '../refusal.ts';
import { answersOf } from '../sheet-answer.ts';
import { readGiven, type SheetGiven } from '../sheet-given.ts';

export const sheet: Command = {
  name: 'sheet',
  summary: 'works through one page of formulas with your own numbers',
  usage: [
    'sheet NAME SYMBOL=VALUE … [--basis BASIS] [--json]',
    'sheet --list [--json]',
    'sheet --show NAME [--json]',
  ],
  about:
    'What is not given stays unknown, and the answer says what it needs. A ± carries through to the answers. A curve is given as points: “1.1 N·m at 300 r/min; 0.8 N·m at 600 r/min”. The exit code is 0 when everything has an answer, 3 when something has none yet, and 2 when something typed cannot be.',
  options: {
    list: { says: 'the names of all sheets' },
    show: { takes: 'a sheet', says: 'what a sheet asks for, its formulas and their sources' },
    basis: {
      takes: 'a basis',
      says: `where the numbers come from: ${BASES.join(', ')}; a ± counts as two standard uncertainties when measured, else as a limit`,
    },
    json: { says: 'as JSON' },
  },
  examples: [
    "sheet screw-lead P='5 TPI' z=2 dm='0.6 in'",
    "sheet whirl lambda=3.927 d1='16.9 ± 0.1 mm' L='800 ± 2 mm' k_allow=0.8 --basis measured",
    'sheet --show whirl',
  ],
  words: [0],
  run: ({ io, words, text, has }) => {
    const page = pageOn(io);
    const json = (value: unknown): void => io.out(`${JSON.stringify(value, null, 2)}\n`);
    const wanted = text('show');
    if (has('list')) {
      if (words.length > 0 || wanted !== undefined)
        throw new Refusal('--list takes nothing else; it lists all sheets.');
      const sheets = HANDBOOK.map(({ id, title, about }) => ({ id, title, about }));
      if (has('json')) json({ format: 'fettle-sheets', version: 1, sheets });
      else printSheetList(page, HANDBOOK);
      return EXIT.fine;
    }
    if (wanted !== undefined) {
      if (words.length > 0) throw new Refusal('--show takes the name of one sheet and nothing else.');
      const description = describeSheet(findSheet(wanted));
      if (has('json')) json({ format: 'fettle-sheet-description', version: 1, ...description });
      else describeOnPage(page, description);
      return EXIT.fine;
    }
    const [name, ...rest] = words;
    if (name === undefined)
      throw new Refusal(
        'Name a sheet; “fettle sheet --list” shows them all, “fettle help sheet” how it is used.',
      );
    const found = findSheet(name);
    const basis = need(readBasis(text('basis') ?? 'guess'));
    const given = readGiven(found, describeSheet(found), rest, basis);
    refuseInputs(found, given);
    const answers = answersOf(found, given);
    if (has('json')) json(answersJson(found, given, answers));
    else {
      printAnswers(page, found, given, answers);
      for (const note of given.notes) page.prose(`How it was read: ${note}.`, '  ', '    ');
    }
    return answers.every(({ outcome }) => outcome.state === 'known') ? EXIT.fine : EXIT.unknown;
  },
};

function findSheet(typed: string): Sheet {
  const found = HANDBOOK.find(({ id }) => id === typed.trim().toLowerCase());
  if (found) return found;
  const near = nearest(
    shown(typed),
    HANDBOOK.map(({ id }) => id),
  );
  throw new Refusal(
    `There is no sheet “${shown(typed)}”. ${near ? `Did you mean ${near}?` : '“fettle sheet --list” shows them all.'}`,
  );
}

/** What was typed has to be possible at all: no negative diameter. */
function refuseInputs(found: Sheet, given: SheetGiven): void {
  const outcomes: Readonly<Record<string, Outcome>> = evaluate(found, given.values);
  for (const key of Object.keys(given.values)) {
    const outcome = outcomes[key]!;
    if (outcome.state === 'undefined') throw new Refusal(`${key}: ${outcome.reason}.`);
  }
}

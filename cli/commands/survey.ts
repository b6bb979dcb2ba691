/** `fettle survey`: what was looked at, what is still to save and to tag; records it; writes sheets to print. */

import { nearest } from '../../engine/quantity/nearest.ts';
import { own } from '../../engine/quantity/own.ts';
import { type Refit, surveyOf, tagsCsv } from '../../engine/refit/index.ts';
import { surveyDocument } from '../../engine/refit/sheets/index.ts';
import { shown } from '../arguments.ts';
import { ANYWAY } from '../ask-back.ts';
import type { Call, Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { surveyJson } from '../json/survey.ts';
import { writeOut } from '../output.ts';
import { pageOn } from '../print/page.ts';
import { printSurvey } from '../print/survey.ts';
import { record } from '../record.ts';
import { Refusal } from '../refusal.ts';
import { SETTERS } from '../survey-set.ts';

export const survey: Command = {
  name: 'survey',
  summary: 'shows how far the survey has come, records what is found, writes sheets to print',
  usage: [
    'survey FILE [--all] [--json] [--sheets OUT.html] [--tags OUT.csv] [--force]',
    'survey FILE condition PART works|worn|dead|unknown [--note TEXT]',
    'survey FILE item ITEM works|worn|dead|unknown|none [QUESTION=ANSWER …] [--note TEXT] [--anyway]',
    'survey FILE keep THING kept|not-there|to-do [--note TEXT]',
    'survey FILE tag TAG [here=TEXT] [there=TEXT] [cable=TEXT] [colour=TEXT] [signal=TEXT] [otherTag=TEXT] [ends=none|one|both]',
  ],
  about:
    'PART is a place (X.motor) or an option (X.motor@x-motor-2). Without more, what is still open is listed. A tag that is on the list already is changed; what is not named stays. Write -- before a tag that begins with a hyphen.',
  options: {
    all: { says: 'also lists what is done' },
    json: { says: 'everything as JSON' },
    sheets: { takes: 'a file', writes: true, says: 'writes the sheets to print as one HTML file' },
    tags: { takes: 'a file', writes: true, says: 'writes the list of tags as CSV' },
    note: { takes: 'a text', says: 'kept with what is recorded' },
    inches: { says: 'units in inches on the sheets' },
    ...ANYWAY,
    force: { says: 'write over a file that is there' },
  },
  examples: [
    'survey lathe.refit',
    'survey lathe.refit condition X.motor works',
    "survey lathe.refit tag 12 here='X motor, U' there='X drive, U1' ends=both",
    "survey lathe.refit item coolant works supply='400 V' kindOfVoltage=three",
    "survey lathe.refit keep parameters kept --note 'blue folder'",
    'survey lathe.refit --sheets survey.html',
  ],
  words: [1],
  run: (call) => {
    const [path, what, ...words] = call.words as [string, ...string[]];
    const file = openRefit(path);
    if (what === undefined) return show(call, file.refit);
    for (const option of ['all', 'json', 'inches', 'force'])
      if (call.has(option)) throw new Refusal(`--${option} does not go with “${shown(what)}”.`);
    for (const option of ['sheets', 'tags'])
      if (call.text(option) !== undefined)
        throw new Refusal(`--${option} does not go with “${shown(what)}”.`);
    const set = own(SETTERS, what);
    if (!set) {
      const near = nearest(shown(what), Object.keys(SETTERS));
      throw new Refusal(
        `A survey records ${Object.keys(SETTERS).join(', ')}, not “${shown(what)}”.${near ? ` Did you mean ${near}?` : ''}`,
      );
    }
    record(call.io, file, [set(file.refit, words, call.text('note'), call.has('anyway'))]);
    return EXIT.fine;
  },
};

function show({ io, text, has }: Call, refit: Refit): number {
  if (text('note') !== undefined)
    throw new Refusal('--note goes with what is recorded; there is nothing here.');
  const found = surveyOf(refit);
  const page = pageOn(io);
  const outputs = [
    [text('sheets'), () => surveyDocument(refit, has('inches') ? 'in' : 'mm'), 'the sheets to print'],
    [text('tags'), () => tagsCsv(found.tags), 'the list of tags'],
  ] as const;
  for (const [path, make, what] of outputs) {
    if (path === undefined) continue;
    writeOut(io, path, make(), has('force'));
    page.prose(`${shown(path)} now holds ${what}.`);
  }
  if (has('json')) io.out(`${JSON.stringify(surveyJson(refit, found), null, 2)}\n`);
  else if (outputs.every(([path]) => path === undefined)) printSurvey(page, found, has('all'));
  return EXIT.fine;
}

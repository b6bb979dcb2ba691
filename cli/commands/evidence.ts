/** `fettle evidence`: bench tests of salvaged parts, worked out and recorded. */
import { METHOD, METHODS, type Method, recordEvidence, runMethod } from '../../engine/evidence/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import { shown } from '../arguments.ts';
import { ANYWAY, refuseSlip } from '../ask-back.ts';
import type { Command } from '../command.ts';
import { readTaken, writeTaken } from '../evidence-taken.ts';
import { refuseMissing } from '../evidence-wanted.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { evidenceJson, methodJson, methodsJson } from '../json/evidence.ts';
import { describeMethod, printMethods, printOutcome } from '../print/evidence.ts';
import { pageOn } from '../print/page.ts';
import { record } from '../record.ts';
import { need, Refusal } from '../refusal.ts';

export const evidence: Command = {
  name: 'evidence',
  summary: 'works out a bench test of a salvaged part, and records it',
  usage: [
    'evidence METHOD NAME=VALUE … [--csv FILE.csv] [--json]',
    'evidence FILE METHOD [--for PLACE] NAME=VALUE … [--note TEXT] [--anyway]',
    'evidence --list [--json]',
    'evidence --show METHOD [--json]',
  ],
  about:
    'NAME is an entry that is typed once, or a column of readings with commas between them (semicolons where the commas are decimal). Numbers without a unit are in the unit that --show names. Begin with --show: it says first what can hurt. With FILE the measurement is kept in the refit with its raw readings, and the facts it settles are set as measured; PLACE is an axis (X), a place (X.motor) or a part that is not chosen (X.motor@x-motor-2). A fact that lies far outside what is usual is asked back, and not recorded without --anyway. The exit code is 1 when a verdict is bad.',
  options: {
    list: { says: 'all methods' },
    show: { takes: 'a method', says: 'cautions, tools, steps and what to type' },
    for: { takes: 'a place', says: 'what it was measured on' },
    aside: { takes: 'row numbers', says: 'rows to leave out, such as 3,5; say why in --note' },
    note: { takes: 'a text', says: 'kept with the measurement' },
    csv: { takes: 'a file', says: 'readings from a table, its first row naming the columns' },
    'csv-out': { takes: 'a file', writes: true, says: 'writes the readings as such a table' },
    ...ANYWAY,
    json: { says: 'as JSON' },
  },
  examples: [
    "evidence winding-resistance reading=1.31,1.33,1.32 probes='0.02 Ω' ohmMeter='0.8 % + 3 digits'",
    'evidence lathe.refit back-emf --for X.motor read=dc volts=36.4,36.2 speed=1012,1012 way=cw,ccw',
    'evidence --show travel-per-turn',
  ],
  words: [0],
  run: ({ io, words, text, has }) => {
    const page = pageOn(io);
    const json = (value: unknown): void => io.out(`${JSON.stringify(value, null, 2)}\n`);
    const wanted = text('show');
    if (has('list')) {
      if (words.length > 0 || wanted !== undefined)
        throw new Refusal('--list takes nothing else; it lists all methods.');
      if (has('json')) json(methodsJson(METHODS));
      else printMethods(page, METHODS);
      return EXIT.fine;
    }
    if (wanted !== undefined) {
      if (words.length > 0) throw new Refusal('--show takes the name of one method and nothing else.');
      const method = findMethod(wanted);
      if (has('json')) json(methodJson(method));
      else describeMethod(page, method);
      return EXIT.fine;
    }
    const [first, second] = words;
    if (first === undefined)
      throw new Refusal(
        'Name a method; “fettle evidence --list” shows them all, “fettle help evidence” how it is used.',
      );
    if (words.length === 1 && /\.(refit|json)$/i.test(first))
      throw new Refusal(
        `Name a method after ${shown(first)}, such as winding-resistance; “fettle evidence --list” shows them all.`,
      );
    const file =
      METHOD.has(first.trim().toLowerCase()) || second === undefined || second.includes('=')
        ? undefined
        : first;
    const method = findMethod(file === undefined ? first : second!);
    const taken = readTaken(method, words.slice(file === undefined ? 1 : 2), text('csv'), text('aside'));
    refuseMissing(method, taken);
    const before = file === undefined ? undefined : openRefit(file);
    if (before === undefined && text('for') !== undefined)
      throw new Refusal(
        '--for says where it was measured in a refit; name the refit’s file before the method.',
      );
    const recorded =
      before &&
      need(
        recordEvidence(before.refit, {
          ...taken,
          method,
          where: text('for') ?? '',
          note: text('note') ?? '',
          when: io.now(),
        }),
      );
    if (!has('anyway')) refuseSlip(method.title, recorded?.askBack[0]);
    const outcome = recorded?.outcome ?? need(runMethod(method, taken));
    const out = text('csv-out');
    if (out !== undefined) writeTaken(io, out, method, taken);
    if (has('json')) json(evidenceJson(method, taken, outcome, recorded?.paths));
    else printOutcome(page, method, outcome);
    if (before && recorded) {
      const remarks = recorded.questions.map((question) => `Is this right? ${question}`);
      // JSON is for scripts: what was recorded is in the refit's history.
      record(has('json') ? { ...io, out: () => undefined } : io, before, recorded.changes, remarks);
    }
    return outcome.verdicts.some(({ level }) => level === 'bad') ? EXIT.fails : EXIT.fine;
  },
};

function findMethod(typed: string): Method {
  const found = METHOD.get(typed.trim().toLowerCase());
  if (found) return found;
  const near = nearest(
    shown(typed),
    METHODS.map(({ id }) => id),
  );
  throw new Refusal(
    `There is no method “${shown(typed)}”. ${near ? `Did you mean ${near}?` : '“fettle evidence --list” shows them all.'}`,
  );
}

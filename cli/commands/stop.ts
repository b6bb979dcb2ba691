/** `fettle stop`: what really happens when somebody asks the machine to stop, with every single fault. */

import { stopBuilt } from '../../engine/advice/stop-built.ts';
import { rankedPatterns, stopOffers, whatMoves } from '../../engine/advice/stop-offers.ts';
import { supplyDrawn } from '../../engine/advice/supply-drawn.ts';
import { assess } from '../../engine/assess/index.ts';
import {
  dangerousPairs,
  exampleOf,
  type FaultPair,
  type LookProgress,
  lookThrough,
  MOTION_SETTINGS,
  NO_CIRCUIT,
  type Offers,
  ONLY_TO_LOOK,
  PATTERNS,
  type StopAnalysis,
  testSheet,
  testSheetHtml,
  typeNumber,
  waitedFor,
} from '../../engine/circuit/stop/index.ts';
import { WiringLook } from '../../engine/circuit/whole/index.ts';
import type { Result } from '../../engine/quantity/types.ts';
import type { StopCircuit } from '../../engine/refit/index.ts';
import { shown } from '../arguments.ts';
import { ANYWAY, refuseSlip } from '../ask-back.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { stopJson } from '../json/stop.ts';
import { writeOut } from '../output.ts';
import { type Page, pageOn } from '../print/page.ts';
import { progressOn } from '../print/progress.ts';
import {
  printEstimate,
  printFaults,
  printNumbers,
  printPairs,
  printPlaces,
  printStopAnswer,
  printStopFindings,
  printTruth,
} from '../print/stop.ts';
import { quoted } from '../print/text.ts';
import { record } from '../record.ts';
import { need, Refusal } from '../refusal.ts';

export const stop: Command = {
  name: 'stop',
  summary: 'asks whether the machine really stops, with every single fault',
  usage: [
    'stop FILE [--pattern NAME] [--truth] [--faults] [--numbers] [--pairs] [--test-sheet OUT.html] [--force] [--json]',
    'stop FILE MOTION.NUMBER=VALUE … [--anyway]',
  ],
  about: `Does every stop stop, does nothing start by itself, what does each single fault do, where must switches and guards stand. --pattern lays a circuit out in place of what is there: ${PATTERNS.map(({ id }) => id).join(', ')}. MOTION.NUMBER=VALUE types a number of what moves into the circuit, such as X.travel='210 mm' or X.vertical=yes; “unknown” takes it back. The exit code is 0 when nothing fails and nothing is unknown, 1 when something fails, 3 when nothing fails but something is unknown, and 2 when the file or the circuit cannot be read. It examines a drawing; it makes no machine safe and certifies nothing. Local rules and licensed trades come first.`,
  options: {
    pattern: { takes: 'a name', says: 'lay this pattern out and record it' },
    truth: { says: 'every act in every state' },
    faults: { says: 'every single fault, worst first' },
    numbers: { says: 'the numbers that run-on rests on, and where each comes from' },
    pairs: { says: 'also two faults of which the first is not noticed; this takes a while' },
    'test-sheet': { takes: 'OUT.html', writes: true, says: 'write the test sheet to do at the machine' },
    force: { says: 'write over a test sheet that is there' },
    ...ANYWAY,
    json: { says: 'as JSON' },
  },
  examples: [
    'stop lathe.refit',
    'stop lathe.refit --pattern safety-relay',
    'stop lathe.refit --faults',
    "stop lathe.refit X.limit-low='4 mm' X.vertical=yes",
  ],
  words: [1],
  run: ({ io, words, text, has }) => {
    const file = openRefit(words[0]!);
    const wanted = text('pattern');
    let circuit = file.refit.stop;
    if (wanted !== undefined) {
      const pattern = PATTERNS.find(({ id }) => id === wanted.trim());
      if (!pattern)
        throw new Refusal(
          `There is no pattern “${shown(wanted)}”; there are: ${PATTERNS.map(({ id }) => id).join(', ')}.`,
        );
      const made = pattern.make(whatMoves(assess(file.refit)));
      record(
        io,
        file,
        [{ do: 'stop', old: circuit, new: made }],
        [pattern.need, `Limits: ${pattern.limits}`],
      );
      circuit = made;
    }
    const typed = words.slice(1);
    if (typed.length > 0) {
      if (circuit === null) throw new Refusal(`${NO_CIRCUIT} Lay one out with --pattern before its numbers.`);
      const next = typed.reduce((now, word) => typeWord(now, word, has('anyway')), circuit);
      record(io, file, [{ do: 'stop', old: circuit, new: next }]);
      return EXIT.fine;
    }
    const page = pageOn(io);
    if (circuit === null) {
      page.prose(`${NO_CIRCUIT} Lay one out; what suits this machine best stands first:`);
      const ranked = rankedPatterns(assess(file.refit));
      for (const { pattern, why } of ranked)
        page.prose(
          `${pattern.id}: ${pattern.name}${pattern.warning ? ` (${ONLY_TO_LOOK})` : ''}. ${why}`,
          '',
          '    ',
        );
      page.line(`    fettle stop ${quoted(file.path)} --pattern ${ranked[0]!.pattern.id}`);
      return EXIT.unknown;
    }
    const progress = progressOn(io);
    const assessed = assess(file.refit);
    const found = need(lookedThrough(circuit, stopOffers(assessed, circuit), progress));
    const pairs = has('pairs') ? allPairs(found, progress) : undefined;
    const out = text('test-sheet');
    if (out !== undefined) {
      const today = new Date().toISOString().slice(0, 10);
      const built = stopBuilt(new WiringLook().look(file.refit, supplyDrawn(assessed)));
      const sheet = testSheet(file.refit.name, circuit, found, today, built);
      writeOut(io, out, testSheetHtml(sheet), has('force'));
    }
    if (has('json')) io.out(`${JSON.stringify(stopJson(circuit.pattern, found, pairs), null, 2)}\n`);
    else {
      page.prose(page.paint('bold', `Stop circuit of ${file.refit.name}`));
      printStopAnswer(page, found);
      printStopFindings(page, found);
      if (has('truth')) printTruth(page, found);
      if (has('faults')) printFaults(page, found.faults);
      if (pairs) printPairs(page, pairs);
      if (has('numbers')) printNumbers(page, found);
      printPlaces(page, found);
      printEstimate(page, found);
      if (out !== undefined)
        page.prose(
          `${shown(out)} now holds the test sheet: do it at the machine, sign it, and do it again after every change.`,
        );
      printMore(page, file.path, has('faults'), found);
    }
    return exitOf(found);
  },
};

/** 'X.travel=210 mm' */
function typeWord(circuit: StopCircuit, word: string, anyway: boolean): StopCircuit {
  const at = word.indexOf('=');
  if (at < 0)
    throw new Refusal(`“${shown(word)}” has no “=”; write MOTION.NUMBER=VALUE, such as X.travel='210 mm'.`);
  const typed = need(typeNumber(circuit, word.slice(0, at).trim(), word.slice(at + 1)));
  if (!anyway) refuseSlip(shown(word.slice(0, at)), typed.askBack);
  return typed.circuit;
}

/** Numbers that the answer waits for before the rest are left out. */
const WAITING = 2;

function printMore(page: Page, path: string, faults: boolean, found: StopAnalysis): void {
  const waiting = waitedFor(found).slice(0, WAITING);
  if (faults && waiting.length === 0) return;
  page.heading('What next');
  if (!faults) page.line(`    fettle stop ${quoted(path)} --faults`);
  for (const { motion, kind, setting } of waiting)
    page.line(
      `    fettle stop ${quoted(path)} ${motion}.${setting}=${quoted(exampleOf(MOTION_SETTINGS[kind][setting]!))}`,
    );
}

function lookedThrough(
  circuit: StopCircuit,
  offers: Offers,
  show: (now: LookProgress) => void,
): Result<StopAnalysis> {
  const looking = lookThrough(circuit, offers);
  for (let step = looking.next(); ; step = looking.next()) {
    if (step.done) return step.value;
    show(step.value);
  }
}

function allPairs({ base, faults }: StopAnalysis, show: (now: LookProgress) => void): readonly FaultPair[] {
  const pairs: FaultPair[] = [];
  for (const { done, all, found } of dangerousPairs(
    base,
    faults.map(({ fault, judged }) => [fault, judged]),
  )) {
    show({ doing: 'pairs of faults', done, all });
    pairs.push(...found);
  }
  return pairs;
}

function exitOf({ findings }: StopAnalysis): number {
  const has = (verdict: string) => findings.some((each) => each.verdict === verdict);
  return has('fails') ? EXIT.fails : has('unknown') ? EXIT.unknown : EXIT.fine;
}

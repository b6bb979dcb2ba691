/** `fettle stop`: what really happens when somebody asks the machine to stop, with every single fault. */

import { stopBuilt } from '../../engine/advice/stop-built.ts';
import { rankedPatterns, stopOffers, whatMoves } from '../../engine/advice/stop-offers.ts';
import { supplyDrawn } from '../../engine/advice/supply-drawn.ts';
import { assess } from '../../engine/assess/index.ts';
import {
  AS_WIRED,
  analyseStop,
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
  type StopFinding,
  testSheet,
  testSheetHtml,
  waitedFor,
} from '../../engine/circuit/stop/index.ts';
import { WiringLook } from '../../engine/circuit/whole/index.ts';
import { type ReadWiring, readWiring } from '../../engine/circuit/wiring/index.ts';
import type { Result } from '../../engine/quantity/types.ts';
import type { Refit, StopCircuit } from '../../engine/refit/index.ts';
import { shown } from '../arguments.ts';
import { ANYWAY } from '../ask-back.ts';
import type { Command } from '../command.ts';
import { EXIT } from '../exit.ts';
import { openRefit, type RefitFile } from '../files.ts';
import type { Io } from '../io.ts';
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
  printStopFinding,
  printStopFindings,
  printTruth,
} from '../print/stop.ts';
import { quoted } from '../print/text.ts';
import { record } from '../record.ts';
import { need, Refusal } from '../refusal.ts';
import { editedStop } from '../stop-edit.ts';

export const stop: Command = {
  name: 'stop',
  summary: 'asks whether the machine really stops, with every single fault',
  usage: [
    'stop FILE [--pattern NAME] [--truth] [--faults] [--numbers] [--pairs] [--test-sheet OUT.html] [--force] [--json]',
    'stop FILE PLACE=VALUE … [--try] [--anyway]',
    'stop FILE FROM TO [cable=W1] [--try]',
    'stop FILE --cut WIRE | --add NAME=KIND [PLACE=VALUE …] | --remove NAME [--try]',
  ],
  about: `Does every stop stop, does nothing start by itself, what does each single fault do, where must switches and guards stand. --pattern lays a circuit out in place of what is there: ${PATTERNS.map(({ id }) => id).join(', ')}. PLACE is a setting of an element (K1.linked, K1.name), a number of what moves (X.travel), its drive or brake (X.brake), the cable of a wire (w5.cable) or an answer about the whole (stop.test-months); “usual” or “unknown” takes it back. FROM and TO are terminals such as K1.52; a wire is cut by its id or by both its ends. --add takes the kinds of element, and axis and spindle. What is said anew is shown; --try shows it and records nothing; a .refit file keeps it in its history, from which the page takes it back. The exit code is 0 when nothing fails and nothing is unknown, 1 when something fails, 3 when nothing fails but something is unknown, and 2 when the file or the circuit cannot be read. It examines a drawing; it makes no machine safe and certifies nothing. Local rules and licensed trades come first.`,
  options: {
    pattern: { takes: 'a name', says: 'lay this pattern out and record it' },
    truth: { says: 'every act in every state' },
    faults: { says: 'every single fault, worst first' },
    numbers: { says: 'the numbers that run-on rests on, and where each comes from' },
    pairs: { says: 'also two faults of which the first is not noticed; this takes a while' },
    'test-sheet': { takes: 'OUT.html', writes: true, says: 'write the test sheet to do at the machine' },
    force: { says: 'write over a test sheet that is there' },
    add: { takes: 'NAME=KIND', says: 'add an element, or something that moves' },
    remove: { takes: 'a name', says: 'take an element out with its wires, or something that moves' },
    cut: { takes: 'a wire', says: 'take this wire out' },
    try: { says: 'only show what a change would do' },
    ...ANYWAY,
    json: { says: 'as JSON' },
  },
  examples: [
    'stop lathe.refit',
    'stop lathe.refit --pattern safety-relay',
    'stop lathe.refit --faults',
    "stop lathe.refit X.limit-low='4 mm' X.vertical=yes",
    'stop lathe.refit K1.linked=yes --try',
    'stop lathe.refit K1.52 K2.51 cable=W3',
    'stop lathe.refit --add K9=relay K9.nc=2',
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
    const [add, remove, cut] = [text('add'), text('remove'), text('cut')];
    if (typed.length > 0 || add !== undefined || remove !== undefined || cut !== undefined) {
      if (wanted !== undefined) throw new Refusal('Lay a pattern out first, then change it.');
      if (circuit === null && add === undefined)
        throw new Refusal(`${NO_CIRCUIT} Lay one out with --pattern, or begin one with --add.`);
      const next = editedStop(circuit, { add, remove, cut, words: typed, anyway: has('anyway') });
      return change(io, file, next, has('try'));
    }
    if (has('try')) throw new Refusal('--try shows what a change would do; say the change.');
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
    const found = need(lookedThrough(circuit, stopOffers(assessed, circuit), wiringOf(file.refit), progress));
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

/** Shows what a change does to the answers; recorded unless it is only tried. */
function change(io: Io, file: RefitFile, next: StopCircuit, isTried: boolean): number {
  const looked = (circuit: StopCircuit | null): readonly StopFinding[] => {
    if (circuit === null) return [];
    const found = analyseStop(circuit, stopOffers(assess(file.refit), circuit), wiringOf(file.refit));
    return found.ok ? found.value.findings : [];
  };
  const before = new Map(looked(file.refit.stop).map((each) => [each.id, each]));
  if (isTried) pageOn(io).prose('Nothing is recorded.');
  else record(io, file, [{ do: 'stop', old: file.refit.stop, new: next }]);
  const fresh = looked(next).filter((each) => !same(before.get(each.id), each));
  const page = pageOn(io);
  page.heading(
    fresh.length === 0 ? 'Nothing else is said of the stop circuit than before' : 'What is said anew',
  );
  for (const each of fresh) {
    const was = before.get(each.id)?.verdict;
    printStopFinding(page, each, was !== undefined && was !== each.verdict ? was : undefined);
  }
  return exitOf({ findings: fresh });
}

const same = (a: StopFinding | undefined, b: StopFinding): boolean => JSON.stringify(a) === JSON.stringify(b);
const wiringOf = (refit: Refit): ReadWiring => readWiring(refit.wiring, refit);

/** Numbers that the answer waits for before the rest are left out. */
const WAITING = 2;

function printMore(page: Page, path: string, faults: boolean, found: StopAnalysis): void {
  const waiting = waitedFor(found).slice(0, WAITING);
  const differs = found.findings.some(({ id, verdict }) => id === AS_WIRED && verdict !== 'fits');
  if (faults && waiting.length === 0 && !differs) return;
  page.heading('What next');
  if (!faults) page.line(`    fettle stop ${quoted(path)} --faults`);
  if (differs) page.line(`    fettle wiring ${quoted(path)}`);
  for (const { motion, kind, setting } of waiting)
    page.line(
      `    fettle stop ${quoted(path)} ${motion}.${setting}=${quoted(exampleOf(MOTION_SETTINGS[kind][setting]!))}`,
    );
}

function lookedThrough(
  circuit: StopCircuit,
  offers: Offers,
  wiring: ReadWiring,
  show: (now: LookProgress) => void,
): Result<StopAnalysis> {
  const looking = lookThrough(circuit, offers, wiring);
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

function exitOf({ findings }: Pick<StopAnalysis, 'findings'>): number {
  const has = (verdict: string) => findings.some((each) => each.verdict === verdict);
  return has('fails') ? EXIT.fails : has('unknown') ? EXIT.unknown : EXIT.fine;
}

/** `fettle simulate`: one move of an axis in time, from a refit or from a model file; many of it at once; its gains. */
import { nearest } from '../../engine/quantity/nearest.ts';
import {
  besideOf,
  doesTheMove,
  hunting,
  MOVE_KINDS,
  MOVES,
  ModelError,
  type Move,
  type MoveKind,
  type Run,
  readMove,
  simulate as run,
  type SimulateOptions,
  startingGains,
} from '../../engine/simulate/index.ts';
import { shown } from '../arguments.ts';
import { assignment } from '../assignment.ts';
import type { Call, Command } from '../command.ts';
import { writeCsv } from '../csv.ts';
import { EXIT } from '../exit.ts';
import { bandCsv, bandJson, gainsJson, runCsv, runJson } from '../json/simulate.ts';
import { makeBand } from '../make-band.ts';
import { refuseFarMove, sayAsked } from '../move-asked.ts';
import { pageOn } from '../print/page.ts';
import { printBand, printGains, printMoves, printRun } from '../print/simulate.ts';
import { Refusal } from '../refusal.ts';
import { fromModel, fromRefit, type Subject, sayAll } from '../simulate-subject.ts';

const MOST_RUNS = 20_000;

export const simulate: Command = {
  name: 'simulate',
  summary: 'moves an axis in time: following error, trips, ringing, stick-slip, lost motion, the bus',
  usage: [
    'simulate FILE AXIS MOVE [FIELD=VALUE …] [--band N] [--anyway] [--json] [--csv FILE]',
    'simulate FILE AXIS --gains [--json]',
    'simulate --model MODEL.json MOVE [FIELD=VALUE …] [--anyway] [--json] [--csv FILE]',
    'simulate --model MODEL.json --gains [--json]',
    'simulate --list [--json]',
  ],
  about:
    'A refit’s axis is put together from its facts; what is not known is taken at a usual value, and said. A model file gives every number itself (docs/simulate-model.schema.json). Fields of the move that are left out are as the axis’s duty asks, else at their usual values; the answer says which. Where a move has another side to it (an axis dropped with its brake and without, a power cut with the weight and against it), that stands beside it. The exit code is 0 when the axis does it, 1 when it trips, stalls, is unstable or runs into its end stop (with --band: when any of the draws trips, stalls or is unstable), 3 when something that has to be known is missing.',
  options: {
    list: { says: 'the moves, with what each asks for' },
    model: { takes: 'a model file', says: 'an axis by itself, every number in a JSON file' },
    gains: {
      says: 'gains to begin with, why, and at which the loop would swing; instead of a move',
    },
    band: {
      takes: 'a number',
      says: `so many axes (at most ${MOST_RUNS}) made up within the doubt of their facts: chance of a trip, and the band of the following error; Ctrl-C ends it with what there is`,
    },
    csv: {
      takes: 'a file',
      writes: true,
      says: 'writes time, command, place, following error, speed, current and bus voltage there; with --band the band of the following error',
    },
    anyway: { says: 'move it so although that is far above what is usual' },
    json: { says: 'as JSON' },
  },
  examples: [
    'simulate lathe.refit X rapid',
    'simulate lathe.refit X rapid --band 1000',
    'simulate lathe.refit X --gains',
    'simulate mill.refit Z drop brake=none',
    'simulate --model axis.json circle speed="500 mm/min"',
    'simulate --list',
  ],
  words: [0],
  run: (call) => {
    const { words, text, has } = call;
    if (has('list')) {
      if (words.length > 0) throw new Refusal('--list takes nothing else; it lists all moves.');
      return list(call);
    }
    for (const option of ['band', 'csv'])
      if (has('gains') && text(option) !== undefined)
        throw new Refusal(`--gains moves nothing, so --${option} does not go with it.`);
    const file = text('model');
    const before = file === undefined ? 2 : 0;
    const least = has('gains') ? before : before + 1;
    if (words.length < least)
      throw new Refusal(
        file === undefined
          ? `${['Name a refit, an axis and a move', 'Name an axis and a move after the refit', 'Name a move after the axis'][words.length]}, as in: fettle simulate lathe.refit X rapid. “fettle simulate --list” shows the moves.`
          : 'Name a move; “fettle simulate --list” shows them all.',
      );
    if (has('gains') && words.length > before)
      throw new Refusal(`--gains moves nothing; leave “${shown(words[before]!)}” out.`);
    const kind = has('gains') ? undefined : moveKind(words[before]!);
    const subject = file === undefined ? fromRefit(words[0]!, words[1]!) : fromModel(file);
    if (typeof subject === 'string') {
      if (has('json')) json(call, { format: 'fettle-simulation', version: 1, unknown: subject });
      else pageOn(call.io).prose(subject);
      return EXIT.unknown;
    }
    return kind === undefined ? gains(call, subject) : moved(call, subject, kind, words.slice(least));
  },
};

const json = ({ io }: Call, value: unknown): void => io.out(`${JSON.stringify(value, null, 2)}\n`);

function list(call: Call): number {
  if (call.has('json')) {
    json(call, { format: 'fettle-moves', version: 1, moves: MOVES });
    return EXIT.fine;
  }
  const page = pageOn(call.io);
  printMoves(page);
  page.line();
  page.prose(
    'An axis of a refit moves as its duty asks (rapid, feed, acceleration, length of a rapid move, force), where the duty tells; the usual values stand for the rest. The answer says which was used.',
  );
  return EXIT.fine;
}

function gains(call: Call, subject: Subject): number {
  const started = startingGains(subject.model);
  if (call.has('json')) json(call, gainsJson(subject.name, subject.model, started, subject.notes));
  else printGains(pageOn(call.io), subject, started);
  return EXIT.fine;
}

function moved(
  call: Call,
  subject: Subject,
  kind: MoveKind,
  words: readonly string[],
): number | Promise<number> {
  const { io, text, has } = call;
  const typed = fieldsOf(words);
  const move = moveOf(kind, { ...subject.usual[kind], ...typed });
  if (!has('anyway')) refuseFarMove(move, Object.keys(typed));
  const asked = sayAsked(move, typed, subject.usual[kind] ?? {}, subject.duty);
  const notes = [...asked.beyond, asked.sentence, ...subject.notes];
  const jsonNotes = [...asked.beyond, ...subject.notes];
  if (text('band') !== undefined) return banded(call, subject, move, notes, jsonNotes);
  const answer = runIt(subject, subject.model, move);
  const other = besideOf(subject.model, move);
  const beside = other && { ...other, run: runIt(subject, other.model, other.move) };
  const csv = text('csv');
  if (csv !== undefined) writeCsv(io, csv, runCsv(answer));
  if (has('json'))
    json(call, {
      ...runJson(subject, move, answer, beside, jsonNotes, hunting(subject.model)),
      moveFrom: asked.from,
    });
  else printRun(pageOn(io), { ...subject, notes, move, run: answer, beside });
  return doesTheMove(answer) && (beside === null || kind === 'drop' || doesTheMove(beside.run))
    ? EXIT.fine
    : EXIT.fails;
}

async function banded(
  call: Call,
  subject: Subject,
  move: Move,
  notes: readonly string[],
  jsonNotes: readonly string[],
): Promise<number> {
  const { io, text, has } = call;
  const runs = runsOf(text('band')!);
  const { model, spread, name } = subject;
  if (spread.length === 0)
    throw new Refusal(
      `No number of ${name} carries a doubt: a band would be one line. Move it once, without --band.`,
    );
  const band = await refused(() =>
    makeBand(io, { model, spread, move, runs, options: optionsOf(subject, move) }),
  );
  const csv = text('csv');
  if (csv !== undefined) writeCsv(io, csv, bandCsv(band));
  if (has('json')) json(call, bandJson(subject, move, band, runs, jsonNotes));
  else printBand(pageOn(io), { ...subject, notes, move, band, asked: runs });
  return band.tripped + band.stalled + band.unstable === 0 ? EXIT.fine : EXIT.fails;
}

function runsOf(typed: string): number {
  const runs = /^\d{1,9}$/.test(typed.trim()) ? Number(typed) : Number.NaN;
  if (!(runs >= 2 && runs <= MOST_RUNS))
    throw new Refusal(
      `--band: how many axes to make up, a whole number from 2 to ${MOST_RUNS}, such as 1000.`,
    );
  return runs;
}

function moveKind(typed: string): MoveKind {
  const kind = MOVE_KINDS.find((each) => each === typed.trim().toLowerCase());
  if (kind) return kind;
  const near = nearest(shown(typed), [...MOVE_KINDS]);
  throw new Refusal(
    `There is no move “${shown(typed)}”. ${near ? `Did you mean ${near}?` : `There are: ${MOVE_KINDS.join(', ')}.`}`,
  );
}

function fieldsOf(words: readonly string[]): Record<string, string> {
  const fields: Record<string, string> = Object.create(null);
  for (const word of words) {
    const [name, value] = assignment(word, "field=value, such as speed='6 m/min'");
    if (Object.hasOwn(fields, name)) throw new Refusal(`${shown(name)} was given twice; give it once.`);
    fields[name] = value;
  }
  return fields;
}

function moveOf(kind: MoveKind, fields: Readonly<Record<string, string>>): Move {
  const move = readMove(kind, fields);
  if (!move.ok) throw new Refusal(sayAll(move.problems));
  return move.value;
}

const optionsOf = ({ second, settleBand }: Subject, move: Move): SimulateOptions => ({
  ...(second && move.kind === 'circle' ? { second } : {}),
  ...(settleBand === undefined ? {} : { settleBand }),
});

function runIt(subject: Subject, model: Subject['model'], move: Move): Run {
  try {
    return run(model, move, optionsOf(subject, move));
  } catch (fault) {
    throw asRefusal(fault);
  }
}

async function refused<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (fault) {
    throw asRefusal(fault);
  }
}

const asRefusal = (fault: unknown): unknown =>
  fault instanceof ModelError ? new Refusal(sayAll(fault.problems)) : fault;

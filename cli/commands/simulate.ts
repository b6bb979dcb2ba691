/** `fettle simulate`: one move of an axis in time, from a refit or from a model file. */

import { readFileSync, statSync } from 'node:fs';
import { axisModel } from '../../engine/advice/axis-model.ts';
import { assess } from '../../engine/assess/index.ts';
import { nearest } from '../../engine/quantity/nearest.ts';
import { parseJson } from '../../engine/refit/json.ts';
import {
  type AxisModel,
  hunting,
  type InWordsOptions,
  MOVE_KINDS,
  MOVES,
  ModelError,
  type Move,
  type MoveKind,
  type Run,
  readModel,
  readMove,
  simulate as run,
  type SimulateOptions,
} from '../../engine/simulate/index.ts';
import { shown } from '../arguments.ts';
import { assignment } from '../assignment.ts';
import type { Command } from '../command.ts';
import { writeCsv } from '../csv.ts';
import { EXIT } from '../exit.ts';
import { openRefit } from '../files.ts';
import { runCsv, runJson } from '../json/simulate.ts';
import { type Duty, dutyOf, refuseFarMove, sayAsked } from '../move-asked.ts';
import { pageOn } from '../print/page.ts';
import { printMoves, printRun } from '../print/simulate.ts';
import { need, Refusal } from '../refusal.ts';

const MOST_BYTES = 1_000_000;

interface Subject {
  readonly name: string;
  readonly model: AxisModel;
  readonly second?: AxisModel;
  /** Typed fields of a move by kind, as this axis is asked to make it. */
  readonly usual: Readonly<Partial<Record<MoveKind, Readonly<Record<string, string>>>>>;
  readonly settleBand?: number;
  /** What the axis is asked for; absent for a model file. */
  readonly duty?: Duty;
  /** What was taken for want of better, a sentence each. */
  readonly notes: readonly string[];
  readonly words: InWordsOptions;
}

export const simulate: Command = {
  name: 'simulate',
  summary: 'moves an axis in time: following error, trips, ringing, stick-slip, lost motion, the bus',
  usage: [
    'simulate FILE AXIS MOVE [FIELD=VALUE …] [--anyway] [--json] [--csv FILE]',
    'simulate --model MODEL.json MOVE [FIELD=VALUE …] [--anyway] [--json] [--csv FILE]',
    'simulate --list [--json]',
  ],
  about:
    'A refit’s axis is put together from its facts; what is not known is taken at a usual value, and said. A model file gives every number itself (docs/simulate-model.schema.json). Fields of the move that are left out are as the axis’s duty asks, else at their usual values; the answer says which. The exit code is 0 when the axis does it, 1 when it trips, stalls or is unstable, 3 when something that has to be known is missing.',
  options: {
    list: { says: 'the moves, with what each asks for' },
    model: { takes: 'a model file', says: 'an axis by itself, every number in a JSON file' },
    csv: {
      takes: 'a file',
      writes: true,
      says: 'writes time, command, place, following error, speed, current and bus voltage there',
    },
    anyway: { says: 'move it so although that is far above what is usual' },
    json: { says: 'as JSON' },
  },
  examples: [
    'simulate lathe.refit X rapid',
    'simulate --model axis.json circle speed="500 mm/min"',
    'simulate --list',
  ],
  words: [0],
  run: ({ io, words, text, has }) => {
    const page = pageOn(io);
    const json = (value: unknown): void => io.out(`${JSON.stringify(value, null, 2)}\n`);
    if (has('list')) {
      if (words.length > 0) throw new Refusal('--list takes nothing else; it lists all moves.');
      if (has('json')) json({ format: 'fettle-moves', version: 1, moves: MOVES });
      else {
        printMoves(page);
        page.line();
        page.prose(
          'An axis of a refit moves as its duty asks (rapid, feed, acceleration, length of a rapid move, force), where the duty tells; the usual values stand for the rest. The answer says which was used.',
        );
      }
      return EXIT.fine;
    }
    const file = text('model');
    const least = file === undefined ? 3 : 1;
    if (words.length < least)
      throw new Refusal(
        file === undefined
          ? `${['Name a refit, an axis and a move', 'Name an axis and a move after the refit', 'Name a move after the axis'][words.length]}, as in: fettle simulate lathe.refit X rapid. “fettle simulate --list” shows the moves.`
          : 'Name a move; “fettle simulate --list” shows them all.',
      );
    const kind = moveKind(words[least - 1]!);
    const subject = file === undefined ? fromRefit(words[0]!, words[1]!) : fromModel(file);
    if (typeof subject === 'string') {
      if (has('json')) json({ format: 'fettle-simulation', version: 1, unknown: subject });
      else page.prose(subject);
      return EXIT.unknown;
    }
    const typed = fieldsOf(words.slice(least));
    const move = moveOf(kind, { ...subject.usual[kind], ...typed });
    if (!has('anyway')) refuseFarMove(move, Object.keys(typed));
    const asked = sayAsked(move, typed, subject.usual[kind] ?? {}, subject.duty);
    const notes = [...asked.beyond, asked.sentence, ...subject.notes];
    const answer = runIt(subject, move);
    const csv = text('csv');
    if (csv !== undefined) writeCsv(io, csv, runCsv(answer));
    if (has('json'))
      json({
        ...runJson(subject.name, move, answer, [...asked.beyond, ...subject.notes], hunting(subject.model)),
        moveFrom: asked.from,
      });
    else printRun(page, { ...subject, notes, move, run: answer });
    return answer.trips.length > 0 || answer.summary.stalled || answer.summary.unstable
      ? EXIT.fails
      : EXIT.fine;
  },
};

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

const sayAll = (problems: ModelError['problems']): string =>
  problems
    .slice(0, 20)
    .map(({ where, message }) => (where ? `${shown(where)}: ${message}` : message))
    .join('\n');

function moveOf(kind: MoveKind, fields: Readonly<Record<string, string>>): Move {
  const move = readMove(kind, fields);
  if (!move.ok) throw new Refusal(sayAll(move.problems));
  return move.value;
}

function runIt({ model, second, settleBand }: Subject, move: Move): Run {
  const options: SimulateOptions = {
    ...(second && move.kind === 'circle' ? { second } : {}),
    ...(settleBand === undefined ? {} : { settleBand }),
  };
  try {
    return run(model, move, options);
  } catch (fault) {
    if (fault instanceof ModelError) throw new Refusal(sayAll(fault.problems));
    throw fault;
  }
}

/** The axis of a refit, or a sentence on what has to be known first. */
function fromRefit(path: string, axis: string): Subject | string {
  const file = openRefit(path);
  const axes = file.refit.chains.filter(({ kind }) => kind === 'axis');
  const chain = axes.find(({ id }) => id.toLowerCase() === axis.trim().toLowerCase());
  if (!chain) {
    const names = axes.map(({ id }) => id);
    throw new Refusal(`This refit has no axis “${shown(axis)}”; it has ${names.join(', ')}.`);
  }
  const setting = axisModel(assess(file.refit), chain.id);
  if (!setting.model) {
    const names = setting.missing.map(({ name }) => name);
    return `The ${chain.id} axis cannot be simulated yet. Unknown: ${names.join('; ') || 'what moves it'}.`;
  }
  return {
    name: `${chain.id} axis of ${file.refit.name}`,
    model: setting.model,
    ...(setting.second ? { second: setting.second.model } : {}),
    usual: setting.usual,
    settleBand: setting.settleBand,
    duty: dutyOf(file.refit, chain.id),
    notes: setting.assumed.map(({ says }) => says),
    words: {
      continuousCurrent: setting.continuousCurrent,
      names: [chain.id, setting.second?.chain ?? 'other'],
    },
  };
}

function fromModel(path: string): Subject {
  const name = shown(path);
  let text: string;
  try {
    const stat = statSync(path);
    if (!stat.isFile()) throw new Refusal(`${name} is not an ordinary file.`);
    if (stat.size > MOST_BYTES)
      throw new Refusal(`${name} is larger than 1 MB, the most a model file can hold.`);
    text = new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path));
  } catch (fault) {
    if (fault instanceof Refusal) throw fault;
    throw new Refusal(
      `${name} could not be read as a model file: it is not there, not text, or not yours to read.`,
    );
  }
  const read = readModel(need(parseJson(text, name, MOST_BYTES)));
  if (!read.ok) throw new Refusal(`${name} is not a model that can be simulated.\n${sayAll(read.problems)}`);
  const { model, usual } = read.value;
  return {
    name,
    model,
    usual: {},
    notes: usual.length > 0 ? [`Left out of the file, so at their usual values: ${usual.join(', ')}.`] : [],
    words: {},
  };
}

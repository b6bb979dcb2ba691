/** What a move asks of an axis: where each number comes from, and whether it is more than the axis is for. */
import { factsAround } from '../engine/advice/part-facts.ts';
import { factSpec } from '../engine/parts/index.ts';
import { askBack } from '../engine/quantity/ask-back.ts';
import { formatQuantity } from '../engine/quantity/index.ts';
import { own } from '../engine/quantity/own.ts';
import { andList } from '../engine/quantity/words.ts';
import type { Refit } from '../engine/refit/index.ts';
import { MOVES, type Move } from '../engine/simulate/index.ts';
import { Refusal } from './refusal.ts';

/** The fact that says how much of a field is asked of an axis. */
const LIMITS: Readonly<Record<string, readonly [place: 'duty' | 'slide', fact: string, words: string]>> = {
  speed: ['duty', 'rapid', 'rapid'],
  acceleration: ['duty', 'acceleration', 'acceleration'],
  stop: ['duty', 'acceleration', 'acceleration'],
  distance: ['slide', 'travel', 'travel'],
  force: ['duty', 'cutForce', 'cutting force'],
};

/** 'X', and how much is asked of it by field, SI. */
export interface Duty {
  readonly axis: string;
  readonly most: Readonly<Record<string, number | undefined>>;
}

export function dutyOf(refit: Refit, axis: string): Duty {
  const { value } = factsAround(refit, axis);
  const rapid = value('duty', 'rapid');
  const acceleration = value('duty', 'acceleration');
  return {
    axis,
    most: {
      speed: rapid,
      acceleration,
      stop: acceleration,
      distance: value('slide', 'travel'),
      force: value('duty', 'cutForce'),
    },
  };
}

const numberOf = (move: Move, name: string): number => (move as unknown as Record<string, number>)[name]!;

/** Refuses what a person typed for a move that is far above what is usual of any axis. */
export function refuseFarMove(move: Move, typed: readonly string[]): void {
  for (const name of typed) {
    const limit = own(LIMITS, name);
    const spec = limit && factSpec(limit[0], limit[1]);
    if (spec?.kind !== 'quantity') continue;
    const question = askBack({ ...spec, name: limit![2], mayBeNought: true }, numberOf(move, name));
    if (question !== undefined)
      throw new Refusal(`${name}: ${question} If it is right all the same, add --anyway.`);
  }
}

export type From = 'typed' | 'duty' | 'usual';

export interface AskedOfMove {
  /** The numbers of the move and where they come from. */
  readonly sentence: string;
  readonly from: Readonly<Record<string, From>>;
  /** What is more than the axis is for, a sentence each. */
  readonly beyond: readonly string[];
}

/** `usual`: what the duty of the axis tells, by field. */
export function sayAsked(
  move: Move,
  typed: Readonly<Record<string, string>>,
  usual: Readonly<Record<string, string>>,
  duty: Duty | undefined,
): AskedOfMove {
  const { fields } = MOVES[move.kind];
  const names = Object.keys(fields);
  const from = Object.fromEntries(
    names.map((name): [string, From] => [
      name,
      Object.hasOwn(typed, name) ? 'typed' : Object.hasOwn(usual, name) ? 'duty' : 'usual',
    ]),
  );
  const list = (source: From): string =>
    andList(
      names
        .filter((name) => from[name] === source)
        .map((name) => `${name} ${typed[name] ?? usual[name] ?? fields[name]!.usual}`),
    );
  const parts = [
    ['typed', 'as you typed it'],
    ['duty', `as the ${duty?.axis ?? ''} axis’s duty asks`],
    ['usual', 'the usual'],
  ] as const;
  const said = parts.flatMap(([source, words]) => (list(source) ? [`${list(source)} (${words})`] : []));
  return { sentence: `The move: ${said.join('; ')}.`, from, beyond: beyondOf(move, from, duty) };
}

function beyondOf(move: Move, from: Readonly<Record<string, From>>, duty: Duty | undefined): string[] {
  if (!duty) return [];
  return Object.keys(from).flatMap((name) => {
    const limit = own(LIMITS, name);
    const most = duty.most[name];
    if (!limit || most === undefined || from[name] !== 'typed') return [];
    const value = Math.abs(numberOf(move, name));
    // What is typed as the duty has it is not beyond it by a rounding.
    if (!(value > most * (1 + 1e-9))) return [];
    const spec = factSpec(limit[0], limit[1]);
    const unit = spec?.kind === 'quantity' ? spec.unit : '1';
    const say = (of: number): string => formatQuantity(of, unit, { digits: 3 });
    return [
      `The ${name} of ${say(value)} is beyond the ${limit[2]} of the ${duty.axis} axis, ${say(most)}: more than is asked of it.`,
    ];
  });
}

/** The axis that is simulated: one of a refit, or one that a model file gives by itself. */
import { readFileSync, statSync } from 'node:fs';
import { axisModel } from '../engine/advice/axis-model.ts';
import { assess } from '../engine/assess/index.ts';
import { parseJson } from '../engine/refit/json.ts';
import {
  type AxisModel,
  type InWordsOptions,
  type ModelError,
  type MoveKind,
  readModel,
  type Spread,
} from '../engine/simulate/index.ts';
import { shown } from './arguments.ts';
import { openRefit } from './files.ts';
import { type Duty, dutyOf } from './move-asked.ts';
import { need, Refusal } from './refusal.ts';

const MOST_BYTES = 1_000_000;

export interface Subject {
  readonly name: string;
  readonly model: AxisModel;
  readonly second?: AxisModel;
  /** Typed fields of a move by kind, as this axis is asked to make it. */
  readonly usual: Readonly<Partial<Record<MoveKind, Readonly<Record<string, string>>>>>;
  readonly settleBand?: number;
  /** How far its numbers may be off; none for a model file, which gives them as they are. */
  readonly spread: readonly Spread[];
  /** What the axis is asked for; absent for a model file. */
  readonly duty?: Duty;
  /** What was taken for want of better, a sentence each. */
  readonly notes: readonly string[];
  readonly words: InWordsOptions;
}

export const sayAll = (problems: ModelError['problems']): string =>
  problems
    .slice(0, 20)
    .map(({ where, message }) => (where ? `${shown(where.replace(/^move\./, ''))}: ${message}` : message))
    .join('\n');

/** The axis of a refit, or a sentence on what has to be known first. */
export function fromRefit(path: string, axis: string): Subject | string {
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
    spread: setting.spread,
    duty: dutyOf(file.refit, chain.id),
    notes: setting.assumed.map(({ says }) => says),
    words: {
      continuousCurrent: setting.continuousCurrent,
      travel: setting.travel,
      travelFact: `${chain.id}.slide.travel`,
      names: [chain.id, setting.second?.chain ?? 'other'],
    },
  };
}

export function fromModel(path: string): Subject {
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
    spread: [],
    notes: usual.length > 0 ? [`Left out of the file, so at their usual values: ${usual.join(', ')}.`] : [],
    words: {},
  };
}

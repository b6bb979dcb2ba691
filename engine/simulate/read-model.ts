/** A model or a move as a person writes it: quantities as text with their units, left out where the usual one will do. */

import { type Problem, parseQuantity, type Result } from '../quantity/index.ts';
import { own } from '../quantity/own.ts';
import { checkModel, checkMove } from './check-model.ts';
import type { AxisModel } from './model.ts';
import { MOVES, type Move, type MoveField, type MoveKind } from './moves.ts';
import { GROUPS, type Group, type NumberParameter, type Parameter } from './parameters.ts';

export interface ReadModel {
  readonly model: AxisModel;
  /** 'slide.viscous': paths that were left out and have their usual value. */
  readonly usual: readonly string[];
}

type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const problem = (where: string, message: string): Problem => ({ code: 'malformed', where, message });

/** A model from parsed JSON. Every problem is named by its field. */
export function readModel(given: unknown): Answer<ReadModel> {
  if (typeof given !== 'object' || given === null || Array.isArray(given))
    return {
      ok: false,
      problems: [problem('model', 'A model is an object with the groups motor, transmission and so on.')],
    };
  const problems: Problem[] = [];
  const usual: string[] = [];
  const groups = given as Readonly<Record<string, unknown>>;
  for (const name of Object.keys(groups))
    if (!Object.hasOwn(GROUPS, name) && name !== '$schema')
      problems.push(problem(name, `There is no such group; there are ${Object.keys(GROUPS).join(', ')}.`));
  const out: Record<string, unknown> = {};
  for (const [name, group] of Object.entries(GROUPS)) {
    const values = own(groups, name);
    if (group.absent && (values === undefined || values === null)) out[name] = null;
    else out[name] = readGroup(name, group, values ?? {}, problems, usual);
  }
  if (problems.length > 0) return { ok: false, problems };
  const faults = checkModel(out as unknown as AxisModel);
  if (faults.length > 0) return { ok: false, problems: faults };
  return { ok: true, value: { model: out as unknown as AxisModel, usual } };
}

function readGroup(
  name: string,
  { kinds, usualKind }: Group,
  given: unknown,
  problems: Problem[],
  usual: string[],
): Record<string, unknown> {
  if (typeof given !== 'object' || given === null || Array.isArray(given)) {
    problems.push(problem(name, 'A group is an object with its fields.'));
    return {};
  }
  const values = given as Readonly<Record<string, unknown>>;
  const out: Record<string, unknown> = {};
  let kind = '';
  if (!Object.hasOwn(kinds, '')) {
    kind = Object.hasOwn(values, 'kind') ? String(values.kind) : usualKind!;
    if (!Object.hasOwn(kinds, kind)) {
      problems.push(problem(`${name}.kind`, `It has to be one of ${Object.keys(kinds).join(', ')}.`));
      return out;
    }
    out.kind = kind;
  }
  const parameters = kinds[kind]!;
  for (const field of Object.keys(values))
    if (field !== 'kind' && !Object.hasOwn(parameters, field))
      problems.push(
        problem(
          `${name}.${field}`,
          `There is no such field here; there are ${Object.keys(parameters).join(', ')}.`,
        ),
      );
  for (const [field, parameter] of Object.entries(parameters)) {
    const path = `${name}.${field}`;
    let text = own(values, field);
    if (text === undefined) {
      if (parameter.usual === undefined) {
        problems.push(problem(path, `It is missing: ${parameter.name}${example(parameter)}.`));
        continue;
      }
      text = parameter.usual;
      usual.push(path);
    }
    const read = readParameter(parameter, text);
    if (read.ok) out[field] = read.value;
    else problems.push({ ...read.problem, where: path });
  }
  // A constant supply has no use for the rest, but the engine wants every number to be one.
  if (name === 'supply' && kind === 'constant') {
    const filler = {
      mains: 1,
      frequency: 50,
      sourceResistance: 0,
      diodeDrop: 0,
      capacitance: 1,
      otherLoad: 0,
    };
    const none = Number.POSITIVE_INFINITY;
    Object.assign(out, filler, { bleeder: none, dumpOn: none, dumpOff: none, dumpResistance: none });
  }
  return out;
}

function example(parameter: Parameter): string {
  if (parameter.kind === 'choice') return ` (${parameter.options.join(', ')})`;
  return parameter.unit === '1' ? ' (a plain number)' : `, in ${parameter.unit} or another unit of its kind`;
}

function readParameter(parameter: Parameter, given: unknown): Result<string | number> {
  if (parameter.kind === 'choice') {
    if (typeof given === 'string' && parameter.options.includes(given)) return { ok: true, value: given };
    return { ok: false, problem: problem('', `It has to be one of ${parameter.options.join(', ')}.`) };
  }
  return readNumber(parameter, given);
}

function readNumber({ unit, none }: NumberParameter, given: unknown): Result<number> {
  if (typeof given === 'number') {
    if (unit === '1' && Number.isFinite(given)) return { ok: true, value: given };
    if (unit !== '1')
      return {
        ok: false,
        problem: problem('', `Write it as text with its unit, such as "${given} ${unit}".`),
      };
  }
  if (typeof given !== 'string')
    return {
      ok: false,
      problem: problem('', `Write it as text${unit === '1' ? '' : ` with its unit, such as "5 ${unit}"`}.`),
    };
  if (none !== undefined && given.trim().toLowerCase() === none)
    return { ok: true, value: Number.POSITIVE_INFINITY };
  const read = parseQuantity(given, { unit });
  return read.ok ? { ok: true, value: read.value.value } : read;
}

/** One field of a move as it is typed: a number in SI, or the word of a choice. */
export function readMoveField({ unit, none, options }: MoveField, text: string): Result<string | number> {
  const word = text.trim().toLowerCase();
  if (options)
    return options.includes(word)
      ? { ok: true, value: word }
      : { ok: false, problem: problem('', `It has to be one of ${options.join(', ')}.`) };
  if (none !== undefined && word === none) return { ok: true, value: Number.POSITIVE_INFINITY };
  const read = parseQuantity(text, { unit });
  return read.ok ? { ok: true, value: read.value.value } : read;
}

/** A move from texts by field; what is left out has its usual value. */
export function readMove(kind: MoveKind, given: Readonly<Record<string, string>>): Answer<Move> {
  const { fields } = MOVES[kind];
  const problems: Problem[] = [];
  for (const name of Object.keys(given))
    if (!Object.hasOwn(fields, name))
      problems.push(
        problem(name, `The move ${kind} has no such field; it has ${Object.keys(fields).join(', ')}.`),
      );
  const out: Record<string, unknown> = { kind };
  for (const [name, field] of Object.entries(fields)) {
    const read = readMoveField(field, Object.hasOwn(given, name) ? given[name]! : field.usual);
    if (read.ok) out[name] = read.value;
    else problems.push({ ...read.problem, where: name });
  }
  if (problems.length > 0) return { ok: false, problems };
  const faults = checkMove(out as unknown as Move);
  return faults.length > 0 ? { ok: false, problems: faults } : { ok: true, value: out as unknown as Move };
}

/** The JSON Schema (2020-12) of a model file, published as docs/simulate-model.schema.json. */
export function modelSchema(): object {
  const field = (parameter: Parameter): object => {
    const fallback = parameter.usual === undefined ? {} : { default: parameter.usual };
    if (parameter.kind === 'choice')
      return { description: parameter.name, enum: parameter.options, ...fallback };
    const words = parameter.none === undefined ? '' : `; "${parameter.none}" for none`;
    const types = parameter.unit === '1' ? ['string', 'number'] : 'string';
    return {
      description: `${parameter.name}; ${parameter.unit === '1' ? 'a plain number' : `text with a unit such as ${parameter.unit}`}${words}`,
      type: types,
      ...fallback,
    };
  };
  const group = ({ says, kinds, usualKind }: Group): object => {
    const forms = Object.entries(kinds).map(([kind, parameters]) => ({
      type: 'object',
      properties: {
        ...(kind === '' ? {} : { kind: { const: kind } }),
        ...Object.fromEntries(Object.entries(parameters).map(([name, each]) => [name, field(each)])),
      },
      required: [
        ...(kind === '' || kind === usualKind ? [] : ['kind']),
        ...Object.entries(parameters).flatMap(([name, each]) => (each.usual === undefined ? [name] : [])),
      ],
      additionalProperties: false,
    }));
    return forms.length === 1 ? { description: says, ...forms[0] } : { description: says, oneOf: forms };
  };
  const needs = Object.entries(GROUPS).flatMap(([name, { kinds, absent }]) =>
    !absent &&
    Object.values(kinds).every((each) => Object.values(each).some(({ usual }) => usual === undefined))
      ? [name]
      : [],
  );
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'An axis for fettle simulate --model',
    type: 'object',
    properties: {
      $schema: { type: 'string' },
      ...Object.fromEntries(
        Object.entries(GROUPS).map(([name, each]) => [
          name,
          each.absent ? { anyOf: [{ type: 'null' }, group(each)] } : group(each),
        ]),
      ),
    },
    required: needs,
    additionalProperties: false,
  };
}

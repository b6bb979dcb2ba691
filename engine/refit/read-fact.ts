/** A fact's value as typed, read against what its kind says it is. */
import type { FactSpec, TextFact } from '../parts/types.ts';
import { askBack } from '../quantity/ask-back.ts';
import { formatQuantity, parseMoney, parseQuantity } from '../quantity/index.ts';
import { askOutside } from '../quantity/plausible.ts';
import { ok, type Problem, type Quantity, type Result, refuse } from '../quantity/types.ts';
import type { FactValue } from './types.ts';

export interface CurvePoints {
  /** Ascending, SI. */
  readonly x: readonly number[];
  readonly y: readonly number[];
}

export type ReadFact =
  | { readonly kind: 'quantity'; readonly quantity: Quantity; readonly value: number; readonly half: number }
  | { readonly kind: 'choice'; readonly option: string }
  | { readonly kind: 'choices'; readonly options: readonly string[] }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'curve'; readonly curve: CurvePoints };

const DOMAIN_WORDS = {
  positive: 'must be above zero',
  'not negative': 'must not be below zero',
  fraction: 'must lie between 0 and 100 %',
} as const;

/** Why a number cannot be this fact, or undefined. */
function domainProblem(spec: Extract<FactSpec, { kind: 'quantity' }>, value: number): Problem | undefined {
  const bad =
    (spec.domain === 'positive' && !(value > 0)) ||
    (spec.domain === 'not negative' && value < 0) ||
    (spec.domain === 'fraction' && (value < 0 || value > 1));
  if (!bad) return undefined;
  return {
    code: 'out-of-domain',
    message: `The ${spec.name} ${DOMAIN_WORDS[spec.domain as keyof typeof DOMAIN_WORDS]}; usual is ${spec.plausible[0]} to ${spec.plausible[1]}.`,
  };
}

function readQuantity(spec: Extract<FactSpec, { kind: 'quantity' }>, text: string): Result<ReadFact> {
  const of = spec.of === 'diameter' || spec.of === 'radius' ? { of: spec.of } : {};
  const parsed = parseQuantity(text, { unit: spec.unit, ...of });
  if (!parsed.ok) return parsed;
  const quantity = parsed.value;
  const times = spec.of === 'lead' ? (quantity.starts ?? 1) : 1;
  const value = quantity.value * times;
  const half = quantity.half * times;
  const problem = domainProblem(spec, value);
  return problem ? refuse(problem) : ok({ kind: 'quantity', quantity, value, half });
}

/** '1.1 N·m at 300 r/min; 0.8 N·m at 600 r/min', in any order of speed. */
function readCurve(spec: Extract<FactSpec, { kind: 'curve' }>, text: string): Result<ReadFact> {
  const example = `write points as “1.1 ${spec.unit} at 300 ${spec.xUnit}; 0.8 ${spec.unit} at 600 ${spec.xUnit}”`;
  const pieces = text.split(';').filter((piece) => piece.trim() !== '');
  if (pieces.length < 2) {
    return refuse({ code: 'malformed', message: `The ${spec.name} needs at least two points: ${example}.` });
  }
  if (pieces.length > 200)
    return refuse({ code: 'too-long', message: `The ${spec.name} may have at most 200 points.` });
  const points: { x: number; y: number }[] = [];
  for (const [index, piece] of pieces.entries()) {
    const parts = piece.split(/\sat\s/);
    if (parts.length !== 2) {
      return refuse({
        code: 'malformed',
        message: `Point ${index + 1} of the ${spec.name} was not understood: ${example}.`,
      });
    }
    const y = parseQuantity(parts[0]!.trim(), { unit: spec.unit });
    if (!y.ok)
      return refuse({
        ...y.problem,
        message: `Point ${index + 1} of the ${spec.name}: ${y.problem.message}`,
      });
    const x = parseQuantity(parts[1]!.trim(), { unit: spec.xUnit });
    if (!x.ok)
      return refuse({
        ...x.problem,
        message: `Point ${index + 1} of the ${spec.name}: ${x.problem.message}`,
      });
    if (y.value.value < 0 || x.value.value < 0) {
      return refuse({
        code: 'out-of-domain',
        message: `Point ${index + 1} of the ${spec.name} must not be below zero.`,
      });
    }
    points.push({ x: x.value.value, y: y.value.value });
  }
  points.sort((a, b) => a.x - b.x);
  const twice = points.find((point, i) => i > 0 && point.x === points[i - 1]!.x);
  if (twice) {
    const at = formatQuantity(twice.x, spec.xUnit);
    return refuse({ code: 'malformed', message: `The ${spec.name} has two points at ${at}; keep one.` });
  }
  return ok({ kind: 'curve', curve: { x: points.map((p) => p.x), y: points.map((p) => p.y) } });
}

function optionProblem(
  spec: { name: string; options: Readonly<Record<string, string>> },
  option: string,
): Problem {
  const list = Object.entries(spec.options)
    .map(([id, words]) => `${id} (${words})`)
    .join(', ');
  return {
    code: 'unknown-name',
    message: `“${option.slice(0, 60)}” is not a choice for the ${spec.name}; choose ${list}.`,
  };
}

/** Reads a fact's value by its specification. The problem's message names the fact in words. */
export function readFact(spec: FactSpec, value: FactValue): Result<ReadFact> {
  if (spec.kind !== value.kind) {
    return refuse({ code: 'malformed', message: `The ${spec.name} is a ${spec.kind}, not a ${value.kind}.` });
  }
  switch (value.kind) {
    case 'quantity':
      return readQuantity(spec as Extract<FactSpec, { kind: 'quantity' }>, value.text);
    case 'curve':
      return readCurve(spec as Extract<FactSpec, { kind: 'curve' }>, value.text);
    case 'text': {
      const money = (spec as TextFact).of === 'money' ? parseMoney(value.text) : undefined;
      return money?.ok === false ? money : ok({ kind: 'text', text: value.text });
    }
    case 'choice': {
      const choice = spec as Extract<FactSpec, { kind: 'choice' }>;
      return Object.hasOwn(choice.options, value.option)
        ? ok({ kind: 'choice', option: value.option })
        : refuse(optionProblem(choice, value.option));
    }
    case 'choices': {
      const choices = spec as Extract<FactSpec, { kind: 'choices' }>;
      const wrong = value.options.find((option) => !Object.hasOwn(choices.options, option));
      return wrong === undefined
        ? ok({ kind: 'choices', options: value.options })
        : refuse(optionProblem(choices, wrong));
    }
  }
}

/** What a person typed for a fact, as the value its kind asks for. Choices are listed with commas. */
export function typedValue(spec: FactSpec, text: string): FactValue {
  switch (spec.kind) {
    case 'quantity':
      return { kind: 'quantity', text };
    case 'curve':
      return { kind: 'curve', text };
    case 'text':
      return { kind: 'text', text };
    case 'choice':
      return { kind: 'choice', option: text.trim() };
    case 'choices':
      return {
        kind: 'choices',
        options: text
          .split(',')
          .map((option) => option.trim())
          .filter((option) => option !== ''),
      };
  }
}

/**
 * What to ask a person whose number lies so far outside what is usual that it looks like a slip: nothing is recorded until
 * they say so. Undefined where there is nothing to ask.
 */
export function askBackOfFact(spec: FactSpec, read: ReadFact): string | undefined {
  return spec.kind === 'quantity' && read.kind === 'quantity'
    ? askBack(spec, read.value, read.quantity)
    : undefined;
}

/** The same of a text as typed; what cannot be read is another matter. */
export function askBackOfText(spec: FactSpec, text: string): string | undefined {
  const read = readFact(spec, typedValue(spec, text));
  return read.ok ? askBackOfFact(spec, read.value) : undefined;
}

/** Why a readable number still looks odd, as a question to the person; undefined when it is usual. */
export function oddity(spec: FactSpec, read: ReadFact): string | undefined {
  if (spec.kind !== 'quantity' || read.kind !== 'quantity') return undefined;
  return askOutside(spec.name, read.value, spec.plausible, spec.unit);
}

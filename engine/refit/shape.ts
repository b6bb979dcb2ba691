/** Holds a value against a schema and says the first difference: where it is and what would be right. */
import type { z } from 'zod';
import { ok, type Result, refuse } from '../quantity/types.ts';

type Path = readonly PropertyKey[];

/** `['chains', 0, 'places']` as 'chains[0].places'. */
export function pathText(path: Path): string {
  return path.reduce<string>(
    (text, step) =>
      typeof step === 'number'
        ? `${text}[${step}]`
        : `${text}${text === '' ? '' : '.'}${shorten(String(step))}`,
    '',
  );
}

/** The value if it has the shape, else a refusal; `within` names the file or line it stands in. */
export function checkShape<T>(schema: z.ZodType<T>, value: unknown, within = ''): Result<T> {
  const parsed = schema.safeParse(value, { reportInput: false });
  if (parsed.success) return ok(parsed.data);
  const issue = parsed.error.issues[0]!;
  const extra = issue.code === 'unrecognized_keys' ? [issue.keys[0]!] : [];
  const where = pathText([...issue.path, ...extra]);
  const subject = where === '' ? 'the whole' : where;
  const message = `${within}${within === '' ? '' : ': '}${subject} ${words(issue, valueAt(value, issue.path))}.`;
  return refuse({ code: 'malformed', message, where });
}

function words(issue: z.core.$ZodIssue, found: unknown): string {
  switch (issue.code) {
    case 'unrecognized_keys':
      return 'is not known here; take it out';
    case 'invalid_type':
      return found === undefined
        ? `is missing; it must be ${typeWords(issue.expected)}`
        : `must be ${typeWords(issue.expected)}, not ${kindOf(found)}`;
    case 'invalid_value':
      return `${found === undefined ? 'is missing; it ' : ''}must be ${oneOf(issue.values)}${given(found)}`;
    case 'invalid_union':
      return `${found === undefined ? 'is missing; it ' : ''}must be ${oneOf('options' in issue ? (issue.options as unknown[]) : [])}${given(found)}`;
    case 'too_big':
      return `must be at most ${issue.maximum}${sizeWords(issue.origin)}`;
    case 'too_small':
      return issue.origin === 'string'
        ? 'must not be empty'
        : `must be at least ${issue.minimum}${sizeWords(issue.origin)}`;
    case 'invalid_key':
      return `has a name that ${issue.issues[0]?.message ?? 'is not allowed'}`;
    case 'invalid_format':
    case 'custom':
      return `${issue.message}${given(found)}`;
    default:
      return 'is not right';
  }
}

function valueAt(value: unknown, path: Path): unknown {
  let at = value;
  for (const step of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[step];
  }
  return at;
}

const TYPES: Readonly<Record<string, string>> = {
  string: 'text in quotation marks',
  array: 'a list in [ ]',
  object: 'an object in { }',
  record: 'an object in { }',
  number: 'a number',
  int: 'a whole number',
  null: 'null',
};
const typeWords = (expected: string): string => TYPES[expected] ?? expected;
const sizeWords = (origin: string): string =>
  origin === 'string' ? ' characters long' : origin === 'array' ? ' long' : '';

function kindOf(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? 'an object' : typeof value === 'string' ? 'text' : `a ${typeof value}`;
}

function oneOf(values: readonly unknown[]): string {
  const names = values.map(String);
  return names.length === 1 ? names[0]! : `one of ${names.join(', ')}`;
}

const given = (value: unknown): string =>
  typeof value === 'string' && value !== '' ? ` (it is '${shorten(value)}')` : '';

/** Enough of a text to recognise it by, without characters that could disturb a terminal. */
export function shorten(text: string): string {
  const plain = text.slice(0, 61).replace(/[\p{Cc}\p{Surrogate}]/gu, '?');
  return plain.length > 60 ? `${plain.slice(0, 60)}…` : plain;
}

/** What was typed into the settings of an auxiliary, read. */
import { parseQuantity } from '../../quantity/index.ts';
import { ok, type Problem, type Result, refuse } from '../../quantity/types.ts';
import { nearest } from '../../refit/nearest.ts';

interface Asked {
  readonly name: string;
  /** Taken, and shown as such, where nothing is typed. */
  readonly usual: string;
  /** What it is or how to find it out, where the name does not say it. */
  readonly help?: string;
}

export type SettingSpec =
  | (Asked & { readonly kind: 'choice'; readonly options: Readonly<Record<string, string>> })
  | (Asked & { readonly kind: 'count'; readonly least: number; readonly most: number })
  /** Seconds inside. */
  | (Asked & { readonly kind: 'time' })
  /** A time-out: seconds, or 'none'. */
  | (Asked & { readonly kind: 'limit' })
  | (Asked & { readonly kind: 'text'; readonly like: string });

export type Specs = Readonly<Record<string, SettingSpec>>;

/** Settings of one kind, read: choices and texts as text, counts and times as numbers, no time-out as null. */
export interface Read {
  readonly choice: (id: string) => string;
  readonly yes: (id: string) => boolean;
  readonly number: (id: string) => number;
  readonly limit: (id: string) => number | null;
}

const LONGEST = 3600;

type Value = string | number | null;

const wrong = (message: string): Problem => ({ code: 'out-of-domain', message });

function readOne(spec: SettingSpec, text: string): Result<Value> {
  const word = text.trim();
  switch (spec.kind) {
    case 'choice': {
      const options = Object.entries(spec.options);
      const found = options.find(
        ([id, name]) => id.toLowerCase() === word.toLowerCase() || name.toLowerCase() === word.toLowerCase(),
      );
      return found
        ? ok(found[0])
        : refuse(
            wrong(
              `“${word.slice(0, 40)}” is none of its answers; write ${options.map(([id]) => id).join(', ')}.`,
            ),
          );
    }
    case 'count': {
      const number = /^\d{1,4}$/.test(word) ? Number(word) : Number.NaN;
      return number >= spec.least && number <= spec.most
        ? ok(number)
        : refuse(wrong(`Write a whole number from ${spec.least} to ${spec.most} for ${spec.name}.`));
    }
    case 'limit':
      if (['none', 'no', 'never'].includes(word.toLowerCase())) return ok(null);
      return readTime(word, `Write a time from 0.01 s to ${LONGEST} s, or none, for ${spec.name}.`, 0.01);
    case 'time':
      return readTime(word, `Write a time from 0 to ${LONGEST} s for ${spec.name}.`, 0);
    case 'text':
      return ok(word);
  }
}

function readTime(word: string, says: string, least: number): Result<number> {
  const read = parseQuantity(word, 's');
  if (!read.ok) return refuse({ ...read.problem, message: `${read.problem.message} ${says}` });
  const { value } = read.value;
  return value >= least && value <= LONGEST ? ok(value) : refuse(wrong(says));
}

/** One setting as typed; empty takes what is usual. */
export function readSetting(specs: Specs, id: string, text: string): Result<Value> {
  const spec = Object.hasOwn(specs, id) ? specs[id] : undefined;
  if (!spec) {
    const names = Object.keys(specs);
    const near = nearest(id.slice(0, 60), names);
    return refuse({
      code: 'unknown-name',
      message: `There is no setting “${id.slice(0, 60)}” here. ${near ? `Did you mean “${near}”? ` : ''}There are: ${names.join(', ')}.`,
      where: id.slice(0, 60),
    });
  }
  const read = readOne(spec, text.trim() === '' ? spec.usual : text);
  return read.ok ? read : refuse({ ...read.problem, where: id });
}

/** All settings; the first that cannot be read is refused with its name. */
export function readSettings(specs: Specs, typed: Readonly<Record<string, string>>): Result<Read> {
  const values = new Map<string, Value>();
  for (const id of new Set([...Object.keys(specs), ...Object.keys(typed)])) {
    const read = readSetting(specs, id, Object.hasOwn(typed, id) ? typed[id]! : '');
    if (!read.ok) return read;
    values.set(id, read.value);
  }
  return ok({
    choice: (id) => String(values.get(id) ?? ''),
    yes: (id) => values.get(id) === 'yes',
    number: (id) => Number(values.get(id)),
    limit: (id) => values.get(id) as number | null,
  });
}

export const yesNo = (name: string, usual: 'yes' | 'no', help?: string): SettingSpec => ({
  kind: 'choice',
  name,
  usual,
  options: { yes: 'yes', no: 'no' },
  ...(help === undefined ? {} : { help }),
});
export const choice = (
  name: string,
  options: Readonly<Record<string, string>>,
  help?: string,
): SettingSpec => ({
  kind: 'choice',
  name,
  usual: Object.keys(options)[0]!,
  options,
  ...(help === undefined ? {} : { help }),
});
export const limit = (name: string, usual: string): SettingSpec => ({
  kind: 'limit',
  name: `time-out of ${name}`,
  usual,
  help: 'After this it gives up and says so. Write none where it waits as long as it takes.',
});
export const time = (name: string, usual: string): SettingSpec => ({ kind: 'time', name, usual });

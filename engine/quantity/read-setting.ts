/** What was typed into settings, read against what each holds; a refusal names the setting and says what would be right. */

import { askBack } from './ask-back.ts';
import { formatQuantity } from './format.ts';
import { nearest } from './nearest.ts';
import { own } from './own.ts';
import { parseQuantity } from './quantity.ts';
import {
  type ChoiceSetting,
  type CountSetting,
  type QuantitySetting,
  type Setting,
  type SettingSpec,
  type SettingSpecs,
  type Settings,
  wordsOf,
} from './settings.ts';
import { ok, type Problem, type Result, refuse } from './types.ts';
import { capital } from './words.ts';

/** The largest number any setting may have, SI: beyond it is a slip of the finger. */
const LARGEST = 1e9;
const LONGEST_TEXT = 200;
/** Of what was typed, a message shows no more characters than this. */
const SHOWN = 40;

const wrong = ({ name }: SettingSpec, message: string): Result<never> =>
  refuse({ code: 'out-of-domain', message: `${capital(name)}: ${message}` });

/** One setting as typed; nothing typed is undefined, of a text ''. */
export function readSetting(spec: SettingSpec, typed: string): Result<Setting> {
  const word = typed.trim();
  if (word === '') return ok(spec.kind === 'text' ? '' : undefined);
  switch (spec.kind) {
    case 'choice':
      return readChoice(spec, word);
    case 'count':
      return readCount(spec, word);
    case 'quantity':
      return readQuantity(spec, word);
    case 'text': {
      const most = spec.most ?? LONGEST_TEXT;
      return typed.length <= most ? ok(word) : wrong(spec, `write at most ${most} characters.`);
    }
  }
}

function readChoice(spec: ChoiceSetting, word: string): Result<string> {
  const wanted = word.toLowerCase();
  const found = spec.options.find(
    (each) => each.toLowerCase() === wanted || wordsOf(spec, each).toLowerCase() === wanted,
  );
  return found === undefined
    ? wrong(
        spec,
        `“${word.slice(0, SHOWN)}” is none of its answers; write one of: ${spec.options.join('; ')}.`,
      )
    : ok(found);
}

function readCount(spec: CountSetting, word: string): Result<number> {
  const number = /^\d{1,4}$/.test(word) ? Number(word) : Number.NaN;
  return number >= spec.least && number <= spec.most
    ? ok(number)
    : wrong(spec, `write a whole number from ${spec.least} to ${spec.most}.`);
}

function readQuantity(spec: QuantitySetting, word: string): Result<number | string> {
  if (spec.instead?.includes(word.toLowerCase())) return ok(spec.instead[0]);
  const orWord = spec.instead === undefined ? '' : `, or ${spec.instead[0]}`;
  const read = parseQuantity(word, spec.unit);
  if (!read.ok)
    return refuse({
      ...read.problem,
      message: `${capital(spec.name)}: ${read.problem.message}${orWord === '' ? '' : ` Or write ${spec.instead![0]}.`}`,
    });
  const { value } = read.value;
  const { least, most } = spec;
  const isLow = value < least || (spec.above === true && value <= least);
  if (most !== undefined && (isLow || value > most))
    return wrong(
      spec,
      `it must be ${spec.above ? 'above' : 'from'} ${sayIn(spec, least)} ${spec.above ? 'and at most' : 'to'} ${sayIn(spec, most)}${orWord}.`,
    );
  if (isLow) return wrong(spec, `it must ${sayLeast(spec)}${orWord}, such as ${exampleOf(spec)}.`);
  return Math.abs(value) <= LARGEST
    ? ok(value)
    : wrong(spec, 'this is larger than anything in a machine; check the unit.');
}

const sayIn = ({ unit }: QuantitySetting, value: number): string =>
  formatQuantity(value, unit, { digits: 4 });

const sayLeast = (spec: QuantitySetting): string =>
  spec.above === true && spec.least === 0
    ? 'be above zero'
    : spec.least === 0
      ? 'not be below zero'
      : `${spec.above === true ? 'be above' : 'not be below'} ${sayIn(spec, spec.least)}`;

const exampleOf = ({ usual, unit }: QuantitySetting): string =>
  usual !== '' ? usual : unit === '1' ? '5' : `5 ${unit}`;

/** What to ask a person who typed a quantity far outside what is usual; undefined where there is nothing to ask. */
export function askBackOfSetting(spec: SettingSpec, typed: string): string | undefined {
  const value = readSetting(spec, typed);
  // What is refused is not asked.
  if (spec.kind !== 'quantity' || !value.ok || typeof value.value !== 'number') return undefined;
  const read = parseQuantity(typed.trim(), spec.unit);
  return read.ok
    ? askBack({ ...spec, mayBeNought: spec.above !== true }, read.value.value, read.value)
    : undefined;
}

/** What is usual of each setting, read once: most settings of most things are never typed. */
const usualRead = new WeakMap<SettingSpec, Result<Setting>>();

function readUsual(spec: SettingSpec): Result<Setting> {
  let read = usualRead.get(spec);
  if (!read) {
    read = readSetting(spec, spec.usual);
    usualRead.set(spec, read);
  }
  return read;
}

/** What is said of a setting that is not there; `where` is its name. */
export function noSuchSetting(specs: SettingSpecs, typed: string): Problem {
  const names = Object.keys(specs);
  const name = typed.slice(0, 60);
  const near = nearest(name, names);
  return {
    code: 'unknown-name',
    message: `There is no setting “${name}” here. ${near ? `Did you mean “${near}”? ` : ''}There are: ${names.join(', ') || 'none'}.`,
    where: name,
  };
}

/** One setting of several, by its name as typed. */
export function readNamed(specs: SettingSpecs, name: string, typed: string): Result<Setting> {
  const spec = own(specs, name);
  if (!spec) return refuse(noSuchSetting(specs, name));
  const read = readSetting(spec, typed);
  return read.ok ? read : refuse({ ...read.problem, where: name });
}

export interface ReadSettings {
  /** Of every setting; undefined where it is not known or cannot be read. */
  readonly values: Settings;
  /** `where`: the setting. */
  readonly problems: readonly Problem[];
}

/**
 * All settings of one thing. Where nothing is typed, `known` counts (what follows from elsewhere, as it would be typed), else
 * what is usual.
 */
export function readSettings(
  specs: SettingSpecs,
  typed: Readonly<Record<string, string>>,
  known: Readonly<Record<string, string | undefined>> = {},
): ReadSettings {
  const problems: Problem[] = [];
  for (const name of Object.keys(typed))
    if (!Object.hasOwn(specs, name)) problems.push(noSuchSetting(specs, name));
  const values: Record<string, Setting> = {};
  for (const [name, spec] of Object.entries(specs)) {
    const written = own(typed, name) ?? '';
    const given = written.trim() === '' ? known[name] : written;
    const read = given === undefined ? readUsual(spec) : readSetting(spec, given);
    values[name] = read.ok ? read.value : undefined;
    if (!read.ok) problems.push({ ...read.problem, where: name });
  }
  return { values, problems };
}

/** A value said back in the unit it is asked in, or in the words of its answer; '' where it is not known. */
export function saySetting(spec: SettingSpec, value: Setting): string {
  if (value === undefined) return '';
  if (spec.kind === 'choice') return wordsOf(spec, String(value));
  return spec.kind === 'quantity' && typeof value === 'number'
    ? formatQuantity(value, spec.unit, { digits: 3 })
    : String(value);
}

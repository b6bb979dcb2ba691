/** What was typed into the settings of a device, terminal, wire or cable, read against what each setting holds. */
import { parseQuantity } from '../../quantity/index.ts';
import { ok, type Problem, type Result, refuse } from '../../quantity/types.ts';
import { nearest } from '../../refit/nearest.ts';
import type { WiringProblem } from './types.ts';

export type SettingSpec =
  | {
      readonly kind: 'quantity';
      readonly name: string;
      readonly unit: string;
      /** What is taken where nothing is typed; '' where it is then not known. */
      readonly usual: string;
      /** Least value, SI; below zero only where said. */
      readonly least: number;
      readonly above?: boolean;
    }
  | {
      readonly kind: 'count';
      readonly name: string;
      readonly usual: string;
      readonly least: number;
      readonly most: number;
    }
  | {
      readonly kind: 'choice';
      readonly name: string;
      readonly usual: string;
      readonly options: readonly string[];
    }
  | { readonly kind: 'text'; readonly name: string; readonly usual: string };

export type SettingSpecs = Readonly<Record<string, SettingSpec>>;
export type Setting = number | string | undefined;
export type Settings = Readonly<Record<string, Setting>>;

/** The largest number any setting may have, SI: beyond it is a slip of the finger. */
const LARGEST = 1e9;
const LONGEST_TEXT = 200;

/** A quantity above zero. */
export const amount = (name: string, unit: string, usual = ''): SettingSpec => ({
  kind: 'quantity',
  name,
  unit,
  usual,
  least: 0,
  above: true,
});
/** A quantity that may be zero, or, with `least`, less. */
export const level = (name: string, unit: string, usual = '', least = 0): SettingSpec => ({
  kind: 'quantity',
  name,
  unit,
  usual,
  least,
});
export const count = (name: string, usual: string, most: number, least = 0): SettingSpec => ({
  kind: 'count',
  name,
  usual,
  least,
  most,
});
/** One of some words; without `usual` it is not known until somebody says. */
export const choice = (name: string, options: readonly string[], usual = ''): SettingSpec => ({
  kind: 'choice',
  name,
  usual,
  options,
});
export const text = (name: string, usual = ''): SettingSpec => ({ kind: 'text', name, usual });

export function readSetting(spec: SettingSpec, typed: string): Result<Setting> {
  if (typed.trim() === '') return ok(spec.kind === 'text' ? '' : undefined);
  switch (spec.kind) {
    case 'choice': {
      const found = spec.options.find((each) => each.toLowerCase() === typed.trim().toLowerCase());
      return found === undefined
        ? refuse(wrong(`“${typed.slice(0, 40)}” is none of: ${spec.options.join('; ')}.`))
        : ok(found);
    }
    case 'count': {
      const number = /^\s*\d{1,4}\s*$/.test(typed) ? Number(typed) : Number.NaN;
      return number >= spec.least && number <= spec.most
        ? ok(number)
        : refuse(wrong(`The ${spec.name}: write a whole number from ${spec.least} to ${spec.most}.`));
    }
    case 'text':
      return typed.length <= LONGEST_TEXT
        ? ok(typed.trim())
        : refuse(wrong(`The ${spec.name}: at most ${LONGEST_TEXT} characters.`));
    case 'quantity': {
      const read = parseQuantity(typed, spec.unit);
      if (!read.ok) return read;
      const { value } = read.value;
      if (value < spec.least || (spec.above === true && value <= spec.least))
        return refuse(wrong(`The ${spec.name} must ${say(spec)}.`));
      return Math.abs(value) <= LARGEST
        ? ok(value)
        : refuse(wrong(`The ${spec.name} is larger than anything in a machine; check the unit.`));
    }
  }
}

const say = ({ least, above }: { readonly least: number; readonly above?: boolean }): string =>
  above === true ? 'be above zero' : least === 0 ? 'not be below zero' : `not be below ${least}`;

/** What is usual of each setting, read once: most settings of most devices are never typed. */
const usualRead = new WeakMap<SettingSpec, Result<Setting>>();

function readUsual(spec: SettingSpec): Result<Setting> {
  let read = usualRead.get(spec);
  if (!read) {
    read = readSetting(spec, spec.usual);
    usualRead.set(spec, read);
  }
  return read;
}

/**
 * All settings of one thing. What cannot be read is reported with its place and is then not known; the rest is kept.
 */
export function readSettings(
  specs: SettingSpecs,
  typed: Readonly<Record<string, string>>,
  where: string,
  problems: WiringProblem[],
  usual: Readonly<Record<string, string | undefined>> = {},
): Settings {
  for (const name of Object.keys(typed)) {
    if (Object.hasOwn(specs, name)) continue;
    const near = nearest(name, Object.keys(specs));
    problems.push({
      code: 'unknown-name',
      message: `There is no setting “${name.slice(0, 40)}” here; ${near ? `did you mean “${near}”?` : `there are: ${Object.keys(specs).join(', ') || 'none'}.`}`,
      where: `${where}.${name}`,
    });
  }
  const read: Record<string, Setting> = {};
  for (const [name, spec] of Object.entries(specs)) {
    const own = Object.hasOwn(typed, name) ? typed[name]! : '';
    const typedOrKnown = own.trim() === '' ? usual[name] : own;
    const value = typedOrKnown === undefined ? readUsual(spec) : readSetting(spec, typedOrKnown);
    if (value.ok) read[name] = value.value;
    else {
      problems.push({ ...value.problem, where: `${where}.${name}` });
      // A count that cannot be read must not take terminals away that wires go to.
      read[name] = spec.kind === 'count' && spec.usual !== '' ? Number(spec.usual) : undefined;
    }
  }
  return read;
}

const wrong = (message: string): Problem => ({ code: 'out-of-domain', message });

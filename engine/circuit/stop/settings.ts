/** What was typed into the settings of an element, motion or circuit, read. */
import { parseQuantity } from '../../quantity/index.ts';
import { ok, type Problem, type Result, refuse } from '../../quantity/types.ts';
import type { SettingSpec } from './kinds.ts';

/** Numbers in SI, choices as the position in their list; undefined where nothing was typed and nothing is usual. */
export type Read = Readonly<Record<string, number | undefined>>;

/** The longest time a delay may have, in seconds. */
const LONGEST = 600;
const LONGEST_NAME = 40;

export function readSetting(spec: SettingSpec, text: string): Result<number | undefined> {
  if (text.trim() === '') return ok(undefined);
  switch (spec.kind) {
    case 'name':
      return text.length <= LONGEST_NAME
        ? ok(undefined)
        : refuse(wrong(`A name has at most ${LONGEST_NAME} signs.`));
    case 'choice': {
      const at = spec.options.findIndex((each) => each.toLowerCase() === text.trim().toLowerCase());
      return at >= 0
        ? ok(at)
        : refuse(wrong(`“${text.slice(0, 40)}” is none of: ${spec.options.join('; ')}.`));
    }
    case 'count': {
      const number = /^\s*\d{1,3}\s*$/.test(text) ? Number(text) : Number.NaN;
      return number >= spec.least && number <= spec.most
        ? ok(number)
        : refuse(wrong(`Write a whole number from ${spec.least} to ${spec.most}.`));
    }
    case 'time': {
      const read = parseQuantity(text, 's');
      if (!read.ok) return read;
      return read.value.value >= 0 && read.value.value <= LONGEST
        ? ok(read.value.value)
        : refuse(wrong(`A time here is from 0 to ${LONGEST} s.`));
    }
    case 'number': {
      const read = parseQuantity(text, spec.unit);
      if (!read.ok) return read;
      return read.value.value > 0 ? ok(read.value.value) : refuse(wrong('It must be above zero.'));
    }
  }
}

/** All settings of one thing; a name that it has not, or a text that cannot be read, is refused with its place. */
export function readSettings(
  specs: Readonly<Record<string, SettingSpec>>,
  typed: Readonly<Record<string, string>>,
  where: string,
): Result<Read> {
  for (const name of Object.keys(typed))
    if (!Object.hasOwn(specs, name))
      return refuse({
        code: 'unknown-name',
        message: `There is no setting “${name}” here; there are: ${Object.keys(specs).join(', ') || 'none'}.`,
        where: `${where}.${name}`,
      });
  const read: Record<string, number | undefined> = {};
  for (const [name, spec] of Object.entries(specs)) {
    const own = Object.hasOwn(typed, name) ? typed[name]! : '';
    const value = readSetting(spec, own.trim() === '' ? spec.usual : own);
    if (!value.ok) return refuse({ ...value.problem, where: `${where}.${name}` });
    read[name] = value.value;
  }
  return ok(read);
}

const wrong = (message: string): Problem => ({ code: 'out-of-domain', message });

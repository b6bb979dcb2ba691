/** Settings of an auxiliary, and what is read of them as its machine wants it. */
import { readSettings as readAll } from '../../quantity/read-setting.ts';
import {
  type ChoiceSetting,
  choice,
  level,
  type QuantitySetting,
  type SettingSpecs,
} from '../../quantity/settings.ts';
import { ok, type Result, refuse } from '../../quantity/types.ts';

/** Settings of one kind, read: no time-out is null. */
export interface Read {
  readonly choice: (id: string) => string;
  readonly yes: (id: string) => boolean;
  readonly number: (id: string) => number;
  readonly limit: (id: string) => number | null;
}

/** The longest time a step may have, in seconds. */
const LONGEST = 3600;

/** All settings; the first that cannot be read is refused with its name. */
export function readSettings(specs: SettingSpecs, typed: Readonly<Record<string, string>>): Result<Read> {
  const { values, problems } = readAll(specs, typed);
  const [first] = problems;
  if (first) return refuse(first);
  const of = new Map(Object.entries(values));
  return ok({
    choice: (id) => String(of.get(id) ?? ''),
    yes: (id) => of.get(id) === 'yes',
    number: (id) => Number(of.get(id)),
    limit: (id) => {
      const value = of.get(id);
      return typeof value === 'number' ? value : null;
    },
  });
}

export const yesNo = (name: string, usual: 'yes' | 'no', help?: string): ChoiceSetting => ({
  ...choice(name, ['yes', 'no'], usual),
  ...(help === undefined ? {} : { help }),
});

/** A time-out: seconds, or none. */
export const limit = (name: string, usual: string): QuantitySetting => ({
  ...level(`time-out of ${name}`, 's', usual, 0.01, LONGEST),
  instead: ['none', 'no', 'never'],
  help: 'After this it gives up and says so. Write none where it waits as long as it takes.',
});

export const time = (name: string, usual: string): QuantitySetting => level(name, 's', usual, 0, LONGEST);

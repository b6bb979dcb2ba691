/** What a finding waits for, in words: the settings by name, and of which wires or devices. */
import { POWER_SETTINGS } from '../power/index.ts';
import { CABLE_SETTINGS, NATURES, type SettingSpec, WIRE_SETTINGS, WIRING_KINDS } from '../wiring/index.ts';

/** Things named before the rest are only counted. */
const NAMED = 3;

/** Names of what devices and terminals are asked, by key; where several ask under one key they mean the same. */
const NAMES: ReadonlyMap<string, string> = new Map(
  [
    ...Object.values(NATURES).flatMap(({ fields }) =>
      Object.entries(fields).map(([key, [, spec]]): [string, SettingSpec] => [key, spec]),
    ),
    ...Object.values(WIRING_KINDS).flatMap(({ settings }) => Object.entries(settings)),
    ...Object.entries(CABLE_SETTINGS),
    ...Object.entries(WIRE_SETTINGS),
  ].map(([key, { name }]) => [key, name]),
);
const WHOLE: Readonly<Record<string, SettingSpec>> = POWER_SETTINGS;

/** From 'settings.country' and 'w1.length': 'country the machine stands in; length of w1'. */
export function sayNeeds(needs: readonly string[]): string {
  const things = new Map<string, string[]>();
  for (const need of needs) {
    const last = need.lastIndexOf('.');
    const [thing, key] = [need.slice(0, Math.max(0, last)), need.slice(last + 1)];
    const whole = thing === 'settings' || thing === '';
    const name = whole ? (Object.hasOwn(WHOLE, key) ? WHOLE[key]!.name : key) : (NAMES.get(key) ?? key);
    const of = things.get(name) ?? [];
    if (!whole) of.push(thing);
    things.set(name, of);
  }
  return [...things]
    .map(([name, of]) => {
      if (of.length === 0) return name;
      const more = of.length > NAMED + 1 ? of.length - NAMED : 0;
      const shown = more > 0 ? of.slice(0, NAMED) : of;
      return `${name} of ${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
    })
    .join('; ');
}

/** What a finding waits for, in words: the settings by name, and of which wires or devices. */
import { own } from '../../quantity/own.ts';
import { POWER_SETTINGS } from '../power/index.ts';
import {
  CABLE_SETTINGS,
  NATURES,
  natureSettings,
  type ReadWiring,
  type SettingSpec,
  type SettingSpecs,
  WIRE_SETTINGS,
  WIRING_KINDS,
} from '../wiring/index.ts';
import { settingBehind } from '../wiring/propose/questions.ts';

/** Things named before the rest are only counted. */
const NAMED = 3;

/** What devices, cables and wires ask under a key, where nothing tells which of them is meant: the first that asks it. */
const NAMES: ReadonlyMap<string, string> = new Map(
  [
    ...Object.values(WIRING_KINDS).flatMap(({ settings }) => Object.entries(settings)),
    ...Object.values(NATURES).flatMap(({ fields }) =>
      Object.entries(fields).map(([key, [, spec]]): [string, SettingSpec] => [key, spec]),
    ),
    ...Object.entries(CABLE_SETTINGS),
    ...Object.entries(WIRE_SETTINGS),
  ]
    .map(([key, { name }]): [string, string] => [key, name])
    .reverse(),
);
const WHOLE: SettingSpecs = POWER_SETTINGS;

interface Named {
  readonly name: string;
  /** Of what; undefined of the whole. */
  readonly of?: string;
}

/**
 * From 'settings.country' and 'w1.length': 'country the machine stands in; length of w1'.
 *
 * @param read tells what is meant by a key that several kinds of thing ask: 'volts' of a mains inlet, of a supply, of a diode
 */
export function sayNeeds(needs: readonly string[], read?: ReadWiring): string {
  const things = new Map<string, Set<string>>();
  for (const need of needs) {
    const { name, of } = named(need, read);
    const all = things.get(name) ?? new Set();
    if (of !== undefined) all.add(of);
    things.set(name, all);
  }
  return [...things]
    .map(([name, all]) => {
      const of = [...all];
      if (of.length === 0) return name;
      const more = of.length > NAMED + 1 ? of.length - NAMED : 0;
      const shown = more > 0 ? of.slice(0, NAMED) : of;
      return `${name} of ${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
    })
    .join('; ');
}

function named(need: string, read: ReadWiring | undefined): Named {
  const last = need.lastIndexOf('.');
  const [thing, key] = [need.slice(0, Math.max(0, last)), need.slice(last + 1)];
  if (thing === 'settings' || thing === '') return { name: own(WHOLE, key)?.name ?? key };
  const terminal = read?.terminals.get(thing);
  const device = read?.devices.get(terminal?.device ?? thing);
  if (terminal && device) {
    // Where a setting of the device tells it, that is what is asked of people.
    const setting = settingBehind(device, terminal, key);
    const spec = setting === undefined ? undefined : own(settingsOf(device.kind), setting);
    if (spec) return { name: spec.name, of: device.id };
    const field = own(natureSettings(terminal.nature.kind), key);
    if (field) return { name: field.name, of: thing };
  }
  const spec =
    (device && own(settingsOf(device.kind), key)) ??
    (read?.cables.has(thing) ? own(CABLE_SETTINGS, key) : undefined) ??
    (read?.wires.has(thing) ? own(WIRE_SETTINGS, key) : undefined);
  return { name: spec?.name ?? NAMES.get(key) ?? key, of: thing };
}

const settingsOf = (kind: string): SettingSpecs => own(WIRING_KINDS, kind)?.settings ?? {};

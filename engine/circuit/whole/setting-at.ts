/** One setting of the wiring by its name: 'K1.suppressor', 'W2.length', 'A1.out2.high', 'wiring.homes'. */
import { nearest } from '../../quantity/nearest.ts';
import { own } from '../../quantity/own.ts';
import { ok, type Result, refuse } from '../../quantity/types.ts';
import type { Wiring } from '../../refit/types.ts';
import { POWER_SETTINGS } from '../power/index.ts';
import {
  type AnswerPlace,
  CABLE_SETTINGS,
  NATURES,
  natureSettings,
  PROPOSAL_SETTINGS,
  type ReadWiring,
  type SettingSpec,
  type SettingSpecs,
  WIRE_SETTINGS,
  WIRING_KINDS,
} from '../wiring/index.ts';
import { choice } from '../wiring/setting.ts';

/** Everything that is asked of the wiring as a whole. */
const WHOLE: SettingSpecs = { ...POWER_SETTINGS, ...PROPOSAL_SETTINGS };

/** What a terminal is, beside the fields of what it is. */
export const NATURE: SettingSpec = {
  ...choice('what it is', Object.keys(NATURES)),
  words: Object.fromEntries(Object.entries(NATURES).map(([kind, { name }]) => [kind, name])),
};

/** The settings of a terminal of this nature, with the nature itself first. */
export const terminalSettings = (kind: string): SettingSpecs => ({ kind: NATURE, ...natureSettings(kind) });

/** As it is typed on the command line; the id of a question is the same. */
export function sayPlace(place: AnswerPlace): string {
  switch (place.of) {
    case 'wiring':
      return `wiring.${place.setting}`;
    case 'terminal':
      return `${place.id}.${place.mark}.${place.setting}`;
    default:
      return `${place.id}.${place.setting}`;
  }
}

/** What a place asks; undefined where there is no such thing or no such setting. */
export function specAt(place: AnswerPlace, wiring: Wiring): SettingSpec | undefined {
  switch (place.of) {
    case 'wiring':
      return own(WHOLE, place.setting);
    case 'cable':
      return own(wiring.cables, place.id) && own(CABLE_SETTINGS, place.setting);
    case 'wire':
      return own(wiring.wires, place.id) && own(WIRE_SETTINGS, place.setting);
    case 'device': {
      const device = own(wiring.devices, place.id);
      return device && own(own(WIRING_KINDS, device.kind)?.settings ?? {}, place.setting);
    }
    case 'terminal':
      return own(wiring.devices, place.id) && own(terminalSettings(place.kind), place.setting);
  }
}

/** Finds what a name means. Where a device, a cable and a wire bear one name, the first that is asked so is meant. */
export function settingAt(name: string, wiring: Wiring, read: ReadWiring): Result<AnswerPlace> {
  const last = name.lastIndexOf('.');
  const [thing, setting] = [name.slice(0, Math.max(0, last)).trim(), name.slice(last + 1).trim()];
  if (thing === 'wiring')
    return Object.hasOwn(WHOLE, setting)
      ? ok({ of: 'wiring', setting })
      : noSetting('the wiring', setting, WHOLE);
  const terminal = read.terminals.get(thing);
  if (terminal) {
    const { kind } = terminal.nature;
    const specs = terminalSettings(kind);
    return Object.hasOwn(specs, setting)
      ? ok({ of: 'terminal', id: terminal.device, mark: terminal.mark, kind, setting })
      : noSetting(`${thing} (${NATURES[kind]!.name})`, setting, specs);
  }
  const asked: (readonly [AnswerPlace, SettingSpecs])[] = [];
  const device = own(wiring.devices, thing);
  if (device)
    asked.push([{ of: 'device', id: thing, setting }, own(WIRING_KINDS, device.kind)?.settings ?? {}]);
  if (own(wiring.cables, thing)) asked.push([{ of: 'cable', id: thing, setting }, CABLE_SETTINGS]);
  if (own(wiring.wires, thing)) asked.push([{ of: 'wire', id: thing, setting }, WIRE_SETTINGS]);
  const found = asked.find(([, specs]) => Object.hasOwn(specs, setting));
  if (found) return ok(found[0]);
  const [first] = asked;
  if (first) return noSetting(thing, setting, first[1]);
  const shown = thing.slice(0, 60);
  const near = nearest(shown, [
    ...Object.keys(wiring.devices),
    ...Object.keys(wiring.cables),
    ...Object.keys(wiring.wires),
    ...read.terminals.keys(),
  ]);
  return refuse({
    code: 'unknown-name',
    message: `There is no device, terminal, cable or wire “${shown}”. ${near ? `Did you mean ${near}? ` : ''}Write a setting like K1.coil-volts, or wiring.homes for the whole.`,
  });
}

function noSetting(of: string, typed: string, specs: SettingSpecs): Result<never> {
  const names = Object.keys(specs);
  const shown = typed.slice(0, 60);
  const near = nearest(shown, names);
  return refuse({
    code: 'unknown-name',
    message: `${of} has no setting “${shown}”. ${near ? `Did you mean ${near}? ` : ''}There are: ${names.join(', ') || 'none'}.`,
  });
}

/** What one terminal is, field by field: what is taken to be so, and where each comes from. */
import { own } from '../../quantity/own.ts';
import { saySetting } from '../../quantity/read-setting.ts';
import type { Refit, WiringDevice } from '../../refit/types.ts';
import { isUsual } from '../../refit/usual.ts';
import { sayNature } from '../lists/words.ts';
import { type Nature, type SettingSpec, type Terminal, WIRING_KINDS } from '../wiring/index.ts';
import { fieldOf } from '../wiring/natures.ts';
import { NO_FACTS, partFacts } from '../wiring/part-facts.ts';
import { readDevice } from '../wiring/read-device.ts';
import { terminalSettings } from './setting-at.ts';

export interface FieldLine {
  /** As in the settings of a terminal: 'high', 'kind', 'group'. */
  readonly setting: string;
  readonly spec: SettingSpec;
  /** What was typed; '' where nothing was. */
  readonly typed: string;
  /** What holds, in words: '24 V'; '' where it is not known. */
  readonly value: string;
  /** Where it comes from: 'said of this terminal', 'follows from “output level” of A1: 24v'. '' where it is not known. */
  readonly from: string;
}

export interface TerminalSheet {
  readonly id: string;
  readonly name: string;
  readonly nature: Nature;
  /** 'output that gives plus (PNP)' */
  readonly words: string;
  /** What it is, then what is known of that. */
  readonly fields: readonly FieldLine[];
  /** How it belongs to its device: what it is measured against, its other end, its group. */
  readonly bonds: readonly FieldLine[];
  /** Something was said of it, and can be taken back. */
  readonly isStated: boolean;
  /** Its kind of device has no such terminal: it was added. */
  readonly isAdded: boolean;
}

const BONDS = ['common', 'other-end', 'group', 'signal', 'holds'];

/** Undefined where there is no such device or terminal. */
export function terminalSheet(refit: Refit, device: string, mark: string): TerminalSheet | undefined {
  const typed = own(refit.wiring.devices, device);
  const terminal = typed && readDevice(typed, refit).terminals.find((each) => each.mark === mark);
  if (!typed || !terminal) return undefined;
  const stated = own(typed.terminals, mark);
  const usual = readDevice({ ...typed, terminals: {} }, refit).terminals.find((each) => each.mark === mark);
  const origin = originsOf(refit, typed, mark);
  const line = (setting: string, spec: SettingSpec): FieldLine => {
    const said = stated?.settings[setting] ?? '';
    const value = saySetting(spec, fieldOrBond(terminal, setting));
    const isSaid =
      setting === 'kind' ? stated !== undefined && stated.kind !== usual?.nature.kind : said !== '';
    const sameNature = usual?.nature.kind === terminal.nature.kind;
    return {
      setting,
      spec,
      typed: setting === 'kind' ? (isSaid ? stated!.kind : '') : said,
      value,
      from:
        value === ''
          ? ''
          : isSaid || !(sameNature || BONDS.includes(setting))
            ? 'said of this terminal'
            : origin(setting),
    };
  };
  const lines = Object.entries(terminalSettings(terminal.nature.kind)).map(([name, spec]) =>
    line(name, spec),
  );
  return {
    id: terminal.id,
    name: terminal.name,
    nature: terminal.nature,
    words: sayNature(terminal.nature),
    fields: lines.filter(({ setting }) => !BONDS.includes(setting)),
    bonds: lines.filter(({ setting }) => BONDS.includes(setting)),
    isStated: stated !== undefined,
    isAdded: usual === undefined,
  };
}

function fieldOrBond(terminal: Terminal, setting: string): number | string | undefined {
  const markOf = (id: string | null) => (id === null ? undefined : id.slice(id.indexOf('.') + 1));
  switch (setting) {
    case 'kind':
      return terminal.nature.kind;
    case 'common':
      return markOf(terminal.common);
    case 'other-end':
      return markOf(terminal.with);
    case 'group':
    case 'signal':
      return terminal[setting] || undefined;
    case 'holds':
      return terminal.holds;
    default:
      return fieldOf(terminal.nature, setting);
  }
}

/**
 * Where the kind of the device has a field from: each setting of the device is left out once, and what then changes follows
 * from it.
 */
function originsOf(refit: Refit, device: WiringDevice, mark: string): (setting: string) => string {
  const kind = own(WIRING_KINDS, device.kind);
  if (!kind) return () => 'not known from where';
  const part = device.part === null ? undefined : own(refit.parts, device.part);
  const facts = part ? partFacts(part) : NO_FACTS;
  const { settings } = readDevice({ ...device, terminals: {} }, refit).device;
  const fromPart = kind.fromPart?.(facts) ?? {};
  const natureWith = (changed: typeof settings, known = facts) =>
    kind.terminals(changed, known).find((each) => each.mark === mark)?.nature;
  const now = natureWith(settings);
  const without = Object.keys(kind.settings).flatMap((name) => {
    if (settings[name] === undefined) return [];
    const { [name]: _left, ...rest } = settings;
    const nature = natureWith(rest);
    return nature ? [[name, nature] as const] : [];
  });
  const partless = part ? natureWith(settings, NO_FACTS) : undefined;
  const usual = `as a ${kind.name} has it`;
  return (setting) => {
    if (!now || BONDS.includes(setting)) return usual;
    const value = fieldOf(now, setting);
    const causes = without.filter(([, nature]) => differs(now, nature, setting, value));
    if (causes.length === 0)
      return part && partless && differs(now, partless, setting, value)
        ? `follows from ${part.name || part.id}`
        : usual;
    return `follows from ${causes
      .slice(0, 2)
      .map(([name]) => {
        const spec = kind.settings[name]!;
        const isTyped = (own(device.settings, name) ?? '').trim() !== '';
        const source = isTyped
          ? isUsual(device, name)
            ? ', usual value, not looked at yet'
            : ''
          : part && fromPart[name] !== undefined
            ? `, of ${part.name || part.id}`
            : ', as is usual';
        return `“${spec.name}” of ${device.id} (${saySetting(spec, settings[name])}${source})`;
      })
      .join(' and ')}`;
  };
}

const differs = (before: Nature, after: Nature, setting: string, value: unknown): boolean =>
  setting === 'kind'
    ? before.kind !== after.kind
    : after.kind !== before.kind || fieldOf(after, setting) !== value;

/** What has to be told: from what the rules could not judge, each with the place where the answer stands. */
import { own } from '../../../quantity/own.ts';
import type { Wiring } from '../../../refit/types.ts';
import { WIRING_KINDS } from '../kinds/index.ts';
import { fieldOf, NATURES } from '../natures.ts';
import { NO_FACTS } from '../part-facts.ts';
import { CABLE_SETTINGS, WIRE_SETTINGS } from '../read-wire.ts';
import type { SettingSpec } from '../setting.ts';
import type { Device, Nature, ReadWiring, Terminal, WiringFinding } from '../types.ts';

/** Where an answer is kept. */
export type AnswerPlace =
  | { readonly of: 'device' | 'cable' | 'wire'; readonly id: string; readonly setting: string }
  | {
      readonly of: 'terminal';
      readonly id: string;
      readonly mark: string;
      readonly kind: string;
      readonly setting: string;
    }
  | { readonly of: 'wiring'; readonly setting: string };

export interface Question {
  /** 'K1.suppressor' */
  readonly id: string;
  /** A whole question, for people. */
  readonly asks: string;
  readonly place: AnswerPlace;
  /** How the answer is to be written: a unit, or the words to choose from. */
  readonly unit?: string;
  readonly options?: readonly string[];
}

export function questionsFrom(
  findings: readonly WiringFinding[],
  wiring: Wiring,
  read: ReadWiring,
): readonly Question[] {
  const asked = new Map<string, Question>();
  for (const { needs = [], verdict, rule } of findings) {
    // What is only not connected yet is no question; a coil that gets its volts may still not say its amperes.
    if ((verdict !== 'unknown' && verdict !== 'fits') || rule === 'connected') continue;
    for (const need of needs) {
      const question = questionOf(need, wiring, read);
      if (question && !asked.has(question.id)) asked.set(question.id, question);
    }
  }
  return [...asked.values()];
}

function questionOf(need: string, wiring: Wiring, read: ReadWiring): Question | undefined {
  const last = need.lastIndexOf('.');
  const [thing, setting] = [need.slice(0, last), need.slice(last + 1)];
  if (Object.hasOwn(wiring.cables, thing) && Object.hasOwn(CABLE_SETTINGS, setting)) {
    const name = wiring.cables[thing]!.name;
    return ask(thing, setting, CABLE_SETTINGS[setting]!, `Cable ${thing}${name ? ` (${name})` : ''}`, {
      of: 'cable',
      id: thing,
      setting,
    });
  }
  if (Object.hasOwn(wiring.wires, thing) && Object.hasOwn(WIRE_SETTINGS, setting)) {
    const { cable } = wiring.wires[thing]!;
    // A core has the length and section of its cable.
    if (cable !== null && Object.hasOwn(CABLE_SETTINGS, setting))
      return questionOf(`${cable}.${setting}`, wiring, read);
    return ask(thing, setting, WIRE_SETTINGS[setting]!, `Wire ${thing}`, {
      of: 'wire',
      id: thing,
      setting,
    });
  }
  const terminal = read.terminals.get(thing);
  if (!terminal) return undefined;
  const device = read.devices.get(terminal.device)!;
  const of = `${device.id}${device.name ? ` (${device.name})` : ''}`;
  const behind = settingBehind(device, terminal, setting);
  if (behind !== undefined)
    return ask(device.id, behind, WIRING_KINDS[device.kind]!.settings[behind]!, of, {
      of: 'device',
      id: device.id,
      setting: behind,
    });
  const fields = NATURES[terminal.nature.kind]?.fields ?? {};
  if (!Object.hasOwn(fields, setting)) return undefined;
  return ask(terminal.id, setting, fields[setting]![1], `${terminal.id} (${terminal.name})`, {
    of: 'terminal',
    id: device.id,
    mark: terminal.mark,
    kind: terminal.nature.kind,
    setting,
  });
}

/** Stand for answers that are not there yet; no machine has them, so that they are known again behind the terminal. */
const PROBE = 7.3125;
const OTHER = 1.5;

/**
 * The setting of a device from which a field of one of its terminals comes: found by trying each, so that an answer always
 * arrives where it was missing. Undefined where none does.
 */
export function settingBehind(device: Device, terminal: Terminal, field: string): string | undefined {
  const of = BEHIND.get(device) ?? new Map<string, string | undefined>();
  BEHIND.set(device, of);
  const key = `${terminal.mark} ${field}`;
  if (!of.has(key)) of.set(key, findBehind(device, terminal, field));
  return of.get(key);
}

/** What was found, as long as the device is read. */
const BEHIND = new WeakMap<Device, Map<string, string | undefined>>();

function findBehind(
  { kind, settings }: Device,
  { mark, nature }: Terminal,
  field: string,
): string | undefined {
  const made = WIRING_KINDS[kind];
  if (!made) return undefined;
  // A current says nothing in a rating without its voltage: the others that are missing are thought of as given.
  const given = { ...settings };
  for (const [name, spec] of Object.entries(made.settings))
    if (spec.kind === 'quantity' && given[name] === undefined) given[name] = OTHER;
  const asks = own(NATURES[nature.kind]?.fields ?? {}, field)?.[1];
  const unit = asks === undefined ? 'A' : asks.kind === 'quantity' ? asks.unit : undefined;
  const reaches = (name: string, value: number | string): boolean => {
    const draft = made.terminals({ ...given, [name]: value }, NO_FACTS).find((each) => each.mark === mark);
    return draft?.nature.kind === nature.kind && inNature(draft.nature, field) === value;
  };
  return Object.entries(made.settings).find(([name, spec]) =>
    spec.kind === 'quantity'
      ? spec.unit === unit && reaches(name, PROBE)
      : spec.kind === 'choice' &&
        asks?.kind === 'choice' &&
        // Two words, since one of them might stand there anyhow.
        spec.options.length > 1 &&
        spec.options.slice(0, 2).every((word) => reaches(name, word)),
  )?.[0];
}

/** What into coils a contact may switch is no field that a terminal can be given by hand. */
function inNature(nature: Nature, field: string) {
  if (nature.kind === 'contact' && field === 'ac-coil-amps') return nature.ac?.coilAmps;
  if (nature.kind === 'contact' && field === 'dc-coil-amps') return nature.dc?.coilAmps;
  return fieldOf(nature, field);
}

function ask(thing: string, setting: string, spec: SettingSpec, of: string, place: AnswerPlace): Question {
  return {
    id: `${thing}.${setting}`,
    asks: `${of}: ${spec.name}?`,
    place,
    ...(spec.kind === 'quantity' ? { unit: spec.unit } : {}),
    ...(spec.kind === 'choice' ? { options: spec.options } : {}),
  };
}

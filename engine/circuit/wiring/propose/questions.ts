/** What has to be told: from what the rules could not judge, each with the place where the answer stands. */
import type { Wiring } from '../../../refit/types.ts';
import { WIRING_KINDS } from '../kinds/index.ts';
import { NATURES } from '../natures.ts';
import { CABLE_SETTINGS, WIRE_SETTINGS } from '../read-wire.ts';
import type { SettingSpec } from '../setting.ts';
import type { ReadWiring, WiringFinding } from '../types.ts';

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

/** Fields of terminals by the setting of a device that gives them. */
const OF_DEVICE: Readonly<Record<string, readonly string[]>> = {
  low: ['tacho-volts', 'volts'],
  high: ['tacho-volts', 'volts'],
  volts: ['excitation-volts', 'volts', 'coil-volts', 'mains-volts', 'primary'],
  current: ['coil-current', 'input-current', 'current', 'supply-current', 'enable-current'],
  gives: ['output-current', 'switch-current'],
  swallows: ['output-current'],
  withstands: ['output-withstands'],
  termination: ['termination'],
  hertz: ['excitation-hertz', 'hertz'],
  suppressor: ['suppressor'],
  power: ['watts'],
  resistance: ['ohms'],
};

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
  const specs = WIRING_KINDS[device.kind]?.settings ?? {};
  const of = `${device.id}${device.name ? ` (${device.name})` : ''}`;
  const candidates = terminal.nature.kind === 'contact' ? [setting] : (OF_DEVICE[setting] ?? [setting]);
  const prefixed =
    terminal.nature.kind === 'contact' && terminal.nature.role === 'main'
      ? candidates.map((each) => `main-${each}`)
      : candidates;
  const own = preferred(terminal.nature.kind, terminal.mark, prefixed).find((each) =>
    Object.hasOwn(specs, each),
  );
  if (own !== undefined)
    return ask(device.id, own, specs[own]!, of, { of: 'device', id: device.id, setting: own });
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

/** Which of several settings of a device a terminal's field comes from. */
function preferred(kind: string, mark: string, names: readonly string[]): readonly string[] {
  if (kind === 'feed')
    return ['current', 'supply-current', ...names.filter((name) => name === 'volts')].filter(
      (name) => names.includes(name) || name === 'volts',
    );
  if (kind === 'supply' && !/^(plus|minus)$/.test(mark))
    return names.includes('current') ? ['encoder-current'] : ['encoder-volts'];
  if (kind === 'supply') return names.filter((name) => name === 'volts' || name === 'current');
  if (kind === 'mains') return ['mains-volts', 'volts', ...names];
  if (kind === 'input')
    return /^(EN|STO|FWD|REV)/.test(mark)
      ? ['enable-current']
      : names.filter((name) => name === 'input-current');
  if (kind === 'output' && /^(out|enable)/.test(mark))
    return names.includes('switch-current') ? ['switch-current'] : names;
  return names;
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

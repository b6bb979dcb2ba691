/** What somebody says of the wiring, one setting at a time, as the changes that record it. */
import { own } from '../../quantity/own.ts';
import { ok, type Result, refuse } from '../../quantity/types.ts';
import { capital } from '../../quantity/words.ts';
import { applyEdit } from '../../refit/edit.ts';
import type { Change, Refit, Wiring, WiringDevice } from '../../refit/types.ts';
import { withStated } from '../../refit/usual.ts';
import { type AnswerPlace, natureSettings, readSetting, type SettingSpec } from '../wiring/index.ts';
import { readDevice } from '../wiring/read-device.ts';
import { sayPlace, specAt } from './setting-at.ts';

/** Takes back what was said: nothing, or this word. */
const USUAL = 'usual';

/**
 * The changes that record `typed` at a place: one edit. 'usual', or nothing, takes back what was said there. What is only
 * `proposed` is recorded with it; a wire with the devices at its ends. Nothing is recorded that cannot be read: the refusal
 * names the setting and gives an example.
 */
export function state(
  refit: Refit,
  place: AnswerPlace,
  typed: string,
  proposed: Wiring = refit.wiring,
): Result<readonly Change[]> {
  const spec = specAt(place, proposed) ?? specAt(place, refit.wiring);
  if (!spec)
    return refuse({ code: 'unknown-name', message: `There is nothing like ${sayPlace(place)} here.` });
  const word = typed.trim();
  const text = word.toLowerCase() === USUAL ? '' : word;
  const read = readSetting(spec, text);
  if (!read.ok) return refuse({ ...read.problem, message: withExample(read.problem.message, spec) });
  // A choice is kept as it is spelt in its list, however it was typed.
  const said = text === '' ? '' : spec.kind === 'choice' ? String(read.value) : text;
  return ok(changesFor(refit, place, said, proposed));
}

/**
 * The changes that record several answers as one edit: all stand or fall together. Where one thing gets several, the later
 * ones build on the earlier.
 */
export function stateAll(
  refit: Refit,
  answers: readonly (readonly [place: AnswerPlace, typed: string])[],
  proposed: Wiring = refit.wiring,
): Result<readonly Change[]> {
  const changes: Change[] = [];
  let now = refit;
  for (const [place, typed] of answers) {
    const made = state(now, place, typed, proposed);
    if (!made.ok) return made;
    const done = applyEdit(now, { changes: [...made.value] });
    if (!done.ok) return done;
    now = done.value;
    changes.push(...made.value);
  }
  return ok(changes);
}

/** What an answer may look like. */
export function exampleOf(spec: SettingSpec): string {
  switch (spec.kind) {
    case 'choice':
      return spec.options[0] ?? '';
    case 'count':
      return spec.usual || String(Math.max(1, spec.least));
    case 'text':
      return spec.like ?? (spec.usual || 'any words');
    case 'quantity':
      if (spec.unit === 'V' && /mains|a\.c\. voltage/.test(spec.name)) return spec.usual || '230 V';
      return spec.usual || own(EXAMPLES, spec.unit) || (spec.unit === '1' ? '5' : `5 ${spec.unit}`);
  }
}

/** Sizes that are seen in machines. */
const EXAMPLES: Readonly<Record<string, string>> = {
  V: '24 V',
  A: '0.5 A',
  Ω: '120 Ω',
  W: '20 W',
  Hz: '100 kHz',
  m: '2.5 m',
  s: '20 ms',
  'mm²': '0.75 mm²',
  '%': '5 %',
  H: '50 mH',
  F: '10 µF',
};

function withExample(message: string, spec: SettingSpec): string {
  const named = message.toLowerCase().includes(spec.name.toLowerCase())
    ? message
    : `${capital(spec.name)}: ${message}`;
  const example = exampleOf(spec);
  // Some refusals give one of their own.
  return named.includes(example) || /such as|write (one of|a whole number)/.test(named)
    ? named
    : `${named} Write it like ${example}.`;
}

function changesFor(refit: Refit, place: AnswerPlace, text: string, proposed: Wiring): readonly Change[] {
  const { wiring } = refit;
  switch (place.of) {
    case 'wiring': {
      const old = own(wiring.settings, place.setting) ?? null;
      return (old ?? '') === text
        ? []
        : [{ do: 'wiring-setting', setting: place.setting, old, new: text || null }];
    }
    case 'device': {
      const device = own(wiring.devices, place.id) ?? proposed.devices[place.id]!;
      return put('device', wiring.devices, withStated(device, place.setting, text));
    }
    case 'cable': {
      const cable = own(wiring.cables, place.id) ?? proposed.cables[place.id]!;
      return put('cable', wiring.cables, withStated(cable, place.setting, text));
    }
    case 'wire': {
      const wire = own(wiring.wires, place.id) ?? proposed.wires[place.id]!;
      const ends = [wire.from, wire.to].map((each) => proposed.devices[each.slice(0, each.indexOf('.'))]);
      const cable = wire.cable === null ? undefined : own(proposed.cables, wire.cable);
      return [
        ...[...new Set(ends)].flatMap((each) => (each ? missing('device', wiring.devices, each) : [])),
        ...(cable ? missing('cable', wiring.cables, cable) : []),
        ...put('wire', wiring.wires, { ...wire, settings: withSetting(wire.settings, place.setting, text) }),
      ];
    }
    case 'terminal': {
      const device = own(wiring.devices, place.id) ?? proposed.devices[place.id]!;
      return put('device', wiring.devices, withTerminal(refit, device, place, text));
    }
  }
}

function withTerminal(
  refit: Refit,
  device: WiringDevice,
  { mark, kind, setting }: Extract<AnswerPlace, { of: 'terminal' }>,
  text: string,
): WiringDevice {
  const before = own(device.terminals, mark) ?? { kind, name: '', settings: {} };
  const usual = usualNature(refit, device, mark);
  const isNature = setting === 'kind';
  const now = isNature ? text || (usual ?? before.kind) : before.kind;
  const fields = natureSettings(now);
  // Another nature keeps only what it is asked as well.
  const settings = isNature
    ? Object.fromEntries(Object.entries(before.settings).filter(([name]) => Object.hasOwn(fields, name)))
    : withSetting(before.settings, setting, text);
  const { [mark]: _before, ...others } = device.terminals;
  const saysNothing = Object.keys(settings).length === 0 && before.name === '' && now === usual;
  return {
    ...device,
    terminals: saysNothing ? others : { ...others, [mark]: { ...before, kind: now, settings } },
  };
}

/** What a terminal is by the kind of its device; undefined where that has none of this mark. */
const usualNature = (refit: Refit, device: WiringDevice, mark: string): string | undefined =>
  readDevice({ ...device, terminals: {} }, refit).terminals.find((each) => each.mark === mark)?.nature.kind;

/**
 * A terminal as its device's kind has it: everything that was said of it is taken back. One that the kind does not have goes,
 * unless a wire ends there.
 */
export function setBack({ wiring, ...refit }: Refit, id: string, mark: string): Result<readonly Change[]> {
  const device = own(wiring.devices, id);
  const said = device && own(device.terminals, mark);
  if (!device || !said) return ok([]);
  const end = `${id}.${mark}`;
  const isOwn = usualNature({ wiring, ...refit }, device, mark) !== undefined;
  const wire = isOwn
    ? undefined
    : Object.values(wiring.wires).find(({ from, to }) => from === end || to === end);
  if (wire)
    return refuse({
      code: 'out-of-domain',
      message: `${end} was added by hand and wire ${wire.id} ends there; cut the wire first.`,
    });
  const { [mark]: _said, ...terminals } = device.terminals;
  return ok(put('device', wiring.devices, { ...device, terminals }));
}

function withSetting(
  settings: Readonly<Record<string, string>>,
  name: string,
  text: string,
): Readonly<Record<string, string>> {
  const { [name]: _old, ...rest } = settings;
  return text === '' ? rest : { ...rest, [name]: text };
}

type Put = Extract<Change, { do: 'device' | 'cable' | 'wire' }>;

/** Nothing where it is there just so. */
function put<D extends Put['do']>(
  kind: D,
  there: Readonly<Record<string, NonNullable<Extract<Put, { do: D }>['new']>>>,
  now: NonNullable<Extract<Put, { do: D }>['new']>,
): readonly Change[] {
  const old = own(there, now.id) ?? null;
  return JSON.stringify(old) === JSON.stringify(now) ? [] : [{ do: kind, id: now.id, old, new: now } as Put];
}

/** Only where it is not there at all. */
function missing<D extends Put['do']>(
  kind: D,
  there: Parameters<typeof put<D>>[1],
  now: Parameters<typeof put<D>>[2],
): readonly Change[] {
  return Object.hasOwn(there, now.id) ? [] : put(kind, there, now);
}

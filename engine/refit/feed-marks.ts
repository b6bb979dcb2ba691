/**
 * Up to version 4 of the format, terminals by which a drive is fed were called L and N whatever it was fed with. Today
 * they are called by what belongs there: DC+ and DC- on a bus, L1, L2, L3 on three phases, L and N on one. A refit with a
 * history gets the new names by an edit of its own, so that the edits before it still lead to where they led.
 */
import { own } from '../quantity/own.ts';
import { same } from './same.ts';
import type { Change, Edit, Part, Refit, Wiring, WiringDevice } from './types.ts';

type Names = Readonly<Record<string, string>>;

const DIRECT: Names = { L: 'DC+', N: 'DC-' };
const THREE: Names = { L: 'L1', N: 'L2' };
const OWN_NAMES: ReadonlySet<string> = new Set(['common', 'other-end']);

/** The first version whose files have the names of today. */
const NAMED_SINCE = 5;

export const hasOldFeedMarks = (document: unknown): boolean =>
  Number((document as { version?: unknown } | null)?.version) < NAMED_SINCE;

/**
 * The edit that gives a refit of an older version today's names; undefined where it has none of the old ones.
 * @param head number of the newest edit, 0 where there is none; @param when time of the edit.
 */
export function feedMarksEdit(refit: Refit, head: number, when: string): Edit | undefined {
  const now = withTodaysFeedMarks(refit).wiring;
  const { devices, wires } = refit.wiring;
  const changes: Change[] = [
    ...Object.values(devices).flatMap((old): Change[] => {
      const fresh = own(now.devices, old.id);
      return fresh && !same(old, fresh) ? [{ do: 'device', id: old.id, old, new: fresh }] : [];
    }),
    ...Object.values(wires).flatMap((old): Change[] => {
      const fresh = own(now.wires, old.id);
      return fresh && !same(old, fresh) ? [{ do: 'wire', id: old.id, old, new: fresh }] : [];
    }),
  ];
  if (changes.length === 0) return undefined;
  const says = 'terminals that feed drives are called by what belongs there: DC+ and DC-, or L1, L2, L3';
  return { number: head + 1, who: 'Fettle', when, basedOn: head, changes, says };
}

/** The same refit with the names of today. */
export function withTodaysFeedMarks(refit: Refit): Refit {
  const ends = new Set(Object.values(refit.wiring.wires).flatMap(({ from, to }) => [from, to]));
  const renamed = new Map<string, Names>();
  for (const device of Object.values(refit.wiring.devices)) {
    const names = namesOf(refit, device, (mark) => ends.has(`${device.id}.${mark}`));
    if (names) renamed.set(device.id, names);
  }
  if (renamed.size === 0) return refit;
  const end = (id: string): string => {
    const dot = id.indexOf('.');
    const names = renamed.get(id.slice(0, dot));
    return `${id.slice(0, dot + 1)}${(names && own(names, id.slice(dot + 1))) ?? id.slice(dot + 1)}`;
  };
  const wiring: Wiring = {
    ...refit.wiring,
    devices: mapped(refit.wiring.devices, (device) => {
      const names = renamed.get(device.id);
      return names ? renamedDevice(device, names) : device;
    }),
    wires: mapped(refit.wiring.wires, (wire) => ({ ...wire, from: end(wire.from), to: end(wire.to) })),
  };
  return { ...refit, wiring };
}

/** New names of its marks; undefined where it has none of the old ones, or the new ones are in use already. */
function namesOf(refit: Refit, device: WiringDevice, isWired: (mark: string) => boolean): Names | undefined {
  if (device.kind !== 'drive' && device.kind !== 'inverter') return undefined;
  const feed = own(device.settings, 'feed') ?? (device.kind === 'inverter' ? 'mains' : 'dc bus');
  const part = device.part === null ? undefined : own(refit.parts, device.part);
  const phases = own(device.settings, 'phases') ?? (part && phasesOf(part));
  const names = feed === 'dc bus' ? DIRECT : phases === 'three' ? THREE : undefined;
  if (!names) return undefined;
  const uses = (mark: string): boolean =>
    isWired(mark) || Object.hasOwn(device.terminals, mark) || Object.hasOwn(device.pins, mark);
  return Object.keys(names).some(uses) && !Object.values(names).some(uses) ? names : undefined;
}

function phasesOf(part: Part): string | undefined {
  const value = own(part.facts, 'inputPhases')?.value;
  return value?.kind === 'choice' ? value.option : undefined;
}

const renamedDevice = (device: WiringDevice, names: Names): WiringDevice => ({
  ...device,
  terminals: keyed(device.terminals, names, (each) => ({
    ...each,
    settings: Object.fromEntries(
      Object.entries(each.settings).map(([name, value]) => [
        name,
        OWN_NAMES.has(name) ? (own(names, value) ?? value) : value,
      ]),
    ),
  })),
  pins: keyed(device.pins, names, (each) => each),
});

const keyed = <T>(
  record: Readonly<Record<string, T>>,
  names: Names,
  of: (value: T) => T,
): Readonly<Record<string, T>> =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [own(names, key) ?? key, of(value)]));

const mapped = <T>(record: Readonly<Record<string, T>>, of: (value: T) => T): Readonly<Record<string, T>> =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, of(value)]));

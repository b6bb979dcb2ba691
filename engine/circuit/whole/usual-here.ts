/** What is recorded only because it is usual, and what is said of the wiring that hangs on it. */
import { andList } from '../../quantity/words.ts';
import type { Refit, Wiring } from '../../refit/types.ts';
import { usualNames, type WithSettings } from '../../refit/usual.ts';
import { BY_NUMBER } from './ask-groups.ts';
import { specAt } from './setting-at.ts';
import { usualAt } from './usual.ts';

/** Where it is recorded. */
export interface UsualPlace {
  readonly of: 'device' | 'cable';
  readonly id: string;
  readonly setting: string;
}

/** One fact that was taken alike of several things. */
export interface UsualHere {
  readonly id: string;
  /** 'current of the coil' */
  readonly name: string;
  /** As it is recorded. */
  readonly value: string;
  /** Why that is usual, in a sentence; '' where it is not taken like this any more. */
  readonly because: string;
  /** K2 before K10. */
  readonly places: readonly UsualPlace[];
}

/** All that is recorded as usual and that nobody has looked at, what is alike together. */
export function usualHere(refit: Refit): readonly UsualHere[] {
  const { wiring } = refit;
  const by = new Map<string, { name: string; value: string; because: string; places: UsualPlace[] }>();
  const add = (place: UsualPlace, kind: string, value: string): void => {
    const id = `${kind}: ${place.setting}: ${value}`;
    const usual = usualAt(place, wiring, refit);
    const group = by.get(id) ?? {
      name: specAt(place, wiring)?.name ?? place.setting,
      value,
      because: usual?.value === value ? usual.because : '',
      places: [],
    };
    group.places.push(place);
    by.set(id, group);
  };
  for (const device of Object.values(wiring.devices))
    for (const setting of usualNames(device))
      add({ of: 'device', id: device.id, setting }, device.kind, device.settings[setting]!);
  for (const cable of Object.values(wiring.cables))
    for (const setting of usualNames(cable))
      add({ of: 'cable', id: cable.id, setting }, 'cable', cable.settings[setting]!);
  return [...by].map(([id, { places, ...group }]) => ({
    id,
    ...group,
    places: places.sort((a, b) => BY_NUMBER.compare(a.id, b.id)),
  }));
}

/** The wiring as it would be had this not been taken. */
export function withoutUsual(wiring: Wiring, { places }: UsualHere): Wiring {
  const devices = { ...wiring.devices };
  const cables = { ...wiring.cables };
  for (const { of, id, setting } of places)
    if (of === 'device') devices[id] = without(devices[id]!, setting);
    else cables[id] = without(cables[id]!, setting);
  return { ...wiring, devices, cables };
}

function without<T extends WithSettings>(thing: T, setting: string): T {
  const { [setting]: _taken, ...settings } = thing.settings;
  return { ...thing, settings };
}

/** Things named one by one; more are only counted. */
const NAMED = 3;

/** 'the usual current of the coil, 40 mA, of K1 and K2': of those that the finding is about, else of all. */
export function sayUsualHere(
  { name, value, places }: UsualHere,
  about: readonly string[],
  { wires }: Pick<Wiring, 'wires'>,
): string {
  const touched = new Set(
    about.flatMap((each) => {
      const wire = Object.hasOwn(wires, each) ? wires[each]! : undefined;
      return wire
        ? [wire.cable ?? '', ...[wire.from, wire.to].map((end) => end.slice(0, end.indexOf('.')))]
        : [each, each.split('.')[0]!];
    }),
  );
  const near = places.filter(({ id }) => touched.has(id));
  const ids = (near.length > 0 ? near : places).map(({ id }) => id);
  const shown = ids.length > NAMED + 1 ? [...ids.slice(0, NAMED), `${ids.length - NAMED} more`] : ids;
  return `the usual ${name}, ${value}, of ${andList(shown)}`;
}

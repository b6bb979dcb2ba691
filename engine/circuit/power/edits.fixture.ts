/** Made-up edits of a wiring: wires laid and taken off, devices changed, added and taken out, settings said. */
import type { Wiring, WiringDevice } from '../../refit/types.ts';
import {
  CABLE_SETTINGS,
  readWiring,
  type SettingSpec,
  WIRE_SETTINGS,
  WIRING_KINDS,
} from '../wiring/index.ts';
import { POWER_SETTINGS } from './settings.ts';

/** The same numbers on every computer. */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

type Typed = Readonly<Record<string, string>>;

const without = <T>(record: Readonly<Record<string, T>>, id: string): Record<string, T> => {
  const { [id]: _, ...rest } = record;
  return rest;
};

export function edited(wiring: Wiring, random: () => number, at: number): Wiring {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  /** A value of a setting, now and then none, now and then nonsense. */
  const said = (spec: SettingSpec): string => {
    if (random() < 0.1) return pick(['', 'x', '-3', 'NaN']);
    if (spec.kind === 'choice') return pick(spec.options);
    if (spec.kind === 'count') return String(spec.least + Math.floor(random() * 4));
    if (spec.kind === 'text') return pick(['', '1-3', 'Germany']);
    const unit = spec.unit.startsWith('°') ? `${spec.unit}` : spec.unit;
    return `${1 + Math.floor(random() * 30)} ${unit}`;
  };
  const oneOf = (specs: Readonly<Record<string, SettingSpec>>, settings: Typed): Typed => {
    const names = Object.keys(specs);
    if (names.length === 0) return settings;
    const name = pick(names);
    return { ...settings, [name]: said(specs[name]!) };
  };
  const wires = Object.values(wiring.wires);
  const devices = Object.values(wiring.devices);
  const put = (device: WiringDevice): Wiring => ({
    ...wiring,
    devices: { ...wiring.devices, [device.id]: device },
  });
  const dice = random();
  if (dice < 0.22 || wires.length < 5 || devices.length < 3) {
    const terminals = [...readWiring(wiring).terminals.keys()];
    const id = `e${at}`;
    const end = () => (terminals.length === 0 || random() < 0.03 ? 'nowhere.1' : pick(terminals));
    const cable = random() < 0.3 ? pick([...Object.keys(wiring.cables), 'none']) : null;
    const settings = random() < 0.6 ? { length: `${1 + at} m`, section: pick(['0.5 mm²', '1.5 mm²']) } : {};
    return {
      ...wiring,
      wires: {
        ...wiring.wires,
        [id]: { id, from: end(), to: end(), cable, settings } as Wiring['wires'][string],
      },
    };
  }
  if (dice < 0.4) return { ...wiring, wires: without(wiring.wires, pick(wires).id) };
  if (dice < 0.55) {
    const old = pick(wires);
    return {
      ...wiring,
      wires: { ...wiring.wires, [old.id]: { ...old, settings: oneOf(WIRE_SETTINGS, old.settings) } },
    };
  }
  if (dice < 0.62 && Object.keys(wiring.cables).length > 0) {
    const old = pick(Object.values(wiring.cables));
    if (random() < 0.2) return { ...wiring, cables: without(wiring.cables, old.id) };
    return {
      ...wiring,
      cables: { ...wiring.cables, [old.id]: { ...old, settings: oneOf(CABLE_SETTINGS, old.settings) } },
    };
  }
  if (dice < 0.66) return { ...wiring, devices: without(wiring.devices, pick(devices).id) };
  if (dice < 0.74) {
    const kind = pick(Object.keys(WIRING_KINDS));
    const id = `D${Math.floor(random() * 40)}`;
    return put({
      id,
      kind,
      name: '',
      part: null,
      where: pick(['', 'outside']),
      settings: {},
      terminals: {},
      pins: {},
    });
  }
  if (dice < 0.8) return { ...wiring, settings: oneOf(POWER_SETTINGS, wiring.settings) };
  const old = pick(devices);
  if (random() < 0.1) return put({ ...old, where: pick(['', 'outside', 'cabinet']) });
  return put({ ...old, settings: oneOf(WIRING_KINDS[old.kind]?.settings ?? {}, old.settings) });
}

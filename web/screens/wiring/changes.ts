/** Changes of the wiring as the page makes them. */
import { WIRING_KINDS } from '../../../engine/circuit/wiring/index.ts';
import type { Change, Refit, WiringDevice, WiringWire } from '../../../engine/refit/types.ts';

const own = <T>(record: Readonly<Record<string, T>>, id: string): T | null =>
  Object.hasOwn(record, id) ? record[id]! : null;

/** The next free name with this letter: K3. */
export function freeName(taken: Readonly<Record<string, unknown>>, letter: string): string {
  let number = 1;
  while (Object.hasOwn(taken, `${letter}${number}`)) number++;
  return `${letter}${number}`;
}

export function wireBetween({ wiring }: Refit, from: string, to: string): WiringWire {
  return { id: freeName(wiring.wires, 'w'), from, to, cable: null, settings: {} };
}

export const putWire = ({ wiring }: Refit, wire: WiringWire): Change => ({
  do: 'wire',
  id: wire.id,
  old: own(wiring.wires, wire.id),
  new: wire,
});

export const cutWire = ({ wiring }: Refit, id: string): Change => ({
  do: 'wire',
  id,
  old: own(wiring.wires, id),
  new: null,
});

export const putDevice = ({ wiring }: Refit, device: WiringDevice): Change => ({
  do: 'device',
  id: device.id,
  old: own(wiring.devices, device.id),
  new: device,
});

export function newDevice({ wiring }: Refit, kind: string, where: string, name: string): WiringDevice {
  return {
    id: freeName(wiring.devices, WIRING_KINDS[kind]?.letter ?? 'E'),
    kind,
    name,
    part: null,
    where,
    settings: {},
    terminals: {},
    pins: {},
  };
}

/** A device goes with the wires that end on it. */
export function takeOut({ wiring }: Refit, id: string): readonly Change[] {
  const device = own(wiring.devices, id);
  if (!device) return [];
  const wires = Object.values(wiring.wires).filter(
    ({ from, to }) => from.startsWith(`${id}.`) || to.startsWith(`${id}.`),
  );
  return [
    ...wires.map((wire): Change => ({ do: 'wire', id: wire.id, old: wire, new: null })),
    { do: 'device', id, old: device, new: null },
  ];
}

/** With a setting put in, or taken out where the text is empty. */
export function withSetting(
  settings: Readonly<Record<string, string>>,
  name: string,
  text: string,
): Readonly<Record<string, string>> {
  const { [name]: _old, ...rest } = settings;
  return text.trim() === '' ? rest : { ...rest, [name]: text.trim() };
}

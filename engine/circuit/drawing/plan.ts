/** From the network to what is drawn of it. */
import { own } from '../../quantity/own.ts';
import type { Refit } from '../../refit/types.ts';
import { deviceOf } from '../wiring/device-of.ts';
import type { Cable, ReadWiring, Wire } from '../wiring/types.ts';
import { circuitsOf, sorter } from './circuits.ts';
import { groupsOf } from './groups.ts';
import { EARTH, railsOf } from './rails.ts';
import type { DrawnWire, Plan, TerminalGroup } from './types.ts';

export function planOf(refit: Refit, read: ReadWiring): Plan {
  const circuitOf = sorter(refit, read);
  const rails = railsOf(read);
  const isLinked = (id: string): boolean => own(refit.stop?.elements ?? {}, id)?.settings.linked === 'yes';
  const wires = [...read.wires.values()].map((wire) => {
    const net = read.netOf.get(wire.from) ?? read.netOf.get(wire.to);
    return {
      id: wire.id,
      from: wire.from,
      to: wire.to,
      label: wireLabel(wire, wire.cable === null ? undefined : read.cables.get(wire.cable)),
      rail: isEarth(wire, read) ? EARTH : ((net && rails.get(net.id)) ?? null),
      circuit: circuitOf(wire),
    };
  });
  const placed = together(wires, read);
  const used = new Set(placed.map(({ circuit }) => circuit));
  return {
    circuits: circuitsOf(refit).filter(({ id }) => used.has(id)),
    devices: [...read.devices.values()].map((device) => ({
      id: device.id,
      name: device.name || device.kindName,
      groups: groupsOf(device, read).map((group) => (isLinked(device.id) ? asMirror(group) : group)),
    })),
    wires: placed,
  };
}

/** A device with more terminals has business in several diagrams. */
const SMALL = 4;

/** What a switch, a coil or a valve has to a common rail is drawn where its other wires are. */
function together(wires: readonly DrawnWire[], read: ReadWiring): readonly DrawnWire[] {
  const circuits = new Map<string, Set<string>>();
  for (const { from, to, rail, circuit } of wires)
    if (rail === null)
      for (const id of [from, to].map(deviceOf))
        circuits.set(id, (circuits.get(id) ?? new Set()).add(circuit));
  const home = (end: string): string | undefined => {
    const device = read.devices.get(deviceOf(end));
    const own = device && circuits.get(device.id);
    const isSmall =
      device !== undefined &&
      device.terminals.length <= SMALL &&
      device.terminals.every((id) => read.terminals.get(id)?.with !== null);
    return isSmall && own?.size === 1 ? [...own][0] : undefined;
  };
  return wires.map((wire) => {
    const to =
      wire.rail === null || wire.rail.role === 'earth' ? undefined : (home(wire.from) ?? home(wire.to));
    return to === undefined ? wire : { ...wire, circuit: to };
  });
}

/** Contacts that open, of a contactor of which it is stated that they are mirror contacts. */
const asMirror = (group: TerminalGroup): TerminalGroup =>
  group.symbol === 'contact-break' ? { ...group, symbol: 'contact-mirror' } : group;

const isEarth = ({ from, to }: Wire, { terminals }: ReadWiring): boolean =>
  [from, to].some((each) => terminals.get(each)?.nature.kind === 'earth');

export const squareMillimetres = (section: number): string => String(Number((section * 1e6).toPrecision(4)));

/** '12 · blue · 0.75 · W5' */
export const wireLabel = ({ id, number, colour, section }: Wire, cable?: Cable): string =>
  [number || id, colour, section === undefined ? '' : squareMillimetres(section), cable?.id ?? '']
    .filter(Boolean)
    .join(' · ');

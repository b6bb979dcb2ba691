/** From the network to what is drawn of it. */
import type { Refit } from '../../refit/types.ts';
import type { Cable, ReadWiring, Wire } from '../wiring/types.ts';
import { circuitsOf, sorter } from './circuits.ts';
import { groupsOf } from './groups.ts';
import { EARTH, railsOf } from './rails.ts';
import type { Plan } from './types.ts';

export function planOf(refit: Refit, read: ReadWiring): Plan {
  const circuitOf = sorter(refit, read);
  const rails = railsOf(read);
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
  const used = new Set(wires.map(({ circuit }) => circuit));
  return {
    circuits: circuitsOf(refit).filter(({ id }) => used.has(id)),
    devices: [...read.devices.values()].map((device) => ({
      id: device.id,
      name: device.name || device.kindName,
      groups: groupsOf(device, read),
    })),
    wires,
  };
}

const isEarth = ({ from, to }: Wire, { terminals }: ReadWiring): boolean =>
  [from, to].some((each) => terminals.get(each)?.nature.kind === 'earth');

export const squareMillimetres = (section: number): string => String(Number((section * 1e6).toPrecision(4)));

/** '12 · blue · 0.75 · W5' */
export const wireLabel = ({ id, number, colour, section }: Wire, cable?: Cable): string =>
  [number || id, colour, section === undefined ? '' : squareMillimetres(section), cable?.id ?? '']
    .filter(Boolean)
    .join(' · ');

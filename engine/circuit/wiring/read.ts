/** The whole wiring read, for the solver, the drawings and the lists. */
import type { Wiring } from '../../refit/types.ts';
import { type Around, type DeviceRead, readDevice } from './read-device.ts';
import { readCable, readWire } from './read-wire.ts';
import type { Cable, Device, Net, ReadWiring, Terminal, Wire, WiringProblem } from './types.ts';

/** What has been read of each thing by itself. */
export interface Readings {
  readonly device: (id: string) => DeviceRead;
  readonly cable: (id: string, wires: readonly string[], problems: WiringProblem[]) => Cable;
  readonly wire: (id: string, cable: Cable | undefined, problems: WiringProblem[]) => Wire;
}

/**
 * Reads every device, terminal, wire and cable, and joins terminals into nets. Nothing is refused: what cannot be
 * read stands in `problems` with its place, and the thing itself is kept.
 */
export function readWiring(wiring: Wiring, around: Around | null = null): ReadWiring {
  return putTogether(wiring, {
    device: (id) => readDevice(wiring.devices[id]!, around),
    cable: (id, wires, problems) => readCable(wiring.cables[id]!, wires, problems),
    wire: (id, cable, problems) => readWire(wiring.wires[id]!, cable, wiring, problems),
  });
}

/** The same of things that have been read, in the order of the wiring. */
export function putTogether(wiring: Wiring, readings: Readings): ReadWiring {
  const problems: WiringProblem[] = [];
  const devices = new Map<string, Device>();
  const terminals = new Map<string, Terminal>();
  for (const typed of Object.values(wiring.devices)) {
    const read = readings.device(typed.id);
    devices.set(typed.id, read.device);
    for (const each of read.terminals) terminals.set(each.id, each);
    problems.push(...read.problems);
  }
  const cores = new Map<string, string[]>();
  for (const { id, cable } of Object.values(wiring.wires)) {
    if (cable === null) continue;
    const list = cores.get(cable);
    if (list) list.push(id);
    else cores.set(cable, [id]);
  }
  const cables = new Map<string, Cable>();
  for (const typed of Object.values(wiring.cables))
    cables.set(typed.id, readings.cable(typed.id, cores.get(typed.id) ?? [], problems));
  const wires = new Map<string, Wire>();
  for (const typed of Object.values(wiring.wires)) {
    const cable = typed.cable === null ? undefined : cables.get(typed.cable);
    if (typed.cable !== null && !cable)
      problems.push({
        code: 'unknown-name',
        message: `Wire ${typed.id} is said to lie in cable ${typed.cable}, which is not there.`,
        where: `wiring.wires.${typed.id}.cable`,
      });
    wires.set(typed.id, readings.wire(typed.id, cable, problems));
    for (const end of ['from', 'to'] as const)
      if (!terminals.has(typed[end]))
        problems.push({
          code: 'unknown-name',
          message: `Wire ${typed.id} goes to ${typed[end].slice(0, 80)}, and there is no such terminal.`,
          where: `wiring.wires.${typed.id}.${end}`,
        });
  }
  const nets = netsOf(devices, terminals, wires);
  const netOf = new Map<string, Net>();
  for (const net of nets) for (const each of net.terminals) netOf.set(each, net);
  return { devices, terminals, wires, cables, nets, netOf, problems };
}

const byName = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function netsOf(
  devices: ReadonlyMap<string, Device>,
  terminals: ReadonlyMap<string, Terminal>,
  wires: ReadonlyMap<string, Wire>,
): readonly Net[] {
  const parent = new Map<string, string>([...terminals.keys()].map((id) => [id, id]));
  const find = (id: string): string => {
    let at = id;
    for (let up = parent.get(at)!; up !== at; up = parent.get(at)!) {
      parent.set(at, parent.get(up)!);
      at = up;
    }
    return at;
  };
  const join = (a: string, b: string) => {
    if (terminals.has(a) && terminals.has(b)) parent.set(find(a), find(b));
  };
  for (const { joins } of devices.values()) for (const { a, b } of joins) join(a, b);
  for (const { from, to } of wires.values()) join(from, to);
  const members = new Map<string, { terminals: string[]; wires: string[] }>();
  const group = (root: string) => {
    let made = members.get(root);
    if (!made) {
      made = { terminals: [], wires: [] };
      members.set(root, made);
    }
    return made;
  };
  for (const id of terminals.keys()) group(find(id)).terminals.push(id);
  for (const { id, from, to } of wires.values()) {
    const end = terminals.has(from) ? from : terminals.has(to) ? to : undefined;
    if (end !== undefined) group(find(end)).wires.push(id);
  }
  return [...members.values()]
    .map((net) => {
      const sorted = net.terminals.sort(byName);
      return { id: sorted[0]!, terminals: sorted, wires: net.wires.sort(byName) };
    })
    .sort((a, b) => byName(a.id, b.id));
}

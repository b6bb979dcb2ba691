/** What is common to many terminals, and how it is called in the diagrams. */
import type { Net, ReadWiring, Terminal } from '../wiring/types.ts';
import type { Rail } from './types.ts';

/** A net with as many wires is common to many, whatever it carries. */
const MANY = 6;
/** A supply's pole with fewer is drawn as lines. */
const FEW = 3;

/** Rails by the id of their net. */
export function railsOf(read: ReadWiring): ReadonlyMap<string, Rail> {
  const names = new Map<string, Rail>();
  const phases = new Map<string, Rail>();
  for (const net of read.nets) {
    const own = ownRail(net.terminals.flatMap((id) => read.terminals.get(id) ?? []));
    if (own) names.set(net.id, own);
  }
  for (const [id, mains] of mainsOf(read)) if (!names.has(id)) phases.set(id, mains);
  const rails = new Map<string, Rail>();
  const taken = new Map<string, number>();
  for (const net of read.nets) {
    const own = names.get(net.id);
    if (own && (own.role === 'earth' || net.wires.length >= FEW)) {
      rails.set(net.id, own);
      taken.set(own.name, (taken.get(own.name) ?? 0) + 1);
    } else if (!own && net.wires.length >= MANY)
      rails.set(
        net.id,
        behind(net, read, names) ??
          phases.get(net.id) ?? { name: joined(net, read), role: roleOf(net, read) },
      );
  }
  // Two supplies of one voltage are told apart by their devices.
  for (const [id, rail] of rails)
    if (rail.role !== 'earth' && (taken.get(rail.name) ?? 0) > 1)
      rails.set(id, { ...rail, name: `${rail.name} ${id.slice(0, id.indexOf('.'))}` });
  return rails;
}

function ownRail(terminals: readonly Terminal[]): Rail | undefined {
  const isEarthed = terminals.some(({ nature }) => nature.kind === 'earth');
  for (const { nature } of terminals) {
    if (nature.kind !== 'supply' && nature.kind !== 'rectifier') continue;
    const pole = nature.kind === 'supply' ? nature.pole : nature.leg;
    if (pole === 'minus') return { name: isEarthed ? '0 V (earthed)' : '0 V', role: 'returns' };
    if (pole === 'plus') return { name: volts(nature.volts), role: 'feeds' };
  }
  return isEarthed ? EARTH : undefined;
}

/** A wire that ends on protective earth is one, whatever else is joined to it. */
export const EARTH: Rail = { name: 'Earth (PE)', role: 'earth' };

const volts = (value: number | undefined): string =>
  value === undefined ? 'plus' : `+${Number(value.toPrecision(3))} V`;

/** What is reached through a fuse or a contact from a rail is that rail behind it. */
function behind(net: Net, read: ReadWiring, rails: ReadonlyMap<string, Rail>): Rail | undefined {
  for (const id of net.terminals) {
    const terminal = read.terminals.get(id);
    const other = terminal?.with ? read.netOf.get(terminal.with) : undefined;
    const kind = terminal?.nature.kind;
    if (!other || (kind !== 'protection' && kind !== 'contact')) continue;
    const beyond = rails.get(other.id);
    if (beyond && beyond.role !== 'earth')
      return { ...beyond, name: `${beyond.name} after ${terminal?.device}` };
  }
  return undefined;
}

/** What the mains reach through fuses, switches and contacts: 'L1 after Q1'. */
function mainsOf(read: ReadWiring): ReadonlyMap<string, Rail> {
  const found = new Map<string, { readonly pole: string; readonly after: string | undefined }>();
  for (const { id, nature } of read.terminals.values()) {
    const net = read.netOf.get(id);
    if (net && nature.kind === 'mains' && nature.side === 'gives')
      found.set(net.id, { pole: nature.pole, after: undefined });
  }
  const nets = new Map(read.nets.map((net) => [net.id, net]));
  for (const [id, { pole }] of found)
    for (const each of nets.get(id)!.terminals) {
      const terminal = read.terminals.get(each);
      const kind = terminal?.nature.kind;
      const other = terminal?.with ? read.netOf.get(terminal.with) : undefined;
      if (other && !found.has(other.id) && (kind === 'protection' || kind === 'contact'))
        found.set(other.id, { pole, after: terminal!.device });
    }
  return new Map(
    [...found].map(([id, { pole, after }]): [string, Rail] => [
      id,
      { name: after ? `${pole} after ${after}` : pole, role: pole === 'N' ? 'returns' : 'feeds' },
    ]),
  );
}

/** What has no name of its own is called by the strip it is joined on, or by one of its terminals. */
function joined(net: Net, read: ReadWiring): string {
  const strip = net.terminals.find((id) => read.terminals.get(id)?.nature.kind === 'joint');
  return strip ? `joined on strip ${strip.slice(0, strip.indexOf('.'))}` : `joined with ${net.id}`;
}

const roleOf = (net: Net, read: ReadWiring): Rail['role'] =>
  net.terminals.some((id) => {
    const nature = read.terminals.get(id)?.nature;
    return (
      nature?.kind === 'common' ||
      (nature?.kind === 'feed' && nature.pole === 'minus') ||
      (nature?.kind === 'mains' && nature.pole === 'N')
    );
  })
    ? 'returns'
    : 'feeds';

/** What is common to many terminals, and how it is called in the diagrams. */
import type { Net, ReadWiring, Terminal } from '../wiring/types.ts';
import type { Rail } from './types.ts';

/** A net with as many wires is common to many, whatever it carries. */
const MANY = 6;
/** A supply's pole with fewer is drawn as lines. */
const FEW = 3;

/** Rails by the id of their net. */
export function railsOf(read: ReadWiring): ReadonlyMap<string, Rail> {
  const rails = new Map<string, Rail>();
  const taken = new Map<string, number>();
  for (const net of read.nets) {
    const terminals = net.terminals.flatMap((id) => read.terminals.get(id) ?? []);
    const rail = ownRail(terminals, net.wires.length);
    if (!rail) continue;
    rails.set(net.id, rail);
    taken.set(rail.name, (taken.get(rail.name) ?? 0) + 1);
  }
  for (const net of read.nets) {
    if (rails.has(net.id) || net.wires.length < MANY) continue;
    rails.set(net.id, { name: `all on ${net.id}`, role: roleOf(net, read, rails) });
  }
  // Two supplies of one voltage are told apart by their devices.
  for (const [id, rail] of rails)
    if (rail.role !== 'earth' && (taken.get(rail.name) ?? 0) > 1)
      rails.set(id, { ...rail, name: `${rail.name} ${id.slice(0, id.indexOf('.'))}` });
  return rails;
}

function ownRail(terminals: readonly Terminal[], wires: number): Rail | undefined {
  if (terminals.some(({ nature }) => nature.kind === 'earth')) return { name: 'Earth (PE)', role: 'earth' };
  if (wires < FEW) return undefined;
  for (const { nature } of terminals)
    if (
      (nature.kind === 'supply' && nature.pole === 'minus') ||
      (nature.kind === 'rectifier' && nature.leg === 'minus')
    )
      return { name: '0 V', role: 'returns' };
  for (const { nature } of terminals) {
    if (nature.kind === 'supply') return { name: volts(nature.volts), role: 'feeds' };
    if (nature.kind === 'rectifier' && nature.leg === 'plus')
      return { name: volts(nature.volts), role: 'feeds' };
  }
  return undefined;
}

const volts = (value: number | undefined): string =>
  value === undefined ? 'plus' : `+${Number(value.toPrecision(3))} V`;

/** What is reached through a fuse or a contact from what feeds, feeds too. */
function roleOf(net: Net, read: ReadWiring, rails: ReadonlyMap<string, Rail>): Rail['role'] {
  for (const id of net.terminals) {
    const terminal = read.terminals.get(id);
    const other = terminal?.with ? read.netOf.get(terminal.with) : undefined;
    const kind = terminal?.nature.kind;
    if (!other || (kind !== 'protection' && kind !== 'contact')) continue;
    const beyond = rails.get(other.id);
    if (beyond && beyond.role !== 'earth') return beyond.role;
  }
  return net.terminals.some((id) => {
    const nature = read.terminals.get(id)?.nature;
    return (
      nature?.kind === 'common' ||
      ((nature?.kind === 'feed' || nature?.kind === 'supply') && nature.pole === 'minus') ||
      (nature?.kind === 'mains' && nature.pole === 'N')
    );
  })
    ? 'returns'
    : 'feeds';
}

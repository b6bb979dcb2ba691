/** What a finding is about, as somebody at the machine would look for it. */
import type { ReadWiring } from '../wiring/index.ts';

/** 'A1.in2', 'wire 22 from Q1.2 to F10.1 (w117)', 'cable W3'; undefined for what is nothing that can be shown. */
export function sayAbout(
  { terminals, devices, wires, cables }: Pick<ReadWiring, 'terminals' | 'devices' | 'wires' | 'cables'>,
  id: string,
): string | undefined {
  if (terminals.has(id) || devices.has(id)) return id;
  const wire = wires.get(id);
  if (wire)
    return `wire${wire.number === '' ? '' : ` ${wire.number}`} from ${wire.from} to ${wire.to} (${id})`;
  return cables.has(id) ? `cable ${id}` : undefined;
}

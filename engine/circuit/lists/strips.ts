/** Terminal strips as they stand on the rail: what comes from within the cabinet, what goes out. */
import type { Device, ReadWiring } from '../wiring/types.ts';
import type { List } from './types.ts';
import { deviceNote } from './wires.ts';
import { farEnds, inOrder, numberOf } from './words.ts';

/** A device all of whose terminals only join, and is no plug. */
export const isStrip = ({ kind, terminals }: Device, read: ReadWiring): boolean =>
  terminals.length > 0 &&
  !isPlug(kind) &&
  terminals.every((id) => read.terminals.get(id)?.nature.kind === 'joint');

export const isPlug = (kind: string): boolean => /plug|socket|connector/.test(kind);

export function terminalStrips(read: ReadWiring): List {
  const ends = farEnds(read);
  const within = (near: string, far: string): boolean => {
    const where = (id: string) => read.devices.get(id.slice(0, id.indexOf('.')))?.where ?? '';
    return where(near) === where(far);
  };
  const said = (
    list: readonly {
      readonly wire: { readonly id: string; readonly number: string };
      readonly far: string;
    }[],
  ) => list.map(({ wire, far }) => `${wire.number || wire.id} → ${far}`).join('; ');
  return {
    id: 'strips',
    title: 'Terminal strips',
    about: 'In the order in which they stand on the rail. Same place: devices where the strip itself sits.',
    caution:
      'More than two conductors under one screw come loose. Look what the maker of the terminal allows.',
    columns: ['Terminal', 'Same place', 'Goes out', 'Cable', 'Bridged to'],
    groups: [...read.devices.values()]
      .filter((device) => isStrip(device, read))
      .sort((a, b) => inOrder(a.id, b.id))
      .map((device) => ({
        title: device.id,
        note: deviceNote(read, device.id),
        rows: [...device.terminals].map((id) => {
          const own = (ends.get(id) ?? []).filter(({ far }) => !far.startsWith(`${device.id}.`));
          const links = (ends.get(id) ?? []).filter(({ far }) => far.startsWith(`${device.id}.`));
          const joined = device.joins.flatMap(({ a, b }) => (a === id ? [b] : b === id ? [a] : []));
          return {
            id,
            cells: [
              id.slice(device.id.length + 1),
              said(own.filter(({ far }) => within(id, far))),
              said(own.filter(({ far }) => !within(id, far))),
              [...new Set(own.flatMap(({ wire }) => wire.cable ?? []))].join(', '),
              [...links.map(({ wire, far }) => `${far} (${numberOf(wire)})`), ...joined].join(', '),
            ],
          };
        }),
      })),
  };
}

/** Everything that bears a label: each wire at both ends, each cable at both ends, each device, each terminal. */
import type { ReadWiring } from '../wiring/types.ts';
import { isStrip } from './strips.ts';
import type { List, ListRow } from './types.ts';
import { inOrder, numberOf } from './words.ts';

export function labelList(read: ReadWiring): List {
  const wires = [...read.wires.values()].sort((a, b) => inOrder(numberOf(a), numberOf(b)));
  const cables = [...read.cables.values()].sort((a, b) => inOrder(a.id, b.id));
  const devices = [...read.devices.values()].sort((a, b) => inOrder(a.id, b.id));
  const strips = devices.filter((device) => isStrip(device, read));
  const row = (id: string, ...cells: readonly string[]): ListRow => ({ id, cells });
  return {
    id: 'labels',
    title: 'Labels',
    about: 'One line a label. For a label printer save the CSV; on paper they stand as strips to cut.',
    caution: '',
    columns: ['Label', 'Goes on', 'Other end'],
    groups: [
      {
        title: 'Wires, both ends',
        note: `${wires.length * 2} labels`,
        rows: wires.flatMap((wire) => [
          row(wire.id, numberOf(wire), wire.from, wire.to),
          row(wire.id, numberOf(wire), wire.to, wire.from),
        ]),
      },
      {
        title: 'Cables, both ends',
        note: `${cables.length * 2} labels`,
        rows: cables.flatMap(({ id, name }) => [
          row(id, id, name || 'cable', 'one end'),
          row(id, id, name || 'cable', 'other end'),
        ]),
      },
      {
        title: 'Devices',
        note: `${devices.length} labels`,
        rows: devices.map(({ id, name, kindName, where }) => row(id, id, name || kindName, where)),
      },
      {
        title: 'Terminals of strips',
        note: '',
        rows: strips.flatMap(({ id, terminals }) =>
          terminals.map((terminal) => row(terminal, terminal.slice(id.length + 1), id, '')),
        ),
      },
    ].filter(({ rows }) => rows.length > 0),
  };
}

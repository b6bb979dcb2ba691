/** Every wire at both of its ends: stand at a terminal and read what belongs there. */
import type { ReadWiring } from '../wiring/types.ts';
import type { List, ListRow } from './types.ts';
import { farEnds, ferruleOf, inOrder, lengthOf, numberOf, sectionOf } from './words.ts';

export function wireList(read: ReadWiring): List {
  const byDevice = new Map<string, ListRow[]>();
  for (const [near, ends] of [...farEnds(read)].sort(([a], [b]) => inOrder(a, b))) {
    const device = near.slice(0, near.indexOf('.'));
    const rows = byDevice.get(device) ?? [];
    for (const { wire, far } of ends)
      rows.push({
        id: wire.id,
        cells: [
          near,
          numberOf(wire),
          far,
          wire.colour,
          sectionOf(wire.section),
          lengthOf(wire.length),
          ferruleOf(wire),
          wire.cable ?? '',
        ],
      });
    byDevice.set(device, rows);
  }
  return {
    id: 'wires',
    title: 'Wires by both ends',
    about:
      'Each wire stands twice, once at each end. A ferrule without an entry of its own goes by the section.',
    caution: '',
    columns: ['At', 'Number', 'Other end', 'Colour', 'Section, mm²', 'Length, m', 'Ferrule', 'Cable'],
    groups: [...byDevice].map(([device, rows]) => ({
      title: device,
      note: deviceNote(read, device),
      rows,
    })),
  };
}

export const deviceNote = (read: ReadWiring, device: string): string => {
  const found = read.devices.get(device);
  return found
    ? [found.name || found.kindName, found.where].filter(Boolean).join(', ')
    : 'not among the devices';
};

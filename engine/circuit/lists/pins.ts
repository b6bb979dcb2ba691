/** What each terminal of a device is and what is on it: plugs, drives, controls, motors. */
import type { ReadWiring } from '../wiring/types.ts';
import { isStrip } from './strips.ts';
import type { List } from './types.ts';
import { deviceNote } from './wires.ts';
import { farEnds, inOrder, numberOf, sayTerminal } from './words.ts';

/** `photos` names the photo on which a terminal is pinned. */
export function pinTables(read: ReadWiring, photos: ReadonlyMap<string, string> = new Map()): List {
  const ends = farEnds(read);
  return {
    id: 'pins',
    title: 'Pins of plugs and devices',
    about:
      'Look at a plug from the side the wires come from, unless its maker says otherwise. An empty pin stays empty.',
    caution: '',
    columns: ['Pin', 'What it is', 'Wire', 'Colour', 'Goes to', 'Photo'],
    groups: [...read.devices.values()]
      .filter((device) => !isStrip(device, read) && device.terminals.length > 1)
      .sort((a, b) => inOrder(a.id, b.id))
      .map((device) => ({
        title: device.id,
        note: deviceNote(read, device.id),
        rows: device.terminals.map((id) => {
          const own = ends.get(id) ?? [];
          const terminal = read.terminals.get(id);
          return {
            id,
            cells: [
              id.slice(device.id.length + 1),
              terminal ? sayTerminal(terminal) : '',
              own.map(({ wire }) => numberOf(wire)).join(', '),
              own
                .map(({ wire }) => wire.colour)
                .filter(Boolean)
                .join(', '),
              own.map(({ far }) => far).join(', '),
              photos.get(id) ?? '',
            ],
          };
        }),
      })),
  };
}

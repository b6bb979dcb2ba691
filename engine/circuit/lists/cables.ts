/** The cable schedule: what to buy, how long, where from and where to, and what each core is. */
import type { ReadWiring } from '../wiring/types.ts';
import { usualColours } from './core-colours.ts';
import type { List } from './types.ts';
import { inOrder, lengthOf, numberOf, sectionOf, shieldOf } from './words.ts';

export function cableSchedule(read: ReadWiring): List {
  return {
    id: 'cables',
    title: 'Cables',
    about:
      'Measure the way before you cut, and leave enough at both ends to strip twice. A colour with a question mark is what such cables usually have; hold it against the cable you bought, and write down the true one.',
    caution: '',
    columns: ['Core', 'Colour', 'From', 'To', 'Section, mm²', 'Number'],
    groups: [...read.cables.values()]
      .sort((a, b) => inOrder(a.id, b.id))
      .map((cable) => {
        const wires = cable.wires.flatMap((id) => read.wires.get(id) ?? []);
        const usual = usualColours(read, cable);
        const ends = new Set(
          wires.flatMap(({ from, to }) => [from, to]).map((each) => each.slice(0, each.indexOf('.'))),
        );
        return {
          title: cable.name ? `${cable.id}: ${cable.name}` : cable.id,
          note: [
            cable.cores === undefined
              ? `${wires.length} cores in use`
              : `${wires.length} of ${cable.cores} cores in use`,
            cable.section === undefined ? '' : `${sectionOf(cable.section)} mm²`,
            cable.length === undefined ? 'length not known' : `${lengthOf(cable.length)} m`,
            shieldOf(cable),
            cable.moved ? 'moves with the machine: a cable made for it' : '',
            cable.route,
            ends.size > 0 ? `between ${[...ends].sort(inOrder).join(', ')}` : 'no wire in it yet',
          ]
            .filter(Boolean)
            .join('; '),
          rows: wires.map((wire, at) => ({
            id: wire.id,
            cells: [
              String(at + 1),
              wire.colour || (usual.get(wire.id) ?? ''),
              wire.from,
              wire.to,
              sectionOf(wire.section ?? cable.section),
              numberOf(wire),
            ],
          })),
        };
      }),
  };
}

/** What the meter should show, step by step, with room for what it does show. */
import { type RingSheet, ringItOut, seekRingOut } from '../readings/index.ts';
import type { ReadWiring } from '../wiring/types.ts';
import type { List } from './types.ts';

export const ringOut = (read: ReadWiring): List => listOf(read, ringItOut(read));

/** The same in pieces, so that it can be shown how far it is, or ended; yields the share done. */
export function* seekRingOutList(read: ReadWiring): Generator<number, List, void> {
  return listOf(read, yield* seekRingOut(read));
}

function listOf(read: ReadWiring, { cautions, steps, notes }: RingSheet): List {
  return {
    id: 'ring-out',
    title: 'Ring it out',
    about: [
      'In this order, from the first line to the last. Write down what you measure; a reading that disagrees is found out before the next step.',
      ...notes,
    ].join(' '),
    caution: cautions.join(' '),
    columns: [
      'Red lead on',
      'Black lead on',
      'Wire',
      'First',
      'Should show',
      'If it shows something else',
      'Measured',
    ],
    groups: steps.map((step) => ({
      title: step.powered ? `${step.title} (live)` : step.title,
      note: step.says,
      cautions: step.cautions,
      rows: step.rows.map(({ id, at, against, wire, when = '', says, otherwise }) => ({
        id,
        cells: [
          at.join(', '),
          against,
          wire === undefined ? '' : read.wires.get(wire)?.number || wire,
          when,
          says,
          otherwise,
          '',
        ],
      })),
    })),
  };
}

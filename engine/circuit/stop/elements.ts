/** One element of the drawing as nodes, contacts and movers. */
import type { StopElement } from '../../refit/types.ts';
import type { Build } from './build.ts';
import { doing } from './hands.ts';
import type { Kind } from './kinds.ts';
import type { ControlUnit, DriveUnit, SafetyUnit, Source } from './model.ts';
import type { Read } from './settings.ts';
import { addControl, addDrive, addSafetyRelay } from './units.ts';

export interface Gathered {
  readonly build: Build;
  readonly sources: Source[];
  readonly safety: SafetyUnit[];
  readonly controls: ControlUnit[];
  readonly drives: DriveUnit[];
  readonly locks: { lock: number; door: number }[];
}

/** Between which terminals a supply gives, by what it gives: see `GIVES`. */
const POLES: readonly (readonly (readonly [plus: string, minus: string])[])[] = [
  [['plus', 'minus']],
  [['L1', 'N']],
  [
    ['L1', 'L2'],
    ['L2', 'L3'],
    ['L1', 'L3'],
    ['L1', 'N'],
    ['L2', 'N'],
    ['L3', 'N'],
  ],
];

/** Sources that a supply is in the model. */
export const sourcesIn = ({ gives = 0 }: Read): number => POLES[gives]!.length;

export function addElement(
  into: Gathered,
  { id, settings }: StopElement,
  kind: Kind,
  read: Read,
  bit: number,
): void {
  const { build } = into;
  const coil = (pickUp: number, dropOut: number, a = 'A1', b = 'A2', name = id) =>
    build.mover({
      id: name,
      element: id,
      kind: 'coil',
      a: build.node(id, a),
      b: build.node(id, b),
      pickUp,
      dropOut,
    });
  switch (kind) {
    case 'supply':
      for (const [plus, minus] of POLES[read.gives!]!)
        into.sources.push({
          element: id,
          plus: build.node(id, plus),
          minus: build.node(id, minus),
          earthed: read.earthed === 0 && (minus === 'minus' || minus === 'N'),
        });
      return;
    case 'fuse':
      for (let n = 0; n < read.poles!; n++)
        build.contact(id, `${2 * n + 1}`, `${2 * n + 2}`, -1, 1, { fuse: true });
      return;
    case 'button':
    case 'mushroom':
    case 'door':
    case 'limit':
    case 'key':
      build.contactsOf(id, build.hand(id, doing(kind, id, read, placeOf(kind, settings))), read, 1);
      return;
    case 'home':
      build.node(id, '13');
      build.node(id, '14');
      return;
    case 'locked-door': {
      const lock = coil(read.release!, 0.05, 'A1', 'A2', `${id} lock`);
      const door = build.hand(id, { ...doing('door', id, read), needs: lock });
      build.contactsOf(id, door, read, 1);
      into.locks.push({ lock, door });
      return;
    }
    case 'contactor': {
      const mover = coil(read['pick-up']!, read['drop-out']!);
      const linked = read.linked === 0;
      for (let n = 0; n < read.main!; n++)
        build.contact(id, `${2 * n + 1}`, `${2 * n + 2}`, mover, 1, { main: true, linked });
      // A mirror contact answers for the main contacts; the other auxiliaries stand alone.
      build.contactsOf(id, mover, { no: read.no }, 5);
      build.contactsOf(id, mover, { nc: read.nc }, 5, { linked });
      return;
    }
    case 'relay':
      build.contactsOf(id, coil(read['pick-up']!, read['drop-out']!), read, 5, { linked: read.linked === 0 });
      return;
    case 'delayed-relay':
      build.contactsOf(id, coil(read['pick-up']!, read.delay!), read, 5, { linked: read.linked === 0 });
      return;
    case 'safety-relay':
      addSafetyRelay(into, id, read, bit);
      return;
    case 'drive':
    case 'inverter':
      addDrive(into, id, read);
      return;
    case 'brake':
      coil(read.release!, read.engage!);
      return;
    case 'control':
      addControl(into, id, read);
      return;
  }
}

/** ' (X, lower end)', or nothing where it is not said on which axis a limit switch stands. */
function placeOf(kind: Kind, { axis = '', end = '' }: StopElement['settings']): string {
  if (kind !== 'limit' || axis.trim() === '') return '';
  return ` (${axis.trim()}, ${end.trim() === '' || end === 'either' ? 'either' : end.trim()} end)`;
}

import { type WiringKind, wiringKind } from '../kind.ts';
import type { Load } from '../types.ts';
import { coil, coilSettings } from './contacts.ts';

const load = (
  id: string,
  name: string,
  says: string,
  letter: string,
  what: Load['what'],
  marks: readonly [string, string] = ['A1', 'A2'],
): WiringKind =>
  wiringKind({
    id,
    name,
    says,
    letter,
    settings: coilSettings('24 V'),
    terminals: (s) => coil(s, what, ...marks),
  });

export const valve = load(
  'valve',
  'solenoid valve',
  'A coil that opens or shuts a valve: coolant, lubrication, air, a chuck.',
  'Y',
  'valve',
);
export const brake = load(
  'brake',
  'brake closed by a spring',
  'Current opens it; without current a spring closes it.',
  'Y',
  'brake',
);
export const lamp = load('lamp', 'lamp', 'A signal lamp or the light of the machine.', 'P', 'lamp', [
  'x1',
  'x2',
]);
export const fan = load('fan', 'fan', 'Cools the cabinet or a motor.', 'M', 'fan', ['1', '2']);

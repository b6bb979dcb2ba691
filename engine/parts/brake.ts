import { money } from './money.ts';
import { partKind } from './types.ts';

export const brake = partKind({
  id: 'brake',
  name: 'holding brake',
  about: 'The brake that holds a vertical or sloping axis when the power is off.',
  facts: {
    torque: {
      kind: 'quantity',
      name: 'holding torque',
      unit: 'N·m',
      domain: 'positive',
      plausible: ['0.1 N·m', '300 N·m'],
      trouble: 3,
      findOut:
        'Plate; or with the coil off, a lever and spring scale on the shaft until it slips. Take the lowest of several.',
      caution: 'Prop the axis before you test its brake. Never stand or reach under it.',
    },
    on: {
      kind: 'choice',
      name: 'which shaft it holds',
      trouble: 1,
      options: { motor: 'the motor shaft', screw: 'the screw' },
      findOut: 'Look where it sits. A brake on the motor does not hold when the belt breaks.',
    },
    delay: {
      kind: 'quantity',
      name: 'time until it holds',
      unit: 'ms',
      domain: 'not negative',
      plausible: ['5 ms', '500 ms'],
      trouble: 3,
      findOut:
        'Maker’s sheet: engagement time with the suppression fitted to its coil; a plain diode across the coil makes it several times longer.',
    },
    ...money,
  },
});

import { drivesFor, lay, type Pattern } from './pattern.ts';

export const oneContactor: Pattern = {
  id: 'one-contactor',
  name: 'One channel with one contactor',
  need: 'A small machine that can do no more than pinch, and where a welded contactor can be lived with.',
  reach: 'The button takes the power away whatever the control does. Nothing starts again by itself.',
  limits:
    'One welded contact, one button contact that stays closed or one wire that touches plus, and it does not stop.',
  make: (motions) =>
    lay(
      'one-contactor',
      {
        elements: [
          ['S1 mushroom', 'Emergency stop', { nc: '1' }],
          ['S2 button', 'Start'],
          ['K1 contactor', 'Power of the drives', { no: '2', main: '2', nc: '0' }],
        ],
        runs: [
          'F1.2 S1.11 / W1',
          'S1.12 S2.13 / W1',
          'S2.13 K1.13',
          'S2.14 K1.A1',
          'K1.14 K1.A1',
          'K1.A2 G1.minus',
          'F1.2 K1.23',
          'K1.24 A1.stop',
          'F2.2 K1.1',
          'G2.minus K1.3',
        ],
      },
      drivesFor(motions, { power: ['K1.2', 'K1.4'], enable: 'A1.enable' }),
    ),
};

import { BOTH_IN_A_ROW, MAINS } from './head.ts';
import { drivesFor, lay, type Pattern } from './pattern.ts';

export const twoContactors: Pattern = {
  id: 'two-contactors',
  name: 'Two contactors with feedback in the start circuit',
  need: 'A machine that may coast to a stop, built from plain parts.',
  reach:
    'Any one contact may stick and it still stops; mirror contacts keep it from starting until that is put right.',
  limits:
    'A stuck start button starts it by itself. A cable with both channels in it that is crushed defeats it. Touching channels are not noticed: test each channel once a year.',
  make: (motions) =>
    lay(
      'two-contactors',
      {
        elements: [
          ['S1 mushroom', 'Emergency stop', { nc: '2' }],
          ['S2 button', 'Start'],
          ['K1 contactor', 'Power of the drives, first', { no: '2', main: '2' }],
          ['K2 contactor', 'Power of the drives, second', { no: '2', main: '2' }],
          ['K3 relay', 'Start relay', { no: '2', nc: '1', 'drop-out': '50 ms' }],
        ],
        runs: [
          'F1.2 S1.11 / W1',
          'F1.2 S1.21 / W2',
          'S1.12 K3.13 / W1',
          'S1.22 K3.23 / W2',
          'K3.13 K1.13',
          'K3.23 K2.13',
          'K3.14 K1.A1',
          'K3.24 K2.A1',
          'K1.14 K1.A1',
          'K2.14 K2.A1',
          'K1.A2 G1.minus',
          'K2.A2 G1.minus',
          'F1.2 S2.13',
          'S2.14 K1.51',
          'K1.52 K2.51',
          'K2.52 K3.A1',
          'K3.A2 G1.minus',
          'F1.2 K1.23',
          'K1.24 K2.23',
          'K2.24 A1.stop',
          'A1.enable K3.51',
          ...BOTH_IN_A_ROW,
        ],
      },
      drivesFor(motions, { power: MAINS, enable: 'K3.52' }),
    ),
};

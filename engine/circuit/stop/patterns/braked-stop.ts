import {
  BOTH_COILS,
  BOTH_IN_A_ROW,
  CHANNELS,
  drivesFor,
  lay,
  type Pattern,
  startLoop,
  TWO_CONTACTORS,
} from './pattern.ts';

export const brakedStop: Pattern = {
  id: 'braked-stop',
  name: 'Two channels, power taken away late (stop category 1)',
  need: 'Heavy axes or a spindle that would coast too long: the drives brake first, then their power goes.',
  reach:
    'Braked by the drives in the usual case; the power goes after the delay whatever the drives and the control do.',
  limits:
    'Where the drive or its enable fails, it is driven on until the delay is over and coasts from there. Set the delay a little longer than the longest braking, no more.',
  make: (motions) =>
    lay(
      'braked-stop',
      {
        elements: [
          ['S1 mushroom', 'Emergency stop', { nc: '2' }],
          ['S2 button', 'Start'],
          ['U1 safety-relay', 'Safety relay', { outputs: '2', delayed: '2', delay: '1 s' }],
          ...TWO_CONTACTORS,
        ],
        runs: [
          ...CHANNELS,
          ...startLoop('K1', 'K2'),
          'A1.enable U1.13',
          'F1.2 U1.23',
          'U1.24 A1.stop',
          'F1.2 U1.47',
          'F1.2 U1.57',
          'U1.48 K1.A1',
          'U1.58 K2.A1',
          ...BOTH_COILS,
          ...BOTH_IN_A_ROW,
        ],
      },
      drivesFor(motions, {
        power: ['K2.2', 'K2.4'],
        enable: 'U1.14',
        settings: { 'on-disable': 'brakes, then lets go' },
      }),
    ),
};

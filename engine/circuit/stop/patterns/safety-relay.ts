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

export const safetyRelay: Pattern = {
  id: 'safety-relay',
  name: 'Two channels with a safety relay',
  need: 'A machine that may coast to a stop and that can hurt badly.',
  reach:
    'Touching channels, a stuck start button and a welded contactor are noticed by the unit. The power goes by two contactors in a row.',
  limits:
    'It rests on the maker of the unit for what is inside it. It coasts: how long, you must measure. A mirror contact stuck closed is not noticed: test once a year.',
  make: (motions) =>
    lay(
      'safety-relay',
      {
        elements: [
          ['S1 mushroom', 'Emergency stop', { nc: '2' }],
          ['S2 button', 'Start'],
          ['U1 safety-relay', 'Safety relay', { outputs: '3' }],
          ...TWO_CONTACTORS,
        ],
        runs: [
          ...CHANNELS,
          ...startLoop('K1', 'K2'),
          'F1.2 U1.13',
          'F1.2 U1.23',
          'F1.2 U1.33',
          'U1.14 K1.A1',
          'U1.24 K2.A1',
          'U1.34 A1.stop',
          ...BOTH_COILS,
          ...BOTH_IN_A_ROW,
        ],
      },
      drivesFor(motions, { power: ['K2.2', 'K2.4'], enable: 'A1.enable' }),
    ),
};

import { drivesFor, lay, type Pattern } from './pattern.ts';

export const asksTheControl: Pattern = {
  id: 'asks-the-control',
  name: 'A stop button that only asks the control',
  need: 'None. It is often found, and it is here to be looked through.',
  reach: 'Stops the machine while the control is well.',
  limits:
    'A control that hangs, or one output stuck on, and nothing stops. It is no emergency stop: the power stays on.',
  warning: true,
  make: (motions) =>
    lay(
      'asks-the-control',
      {
        elements: [['S1 mushroom', 'Stop button', { nc: '1' }]],
        runs: ['F1.2 S1.11 / W1', 'S1.12 A1.stop / W1'],
      },
      drivesFor(motions, { power: ['F2.2', 'G2.minus'], enable: 'A1.enable' }),
    ),
};

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
import { drawnSwitches, homeRuns, inARow, MOST_HOMES, switchesFor } from './switches.ts';

export const limitsWithRelease: Pattern = {
  id: 'limits-with-release',
  name: 'Limit switches that ask control and drives to brake, with a button to come off',
  need: 'Axes whose hard stops can bear a bump, where power must stay so that an axis can be driven off its switch again.',
  reach:
    'Running onto a limit switch stops the control by one contact and takes the enable of all drives by another: they brake. Nothing moves again without a program start. The emergency stop works by itself, through two channels. While the button is held the axis can be driven off its switch.',
  limits:
    'It rests on the drives heeding their enable, and while the button is held, or sticks, the limit switches count for nothing: let the control move slowly then, and test the button. A drive that runs away is not stopped by it: for that, put the limit switches into the emergency stop. It has no brake for an axis that drops.',
  make: (motions) => {
    const switches = switchesFor(motions).slice(0, MOST_HOMES);
    const first = switches[0]?.lower;
    const last = switches.at(-1)?.upper;
    return lay(
      'limits-with-release',
      {
        elements: [
          ['S1 mushroom', 'Emergency stop', { nc: '2' }],
          ['S2 button', 'Start'],
          ['S3 button', 'Hold to come off a limit switch', { no: '2', role: 'other' }],
          ...drawnSwitches(switches, '2'),
          ['U1 safety-relay', 'Safety relay', { outputs: '3' }],
          ...TWO_CONTACTORS,
        ],
        runs: [
          ...CHANNELS,
          ...inARow('U1.34', switches, 1, 'A1.stop'),
          ...(first && last
            ? [
                ...inARow('A1.enable', switches, 2, '').slice(0, -1),
                `${first}.11 S3.13`,
                `S3.14 ${last}.12`,
                `${first}.21 S3.23`,
                `S3.24 ${last}.22`,
              ]
            : []),
          ...homeRuns(switches),
          ...startLoop('K1', 'K2'),
          'F1.2 U1.13',
          'F1.2 U1.23',
          'F1.2 U1.33',
          'U1.14 K1.A1',
          'U1.24 K2.A1',
          ...BOTH_COILS,
          ...BOTH_IN_A_ROW,
        ],
        control: { homes: `${switches.length}` },
      },
      drivesFor(motions, {
        power: ['K2.2', 'K2.4'],
        enable: last ? `${last}.22` : 'A1.enable',
        settings: { 'on-disable': 'brakes, then lets go' },
      }),
    );
  },
};

import {
  BOTH_COILS,
  BOTH_IN_A_ROW,
  drivesFor,
  lay,
  type Pattern,
  startLoop,
  TWO_CONTACTORS,
} from './pattern.ts';
import { drawnSwitches, homeRuns, inARow, MOST_HOMES, switchesFor } from './switches.ts';

export const limitsInChannels: Pattern = {
  id: 'limits-in-channels',
  name: 'Limit switches in both channels of the emergency stop',
  need: 'Axes that would hit their hard stops with force, and a control that is not to be trusted with that.',
  reach:
    'Whatever the control does, running onto a limit switch takes the power of all drives away, by two contacts and two contactors. No single fault defeats it.',
  limits:
    'Everything stops, the spindle too. To come off a switch, switch off and turn the screw by hand. It coasts from the switch on: the switch must stand that far before the hard stop. A switch that is not moved by the slide any more is only found by testing it. It has no brake: for an axis that drops take the pattern with one and put the limit switches into its channels.',
  make: (motions) => {
    const switches = switchesFor(motions).slice(0, MOST_HOMES);
    return lay(
      'limits-in-channels',
      {
        elements: [
          ['S1 mushroom', 'Emergency stop', { nc: '2' }],
          ['S2 button', 'Start'],
          ...drawnSwitches(switches, '2'),
          ['U1 safety-relay', 'Safety relay', { outputs: '3' }],
          ...TWO_CONTACTORS,
        ],
        runs: [
          'F1.2 U1.A1',
          'U1.A2 G1.minus',
          'U1.C1a S1.11 / W1',
          'U1.C2a S1.21 / W2',
          ...inARow('S1.12', switches, 1, 'U1.C1b').map((run) => `${run} / W1`),
          ...inARow('S1.22', switches, 2, 'U1.C2b').map((run) => `${run} / W2`),
          ...homeRuns(switches),
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
        control: { homes: `${switches.length}` },
      },
      drivesFor(motions, { power: ['K2.2', 'K2.4'], enable: 'A1.enable' }),
    );
  },
};

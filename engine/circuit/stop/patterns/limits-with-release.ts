import { headOf, MAINS } from './head.ts';
import { drivesFor, inPairs, lay, type Pattern } from './pattern.ts';
import { drawnSwitches, homeRuns, MOST_HOMES, switchesFor, throughSwitches } from './switches.ts';

export const limitsWithRelease: Pattern = {
  id: 'limits-with-release',
  name: 'Limit switches that ask control and drives to brake, with a button to come off',
  need: 'Axes whose hard stops can bear a bump, where power must stay so that an axis can be driven off its switch again.',
  reach:
    'Running onto a limit switch stops the control by one contact and takes the enable of all drives by another: they brake. Nothing moves again without a program start. The emergency stop works by itself, through two channels. While the button is held the axis can be driven off its switch.',
  limits:
    'It rests on the drives heeding their enable, and while the button is held, or sticks, the limit switches count for nothing: let the control move slowly then, and test the button. A drive that runs away is not stopped by it: for that, put the limit switches into the emergency stop. It has no brake: for an axis that drops take “Limit switches that cut the power, behind a brake”.',
  make: (motions) => {
    const switches = switchesFor(motions).slice(0, MOST_HOMES);
    const first = switches[0]?.lower;
    const last = switches.at(-1)?.upper;
    const head = headOf({
      outputs: 3,
      devices: [
        ['S3 button', 'Hold to come off a limit switch', { no: '2', role: 'other' }],
        ...drawnSwitches(switches),
      ],
    });
    const through = throughSwitches(switches, 2);
    return lay(
      'limits-with-release',
      {
        elements: head.elements,
        runs: [
          ...head.runs,
          'F1.2 U1.33',
          ...inPairs('U1.34', throughSwitches(switches, 1), 'A1.stop'),
          ...(first && last
            ? [
                ...inPairs('A1.enable', through.slice(0, -2), through.at(-2)!),
                `${first}.11 S3.13`,
                `S3.14 ${last}.12`,
                `${first}.21 S3.23`,
                `S3.24 ${last}.22`,
              ]
            : []),
          ...homeRuns(switches),
        ],
        control: { homes: `${switches.length}` },
      },
      drivesFor(motions, {
        power: MAINS,
        enable: last ? `${last}.22` : 'A1.enable',
        settings: { 'on-disable': 'brakes, then lets go' },
      }),
    );
  },
};

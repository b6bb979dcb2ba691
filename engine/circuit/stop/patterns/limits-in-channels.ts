import { headOf, MAINS } from './head.ts';
import { drivesFor, lay, type Pattern } from './pattern.ts';
import { drawnSwitches, homeRuns, MOST_HOMES, switchesFor, throughSwitches } from './switches.ts';

export const limitsInChannels: Pattern = {
  id: 'limits-in-channels',
  name: 'Limit switches in both channels of the emergency stop',
  need: 'Axes that would hit their hard stops with force, and a control that is not to be trusted with that.',
  reach:
    'Whatever the control does, running onto a limit switch takes the power of all drives away, by two contacts and two contactors. No single fault defeats it.',
  limits:
    'Everything stops, the spindle too. To come off a switch, switch off and turn the screw by hand. It coasts from the switch on: the switch must stand that far before the hard stop. A switch that is not moved by the slide any more is only found by testing it. It has no brake: for an axis that drops take “Limit switches that cut the power, behind a brake”.',
  make: (motions) => {
    const switches = switchesFor(motions).slice(0, MOST_HOMES);
    const head = headOf({
      outputs: 3,
      behind: { one: throughSwitches(switches, 1), two: throughSwitches(switches, 2) },
      devices: drawnSwitches(switches),
    });
    return lay(
      'limits-in-channels',
      {
        elements: head.elements,
        runs: [...head.runs, 'F1.2 U1.33', 'U1.34 A1.stop', ...homeRuns(switches)],
        control: { homes: `${switches.length}` },
      },
      drivesFor(motions, { power: MAINS, enable: 'A1.enable' }),
    );
  },
};

import { headOf } from './head.ts';
import { BRAKE_RUNS, HOLDS, heldByBrake } from './held-by-brake.ts';
import { lay, type Pattern } from './pattern.ts';
import { drawnSwitches, homeRuns, MOST_HOMES, switchesFor, throughSwitches } from './switches.ts';

/**
 * A row of limit switches bridged in each channel by a key and a held button, which are two so that neither alone takes the
 * switches away. Start goes past both only while they stand off, or while a limit switch is really run onto: a key left on or a
 * button that sticks keeps the machine from its next start. Common practice, no source.
 */
export const limitsWithBrake: Pattern = {
  id: 'limits-with-brake',
  name: 'Limit switches that cut the power, behind a brake',
  need: 'An axis that drops and that must not reach its hard stop whatever the control does.',
  reach:
    'Running onto a limit switch opens both channels: the brake loses its current at once, the drives brake and hold, and only when it has closed does their power go, by two contactors. It is not trapped there: turn the key, hold the button, press start and drive off slowly. Letting go of the button closes the brake and takes the power again. A key left on or a button that sticks is noticed: there is no next start.',
  limits:
    'A brake that does not close lets it drop: test it, and prop the axis before anybody reaches under it. While key and button are both held every limit switch counts for nothing, of all axes and both ends: take the key out at other times, look which way is off, let the control move slowly, and let nobody stand under the axis. The brake holds, it does not stop: the drives must stand within the delay, and a switch must stand that far before the hard stop. Everything stops, the spindle too.',
  make: (motions) => {
    const switches = switchesFor(motions).slice(0, MOST_HOMES);
    const all = switches.flatMap(({ lower, upper }) => [lower, upper]);
    const [first, last] = [all[0], all.at(-1)];
    const head = headOf({
      outputs: 4,
      late: HOLDS,
      behind: { one: throughSwitches(switches, 1), two: throughSwitches(switches, 2) },
      loop: first ? ['S3.11', 'S3.12', 'S4.11', 'S4.12'] : [],
      devices: [...(first ? OVERRIDE : []), ...drawnSwitches(switches, '1')],
    });
    return lay(
      'limits-with-brake',
      {
        elements: head.elements,
        runs: [
          ...head.runs,
          ...BRAKE_RUNS,
          ...(first && last
            ? [
                ...([1, 2] as const).flatMap((n) =>
                  [`${first}.${n}1 S3.${n}3`, `S3.${n}4 S4.${n}3`, `S4.${n}4 ${last}.${n}2`].map(
                    (run) => `${run} / W${n}`,
                  ),
                ),
                ...all.flatMap((id) => [`S3.11 ${id}.13`, `${id}.14 S2.13`]),
              ]
            : []),
          ...homeRuns(switches),
        ],
        control: { homes: `${switches.length}` },
      },
      heldByBrake(motions),
    );
  },
};

const OVERRIDE = [
  ['S3 key', 'Key: limit switches overridden, with S4 held', { no: '2', nc: '1', running: 'off' }],
  ['S4 button', 'Hold to come off a limit switch, with key S3 on', { no: '2', nc: '1', role: 'other' }],
] as const;

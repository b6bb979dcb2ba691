import { type Drive, drivesOf } from '../check/drive.ts';
import { figure, found, type Rule } from '../check/rule.ts';
import { terminalName, volts } from '../check/say.ts';
import type { Mains, WiringFinding } from '../types.ts';
import { MAINS_CAUTION, wrongly } from './mains-reach.ts';

/** A pole of the mains and what hangs on it, through fuses and switches. */
export const mainsRail: Rule = {
  id: 'mains',
  title: 'Does mains meet only what is made for it?',
  of: ['mains'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const nature = terminal.nature as Mains;
    if (nature.side === 'takes') return taker(view, id, nature);
    if (nature.side !== 'gives') return [];
    const rail = view.rail(id)!;
    const made: WiringFinding[] = [];
    made.push(...wrongly(view, id, nature));
    const earths = view.inRail(rail, 'earth');
    if (earths.length > 0)
      made.push(
        found(
          mainsRail,
          [id, earths[0]!],
          'fails',
          nature.pole === 'N'
            ? `The neutral is joined to protective earth at ${earths[0]} inside the machine: earth then carries current all the time.`
            : `Phase ${nature.pole} is joined to protective earth at ${earths[0]}: a short circuit, and live metal until the fuse goes.`,
          {
            part: 'earth',
            remedy: `Take the wire off that joins them. ${MAINS_CAUTION}`,
            ...(nature.pole === 'N'
              ? {}
              : {
                  title: 'A phase is joined to protective earth',
                  root: { ends: [id, earths[0]!] as const, harm: 'short' as const },
                }),
          },
        ),
      );
    for (const other of view.inRail(rail, 'mains')) {
      const pole = view.terminal(other)!.nature as Mains;
      if (pole.side === 'gives' && other > id && pole.pole !== nature.pole)
        made.push(
          found(
            mainsRail,
            [id, other],
            'fails',
            `${id} and ${other} of the mains are joined: a short circuit.`,
            {
              part: other,
              title: 'The mains are shorted',
              remedy: `Take the wire off that joins them. ${MAINS_CAUTION}`,
              root: { ends: [id, other], harm: 'short' },
            },
          ),
        );
    }
    return made;
  },
};

/** A mains terminal of a device, against the pole that reaches it. */
function taker(view: Parameters<Rule['judge']>[0], id: string, nature: Mains) {
  if (view.wiresAt(id).length === 0) return [];
  const terminal = view.terminal(id)!;
  const drives = drivesOf(view, id);
  for (const contact of drives[0]?.path.contacts ?? [])
    view.give({ to: `contact:${contact}`, amps: nature.amps });
  const name = `${terminal.device} (${terminal.name})`;
  const wrong = drives.find(({ how }) => how !== 'ac');
  if (wrong)
    return [
      found(
        mainsRail,
        [id, wrong.path.source],
        'fails',
        `${name} is a mains terminal, and ${terminalName(view, wrong.path.source)} is joined to it.`,
        { remedy: 'Feed it from the mains.' },
      ),
    ];
  const pole = drives.find((drive) => view.terminal(drive.path.source)?.nature.kind === 'mains');
  if (!pole) {
    if (drives.length > 0) return [];
    return [
      found(mainsRail, [id], 'fails', `${name} is connected, and no mains reach it.`, {
        remedy: 'Follow the wire to the main switch.',
      }),
    ];
  }
  const from = view.terminal(pole.path.source)!.nature as Mains;
  const about = [id, pole.path.source];
  if (
    nature.pole === 'N'
      ? from.pole !== 'N' && nature.volts === undefined
      : from.pole === 'N' && nature.pole !== 'L1'
  )
    return [
      found(mainsRail, about, 'tight', `${name} gets ${from.pole} where ${nature.pole} belongs.`, {
        remedy: 'Exchange them.',
      }),
    ];
  if (nature.pole === 'N' || from.pole === 'N') {
    if (nature.pole === 'L1' && from.pole === 'N')
      return [
        found(
          mainsRail,
          about,
          'tight',
          `Phase and neutral are exchanged at ${name}: a fuse or switch in the phase then breaks the neutral, and the device stays live.`,
          { remedy: 'Exchange the two wires.' },
        ),
      ];
    return [];
  }
  return voltage(view, id, nature, from, pole, name, about);
}

function voltage(
  view: Parameters<Rule['judge']>[0],
  id: string,
  nature: Mains,
  from: Mains,
  pole: Drive,
  name: string,
  about: readonly string[],
) {
  const device = view.device(view.terminal(id)!.device)!;
  // The other pole of a single-phase device says whether it lies between phase and neutral or between two phases.
  const mate = device.terminals
    .map((each) => view.terminal(each)!)
    .find((each) => each.id !== id && each.nature.kind === 'mains');
  const far =
    mate &&
    drivesOf(view, mate.id)
      .map(({ path }) => view.terminal(path.source)?.nature)
      .find((each) => each?.kind === 'mains');
  const between = far?.kind === 'mains' && far.pole !== 'N' ? Math.sqrt(3) : 1;
  if (far?.kind === 'mains' && far.pole === from.pole)
    return [
      found(
        mainsRail,
        about,
        'fails',
        `Both poles of ${name} lie on ${from.pole}: no voltage is between them.`,
        { remedy: 'One of them belongs on neutral or on another phase.' },
      ),
    ];
  if (nature.volts === undefined || from.volts === undefined || pole.high === undefined)
    return [
      found(mainsRail, about, 'unknown', `Whether ${name} is made for the mains it gets cannot be said.`, {
        needs: [
          ...(nature.volts === undefined ? [`${id}.volts`] : []),
          ...(from.volts === undefined ? [`${pole.path.source}.volts`] : []),
        ],
      }),
    ];
  const there = from.volts * between;
  const right = there >= nature.volts * 0.9 && there <= nature.volts * 1.1;
  return [
    found(
      mainsRail,
      about,
      right ? 'fits' : 'fails',
      right
        ? `${name} is made for ${volts(nature.volts)} and gets ${volts(there)}.`
        : `${name} is made for ${volts(nature.volts)}, and ${volts(there)} reach it.`,
      {
        margin: Math.min(there / (0.9 * nature.volts), (1.1 * nature.volts) / there),
        figures: [figure('made for', nature.volts, 'V'), figure('gets', there, 'V')],
        source: 'IEC 60038: mains within 10 % of nominal (from memory)',
        remedy: right ? undefined : 'Set its voltage selector or its tap, or take one made for this voltage.',
      },
    ),
  ];
}

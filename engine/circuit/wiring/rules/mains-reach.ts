/** Mains where they must not be: on signals, d.c. supplies and coils, through whatever lies between. */
import { reachedFrom } from '../check/reach.ts';
import { found } from '../check/rule.ts';
import { list, terminalName, volts } from '../check/say.ts';
import { SIGNAL_KINDS } from '../check/signal-kinds.ts';
import type { View } from '../check/view.ts';
import type { Mains, Nature, Terminal, WiringFinding } from '../types.ts';

export const MAINS_CAUTION =
  'Before anybody touches it: mains off, locked off, and measured dead. Mains wiring belongs to a licensed electrician.';

/** Made for the few volts of a control. */
const OF_CONTROL = [...SIGNAL_KINDS, 'load'] as const;

/** Up to here a coil is one of the control voltage, in V. */
const CONTROL_VOLTS = 60;

/** What mains must never reach, contacts between them or not. */
function isOfControl({ nature }: Terminal): boolean {
  if (nature.kind === 'load')
    return nature.supply === 'dc' && (nature.volts === undefined || nature.volts <= CONTROL_VOLTS);
  return nature.kind !== 'motor-phase' && !(nature.kind === 'feed' && nature.role === 'power');
}

/** What else must not lie on mains; a contact may put a motor on its drive or on the mains. */
function isOfDrives({ nature }: Terminal): boolean {
  if (nature.kind === 'feed') return true;
  return nature.kind === 'motor-phase' && !(nature.side === 'takes' && nature.of === 'induction');
}

const PLACE =
  'rule of the trade: mains and extra-low voltage never share a conductor (IEC 60204-1, from memory)';

/** One answer for everything a pole of the mains wrongly reaches. */
export function wrongly(view: View, pole: string, nature: Mains): readonly WiringFinding[] {
  const reached = reachedFrom(
    view,
    pole,
    [...OF_CONTROL, 'motor-phase'],
    (terminal, contacts) => isOfControl(terminal) || (contacts.length === 0 && isOfDrives(terminal)),
  );
  const [nearest] = reached;
  if (!nearest) return [];
  const small = reached.some(({ terminal }) => isOfControl(terminal));
  const others = [...new Set(reached.map(({ terminal }) => terminal.device))].filter(
    (device) => device !== nearest.terminal.device,
  );
  const { contacts } = nearest;
  const closes =
    contacts.length === 0
      ? ''
      : `, as soon as ${list(contacts.map((each) => view.terminal(each)!.device))} closes`;
  const made = madeFor(nearest.terminal.nature);
  const lies = nature.volts === undefined ? 'mains' : `${volts(nature.volts)} a.c.`;
  return [
    found(
      {
        id: 'mains',
        title: small ? 'Mains reaches the control voltage' : 'Mains reaches what is made for a drive',
      },
      [pole, ...reached.slice(0, 20).map(({ terminal }) => terminal.id), ...contacts],
      'fails',
      `${terminalName(view, pole)} of the mains comes to ${terminalName(view, nearest.terminal.id)}${closes}: ${lies} ${made === undefined ? 'where a few volts belong' : `where ${volts(made)} d.c. belong`}${others.length > 0 ? `, and from there to ${list(others)}` : ''}. It destroys what it reaches, and touching any of it, even a button or a sensor on the machine, can kill.`,
      {
        source: PLACE,
        root: { ends: [pole, nearest.terminal.id], harm: 'mains' },
        remedy: `Take the wire off that joins them, and switch nothing on before. ${MAINS_CAUTION}`,
      },
    ),
  ];
}

function madeFor(nature: Nature): number | undefined {
  switch (nature.kind) {
    case 'input':
      return nature.rated;
    case 'supply':
    case 'feed':
    case 'load':
      return nature.volts;
    default:
      return undefined;
  }
}

/** Contacts moved by hand while the meter watches: buttons, limit switches, doors; relays by their test lever. */
import { pairsOf } from '../power/conductors.ts';
import type { Contact, ReadWiring, Terminal } from '../wiring/types.ts';
import { companyOf, type OhmPaths } from './ohms.ts';
import { judgeOhms, SHORT } from './say.ts';
import type { RingRow, RingStep } from './types.ts';

export function contactSteps(wiring: ReadWiring, paths: OhmPaths): readonly RingStep[] {
  const wired = new Set([...wiring.wires.values()].flatMap(({ from, to }) => [from, to]));
  const pairs = pairsOf(
    wiring,
    ({ nature, id, with: other }) =>
      nature.kind === 'contact' && (wired.has(id) || (other !== null && wired.has(other))),
  ).filter(([one, other]) => wiring.netOf.get(one.id)?.id !== wiring.netOf.get(other.id)?.id);
  const company = companyOf(wiring, paths.ways);
  const rows = pairs.flatMap(([one, other]): readonly RingRow[] => {
    const reading = (when: string | undefined): RingRow => {
      const [a, b] = [wiring.netOf.get(one.id)!.id, wiring.netOf.get(other.id)!.id];
      const band = paths.band(a, b, when === undefined ? undefined : one.device);
      const judged = judgeOhms(band, company.get(a) ?? { electronics: [], unsaid: [] });
      return {
        id: `contact:${one.id}:${when === undefined ? 'rest' : 'moved'}`,
        measured: 'ohms',
        at: [one.id],
        against: other.id,
        ...judged,
        ...(when === undefined ? {} : { when }),
        otherwise:
          judged.expect === undefined
            ? ''
            : judged.expect.high <= SHORT
              ? 'OL or some ohms: the contact is burnt or dirty, is the other kind (opening for closing), or does not move.'
              : 'A beep: the contact is welded, is the other kind (opening for closing), does not move, or something beside it bridges it.',
      };
    };
    const when = whenMoved(one.nature as Contact, one, wiring);
    return when === undefined ? [reading(undefined)] : [reading(undefined), reading(when)];
  });
  return [
    {
      id: 'contacts',
      title: 'Contacts, at rest and moved',
      says: 'Both leads on the two ends of each contact; press, trip or push it, and see the reading change. Relays and contactors are pushed in by their test lever; one without a lever is left until it has power.',
      cautions: ['Move limit switches with something that is not your finger where a slide could follow.'],
      powered: false,
      rows,
    },
  ];
}

/** Undefined where no hand can move it. */
function whenMoved(contact: Contact, terminal: Terminal, wiring: ReadWiring): string | undefined {
  const name = wiring.devices.get(terminal.device)?.name || terminal.device;
  switch (contact.moved) {
    case 'hand':
      return `with ${name} pressed or turned`;
    case 'machine':
      return `with ${name} tripped`;
    case 'coil':
      return `with ${terminal.device} pushed in`;
    case 'logic':
      return undefined;
  }
}

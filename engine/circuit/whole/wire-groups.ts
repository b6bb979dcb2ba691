/** The wires of a proposal as they are laid: cable by cable and circuit by circuit, with what is common to all said once. */
import type { Refit, WiringWire } from '../../refit/types.ts';
import { type Proposal, readWiring } from '../wiring/index.ts';
import { type Carries, circuitsOf } from '../wiring/propose/colours.ts';
import { strandsOf } from '../wiring/propose/strands.ts';
import { BY_NUMBER } from './ask-groups.ts';

export interface WireGroup {
  /** 'Protective earth', or 'Cable W2 (Emergency stop)'. */
  readonly title: string;
  /** What they have in common: 'blue, 1 mm²'; '' where nothing is. */
  readonly common: string;
  /** Why they are as thick as they are: clauses, each once; what single wires wait for stands with the wire. */
  readonly because: readonly { readonly says: string; readonly wires: number }[];
  /** In the order of their numbers. */
  readonly wires: readonly WiringWire[];
}

/** In the order in which a cabinet is wired: what may never be missing first. */
const CIRCUITS: Readonly<Record<Carries, string>> = {
  earth: 'Protective earth',
  mains: 'Mains',
  neutral: 'Mains, neutral',
  power: 'Power of the drives',
  'a.c. control': 'Control, a.c.',
  'd.c. control': 'Control, d.c.',
};

/** `wiring`: with everything that is proposed in it. */
export function wireGroupsOf({ changes, wiring, reasons }: Proposal, refit: Refit): readonly WireGroup[] {
  const fresh = changes.flatMap((change) => (change.do === 'wire' && change.new ? [change.new] : []));
  const read = readWiring(wiring, refit);
  const strands = strandsOf(read);
  const { carries } = circuitsOf(read, strands);
  const by = new Map<string, WiringWire[]>(Object.values(CIRCUITS).map((title) => [title, []]));
  for (const wire of [...fresh].sort(byWire)) {
    const title = wire.cable === null ? circuit(wire) : cable(wire.cable);
    const group = by.get(title);
    if (group) group.push(wire);
    else by.set(title, [wire]);
  }
  function cable(id: string): string {
    const name = wiring.cables[id]?.name;
    return `Cable ${id}${name ? ` (${name})` : ''}`;
  }
  function circuit(wire: WiringWire): string {
    const strand = strands.of(wire);
    return CIRCUITS[strand === undefined ? 'd.c. control' : carries(strand)];
  }
  return [...by]
    .filter(([, wires]) => wires.length > 0)
    .map(([title, wires]) => ({
      title,
      common: commonOf(wires),
      because: becauseOf(wires, reasons),
      wires,
    }));
}

/** Between why a wire is as thick as it is and the list of what that waits for. */
const WAITS = ' waits for: ';

function becauseOf(wires: readonly WiringWire[], reasons: Proposal['reasons']): WireGroup['because'] {
  const by = new Map<string, number>();
  for (const { id } of wires) {
    const reason = reasons[id];
    if (reason === undefined) continue;
    const at = reason.indexOf(WAITS);
    const says = at < 0 ? reason : `${reason.slice(0, at)} waits for what is not known yet`;
    by.set(says, (by.get(says) ?? 0) + 1);
  }
  return [...by].map(([says, count]) => ({ says, wires: count })).sort((a, b) => b.wires - a.wires);
}

const byWire = (a: WiringWire, b: WiringWire): number =>
  BY_NUMBER.compare(a.cable ?? '', b.cable ?? '') ||
  BY_NUMBER.compare(a.settings.number ?? '', b.settings.number ?? '') ||
  BY_NUMBER.compare(a.id, b.id);

function commonOf(wires: readonly WiringWire[]): string {
  return ['colour', 'section']
    .flatMap((setting) => {
      const said = new Set(wires.map(({ settings }) => settings[setting]));
      const [one] = said;
      return said.size === 1 && one !== undefined ? [one] : [];
    })
    .join(', ');
}

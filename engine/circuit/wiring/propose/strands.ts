/**
 * What bears one number: terminals that copper joins without the help of protective earth. The 0 V of two supplies that
 * meet only at the earth bar are two circuits, however well they are joined.
 */
import { Union } from '../../network/union.ts';
import type { ReadWiring, Wire } from '../types.ts';

export interface Strand {
  /** The first of its terminals in the order of their ids. */
  readonly id: string;
  readonly terminals: readonly string[];
  /** Nothing but protective earth: bars, frames, and the strips that only pass it on. */
  readonly protective: boolean;
}

export interface Strands {
  readonly all: readonly Strand[];
  /** Undefined of a terminal that is not there. */
  readonly at: (terminal: string) => Strand | undefined;
  /** The strand whose number a wire bears: of one between a circuit and earth, the circuit. */
  readonly of: (wire: Pick<Wire, 'from' | 'to'>) => Strand | undefined;
}

export function strandsOf(read: ReadWiring): Strands {
  const isEarth = (id: string) => read.terminals.get(id)?.nature.kind === 'earth';
  const links: readonly (readonly [string, string])[] = [
    ...[...read.devices.values()].flatMap(({ joins }) => joins.map(({ a, b }) => [a, b] as const)),
    ...[...read.wires.values()].map(({ from, to }) => [from, to] as const),
  ].filter(([a, b]) => read.terminals.has(a) && read.terminals.has(b));
  const union = new Union();
  const earthed = new Set<string>();
  for (const [a, b] of links) {
    if (isEarth(a) === isEarth(b)) union.join(a, b);
    else earthed.add(isEarth(a) ? b : a);
  }
  const members = new Map<string, string[]>();
  for (const id of [...read.terminals.keys()].sort()) {
    const root = union.find(id);
    const list = members.get(root);
    if (list) list.push(id);
    else members.set(root, [id]);
  }
  const byTerminal = new Map<string, Strand>();
  const all: Strand[] = [];
  for (const terminals of members.values()) {
    const protective =
      terminals.every(isEarth) ||
      (terminals.some((id) => earthed.has(id)) &&
        terminals.every((id) => read.terminals.get(id)!.nature.kind === 'joint'));
    const strand = { id: terminals[0]!, terminals, protective };
    all.push(strand);
    for (const id of terminals) byTerminal.set(id, strand);
  }
  const at = (terminal: string) => byTerminal.get(terminal);
  return {
    all,
    at,
    of: ({ from, to }) => {
      const ends = [at(from), at(to)].filter((each) => each !== undefined);
      return ends.find(({ protective }) => !protective) ?? ends[0];
    },
  };
}

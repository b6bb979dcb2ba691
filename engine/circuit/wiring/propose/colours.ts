/** What flows in a circuit, and the colour its wires usually bear: IEC 60204-1:2016, 13.2.4. */
import { Union } from '../../network/union.ts';
import type { Contact, ReadWiring, Terminal, Wire } from '../types.ts';
import type { Strand, Strands } from './strands.ts';

export type Carries = 'earth' | 'neutral' | 'mains' | 'power' | 'a.c. control' | 'd.c. control';

const COLOURS: Readonly<Record<Carries, string>> = {
  earth: 'green-yellow',
  neutral: 'light blue',
  mains: 'black',
  power: 'black',
  'a.c. control': 'red',
  'd.c. control': 'blue',
};
/** Of circuits that stay alive with the main switch off. */
const EXCEPTED = 'orange';

export const isControl = (carries: Carries): boolean =>
  carries === 'd.c. control' || carries === 'a.c. control';

export interface Circuits {
  readonly carries: (strand: Strand) => Carries;
  /** Strands on one current path through fuses, switches and main contacts bear one word. */
  readonly circuit: (strand: Strand) => string;
  readonly colour: (wire: Wire) => string;
}

/** What stands first wins where several flow in one. */
const FIRST: readonly Carries[] = ['neutral', 'mains', 'power', 'a.c. control', 'd.c. control'];

export function circuitsOf(read: ReadWiring, strands: Strands): Circuits {
  const power = new Union();
  const control = new Union();
  for (const terminal of read.terminals.values()) {
    if (terminal.with === null || !read.terminals.has(terminal.with)) continue;
    const [one, other] = [strands.at(terminal.id)!.id, strands.at(terminal.with)!.id];
    if (passesPower(terminal)) power.join(one, other);
    if (passesPower(terminal) || terminal.nature.kind === 'contact') control.join(one, other);
  }
  const found = new Map<string, Carries>();
  const note = ({ id }: Strand, what: Carries) => {
    const root = power.find(id);
    const known = found.get(root);
    if (known === undefined || FIRST.indexOf(what) < FIRST.indexOf(known)) found.set(root, what);
  };
  const alternating = new Set<string>();
  const direct = new Set<string>();
  for (const { id, nature } of read.terminals.values()) {
    const strand = strands.at(id)!;
    const root = control.find(strand.id);
    if (nature.kind === 'mains') {
      if (nature.side === 'gives') note(strand, nature.pole === 'N' ? 'neutral' : 'mains');
      else if (nature.side === 'takes') note(strand, 'mains');
      if (nature.side === 'gives' && nature.pole !== 'N') alternating.add(root);
    } else if (nature.kind === 'winding') {
      if (nature.side === 'primary') note(strand, 'mains');
      else alternating.add(root);
    } else if (nature.kind === 'rectifier' || (nature.kind === 'feed' && nature.role === 'power'))
      note(strand, 'power');
    else if (nature.kind === 'supply') direct.add(root);
  }
  const carries = (strand: Strand): Carries => {
    if (strand.protective) return 'earth';
    const root = control.find(strand.id);
    return (
      found.get(power.find(strand.id)) ??
      (alternating.has(root) && !direct.has(root) ? 'a.c. control' : 'd.c. control')
    );
  };
  const excepted = exceptedOf(read, strands);
  return {
    carries,
    circuit: ({ id }) => power.find(id),
    colour: (wire) => {
      const strand = strands.of(wire);
      if (strand === undefined) return '';
      const what = carries(strand);
      return excepted(wire, strand) && what !== 'neutral' && what !== 'earth' ? EXCEPTED : COLOURS[what];
    },
  };
}

/** Whether the current of a device goes on through a terminal: a fuse, a switch, a main contact. */
export const passesPower = ({ nature }: Terminal): boolean =>
  nature.kind === 'protection' ||
  (nature.kind === 'mains' && nature.side === 'passes') ||
  (nature.kind === 'contact' && (nature as Contact).role === 'main');

/** Whether a wire is alive with the main switch off, those that lead the mains to that switch left aside. */
function exceptedOf(read: ReadWiring, strands: Strands): (wire: Wire, strand: Strand) => boolean {
  const isSwitch = (id: string): boolean => {
    const nature = read.terminals.get(id)?.nature;
    return nature?.kind === 'protection' && nature.form === 'switch';
  };
  if (![...read.terminals.keys()].some(isSwitch)) return () => false;
  const beyond = (id: string): Strand | undefined => {
    const terminal = read.terminals.get(id)!;
    if (isSwitch(id) || terminal.with === null) return undefined;
    return passesPower(terminal) || terminal.nature.kind === 'contact'
      ? strands.at(terminal.with)
      : undefined;
  };
  const alive = new Set<Strand>();
  const queue = [...read.terminals.values()].flatMap(({ id, nature }) =>
    nature.kind === 'mains' && nature.side === 'gives' ? [strands.at(id)!] : [],
  );
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    if (alive.has(at) || at.protective) continue;
    alive.add(at);
    for (const id of at.terminals) {
      const next = beyond(id);
      if (next !== undefined) queue.push(next);
    }
  }
  const leads = (end: string, seen: Set<Strand>): boolean => {
    if (isSwitch(end)) return true;
    const { nature } = read.terminals.get(end)!;
    if (nature.kind === 'joint' || (nature.kind === 'mains' && nature.side === 'gives')) return true;
    const next = beyond(end);
    if (next === undefined || seen.has(next)) return false;
    seen.add(next);
    return next.terminals.some((id) => id !== read.terminals.get(end)!.with && isOnWay(id, seen));
  };
  // Behind a fuse a joint alone does not tell where it leads.
  const isOnWay = (id: string, seen: Set<Strand>): boolean =>
    isSwitch(id) || (read.terminals.get(id)!.nature.kind !== 'joint' && leads(id, seen));
  return ({ from, to }, strand) =>
    alive.has(strand) && ![from, to].every((end) => leads(end, new Set([strand])));
}

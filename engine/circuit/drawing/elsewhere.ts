/** Cross references: in which other diagrams a symbol, or what belongs to it, is drawn. */
import { andList } from '../../quantity/words.ts';
import { terminalsIn, terminalsOf } from './terminals.ts';
import type { Piece, Plan } from './types.ts';

const isCoil = (symbol: string): boolean => symbol.startsWith('coil');
const isContact = (symbol: string): boolean => symbol.startsWith('contact');

/** For each piece of a circuit: 'also in Stopping', and of a coil 'contacts in Mains and power'. */
export function elsewhereOf(plan: Plan, circuit: string): (piece: Piece) => readonly string[] {
  const titles = new Map(plan.circuits.map(({ id, title }) => [id, title]));
  const circuitsAt = new Map<string, Set<string>>();
  for (const { from, to, circuit: of } of plan.wires)
    for (const end of [from, to]) circuitsAt.set(end, (circuitsAt.get(end) ?? new Set()).add(of));
  const contacts = new Map(
    plan.devices.map(({ id, groups }) => [
      id,
      groups.filter(({ symbol }) => isContact(symbol)).flatMap(terminalsIn),
    ]),
  );
  const named = (terminals: readonly string[], isIn: (circuit: string) => boolean): string => {
    const found = new Set(terminals.flatMap((each) => [...(circuitsAt.get(each) ?? [])]).filter(isIn));
    return andList([...titles].flatMap(([id, title]) => (found.has(id) ? [`“${title}”`] : [])));
  };
  return (piece) => {
    if ('points' in piece.group) return [];
    const also = 'poles' in piece.group ? named(terminalsOf(piece), (each) => each !== circuit) : '';
    const moved = isCoil(piece.group.symbol) ? named(contacts.get(piece.device) ?? [], () => true) : '';
    return [...(also ? [`the same one also in ${also}`] : []), ...(moved ? [`contacts in ${moved}`] : [])];
  };
}

/**
 * A circuit as formulas for a general satisfiability solver. Written from what the kinds of element say of themselves, and
 * nothing of the simulation: no nets, no times, no settling. What it finds are all positions of hands and coils in which
 * nothing would move.
 */
import Logic, { type Operand } from 'logic-solver';
import type { StopCircuit, StopElement } from '../../refit/types.ts';

/** What is wrong, by the names in the drawing. */
export type Wrong =
  | { readonly kind: 'closed' | 'open'; readonly contact: string }
  | { readonly kind: 'off'; readonly wire: string }
  | { readonly kind: 'touch'; readonly terminals: readonly [string, string] }
  | { readonly kind: 'stuck'; readonly mover: string; readonly at: 0 | 1 };

interface Contact {
  readonly id: string;
  readonly ends: readonly [string, string];
  readonly mover: string;
  readonly closedWhenOn: boolean;
  readonly linked: boolean;
  readonly main: boolean;
}

const many = (text: string | undefined, usual: number): number => (text === undefined ? usual : Number(text));

/** Contacts as their kind numbers them: those that close 13-14, those that open 11-12 under a hand and 51-52 beside a coil. */
function contactsOf({ id, kind, settings }: StopElement): readonly Contact[] {
  const coil = ['relay', 'contactor', 'delayed-relay'].includes(kind);
  const usual = { button: [1, 0], relay: [2, 1], contactor: [1, 1], 'delayed-relay': [1, 0] }[kind] ?? [0, 2];
  const linked = coil && settings.linked !== 'no';
  const made: Contact[] = [];
  const add = (one: number, two: number, extra: Omit<Contact, 'id' | 'ends' | 'mover'>) =>
    made.push({ id: `${id} ${one}-${two}`, ends: [`${id}.${one}`, `${id}.${two}`], mover: id, ...extra });
  if (kind === 'contactor')
    for (let n = 0; n < many(settings.main, 3); n++)
      add(2 * n + 1, 2 * n + 2, { closedWhenOn: true, linked, main: true });
  for (let n = 1; n <= many(settings.no, usual[0]!); n++)
    add(10 * n + 3, 10 * n + 4, { closedWhenOn: true, linked: linked && kind !== 'contactor', main: false });
  for (let n = coil ? 5 : 1, left = many(settings.nc, usual[1]!); left > 0; n++, left--)
    add(10 * n + 1, 10 * n + 2, { closedWhenOn: false, linked, main: false });
  return made;
}

export interface StableStates {
  /** 'S1 K2': what is pushed and pulled in; the rest is not. */
  readonly stable: ReadonlySet<string>;
  /** Whether hands and coils can be put so that plus meets minus. */
  readonly canShort: boolean;
}

export function stableStates(circuit: StopCircuit, wrong: readonly Wrong[]): StableStates {
  const elements = Object.values(circuit.elements);
  const supplies = elements.filter(({ kind }) => kind === 'supply');
  const coils = elements.filter(({ kind }) => ['relay', 'contactor', 'delayed-relay'].includes(kind));
  const hands = elements.filter((each) => !supplies.includes(each) && !coils.includes(each));
  const contacts = elements
    .filter((each) => !supplies.includes(each))
    .flatMap((each) => [...contactsOf(each)]);

  const joins: [string, string, Operand][] = [];
  for (const { id, from, to } of Object.values(circuit.wires))
    if (!wrong.some((each) => each.kind === 'off' && each.wire === id)) joins.push([from, to, Logic.TRUE]);
  for (const { id, settings } of supplies)
    if (settings.earthed !== 'no') joins.push([`${id}.minus`, 'frame', Logic.TRUE]);
  for (const each of wrong) if (each.kind === 'touch') joins.push([...each.terminals, Logic.TRUE]);
  for (const contact of contacts) joins.push([...contact.ends, closed(contact, contacts, wrong)]);

  const { names, ways } = grouped(joins);
  const nameOf = (terminal: string): string => names.get(terminal) ?? terminal;
  const rails = supplies.map(({ id }) => ({
    id,
    plus: reached(nameOf(`${id}.plus`), ways),
    minus: reached(nameOf(`${id}.minus`), ways),
  }));
  const at = (rail: ReadonlyMap<string, Operand>, terminal: string): Operand =>
    rail.get(nameOf(terminal)) ?? Logic.FALSE;
  const short = Logic.or(...rails.map(({ plus, id }) => at(plus, `${id}.minus`)));

  const solver = new Logic.Solver();
  for (const { id } of [...hands, ...coils]) solver.require(Logic.or(id, `-${id}`));
  const canShort = solver.solveAssuming(short) !== null;
  solver.forbid(short);
  for (const { id } of coils) {
    const held = wrong.find((each) => each.kind === 'stuck' && each.mover === id);
    const pulled = Logic.or(
      ...rails.flatMap(({ plus, minus }) => [
        Logic.and(at(plus, `${id}.A1`), at(minus, `${id}.A2`)),
        Logic.and(at(plus, `${id}.A2`), at(minus, `${id}.A1`)),
      ]),
    );
    solver.require(
      Logic.equiv(id, held?.kind === 'stuck' ? (held.at === 1 ? Logic.TRUE : Logic.FALSE) : pulled),
    );
  }
  const stable = new Set<string>();
  for (let found = solver.solve(); found; found = solver.solve()) {
    const ids = [...hands, ...coils].map(({ id }) => id);
    const on = ids.filter((id) => found!.evaluate(id));
    stable.add(on.join(' '));
    solver.forbid(Logic.and(...ids.map((id) => (on.includes(id) ? id : `-${id}`))));
  }
  return { stable, canShort };
}

/** When a contact is closed. A stuck one keeps those that are linked to it and close in the other position open. */
function closed(contact: Contact, all: readonly Contact[], wrong: readonly Wrong[]): Operand {
  for (const each of wrong) {
    if (each.kind !== 'closed' && each.kind !== 'open') continue;
    if (each.contact === contact.id) return each.kind === 'closed' ? Logic.TRUE : Logic.FALSE;
    const stuck = all.find(({ id }) => id === each.contact)!;
    if (each.kind === 'open' || stuck.mover !== contact.mover || !stuck.linked || !contact.linked) continue;
    // Auxiliary contacts of a contactor do not hold its armature.
    const holds = stuck.main || !all.some(({ mover, main }) => mover === stuck.mover && main);
    if (holds && stuck.closedWhenOn !== contact.closedWhenOn) return Logic.FALSE;
  }
  return contact.closedWhenOn ? contact.mover : `-${contact.mover}`;
}

type Join = readonly [one: string, other: string, when: Operand];

/** Terminals that are always joined go by one name; what is left are joins that depend on something. */
function grouped(joins: readonly Join[]): { names: ReadonlyMap<string, string>; ways: readonly Join[] } {
  const names = new Map<string, string>();
  for (const [a, b] of joins) names.set(a, a).set(b, b);
  for (const [a, b, when] of joins) {
    if (when !== Logic.TRUE) continue;
    const [kept, gone] = [names.get(a)!, names.get(b)!];
    for (const [terminal, name] of names) if (name === gone) names.set(terminal, kept);
  }
  return {
    names,
    ways: joins
      .filter(([, , when]) => when !== Logic.TRUE && when !== Logic.FALSE)
      .map(([a, b, when]) => [names.get(a)!, names.get(b)!, when]),
  };
}

/**
 * For each place, when a path leads to it: it was reached a step before, or a neighbour was. No path needs more steps than
 * there are places.
 */
function reached(from: string, ways: readonly Join[]): ReadonlyMap<string, Operand> {
  let now = new Map<string, Operand>([[from, Logic.TRUE]]);
  const places = new Set([from]);
  for (const [a, b] of ways) places.add(a).add(b);
  for (let step = 1; step < places.size; step++) {
    const next = new Map<string, Operand[]>([...now].map(([place, when]) => [place, [when]]));
    for (const [a, b, when] of ways)
      for (const [here, there] of [
        [a, b],
        [b, a],
      ] as const) {
        const before = now.get(here);
        if (before !== undefined && there !== from)
          next.set(there, [...(next.get(there) ?? []), Logic.and(before, when)]);
      }
    now = new Map([...next].map(([place, found]) => [place, Logic.or(...found)]));
  }
  return now;
}

/** Which part of the stop circuit a fault keeps on or holds closed: each is mended in its own way. */
import { domains } from './domains.ts';
import type { NamedFault } from './faults.ts';
import type { Contact, Doing, Model } from './model.ts';
import { networkOf } from './network.ts';

/**
 * 'start': the start button and what lies behind it. 'channel': what asks for a stop, up to the coils it holds. 'enable': from
 * the control to the enables of the drives; 'output' and 'input' are the ends of it, inside control and drive. 'told': what the
 * control is told to stop by; 'ear' is that input itself. 'power': main contacts and the wires of the drives' power. 'relay':
 * contacts and coils between. 'proof': contacts that open with a contactor or relay and say that it has let go. 'torque-off':
 * safe torque off. 'cable': wires of one cable that touch each other. 'none': something only opens, or stays off.
 */
export type FaultPlace =
  | 'start'
  | 'channel'
  | 'enable'
  | 'output'
  | 'input'
  | 'told'
  | 'ear'
  | 'power'
  | 'relay'
  | 'proof'
  | 'torque-off'
  | 'brake'
  | 'lock'
  | 'cable'
  | 'unit'
  | 'latch'
  | 'delay'
  | 'none';

const STOPS = new Set<Doing['role']>(['stop', 'emergency', 'door', 'limit', 'key', 'other']);

export function placeOfFault(model: Model, fault: NamedFault): FaultPlace {
  const [first] = fault.faults;
  switch (first?.kind) {
    case 'contact-closed':
      return placeOfContact(model, model.contacts[first.contact]!);
    case 'stuck':
      return placeOfMover(model, first.mover, first.at);
    case 'unit-contact':
      return 'unit';
    case 'no-latch':
      return 'latch';
    case 'no-delay':
      return 'delay';
    case 'touch':
      return placeOfTouch(model, first.nodes);
    default:
      return 'none';
  }
}

function placeOfMover(model: Model, at: number, position: 0 | 1): FaultPlace {
  const { does, kind } = model.movers[at]!;
  // What a hand does not move stays as it is while the machine runs; a start that does nothing starts nothing.
  if (does) return STOPS.has(does.role) ? 'channel' : position === 1 ? 'start' : 'none';
  if (position === 0) return 'none';
  if (model.motions.some(({ brake }) => brake === at)) return 'brake';
  if (model.locks.some(({ lock }) => lock === at)) return 'lock';
  if (model.controls.some(({ enable }) => enable === at)) return 'output';
  if (model.controls.some(({ stop }) => stop === at)) return 'ear';
  if (model.drives.some(({ enable }) => enable === at)) return 'input';
  if (model.drives.some(({ sto }) => sto.includes(at))) return 'torque-off';
  if (kind !== 'coil') return 'unit';
  return model.contacts.some(({ main, mover }) => main && mover === at) ? 'power' : 'relay';
}

function placeOfContact(model: Model, contact: Contact): FaultPlace {
  const { mover, main, closedAt, a, b } = contact;
  if (main) return 'power';
  const does = model.movers[mover]?.does;
  if (does) return STOPS.has(does.role) ? 'channel' : 'start';
  if (model.controls.some(({ enable }) => enable === mover)) return 'enable';
  if (model.drives.some(({ output }) => output === mover)) return 'brake';
  const fed = fedFrom(model, [a, b]);
  if (fed === 'told' || fed === 'brake' || fed === 'lock') return fed;
  if (closedAt === 0) return 'proof';
  return holdsItself(model, contact) ? 'start' : 'relay';
}

/** Whether a contact feeds the coil that closes it, past the start button. */
function holdsItself(model: Model, { mover, a, b }: Contact): boolean {
  const { net } = networkOf(model);
  const coil = model.movers[mover];
  return (
    coil !== undefined &&
    coil.a >= 0 &&
    [a, b].some((node) => [coil.a, coil.b].some((end) => net[end] === net[node]))
  );
}

function placeOfTouch(model: Model, nodes: readonly number[]): FaultPlace {
  const across = model.contacts.find(
    ({ a, b, fuse }) => !fuse && nodes.length === 2 && nodes.includes(a) && nodes.includes(b),
  );
  if (across) return placeOfContact(model, across);
  const { net } = networkOf(model);
  const pluses = plusNets(model);
  const onFrame = nodes.includes(model.frame);
  const [node, ...others] = nodes.filter((each) =>
    onFrame ? each !== model.frame : !pluses.has(net[each]!),
  );
  if (nodes.length > 2 || node === undefined || others.length > 0) return 'cable';
  const source = domains(model)[node]!;
  if (source >= 0 && feedsDrives(model, source)) return 'power';
  const fed = fedFrom(model, [node]);
  if (fed) return fed;
  const roles = wayFromPlus(model, node).flatMap(({ mover }) => model.movers[mover]?.does?.role ?? []);
  if (roles.some((role) => STOPS.has(role))) return 'channel';
  return roles.length > 0 ? 'start' : 'relay';
}

/** The return side may be earthed together with that of other supplies, so it says nothing of whose it is. */
function feedsDrives(model: Model, source: number): boolean {
  const of = domains(model);
  const { net } = networkOf(model);
  const minuses = new Set(model.sources.map(({ minus }) => net[minus]!));
  return model.contacts.some(
    ({ main, a, b }) => main && [a, b].every((node) => of[node] === source && !minuses.has(net[node]!)),
  );
}

/** Both sides of every fuse behind a plus count as plus. */
function plusNets(model: Model): ReadonlySet<number> {
  const { net } = networkOf(model);
  const found = new Set(model.sources.map(({ plus }) => net[plus]!));
  for (const { fuse, a, b } of model.contacts)
    if (fuse && (found.has(net[a]!) || found.has(net[b]!))) {
      found.add(net[a]!);
      found.add(net[b]!);
    }
  return found;
}

/** The contacts on a shortest way from plus to a node, all of them closed. */
function wayFromPlus(model: Model, node: number): readonly Contact[] {
  const { net } = networkOf(model);
  const minuses = new Set(model.sources.map(({ minus }) => net[minus]!));
  const came = new Map<number, Contact | undefined>([...plusNets(model)].map((each) => [each, undefined]));
  const queue = [...came.keys()];
  for (let at = 0; at < queue.length && !came.has(net[node]!); at++)
    for (const contact of model.contacts) {
      const ends = [net[contact.a]!, net[contact.b]!] as const;
      const to = ends[0] === queue[at] ? ends[1] : ends[1] === queue[at] ? ends[0] : -1;
      if (to < 0 || came.has(to) || minuses.has(to)) continue;
      came.set(to, contact);
      queue.push(to);
    }
  const way: Contact[] = [];
  for (let at = net[node]!, by = came.get(at); by; by = came.get(at)) {
    way.push(by);
    at = net[by.a] === at ? net[by.b]! : net[by.a]!;
  }
  return way;
}

/** What current at these nodes goes to at the end, where everything it reaches is of one sort. */
function fedFrom(model: Model, nodes: readonly number[]): FaultPlace | undefined {
  const { net } = networkOf(model);
  const ends = new Set([...plusNets(model), ...model.sources.map(({ minus }) => net[minus]!)]);
  const reached = new Set(nodes.map((node) => net[node]!).filter((each) => !ends.has(each)));
  for (let size = -1; size !== reached.size; ) {
    size = reached.size;
    for (const { a, b } of model.contacts) {
      const [from, to] = [net[a]!, net[b]!];
      if (reached.has(from) && !ends.has(to)) reached.add(to);
      if (reached.has(to) && !ends.has(from)) reached.add(from);
    }
  }
  const sorts = new Set(
    model.movers.flatMap(({ a, b }, at) =>
      a >= 0 && (reached.has(net[a]!) || reached.has(net[b]!)) ? [placeOfMover(model, at, 1)] : [],
    ),
  );
  const [sort] = sorts;
  if (sorts.size !== 1) return undefined;
  return sort === 'input'
    ? 'enable'
    : sort === 'ear'
      ? 'told'
      : sort === 'brake' || sort === 'lock' || sort === 'torque-off'
        ? sort
        : undefined;
}

/** The metal of a wiring as a circuit: wires, joints, contacts as they stand, fuses whole. Nodes are terminals. */
import { ohmsPerMetre, warmFactor } from '../../tables/conductor-resistance.ts';
import type { Element } from '../network/index.ts';
import type { Contact, ReadWiring, Terminal, Wire } from '../wiring/types.ts';

/** Of a wire whose length or area is not known, and of metal inside a device. */
export const SHORT_OHMS = 1e-3;
/** Of a closed contact and of a fuse: common practice, no source. */
export const CONTACT_OHMS = 0.01;

/** Resistance of a wire in Ω at a temperature in °C; undefined where length or area is not known. */
export function wireOhms(wire: Wire, celsius = 20): number | undefined {
  if (wire.length === undefined || wire.section === undefined) return undefined;
  return ohmsPerMetre(wire.section * 1e6) * wire.length * warmFactor(celsius);
}

export const wireElement = (id: string): string => `wire ${id}`;
export const pairElement = (a: string, b: string): string => `pair ${a < b ? `${a} ${b}` : `${b} ${a}`}`;

/** Whether a contact is closed when the machine runs: coils pulled in, buttons and limit switches as they lie. */
export function closedRunning(contact: Contact): boolean {
  if (contact.rests === true) return closedAtRest(contact);
  if (contact.moved === 'coil' || contact.moved === 'logic') return contact.closes === 'when-on';
  return true;
}

/** Whether a contact is closed with the power off and nobody near. */
export const closedAtRest = (contact: Contact): boolean => contact.closes === 'when-off';

/** Every pair of terminals once, the one that names the other first in the order of ids. */
export function pairsOf(
  wiring: ReadWiring,
  is: (terminal: Terminal) => boolean,
): readonly (readonly [Terminal, Terminal])[] {
  const seen = new Set<string>();
  const pairs: (readonly [Terminal, Terminal])[] = [];
  for (const terminal of wiring.terminals.values()) {
    if (!is(terminal) || terminal.with === null || seen.has(terminal.id)) continue;
    const other = wiring.terminals.get(terminal.with);
    if (!other || other.id === terminal.id) continue;
    seen.add(terminal.id);
    seen.add(other.id);
    pairs.push([terminal, other]);
  }
  return pairs;
}

/** Wires, joints and what closes, as elements. */
export function conductorElements(
  wiring: ReadWiring,
  options: {
    readonly closed: (terminal: Terminal, contact: Contact) => boolean;
    /** °C. */
    readonly warm?: number;
    /** Ids of wires left out, as if pulled off. */
    readonly without?: ReadonlySet<string>;
  },
): Element[] {
  const elements: Element[] = [];
  for (const wire of wiring.wires.values()) {
    if (options.without?.has(wire.id) || wire.from === wire.to) continue;
    if (!wiring.terminals.has(wire.from) || !wiring.terminals.has(wire.to)) continue;
    elements.push({
      kind: 'resistor',
      id: wireElement(wire.id),
      a: wire.from,
      b: wire.to,
      ohms: Math.max(1e-6, wireOhms(wire, options.warm) ?? SHORT_OHMS),
    });
  }
  const joined = new Set<string>();
  for (const device of wiring.devices.values())
    for (const { a, b } of device.joins) {
      const id = `join ${pairElement(a, b)}`;
      if (a === b || joined.has(id) || !wiring.terminals.has(a) || !wiring.terminals.has(b)) continue;
      joined.add(id);
      elements.push({ kind: 'resistor', id, a, b, ohms: SHORT_OHMS / 10 });
    }
  for (const [one, other] of pairsOf(wiring, ({ nature }) => nature.kind === 'contact'))
    if (options.closed(one, one.nature as Contact))
      elements.push({
        kind: 'resistor',
        id: pairElement(one.id, other.id),
        a: one.id,
        b: other.id,
        ohms: CONTACT_OHMS,
      });
  for (const [one, other] of pairsOf(wiring, ({ nature }) => nature.kind === 'protection'))
    elements.push({
      kind: 'resistor',
      id: pairElement(one.id, other.id),
      a: one.id,
      b: other.id,
      ohms: CONTACT_OHMS,
    });
  for (const [one, other] of pairsOf(
    wiring,
    ({ nature }) => nature.kind === 'mains' && nature.side === 'passes',
  ))
    elements.push({
      kind: 'resistor',
      id: pairElement(one.id, other.id),
      a: one.id,
      b: other.id,
      ohms: CONTACT_OHMS,
    });
  return elements;
}

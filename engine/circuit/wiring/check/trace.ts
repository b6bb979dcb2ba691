/** From a terminal to what can put a voltage on it: through wires, fuses, contacts and resistors. */
import type { Component } from './components.ts';
import type { View } from './view.ts';

export interface Path {
  /** The terminal that gives. */
  readonly source: string;
  /** First ends of the contacts on the way, those that lie beside each other included. */
  readonly contacts: readonly string[];
  /** First ends of the resistors on the way. */
  readonly resistors: readonly string[];
}

const SOURCES = [
  'supply',
  'output',
  'differential-output',
  'analogue-output',
  'mains',
  'winding',
  'motor-phase',
  'sensor',
] as const;
/** More than this many pieces of a chain of contacts is no chain of contacts. */
const MOST = 48;

interface Stop {
  readonly rail: Component;
  readonly entry: string;
  readonly contacts: ReadonlySet<string>;
  readonly resistors: ReadonlySet<string>;
}

/** Every source that can be reached; the nearest first. Looks no further behind a supply or the mains. */
export function trace(view: View, from: string): readonly Path[] {
  const first = view.rail(from);
  if (!first) return [];
  const seen = new Map<
    Component,
    { contacts: Set<string>; resistors: Set<string>; before: Component | null }
  >();
  seen.set(first, { contacts: new Set(), resistors: new Set(), before: null });
  const queue: Stop[] = [
    { rail: first, entry: from, contacts: seen.get(first)!.contacts, resistors: seen.get(first)!.resistors },
  ];
  const paths: Path[] = [];
  for (let at = 0; at < queue.length && at < MOST; at++) {
    const { rail, contacts, resistors } = queue[at]!;
    let stiff = false;
    for (const kind of SOURCES)
      for (const source of view.inRail(rail, kind)) {
        if (source === from || !gives(view, source)) continue;
        paths.push({ source, contacts: [...contacts].sort(), resistors: [...resistors].sort() });
        stiff ||= kind === 'supply' || kind === 'mains' || kind === 'winding';
      }
    if (stiff) continue;
    for (const kind of ['contact', 'resistor'] as const)
      for (const end of view.inRail(rail, kind)) {
        const far = view.terminal(end)!.with;
        const next = far === null ? undefined : view.rail(far);
        if (far === null || !next || next === rail) continue;
        const pole = firstOf(end, far);
        const known = seen.get(next);
        if (known) {
          // A contact beside one that has been passed: current may take either.
          if (known.before === rail) (kind === 'contact' ? known.contacts : known.resistors).add(pole);
          continue;
        }
        const made = { contacts: new Set(contacts), resistors: new Set(resistors), before: rail };
        (kind === 'contact' ? made.contacts : made.resistors).add(pole);
        seen.set(next, made);
        queue.push({ rail: next, entry: far, contacts: made.contacts, resistors: made.resistors });
      }
  }
  return paths;
}

function gives(view: View, id: string): boolean {
  const nature = view.terminal(id)!.nature;
  switch (nature.kind) {
    case 'mains':
    case 'motor-phase':
    case 'sensor':
      return nature.side === 'gives';
    case 'winding':
      return nature.side === 'secondary';
    default:
      return true;
  }
}

/** Both ends of a contact go by the name of the first. */
const firstOf = (...ends: readonly string[]): string => ends.toSorted()[0]!;

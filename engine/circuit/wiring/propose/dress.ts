/** Number, colour, section and ferrule of wires, and why they have this section. */

import type { Refit } from '../../../refit/types.ts';
import type { Drawn } from '../../power/given.ts';
import { readWiring } from '../read.ts';
import type { ReadWiring } from '../types.ts';
import { circuitsOf } from './colours.ts';
import { Sections } from './sections.ts';
import { type Strand, type Strands, strandsOf } from './strands.ts';

export interface Dressed {
  /** Settings by wire. */
  readonly settings: ReadonlyMap<string, Readonly<Record<string, string>>>;
  /** By wire: why it has its section, or what that waits for. */
  readonly reasons: ReadonlyMap<string, string>;
}

/** On all protective conductors alike. */
const EARTH = 'PE';

/**
 * @param refit with the whole wiring
 * @param fresh ids of the wires to dress; what is typed of a wire is left to the caller to keep
 * @param cables why a cable has its section, by its id
 * @param drawn what has been worked out of the drives
 */
export function dress(
  refit: Refit,
  fresh: ReadonlySet<string>,
  cables: ReadonlyMap<string, string> = new Map(),
  drawn: Drawn = {},
): Dressed {
  const settings = new Map<string, Readonly<Record<string, string>>>();
  const reasons = new Map<string, string>();
  if (fresh.size === 0) return { settings, reasons };
  const read = readWiring(refit.wiring, refit);
  const strands = strandsOf(read);
  const circuits = circuitsOf(read, strands);
  const sections = new Sections(refit, read, strands, circuits, drawn);
  const numbers = numbersOf(read, strands, fresh);
  for (const id of fresh) {
    const wire = read.wires.get(id)!;
    const number = { number: numbers.get(id)! };
    if (wire.cable !== null) {
      const colour = strands.of(wire)?.protective ? { colour: circuits.colour(wire) } : {};
      settings.set(id, { ...number, ...colour });
      reasons.set(
        id,
        cables.get(wire.cable) ??
          (wire.section === undefined
            ? `section waits for: that of its cable ${wire.cable}`
            : `section of its cable ${wire.cable}, as it is written`),
      );
      continue;
    }
    const { area, because } = sections.of(wire);
    settings.set(id, {
      ...number,
      colour: circuits.colour(wire),
      ...(area === undefined ? {} : { section: `${area} mm²` }),
      ferrule: 'insulated',
    });
    reasons.set(id, because);
  }
  return { settings, reasons };
}

/** One number for each strand: the one it bears already, or the next that is free. */
function numbersOf(
  read: ReadWiring,
  strands: Strands,
  fresh: ReadonlySet<string>,
): ReadonlyMap<string, string> {
  const given = new Map<Strand | undefined, string>();
  const taken = new Set<string>();
  for (const wire of read.wires.values()) {
    if (wire.number === '') continue;
    taken.add(wire.number);
    const strand = strands.of(wire);
    if (strand && !given.has(strand)) given.set(strand, wire.number);
  }
  const made = new Map<string, string>();
  let next = 1;
  for (const id of [...fresh].sort((a, b) => order(a) - order(b))) {
    const strand = strands.of(read.wires.get(id)!);
    let number = strand?.protective ? EARTH : given.get(strand);
    if (number === undefined) {
      while (taken.has(String(next))) next++;
      number = String(next);
      taken.add(number);
      given.set(strand, number);
    }
    made.set(id, number);
  }
  return made;
}

const order = (id: string): number => Number(/\d+$/.exec(id)?.[0] ?? 0);

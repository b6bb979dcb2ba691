/** Short words for the cells of lists. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Cable, Nature, ReadWiring, Terminal, Wire } from '../wiring/types.ts';

const collator = new Intl.Collator('en', { numeric: true });
/** K2 before K10. */
export const inOrder = (a: string, b: string): number => collator.compare(a, b);

export const numberOf = ({ number, id }: Wire): string => number || id;

/** '0.75' for 0.75 mm²; empty while it is not known. */
export const sectionOf = (section: number | undefined): string =>
  section === undefined ? '' : String(Number((section * 1e6).toPrecision(4)));

export const lengthOf = (length: number | undefined): string =>
  length === undefined ? '' : String(Number(length.toPrecision(4)));

export const ferruleOf = ({ ferrule, section }: Wire): string =>
  ferrule || (section === undefined ? '' : sectionOf(section));

export const shieldOf = ({ shield, twisted }: Cable): string =>
  [
    shield === 'unknown' ? 'shield not known' : shield === 'none' ? 'no shield' : `shield of ${shield}`,
    twisted ? 'twisted' : '',
  ]
    .filter(Boolean)
    .join(', ');

/** The other ends of a terminal's wires, in order. */
export function farEnds(
  read: ReadWiring,
): ReadonlyMap<string, readonly { readonly wire: Wire; readonly far: string }[]> {
  const ends = new Map<string, { wire: Wire; far: string }[]>();
  const add = (near: string, far: string, wire: Wire) => {
    const own = ends.get(near);
    if (own) own.push({ wire, far });
    else ends.set(near, [{ wire, far }]);
  };
  for (const wire of read.wires.values()) {
    add(wire.from, wire.to, wire);
    add(wire.to, wire.from, wire);
  }
  for (const own of ends.values()) own.sort((a, b) => inOrder(a.far, b.far));
  return ends;
}

const sayVolts = (volts: number | undefined): string =>
  volts === undefined ? '' : `, ${formatQuantity(volts, 'V', { digits: 3 })}`;

/** What a terminal is, in words a person who does not draw circuits understands. */
export function sayNature(nature: Nature): string {
  switch (nature.kind) {
    case 'output':
      return {
        'push-pull': 'output that drives high and low',
        sinking: 'output that pulls down to 0 V (NPN)',
        sourcing: 'output that gives plus (PNP)',
      }[nature.stage];
    case 'input':
      return {
        opto: 'input kept apart by light',
        sinking: 'input that wants plus (PNP)',
        sourcing: 'input that is pulled down to 0 V (NPN)',
        logic: 'logic input',
      }[nature.form];
    case 'differential-output':
      return `one of a pair that sends (${nature.half})`;
    case 'differential-input':
      return `one of a pair that receives (${nature.half})`;
    case 'analogue-output':
      return 'gives an analogue voltage';
    case 'analogue-input':
      return 'reads an analogue voltage';
    case 'supply':
      return `gives ${nature.pole} of a supply${sayVolts(nature.volts)}`;
    case 'feed':
      return `is fed with ${nature.pole}${sayVolts(nature.volts)}`;
    case 'common':
      return `common of ${nature.of}`;
    case 'load':
      return { coil: 'coil', valve: 'valve', brake: 'brake coil', lamp: 'lamp', fan: 'fan', other: 'load' }[
        nature.what
      ];
    case 'contact':
      return `${nature.role === 'main' ? 'main contact' : 'contact'} that ${nature.closes === 'when-on' ? 'closes' : 'opens'}`;
    case 'motor-phase':
      return nature.side === 'gives' ? 'feeds a motor' : 'winding of a motor';
    case 'mains':
      return `mains ${nature.pole}`;
    case 'earth':
      return 'protective earth';
    case 'shield':
      return 'shield';
    case 'joint':
      return 'joint';
    case 'protection':
      return {
        fuse: 'fuse',
        breaker: nature.release ? 'motor circuit breaker' : 'circuit breaker',
        residual: 'residual current device',
        switch: 'switch',
      }[nature.form];
    case 'winding':
      return `${nature.side} winding`;
    case 'rectifier':
      return `rectifier, ${nature.leg}`;
    case 'resistor':
      return 'resistor';
    case 'diode':
      return `diode, ${nature.leg}`;
    case 'sensor':
      return nature.side === 'gives' ? 'signal of a sensor' : 'takes the signal of a sensor';
    case 'unclear':
      return 'nobody has said what it is';
  }
}

export const sayTerminal = ({ name, nature }: Terminal): string => {
  const words = sayNature(nature);
  return name && name !== words ? `${name} (${words})` : words;
};

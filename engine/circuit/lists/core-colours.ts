/**
 * Colours that the cores of a cable usually bear, as a guess to hold against the cable in hand.
 *
 * Cables for signals count white, brown, green, yellow, grey, pink, blue, red, black, violet (common practice; pairs
 * are neighbours in this order); cables for power have black cores with numbers. Letters as in IEC 60757.
 */
import type { Cable, ReadWiring, Wire } from '../wiring/types.ts';

const SIGNAL = [
  'white',
  'brown',
  'green',
  'yellow',
  'grey',
  'pink',
  'blue',
  'red',
  'black',
  'violet',
] as const;
const LETTERS: Readonly<Record<(typeof SIGNAL)[number], string>> = {
  white: 'WH',
  brown: 'BN',
  green: 'GN',
  yellow: 'YE',
  grey: 'GY',
  pink: 'PK',
  blue: 'BU',
  red: 'RD',
  black: 'BK',
  violet: 'VT',
};
/** From this section on, in m², and in cables of motors, cores are numbered. */
const POWER = 1e-6;

/** By wire, of those of which nobody has said the colour: 'white (WH)?'. */
export function usualColours(read: ReadWiring, cable: Cable): ReadonlyMap<string, string> {
  const wires = cable.wires.flatMap((id) => read.wires.get(id) ?? []);
  const open = wires.filter(({ colour }) => colour === '');
  const isPower =
    (cable.section ?? 0) >= POWER || wires.some((wire) => natures(read, wire).includes('motor-phase'));
  const taken = new Set(wires.map(({ colour }) => colour));
  const free = SIGNAL.filter((each) => !taken.has(each));
  const usual = new Map<string, string>();
  let count = 0;
  for (const wire of open) {
    const own = natures(read, wire);
    if (own.includes('earth')) usual.set(wire.id, 'green-yellow (GNYE)?');
    // A shield is bare.
    else if (own.includes('shield')) usual.set(wire.id, 'bare: the shield');
    else {
      const colour = free[count++];
      if (isPower) usual.set(wire.id, `black, number ${count} (BK)?`);
      else if (colour) usual.set(wire.id, `${colour} (${LETTERS[colour]})?`);
    }
  }
  return usual;
}

const natures = ({ terminals }: ReadWiring, { from, to }: Wire): readonly string[] =>
  [from, to].flatMap((id) => terminals.get(id)?.nature.kind ?? []);

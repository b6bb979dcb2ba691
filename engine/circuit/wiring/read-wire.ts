/** Wires and cables read. */
import type { Wiring, WiringCable, WiringWire } from '../../refit/types.ts';
import { insideLength, isInside } from './inside-length.ts';
import { known, numberOf, textOf } from './kind.ts';
import { amount, choice, count, mostly, readSettings, type SettingSpecs, text } from './setting.ts';
import type { Cable, Wire, WiringProblem } from './types.ts';

export const WIRE_SETTINGS: SettingSpecs = {
  number: text('number on its ferrules'),
  colour: text('colour'),
  section: mostly(amount('cross-section', 'mm²'), '0.05 mm²', '70 mm²'),
  length: mostly(amount('length', 'm'), '5 cm', '100 m'),
  ferrule: text('ferrule'),
};

export const CABLE_SETTINGS: SettingSpecs = {
  cores: count('cores', '', 200, 1),
  section: mostly(amount('cross-section of a core', 'mm²'), '0.05 mm²', '70 mm²'),
  length: mostly(amount('length', 'm'), '5 cm', '100 m'),
  shield: choice('shield', ['none', 'foil', 'braid']),
  twisted: choice('cores twisted in pairs', ['yes', 'no']),
  // Usual of control cable; common practice, no source.
  capacitance: amount('capacitance of a metre', 'pF/m', '100 pF/m'),
  route: text('route'),
  laid: choice('how it is laid', ['fixed', 'moved'], 'fixed'),
};

export function readCable(typed: WiringCable, wires: readonly string[], problems: WiringProblem[]): Cable {
  const s = readSettings(CABLE_SETTINGS, typed.settings, `wiring.cables.${typed.id}.settings`, problems);
  const twisted = textOf(s, 'twisted');
  return {
    id: typed.id,
    name: typed.name,
    shield: (textOf(s, 'shield') || 'unknown') as Cable['shield'],
    twisted: twisted === '' ? undefined : twisted === 'yes',
    capacitance: numberOf(s, 'capacitance')!,
    route: textOf(s, 'route'),
    moved: textOf(s, 'laid') === 'moved',
    wires,
    ...known({
      cores: numberOf(s, 'cores'),
      section: numberOf(s, 'section'),
      length: numberOf(s, 'length'),
    }),
  };
}

/** @param wiring what the wire is part of: where its ends are, and what is said of all wires */
export function readWire(
  typed: WiringWire,
  cable: Cable | undefined,
  wiring: Wiring,
  problems: WiringProblem[],
): Wire {
  const s = readSettings(WIRE_SETTINGS, typed.settings, `wiring.wires.${typed.id}.settings`, problems);
  const own = numberOf(s, 'length') ?? cable?.length;
  const inside = isInside(wiring, typed);
  const most = inside && own === undefined ? insideLength(wiring) : undefined;
  return {
    id: typed.id,
    from: typed.from,
    to: typed.to,
    cable: typed.cable,
    number: textOf(s, 'number'),
    colour: textOf(s, 'colour'),
    ferrule: textOf(s, 'ferrule'),
    isInside: inside,
    atMost: most !== undefined,
    ...known({ section: numberOf(s, 'section') ?? cable?.section, length: own ?? most }),
  };
}

/** Force per area of tapping. Two published formulas, each with its own list: do not swap them. */

export interface TappingMaterial {
  readonly id: string;
  readonly name: string;
  readonly words: readonly string[];
  /** For the formula from the hole (`tap-torque`), Pa. */
  readonly byHole?: number;
  /** For the formula from the pitch (`tap-torque-simple`), Pa. */
  readonly byPitch?: number;
}

export const TAPPING_SOURCE =
  'a tap maker’s catalogue (by hole) and another tap maker’s technical page (by pitch)';

const MPA = 1e6;
const row = (
  id: string,
  name: string,
  words: readonly string[],
  byHole?: number,
  byPitch?: number,
): TappingMaterial => ({
  id,
  name,
  words,
  ...(byHole === undefined ? {} : { byHole: byHole * MPA }),
  ...(byPitch === undefined ? {} : { byPitch: byPitch * MPA }),
});

export const TAPPING_MATERIALS: readonly TappingMaterial[] = [
  row('c45', 'medium carbon steel C45', ['steel', 'carbon steel', 'en8', '1045'], 3900, 2500),
  row('mild-steel', 'mild or structural steel', ['mild steel', 'mild', 'c15', 'st50', 'e295'], 3600, 2500),
  row('c60', 'carbon steel C60', ['en9'], 4000, 2600),
  row('42crmo4', 'tempered steel 42CrMo4, 30 HRC', ['en19', '4140', 'alloy steel'], 4900, 2600),
  row('tool-steel', 'tool steel', ['tool steel'], undefined, 3600),
  row('stainless', 'austenitic stainless steel', ['stainless steel', '304', '316', 'inox'], 4200, 3200),
  row('grey-iron', 'grey cast iron', ['cast iron', 'grey iron', 'iron'], 2900, 1250),
  row('brass', 'brass', ['bronze'], 2300, 720),
  row('aluminium', 'aluminium, long chips', ['aluminum', 'alu'], undefined, 800),
  row('aluminium-cast', 'aluminium casting alloy', ['cast aluminium', 'alsi'], 1300),
];

/** Factor of the tap for the formula from the hole, in steel with a coarse thread. */
export const TAP_KINDS = [
  { id: 'spiral-flute', name: 'spiral flute', steel: 1.15, soft: 1.05 },
  { id: 'spiral-point', name: 'spiral point', steel: 0.95, soft: 0.8 },
  { id: 'hand', name: 'hand tap, plug', steel: 1.35, soft: 1.25 },
  { id: 'bottoming', name: 'hand tap, bottoming', steel: 1.43, soft: 1.3 },
] as const;

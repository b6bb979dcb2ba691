/** Friction of machine ways: what to expect until it has been measured. A measured breakaway force beats any table. */

export interface WayFriction {
  readonly id:
    | 'ball-rail'
    | 'roller-rail'
    | 'ptfe-box'
    | 'moulded'
    | 'cast-iron'
    | 'hardened-box'
    | 'dovetail';
  readonly name: string;
  /** Running friction coefficient, middle of the range, and half its width. */
  readonly mu: number;
  readonly half: number;
  /** Friction coefficient when breaking loose, low and high, where known. */
  readonly breakaway?: readonly [low: number, high: number];
  readonly note: string;
  readonly source: string;
  readonly status: 'published' | 'from memory';
}

const railMaker = 'a guide maker’s support page';

export const WAY_FRICTION: readonly WayFriction[] = [
  {
    id: 'ball-rail',
    name: 'ball profile rail',
    mu: 0.0025,
    half: 0.0005,
    note: 'Seals and wipers come on top and rule at light load.',
    source: railMaker,
    status: 'published',
  },
  {
    id: 'roller-rail',
    name: 'roller profile rail',
    mu: 0.0015,
    half: 0.0005,
    note: 'Seals and wipers come on top and rule at light load.',
    source: railMaker,
    status: 'published',
  },
  {
    id: 'ptfe-box',
    name: 'box way faced with PTFE-bronze',
    mu: 0.04,
    half: 0.02,
    note: 'In the laboratory about 0.015, breaking loose within a fifth of running (Slocum, Precision Machine Design, 1992); the range here is for service.',
    source: 'service range from memory',
    status: 'from memory',
  },
  {
    id: 'moulded',
    name: 'way moulded in epoxy',
    mu: 0.055,
    half: 0.025,
    note: 'Low stick-slip when oiled.',
    source: 'workshop experience',
    status: 'from memory',
  },
  {
    id: 'cast-iron',
    name: 'scraped cast iron on cast iron, way oil',
    mu: 0.1,
    half: 0.05,
    breakaway: [0.15, 0.3],
    note: 'Strong stick-slip.',
    source: 'workshop experience',
    status: 'from memory',
  },
  {
    id: 'hardened-box',
    name: 'hardened steel on cast iron box way',
    mu: 0.14,
    half: 0.06,
    breakaway: [0.14, 0.3],
    note: 'Breaks loose at up to 0.3.',
    source: 'workshop experience',
    status: 'from memory',
  },
  {
    id: 'dovetail',
    name: 'dovetail with gib',
    mu: 0.175,
    half: 0.075,
    note: 'Effective value, wedging of the inclined faces already inside; it depends on how the gib is set, so measure it.',
    source: 'workshop experience',
    status: 'from memory',
  },
];

/** Drag of the seals of one rail carriage, in newtons: middle and half width of the range. */
export const RAIL_SEAL_DRAG = {
  value: 17.5,
  half: 12.5,
  source: 'workshop experience',
  status: 'from memory',
} as const;

/** How magnets lose strength as they warm, and what else weakens them. Typical values: measure instead where you can. */

export interface Magnet {
  readonly id: 'ferrite' | 'neodymium' | 'samarium-cobalt' | 'alnico';
  readonly name: string;
  /** Change of remanence for each kelvin, as a share of that at 20 °C, in 1/K. */
  readonly perKelvin: number;
  readonly note: string;
  readonly source: string;
  readonly status: 'published' | 'from memory';
}

const makers = 'typical value of magnet makers’ tables, from memory';

export const MAGNETS: readonly Magnet[] = [
  {
    id: 'ferrite',
    name: 'ferrite (ceramic)',
    perKelvin: -0.002,
    note: 'Dark grey, dull. Easiest to weaken when cold.',
    source: makers,
    status: 'from memory',
  },
  {
    id: 'neodymium',
    name: 'neodymium-iron-boron',
    perKelvin: -0.0011,
    note: 'Shiny plating. Easiest to weaken when hot.',
    source: makers,
    status: 'from memory',
  },
  {
    id: 'samarium-cobalt',
    name: 'samarium-cobalt',
    perKelvin: -0.0004,
    note: 'Grey metal, brittle. Stands heat well.',
    source: makers,
    status: 'from memory',
  },
  {
    id: 'alnico',
    name: 'aluminium-nickel-cobalt',
    perKelvin: -0.0002,
    note: 'Long bare metal magnets in many d.c. servo motors before about 1980. Pulling the armature out without a keeper weakens them for good: do not take such a motor apart.',
    source: makers,
    status: 'from memory',
  },
];

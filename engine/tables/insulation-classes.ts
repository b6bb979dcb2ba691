/** Highest winding temperatures of the insulation classes found on motor plates. */

export interface InsulationClass {
  /** Letter on the plate. */
  readonly id: 'A' | 'B' | 'F' | 'H';
  readonly name: string;
  /** Highest temperature of the hottest spot, in K. */
  readonly highest: number;
  readonly source: string;
  readonly status: 'published' | 'from memory';
}

const ZERO_CELSIUS = 273.15;

const insulationClass = (id: InsulationClass['id'], celsius: number): InsulationClass => ({
  id,
  name: `class ${id} (${celsius})`,
  highest: celsius + ZERO_CELSIUS,
  source: 'IEC 60085, from memory',
  status: 'from memory',
});

export const INSULATION_CLASSES: readonly InsulationClass[] = [
  insulationClass('A', 105),
  insulationClass('B', 130),
  insulationClass('F', 155),
  insulationClass('H', 180),
];

/** Resistance of copper conductors, from flexible ones as sold. */

/** Ω/km at 20 °C by area in mm²: flexible conductors (class 5), plain copper. */
export const CLASS_5_RESISTANCE: readonly (readonly [area: number, ohmsPerKilometre: number])[] = [
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
  [16, 1.21],
];
export const CLASS_5_SOURCE = {
  source: 'IEC 60228, class 5, as quoted on a cable maker’s page',
  status: 'published' as const,
};

/** Of copper: Ω·m at 20 °C is one over 58 m/(Ω·mm²); its rise per kelvin at 20 °C. */
export const COPPER = {
  resistivity: 1e-6 / 58,
  perKelvin: 0.00393,
  source: 'IEC 60028 (1925)',
  status: 'published' as const,
};

/** A flexible conductor has up to so much more than its area of solid copper would: the printed values, worst. */
export const FLEXIBLE_EXTRA = Math.max(
  ...CLASS_5_RESISTANCE.map(([area, ohms]) => (ohms / 1000) * area * 58),
);

/** Ω/m at 20 °C of a flexible conductor of an area in mm²: as printed, otherwise of its copper with the usual extra. */
export function ohmsPerMetre(area: number): number {
  const printed = CLASS_5_RESISTANCE.find(([each]) => Math.abs(each - area) < 0.005 * each);
  return printed ? printed[1] / 1000 : FLEXIBLE_EXTRA / 58 / area;
}

/** Factor on the resistance at 20 °C for a conductor this warm. */
export const warmFactor = (celsius: number): number => 1 + COPPER.perKelvin * (celsius - 20);

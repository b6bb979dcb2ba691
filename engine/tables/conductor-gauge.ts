/** American wire gauge: diameter and area by number, and the metric wire that replaces it. */

export const GAUGE_SOURCE = {
  source: 'ASTM B258: 0.005 in is gauge 36, 0.46 in gauge 4/0, 39 equal steps between (from memory)',
  status: 'from memory' as const,
};

/** Copper area in mm² of a solid wire; 1/0 is 0, 2/0 is −1. Stranded wire is within a few per cent. */
export function gaugeArea(gauge: number): number {
  const diameter = 0.127 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameter * diameter;
}

/** The gauge, not rounded, of an area in mm². */
export const gaugeOf = (area: number): number =>
  36 - (39 * Math.log(Math.sqrt((4 * area) / Math.PI) / 0.127)) / Math.log(92);

/** Areas sold, in mm². */
export const METRIC_AREAS = [
  0.14, 0.2, 0.25, 0.34, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70,
] as const;

/** The next area sold that is no thinner; undefined above the largest. */
export const nextMetric = (area: number): number | undefined =>
  METRIC_AREAS.find((each) => each >= area * 0.995);

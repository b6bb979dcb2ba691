/**
 * What a copper conductor in PVC carries for good, and what that falls to in heat and in company.
 *
 * IEC 60204-1, Tables 6, D.1, D.2 and D.3. Areas in mm² here, as they are printed and sold.
 */

/** How a conductor is laid. */
export const LAYINGS = {
  B1: 'single wires in a duct or conduit',
  B2: 'a cable in a duct or conduit',
  C: 'a cable on a wall or plate, no duct',
  E: 'a cable on an open tray or rack',
} as const;
export type Laying = keyof typeof LAYINGS;

export type Status = 'published' | 'from memory';

const TABLE = 'IEC 60204-1:2016, Table 6 (copper, PVC, 40 °C, continuous)';
export const LAYING_SOURCES: Readonly<Record<Laying, { readonly source: string; readonly status: Status }>> =
  {
    B1: { source: `${TABLE}, recalled; 0.87 times IEC 60364-5-52`, status: 'from memory' },
    B2: { source: `${TABLE}, as quoted by a drive maker’s cabling page`, status: 'published' },
    C: { source: `${TABLE}, recalled; 0.87 times IEC 60364-5-52`, status: 'from memory' },
    E: { source: `${TABLE}, as quoted by a drive maker’s cabling page`, status: 'published' },
  };

/** Amperes by area in mm², each with three loaded conductors. */
export const CONDUCTOR_CURRENT: readonly (Readonly<Record<Laying, number>> & { readonly area: number })[] = [
  { area: 0.75, B1: 8.6, B2: 8.5, C: 9.8, E: 10.4 },
  { area: 1, B1: 10.3, B2: 10.1, C: 11.7, E: 12.4 },
  { area: 1.5, B1: 13.5, B2: 13.1, C: 15.2, E: 16.1 },
  { area: 2.5, B1: 18.3, B2: 17.4, C: 21, E: 22 },
  { area: 4, B1: 24, B2: 23, C: 28, E: 30 },
  { area: 6, B1: 31, B2: 30, C: 36, E: 37 },
  { area: 10, B1: 44, B2: 40, C: 50, E: 52 },
  { area: 16, B1: 59, B2: 54, C: 66, E: 70 },
  { area: 25, B1: 77, B2: 70, C: 84, E: 88 },
];

/**
 * Amperes of one of the areas, or of the next smaller where an area lies between two.
 * Undefined below 0.75 mm², where the table ends, and above 25 mm².
 */
export function tableCurrent(area: number, laying: Laying): number | undefined {
  if (!(area < 35)) return undefined;
  // A measured or converted area a hair below a printed one is that one.
  const row = CONDUCTOR_CURRENT.findLast((each) => each.area <= area * 1.005);
  return row?.[laying];
}

/** Printed factors by the temperature around the wire in °C. */
export const AMBIENT_FACTORS: readonly (readonly [celsius: number, factor: number])[] = [
  [30, 1.15],
  [35, 1.08],
  [40, 1],
  [45, 0.91],
  [50, 0.82],
  [55, 0.71],
  [60, 0.58],
];
export const AMBIENT_SOURCE = {
  source: 'IEC 60204-1:2016, Table D.1, as quoted in a servo amplifier’s manual',
  status: 'published' as Status,
};

/** The printed factor at the next higher temperature; undefined above 60 °C. Below 30 °C that of 30 °C. */
export function ambientFactor(celsius: number): number | undefined {
  return AMBIENT_FACTORS.find(([each]) => celsius <= each + 1e-9)?.[1];
}

/** Factors by the number of loaded circuits or cables together. */
export const GROUPING: Readonly<Record<Laying, readonly (readonly [circuits: number, factor: number])[]>> = {
  B1: [
    [1, 1],
    [2, 0.8],
    [4, 0.65],
    [6, 0.57],
    [9, 0.5],
  ],
  B2: [
    [1, 1],
    [2, 0.8],
    [4, 0.65],
    [6, 0.57],
    [9, 0.5],
  ],
  C: [
    [1, 1],
    [2, 0.85],
    [4, 0.75],
    [6, 0.72],
    [9, 0.7],
  ],
  E: [
    [1, 1],
    [2, 0.88],
    [4, 0.77],
    [6, 0.73],
    [9, 0.72],
  ],
};
export const GROUPING_SOURCE = {
  source: 'IEC 60204-1:2016, Table D.2 (recalled, check the standard)',
  status: 'from memory' as Status,
};

/** The factor for so many circuits together: that of the next printed number. Undefined above nine. */
export function groupingFactor(circuits: number, laying: Laying): number | undefined {
  return GROUPING[laying].find(([each]) => circuits <= each)?.[1];
}

/** Factors by the number of loaded cores of one multicore cable up to 10 mm². */
export const MULTICORE: readonly (readonly [cores: number, factor: number])[] = [
  [3, 1],
  [5, 0.75],
  [7, 0.65],
  [10, 0.55],
  [24, 0.4],
];
export const MULTICORE_SOURCE = {
  source: 'IEC 60204-1:2016, Table D.3 (recalled, check the standard)',
  status: 'from memory' as Status,
};

/** Undefined above 24 loaded cores. */
export function multicoreFactor(loaded: number): number | undefined {
  return MULTICORE.find(([each]) => loaded <= each)?.[1];
}

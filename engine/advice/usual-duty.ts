/**
 * What is usually asked of an axis, by machine and size: starting values to be confirmed. Cutting forces follow from a
 * specific cutting force of about 2000 N/mm² (mild steel, from memory) on a lathe’s cut named beside them, four tenths of
 * it along the feed; forces of mills, drilling thrusts and the rest are common practice, no source.
 */

export const SIZES = {
  bench: 'stands on a bench: swing to 200 mm or table to 500 mm, to about 300 kg',
  small: 'swing to 350 mm or table to 900 mm, about 300 to 1000 kg',
  medium: 'swing to 550 mm or table to 1400 mm, from about 1000 kg up',
} as const;
export type Size = keyof typeof SIZES;

export interface UsualDuty {
  readonly rapid: string;
  readonly acceleration: string;
  readonly feed: string;
  readonly cutForce: string;
  /** The cut the force comes from. */
  readonly cut: string;
  readonly cutShare: string;
  readonly moveLength: string;
  readonly movesPerMinute: string;
  readonly tolerance: string;
  readonly toleranceOn: 'length' | 'diameter';
  readonly hoursWanted: string;
  /** Moving mass of the slide. */
  readonly mass: string;
}

type Row = readonly [
  rapid: number,
  acceleration: number,
  feed: number,
  force: number,
  cut: string,
  move: number,
  moves: number,
  tolerance: number,
  hours: number,
  mass: number,
];

const row = (
  [rapid, acceleration, feed, force, cut, move, moves, tolerance, hours, mass]: Row,
  on: 'length' | 'diameter' = 'length',
): UsualDuty => ({
  rapid: `${rapid} m/min`,
  acceleration: `${acceleration} m/s²`,
  feed: `${feed} mm/min`,
  cutForce: `${force} N`,
  cut,
  cutShare: '40 %',
  moveLength: `${move} mm`,
  movesPerMinute: `${moves} 1/min`,
  tolerance: `${tolerance} mm`,
  toleranceOn: on,
  hoursWanted: `${hours} h`,
  mass: `${mass} kg`,
});

type BySize = Readonly<Record<Size, UsualDuty>>;

/** A lathe’s cross slide makes diameters. */
const LATHE: Readonly<Record<string, BySize>> = {
  X: {
    bench: row([1.5, 0.5, 150, 60, 'facing 0.75 mm deep at 0.1 mm a turn', 20, 6, 0.03, 1500, 8], 'diameter'),
    small: row([3, 0.8, 300, 240, 'facing 1.5 mm deep at 0.2 mm a turn', 40, 8, 0.02, 3000, 40], 'diameter'),
    medium: row([5, 1, 500, 720, 'facing 3 mm deep at 0.3 mm a turn', 60, 8, 0.02, 6000, 100], 'diameter'),
  },
  Z: {
    bench: row([2, 0.5, 200, 60, 'turning 0.75 mm deep at 0.1 mm a turn', 60, 4, 0.05, 1500, 15]),
    small: row([4, 0.8, 500, 320, 'turning 2 mm deep at 0.2 mm a turn', 100, 5, 0.05, 3000, 90]),
    medium: row([6, 1, 800, 840, 'turning 3.5 mm deep at 0.3 mm a turn', 150, 5, 0.05, 6000, 220]),
  },
};

const MILL: Readonly<Record<string, BySize>> = {
  X: {
    bench: row([2, 0.5, 400, 120, '6 mm cutter, light cuts in aluminium', 50, 6, 0.05, 1500, 15]),
    small: row([3, 0.6, 600, 400, '10 mm cutter in mild steel', 80, 5, 0.03, 3000, 90]),
    medium: row([6, 1, 1000, 1200, '20 mm cutter in mild steel', 120, 5, 0.03, 6000, 300]),
  },
  Y: {
    bench: row([2, 0.5, 400, 120, '6 mm cutter, light cuts in aluminium', 40, 6, 0.05, 1500, 25]),
    small: row([3, 0.6, 600, 400, '10 mm cutter in mild steel', 60, 5, 0.03, 3000, 150]),
    medium: row([5, 0.8, 1000, 1200, '20 mm cutter in mild steel', 100, 5, 0.03, 6000, 500]),
  },
  Z: {
    bench: row([1, 0.4, 100, 500, 'a 5 mm drill in mild steel', 30, 6, 0.05, 1500, 12]),
    small: row([2, 0.5, 150, 1000, 'an 8 mm drill in mild steel', 40, 5, 0.05, 3000, 60]),
    medium: row([4, 0.8, 200, 2500, 'a 14 mm drill in mild steel', 60, 5, 0.03, 6000, 180]),
  },
};

/** Undefined for an axis this knows nothing usual of, such as a rotary one. */
export function usualDuty(
  machine: 'lathe' | 'mill' | 'other',
  axis: string,
  size: Size,
): UsualDuty | undefined {
  const table = machine === 'lathe' ? LATHE : MILL;
  return Object.hasOwn(table, axis) ? table[axis]![size] : undefined;
}

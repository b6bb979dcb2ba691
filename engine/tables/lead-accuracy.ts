/** Lead accuracy of new ball screws. ISO and JIS numbers differ: never mix 'grade 5' and 'C5'. */
import { ok, type Result, refuse } from '../quantity/types.ts';

export type Status = 'published' | 'from memory';

export interface VariationGrade {
  readonly standard: 'ISO 3408-3' | 'JIS B 1192';
  readonly grade: string;
  /** Permissible variation of travel over any 300 mm, in metres. */
  readonly over300: number;
  readonly source: string;
  readonly status: Status;
}

const iso = (grade: string, um: number, status: Status, source: string): VariationGrade => ({
  standard: 'ISO 3408-3',
  grade,
  over300: um * 1e-6,
  source,
  status,
});
const jis = (grade: string, um: number, status: Status, source: string): VariationGrade => ({
  standard: 'JIS B 1192',
  grade,
  over300: um * 1e-6,
  source,
  status,
});

export const VARIATION_GRADES: readonly VariationGrade[] = [
  iso('1', 6, 'from memory', 'ISO 3408-3, recalled'),
  iso('3', 12, 'published', 'a ball-screw maker’s page: P3, 12 µm over 300 mm'),
  iso('5', 23, 'published', 'a secondary page quoting ISO 3408-3'),
  iso('7', 52, 'published', 'a secondary page quoting ISO 3408-3'),
  iso('10', 210, 'from memory', 'ISO 3408-3, recalled'),
  jis('C1', 5, 'from memory', 'JIS B 1192, recalled'),
  jis('C3', 8, 'from memory', 'JIS B 1192, recalled'),
  jis('C5', 18, 'from memory', 'JIS B 1192, recalled'),
  jis('C7', 50, 'published', 'a catalogue quoting JIS B 1192'),
  jis('C10', 210, 'published', 'a catalogue quoting JIS B 1192'),
];

/** Upper ends of the steps of useful travel, in millimetres as the standard prints them. */
export const TRAVEL_STEPS_MM = [315, 400, 500, 630, 800, 1000, 1250, 1600, 2000] as const;

/** Tolerance on mean travel deviation for each step, in micrometres as printed; ISO 3408-3, positioning grades. */
export const MEAN_TRAVEL_UM: Readonly<Record<'1' | '3' | '5', readonly number[]>> = {
  '1': [6, 7, 8, 9, 10, 11, 13, 15, 18],
  '3': [12, 13, 15, 16, 18, 21, 24, 29, 35],
  '5': [23, 25, 27, 32, 36, 40, 47, 55, 65],
};

export interface TravelTolerance {
  /** In metres, plus or minus. */
  readonly tolerance: number;
  readonly source: string;
  readonly status: Status;
}

/**
 * Tolerance on the mean travel deviation of a new screw over its useful travel (`ep` in ISO 3408-3), in metres.
 * Grades 1, 3 and 5 from the table by steps of travel; transport grades 7 and 10 in proportion to the travel.
 * Only grade 3 up to 1000 mm was confirmed from a maker's page; the rest is recalled.
 */
export function meanTravelTolerance(grade: string, usefulTravel: number): Result<TravelTolerance> {
  if (!(usefulTravel > 0) || !Number.isFinite(usefulTravel))
    return refuse({
      code: 'out-of-domain',
      where: 'useful travel',
      message: 'The useful travel must be above zero.',
    });
  const variation = VARIATION_GRADES.find((row) => row.standard === 'ISO 3408-3' && row.grade === grade);
  if (!variation)
    return refuse({
      code: 'unknown-name',
      where: 'grade',
      message: `There is no ISO 3408-3 grade “${grade}” in the table; it has 1, 3, 5, 7 and 10.`,
    });
  if (grade === '7' || grade === '10')
    return ok({
      tolerance: (2 * usefulTravel * variation.over300) / 0.3,
      source: 'ISO 3408-3, transport grades, recalled',
      status: 'from memory',
    });
  const row = MEAN_TRAVEL_UM[grade as '1' | '3' | '5'];
  // A travel typed in millimetres may miss a step's end by rounding.
  const step = TRAVEL_STEPS_MM.findIndex((end) => usefulTravel * 1000 <= end * (1 + 1e-12));
  const um = row[step];
  if (um === undefined)
    return refuse({
      code: 'out-of-domain',
      where: 'useful travel',
      message: 'The table of lead accuracy ends at 2000 mm of travel; ask the maker for longer screws.',
    });
  const confirmed = grade === '3' && TRAVEL_STEPS_MM[step] === 1000;
  return ok({
    tolerance: um * 1e-6,
    source: confirmed ? 'a ball-screw maker’s page: grade 3, 900 mm, 21 µm' : 'ISO 3408-3, recalled',
    status: confirmed ? 'published' : 'from memory',
  });
}

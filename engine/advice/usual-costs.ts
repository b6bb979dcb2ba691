/**
 * What a refit usually costs, item by item: guesses to be confirmed, never facts. Common practice, no source; in euros,
 * pounds or dollars alike, which is near enough for numbers as rough as these.
 */
import type { FactId } from '../parts/index.ts';

export type Range = readonly [low: number, likely: number, high: number];
/** By weight: a bench machine, a small one, one that comes on a lorry. */
type BySize = readonly [bench: Range, small: Range, medium: Range];

export const USUAL_CURRENCIES: ReadonlySet<string> = new Set(['EUR', 'GBP', 'USD', '$']);

/** Weights at which the next class begins, in kilograms. */
export const SIZES: readonly [number, number] = [300, 1000];

export type CostId = Exclude<
  FactId<'job'>,
  | 'weight'
  | 'width'
  | 'phases'
  | 'power'
  | 'ways'
  | 'spindle'
  | 'missing'
  | 'materials'
  | 'threads'
  | 'worth'
  | 'asked'
>;

export interface CostItem {
  readonly id: CostId;
  readonly usual: BySize;
  /** Only where something is worn or missing: nothing where it is known to be sound. */
  readonly wear?: 'ways' | 'spindle' | 'screws' | 'missing';
  /** Places whose parts carry prices of their own. */
  readonly parts?: readonly string[];
}

const item = (
  id: CostId,
  bench: Range,
  small: Range,
  medium: Range,
  more: Partial<CostItem> = {},
): CostItem => ({
  id,
  usual: [bench, small, medium],
  ...more,
});

export const COST_ITEMS: readonly CostItem[] = [
  item('transport', [50, 120, 300], [150, 300, 700], [300, 700, 1800]),
  item('lifting', [0, 30, 100], [50, 150, 400], [150, 500, 1500]),
  item('hookup', [20, 80, 250], [80, 250, 700], [150, 500, 1500]),
  item('control', [100, 300, 900], [150, 400, 1200], [150, 500, 1500], { parts: ['control'] }),
  item('drives', [100, 300, 700], [200, 500, 1200], [300, 900, 2500], { parts: ['drive'] }),
  item('motors', [0, 150, 400], [0, 200, 800], [0, 300, 2000], { parts: ['motor', 'brake'] }),
  item('feedback', [0, 60, 200], [0, 120, 400], [0, 150, 600], { parts: ['feedback'] }),
  item('supply', [40, 100, 250], [60, 150, 400], [80, 250, 700], { parts: ['supply'] }),
  item('wiring', [80, 200, 400], [150, 350, 800], [250, 600, 1500]),
  item('safety', [80, 180, 400], [120, 300, 700], [150, 400, 1000]),
  item('waysCost', [50, 200, 800], [100, 400, 1500], [200, 800, 4000], { wear: 'ways' }),
  item('spindleCost', [60, 150, 400], [100, 300, 900], [200, 600, 2500], { wear: 'spindle' }),
  item('screwsCost', [60, 200, 500], [100, 350, 1000], [200, 700, 2500], {
    wear: 'screws',
    parts: ['screw'],
  }),
  item('missingCost', [30, 150, 500], [50, 250, 900], [100, 400, 2000], { wear: 'missing' }),
  item('small', [40, 100, 200], [60, 150, 350], [80, 250, 600]),
  item('tooling', [50, 200, 500], [100, 300, 900], [150, 500, 1500]),
];

/** The range for a weight in kilograms; where that is not known, from the smallest to the largest class. */
export function usualRange({ usual }: CostItem, weight: number | undefined): Range {
  if (weight === undefined) return [usual[0][0], usual[1][1], usual[2][2]];
  return usual[weight < SIZES[0] ? 0 : weight < SIZES[1] ? 1 : 2];
}

/**
 * How each finding's margin spreads when everything doubtful is drawn anew, ten thousand times over: the propagation of
 * distributions (JCGM 101:2008). Where the sums are not linear it tells what the law of propagation only guesses.
 */
import { lanesInPieces } from '../sheet/index.ts';
import type { Sheet } from '../sheet/types.ts';
import type { Assessment } from './assess.ts';
import { drawSource } from './draw-source.ts';
import { type Compares, join } from './joined.ts';

export interface Spreading {
  /** Share of the draws in which it fits. */
  readonly chance: number;
  /** Where the margin lies with 95 % probability, as much below as above. */
  readonly range: readonly [low: number, high: number];
  /** Share of the draws that have no answer; they count as not fitting. */
  readonly without: number;
}

export interface Spread {
  readonly lanes: number;
  /** By finding; those that rest on nothing doubtful are left out. */
  readonly findings: ReadonlyMap<string, Spreading>;
}

export interface SpreadOptions {
  readonly lanes?: number;
  readonly seed?: number;
}

/** Draws for the chance of 95 % to be known to about half a percent. */
export const USUAL_LANES = 10_000;
const PIECE = 2048;

/** Columns of the run before, written over by the next. */
const COLUMNS = new WeakMap<Sheet, { readonly [key: string]: Float64Array | number | undefined }>();
const DRAWN = new WeakMap<Sheet, Map<string, Float64Array>>();

/** Yields the share done after each piece, so that it can be shown or stopped. */
export function* seekSpread(
  assessment: Assessment,
  options: SpreadOptions = {},
): Generator<number, Spread, void> {
  const { lanes = USUAL_LANES, seed = 1 } = options;
  const { sheet, sources, given, compares } = join(assessment);
  const drawn: Record<string, number | Float64Array | (typeof given)[string]> = { ...given };
  const before = DRAWN.get(sheet);
  const arrays = new Map<string, Float64Array>();
  for (const [key, source] of sources) {
    const values = drawSource(source, lanes, seed, before?.get(key));
    if (!values) continue;
    drawn[key] = values;
    arrays.set(key, values);
  }
  DRAWN.set(sheet, arrays);
  const only = new Set<string>();
  const derived = new Set(sheet.derived);
  for (const each of compares.values())
    for (const key of Object.values<string>({ ...each })) if (derived.has(key)) only.add(key);
  const result = yield* lanesInPieces(sheet, drawn, lanes, {
    only: [...only],
    piece: PIECE,
    into: reusable(COLUMNS.get(sheet), lanes),
  });
  COLUMNS.set(sheet, result.values);
  const valuesOf = (key: string): number | Float64Array =>
    result.values[key] ?? (drawn[key] as number | Float64Array);
  const findings = new Map<string, Spreading>();
  const margins = new Float64Array(lanes);
  for (const [id, each] of compares) {
    if (fillMargins(margins, each, valuesOf)) findings.set(id, spreading(margins));
  }
  return { lanes, findings };
}

/** All at once. */
export function spread(assessment: Assessment, options: SpreadOptions = {}): Spread {
  const work = seekSpread(assessment, options);
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** Arrays of an earlier run that are long enough to be written over. */
function reusable(
  values: { readonly [key: string]: Float64Array | number | undefined } | undefined,
  lanes: number,
): Record<string, Float64Array> {
  const entries = Object.entries(values ?? {}).filter(
    (entry): entry is [string, Float64Array] => entry[1] instanceof Float64Array && entry[1].length === lanes,
  );
  return Object.fromEntries(entries);
}

/** Fills in the margin of every draw, NaN without an answer; false where it is the same in all. */
function fillMargins(
  margins: Float64Array,
  { demand, capacity, most }: Compares,
  valuesOf: (key: string) => number | Float64Array,
): boolean {
  const [needs, has] = [valuesOf(demand), valuesOf(capacity)];
  const limit = most === undefined ? undefined : valuesOf(most);
  if (![needs, has, limit].some((column) => column instanceof Float64Array)) return false;
  const at = (column: number | Float64Array, lane: number): number =>
    typeof column === 'number' ? column : column[lane]!;
  for (let lane = 0; lane < margins.length; lane++) {
    const value = at(has, lane);
    const low = ratio(value, at(needs, lane));
    margins[lane] = limit === undefined ? low : Math.min(low, ratio(at(limit, lane), value));
  }
  return true;
}

/** Capacity over demand; without a demand anything is enough. */
const ratio = (capacity: number, demand: number): number =>
  demand <= 0 ? Number.MAX_VALUE : Math.max(0, capacity / demand);

/** How the margins of all draws lie, NaN where one has no answer. Moves the answers of `margins` to its front. */
export function spreading(margins: Float64Array): Spreading {
  let fits = 0;
  let answers = 0;
  for (const margin of margins) {
    if (Number.isNaN(margin)) continue;
    margins[answers++] = margin;
    if (margin >= 1) fits++;
  }
  const { length } = margins;
  const known = margins.subarray(0, answers);
  const low = nth(known, Math.round(0.025 * (answers - 1)));
  const high = nth(known, Math.round(0.975 * (answers - 1)));
  return { chance: fits / length, range: [low, high], without: 1 - answers / length };
}

/** The k-th smallest; reorders the array (Hoare's quickselect). 0 where there is none. */
export function nth(values: Float64Array, k: number): number {
  if (values.length === 0) return 0;
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = values[(left + right) >> 1]!;
    let low = left;
    let high = right;
    while (low <= high) {
      while (values[low]! < pivot) low++;
      while (values[high]! > pivot) high--;
      if (low > high) break;
      const swapped = values[low]!;
      values[low++] = values[high]!;
      values[high--] = swapped;
    }
    if (k <= high) right = high;
    else if (k >= low) left = low;
    else break;
  }
  return values[k]!;
}

/** A sheet over many lanes at once: the uncertainty's ten thousand, a search's million. */
import { programFor } from './compile/cache.ts';
import type { Program } from './compile/program.ts';
import { type LaneArgument, LaneRun } from './compile/run.ts';
import { evaluate } from './evaluate.ts';
import type { Argument, Given, Outcome, Sheet } from './types.ts';
import { walkValues } from './walk-sheet.ts';

/** Numbers and curves are the same for all lanes; an array has one value a lane. */
export type LaneGiven<K extends string> = { readonly [P in K]?: LaneArgument | undefined };

export interface LaneOptions<K extends string> {
  /** Derived symbols wanted; all when left out. */
  readonly only?: readonly K[];
  /** Lanes between two reports of `lanesInPieces`. */
  readonly piece?: number;
  /** Arrays to write to, e.g. those of the run before: making large ones anew takes longer than filling them. */
  readonly into?: { readonly [P in K]?: Float64Array | number };
}

export interface LaneResult<K extends string> {
  readonly lanes: number;
  /**
   * SI values of the derived symbols wanted. A number where a symbol is the same in all lanes.
   * NaN marks a lane without an answer; it is never to be shown: `outcomes(lane)` says why.
   */
  readonly values: { readonly [P in K]?: Float64Array | number };
  /** All symbols in one lane, with reasons. */
  outcomes(lane: number): Record<K, Outcome>;
}

const PIECE = 16_384;

/** All lanes at once. Throws RangeError when an array has not `lanes` values. */
export function lanes<K extends string>(
  sheet: Sheet<K>,
  given: LaneGiven<K>,
  count: number,
  options: LaneOptions<K> = {},
): LaneResult<K> {
  const work = lanesInPieces(sheet, given, count, { ...options, piece: count });
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** As `lanes`, yielding the share done after each piece, so that the caller can show it or stop. */
export function* lanesInPieces<K extends string>(
  sheet: Sheet<K>,
  given: LaneGiven<K>,
  count: number,
  options: LaneOptions<K> = {},
): Generator<number, LaneResult<K>, void> {
  const wanted = options.only ?? sheet.derived;
  const varying = checkLanes(sheet as Sheet, given as LaneGiven<string>, count);
  const values: Record<string, Float64Array | number> = {};
  const piece = Math.max(1, options.piece ?? PIECE);
  const derived = new Set<string>(sheet.derived);
  const asked = new Set<string>(wanted.filter((key) => derived.has(key)));
  const program = programFor(sheet as Sheet, varying, asked);
  for (const key of asked) {
    if (sheet.dependsOn[key as K].some((each) => varying.has(each))) {
      values[key] = arrayFor(options.into?.[key as K], key, count);
    }
  }
  yield* program
    ? compiled(program, sheet as Sheet, given as LaneGiven<string>, count, piece, asked, values)
    : walked(sheet as Sheet, given as LaneGiven<string>, count, piece, asked, values);
  const result = values as LaneResult<K>['values'];
  return { lanes: count, values: result, outcomes: (lane) => evaluate(sheet, givenAt(given, lane)) };
}

/** Inputs given as arrays. */
function checkLanes(sheet: Sheet, given: LaneGiven<string>, count: number): ReadonlySet<string> {
  if (!Number.isSafeInteger(count) || count < 1)
    throw new RangeError(`lanes are counted 1, 2, 3 …, not ${count}`);
  const varying = sheet.inputs.filter((key) => given[key] instanceof Float64Array);
  for (const key of varying) {
    const { length } = given[key] as Float64Array;
    if (sheet.symbols[key]!.kind === 'curve')
      throw new RangeError(`the curve '${key}' cannot vary over the lanes`);
    if (length !== count) throw new RangeError(`'${key}' has ${length} values for ${count} lanes`);
  }
  return new Set(varying);
}

function arrayFor(given: Float64Array | number | undefined, key: string, count: number): Float64Array {
  if (!(given instanceof Float64Array)) return new Float64Array(count);
  if (given.length !== count)
    throw new RangeError(`'${key}' is to be written to ${given.length} places, not ${count}`);
  return given;
}

function* compiled(
  program: Program,
  sheet: Sheet,
  given: LaneGiven<string>,
  count: number,
  piece: number,
  wanted: ReadonlySet<string>,
  values: Record<string, Float64Array | number>,
): Generator<number> {
  const run = new LaneRun(program, sheet, given);
  run.start();
  const arrays = new Map<string, Float64Array>();
  for (const key of wanted) {
    const array = values[key];
    if (array instanceof Float64Array) arrays.set(key, array);
    else values[key] = run.fixedValue(key);
  }
  if (arrays.size === 0) return;
  for (let from = 0; from < count; ) {
    const pieceEnd = Math.min(count, from + piece);
    run.resume();
    while (from < pieceEnd) {
      const to = Math.min(pieceEnd, from + program.lanesPerBlock);
      const start = from;
      run.block(from, to, (key, block) => arrays.get(key)?.set(block, start));
      from = to;
    }
    if (from < count) yield from / count;
  }
}

/** Where WebAssembly is refused: the tree walk, lane after lane. */
function* walked(
  sheet: Sheet,
  given: LaneGiven<string>,
  count: number,
  piece: number,
  wanted: ReadonlySet<string>,
  values: Record<string, Float64Array | number>,
): Generator<number> {
  for (const key of wanted) values[key] ??= Number.NaN;
  for (let lane = 0; lane < count; lane++) {
    const one = walkValues(sheet, givenAt(given, lane));
    for (const key of wanted) {
      const value = one.get(key)!;
      const target = values[key]!;
      if (typeof target !== 'number') target[lane] = typeof value === 'number' ? value : Number.NaN;
      else if (lane === 0 && typeof value === 'number') values[key] = value;
    }
    if ((lane + 1) % piece === 0 && lane + 1 < count) yield (lane + 1) / count;
  }
}

function givenAt<K extends string>(given: LaneGiven<K>, lane: number): Given<K> {
  const one: Record<string, Argument | undefined> = {};
  for (const [key, value] of Object.entries<LaneArgument | undefined>(given)) {
    one[key] = value instanceof Float64Array ? value[lane]! : value;
  }
  return one as Given<K>;
}

/** Doubt by simulation: JCGM 101:2008, with its adaptive procedure (7.9). */
import type { Result } from '../quantity/index.ts';
import { ok, refuse } from '../quantity/index.ts';
import { type Drawn, drawer } from './draw.ts';

export interface Simulation extends Drawn {
  /** The result for one draw of all inputs, in their order. The array is used again: do not keep it. */
  readonly formula: (x: Float64Array) => number;
  /** Coverage probability of the intervals; 0.95. */
  readonly level?: number;
  /** Significant digits of the standard uncertainty that must stand still, 1 or 2; 2. */
  readonly digits?: 1 | 2;
  /** Exactly so many trials instead of the adaptive procedure. */
  readonly trials?: number;
  /** The adaptive procedure stops here; two million. */
  readonly most?: number;
}

export type Interval = readonly [low: number, high: number];

export interface Simulated {
  readonly mean: number;
  readonly standard: number;
  /** As much probability below as above. */
  readonly symmetric: Interval;
  /** The shortest that holds the probability. */
  readonly shortest: Interval;
  readonly trials: number;
  /** Numerical tolerance of 7.9.2: half of the last digit wanted of the standard uncertainty. */
  readonly tolerance: number;
  /** Whether mean, standard uncertainty and both ends of the symmetric interval stand still within the tolerance; false for a given number of trials. */
  readonly settled: boolean;
  /** All results, rising. */
  readonly sorted: Float64Array;
}

/**
 * Blocks before their agreement is believed. The guide begins at two, which agree by chance far too often
 * (G. Wübbeler, P. M. Harris, M. G. Cox and C. Elster, 2010; from memory).
 */
const FEWEST_BLOCKS = 10;

const wrong = (message: string): Result<never> => refuse<never>({ code: 'undefined-result', message });

/** Half of the last of so many significant digits of u (7.9.2): u = c × 10^l, tolerance 10^l / 2. */
export function numericalTolerance(u: number, digits: 1 | 2): number {
  if (!(u > 0)) return 0;
  return 0.5 * 10 ** (Number(u.toExponential(digits - 1).split('e')[1]) - (digits - 1));
}

interface Moments {
  readonly mean: number;
  readonly standard: number;
}

function momentsOf(values: Float64Array): Moments {
  let sum = 0;
  for (const v of values) sum += v;
  const mean = sum / values.length;
  let squares = 0;
  for (const v of values) squares += (v - mean) ** 2;
  return { mean, standard: Math.sqrt(squares / (values.length - 1)) };
}

/** Both coverage intervals of sorted results (7.7). */
export function intervals(sorted: Float64Array, level: number): { symmetric: Interval; shortest: Interval } {
  const n = sorted.length;
  const held = Math.min(n - 1, Math.max(1, Math.round(level * n)));
  const from = Math.floor((n - held) / 2);
  let best = from;
  for (let k = 0; k + held < n; k++)
    if (sorted[k + held]! - sorted[k]! < sorted[best + held]! - sorted[best]!) best = k;
  return {
    symmetric: [sorted[from]!, sorted[from + held]!],
    shortest: [sorted[best]!, sorted[best + held]!],
  };
}

/** Standard deviation of the mean of the blocks' values. */
function scatter(values: readonly number[]): number {
  const h = values.length;
  const mean = values.reduce((sum, v) => sum + v / h, 0);
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (h - 1) / h);
}

/** Whether the blocks so far agree within the numerical tolerance (7.9.4); a single one says nothing. */
function standing(
  blocks: readonly (Moments & { low: number; high: number })[],
  digits: 1 | 2,
): { tolerance: number; still: boolean } {
  if (blocks.length < 2) return { tolerance: 0, still: false };
  const u = Math.sqrt(blocks.reduce((sum, b) => sum + b.standard ** 2 / blocks.length, 0));
  const tolerance = numericalTolerance(u, digits);
  const keys = ['mean', 'standard', 'low', 'high'] as const;
  return { tolerance, still: keys.every((key) => 2 * scatter(blocks.map((b) => b[key])) <= tolerance) };
}

/**
 * Simulates in blocks; each step of the generator is one block, so that it can show progress and be stopped.
 * Refused where the formula has no value for some draw, or inputs cannot be drawn together. Throws RangeError for a
 * distribution that cannot be, as `standardOf` does.
 */
export function* simulateInBlocks(
  simulation: Simulation,
): Generator<{ readonly trials: number }, Result<Simulated>> {
  const { inputs, formula, level = 0.95, digits = 2, trials, most = 2_000_000 } = simulation;
  if (!(level > 0 && level < 1)) return wrong(`A coverage level lies between 0 and 1, not ${level}.`);
  if (trials !== undefined && !(Number.isInteger(trials) && trials >= 100 && trials <= 2e7))
    return wrong('The number of trials is a whole number from 100 to 20 million.');
  const draw = drawer(simulation);
  if (!draw.ok) return draw;
  const size = trials ?? Math.max(10_000, Math.ceil(100 / (1 - level)));
  const chunk = Math.min(size, 10_000);
  const columns = inputs.map(() => new Float64Array(chunk));
  const x = new Float64Array(inputs.length);
  const blocks: Float64Array[] = [];
  const found: (Moments & { low: number; high: number })[] = [];
  for (let done = 0; ; ) {
    const block = new Float64Array(size);
    for (let start = 0; start < size; start += chunk) {
      draw.value(columns);
      const here = Math.min(chunk, size - start);
      for (let t = 0; t < here; t++) {
        for (let i = 0; i < x.length; i++) x[i] = columns[i]![t]!;
        const value = formula(x);
        if (!Number.isFinite(value))
          return wrong(
            `The formula has no value for an input that can occur: ${[...x].map((v) => Number(v.toPrecision(6))).join(', ')}.`,
          );
        block[start + t] = value;
      }
      yield { trials: done + start + here };
    }
    done += size;
    blocks.push(block);
    if (trials === undefined) {
      // Sorted in place: the order of draws is not needed any more.
      const [low, high] = intervals(block.sort(), level).symmetric;
      found.push({ ...momentsOf(block), low, high });
      if (found.length < FEWEST_BLOCKS && done + size <= most) continue;
    }
    // The ends of the shortest interval wander far more than the rest; the symmetric one's are asked to stand still.
    const { tolerance, still } = standing(found, digits);
    if (trials === undefined && !still && done + size <= most) continue;
    const sorted = new Float64Array(done);
    for (const [index, each] of blocks.entries()) sorted.set(each, index * size);
    const all = momentsOf(sorted);
    sorted.sort();
    return ok({
      ...all,
      ...intervals(sorted, level),
      trials: done,
      tolerance: trials === undefined ? tolerance : numericalTolerance(all.standard, digits),
      settled: still,
      sorted,
    });
  }
}

/** Simulates to the end. */
export function simulate(simulation: Simulation): Result<Simulated> {
  const steps = simulateInBlocks(simulation);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

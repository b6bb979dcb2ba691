/** Asks about the one reading that fits the others least. It is never dropped: only the person at the machine knows. */
import { coverage } from './quantiles.ts';
import { summarise } from './readings.ts';

export interface Question {
  /** Which reading, from 0. */
  readonly index: number;
  readonly value: number;
  /** Distance from the mean in standard deviations, and what chance alone exceeds in 1 − level of all sets. */
  readonly grubbs: number;
  readonly critical: number;
  /**
   * Distance from the median in robust standard deviations, 0.6745 × distance ÷ median distance (B. Iglewicz and
   * D. Hoaglin, 1993, who question from 3.5 on); absent where half of the readings are equal.
   */
  readonly modified?: number;
  /** How many more readings stand apart as much. */
  readonly others: number;
  /** A whole sentence to show. */
  readonly why: string;
}

/**
 * Largest distance from the mean, in standard deviations, that one of n normal readings has by chance in `level` of all
 * sets: F. E. Grubbs's two-sided test (1969). At least three readings.
 */
export function grubbsCritical(n: number, level = 0.95): number {
  if (!(Number.isInteger(n) && n >= 3))
    throw new RangeError(`Grubbs's test needs at least three readings, not ${n}.`);
  const t = coverage(n - 2, 1 - (1 - level) / n);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)]!;
  return sorted.length % 2 === 1 ? upper : upper / 2 + sorted[sorted.length / 2 - 1]! / 2;
}

function modifiedDistance(values: readonly number[], value: number): number | undefined {
  const middle = median(values);
  const typical = median(values.map((v) => Math.abs(v - middle)));
  return typical > 0 ? (0.6745 * Math.abs(value - middle)) / typical : undefined;
}

/** Two wild readings hide each other from Grubbs's test; so the test goes on without the farthest (B. Rosner, 1983). */
const mostWild = (n: number): number => (n < 8 ? 1 : n < 20 ? 2 : 3);

interface Farthest {
  readonly index: number;
  readonly grubbs: number;
  readonly critical: number;
}

function farthest(values: readonly number[], left: readonly number[], level: number): Farthest | undefined {
  const { mean, deviation } = summarise(left.map((i) => values[i]!));
  if (deviation === 0) return undefined;
  const index = left.reduce((a, b) => (Math.abs(values[b]! - mean) > Math.abs(values[a]! - mean) ? b : a));
  return {
    index,
    grubbs: Math.abs(values[index]! - mean) / deviation,
    critical: grubbsCritical(left.length, level),
  };
}

const roughly = (n: number): string => `${Number(n.toPrecision(2))}`;

/**
 * The reading that fits the others least, when it lies farther out than chance explains; undefined when none does.
 * `step` is the resolution of the instrument: a difference of one step is never questioned.
 * Nothing is dropped. Throws RangeError for readings that are not finite.
 */
export function questionReadings(
  values: readonly number[],
  options: {
    readonly level?: number;
    readonly step?: number;
    /** How the reading is called in the sentence; 'Reading 5' for the fifth. */
    readonly name?: (index: number) => string;
  } = {},
): Question | undefined {
  const { level = 0.95, step = 0, name = (i: number) => `Reading ${i + 1}` } = options;
  let left = values.map((_, i) => i);
  const found: Farthest[] = [];
  let wild = 0;
  while (found.length < mostWild(values.length) && left.length >= 3) {
    const next = farthest(values, left, level);
    if (!next) break;
    found.push(next);
    if (next.grubbs > next.critical) wild = found.length;
    left = left.filter((i) => i !== next.index);
  }
  if (wild === 0) return undefined;
  const apart = found.slice(0, wild);
  const [first] = apart as [Farthest, ...Farthest[]];
  const value = values[first.index]!;
  const rest = values.filter((_, i) => !apart.some((f) => f.index === i));
  if (Math.abs(value - median(rest)) <= 1.5 * step) return undefined;
  const others = summarise(rest);
  const times = others.deviation > 0 ? Math.abs(value - others.mean) / others.deviation : undefined;
  const distance =
    times === undefined
      ? `lies apart from the others, which all agree`
      : `lies ${roughly(times)} times their usual scatter away from the mean of the others`;
  const decided = apart[wild - 1]!;
  const modified = modifiedDistance(values, value);
  return {
    index: first.index,
    value,
    grubbs: decided.grubbs,
    critical: decided.critical,
    ...(modified === undefined ? {} : { modified }),
    others: wild - 1,
    why: `${name(first.index)} ${distance}${wild > 1 ? ` (${wild - 1} more stand${wild === 2 ? 's' : ''} apart)` : ''}; chance alone does that in fewer than ${roughly(100 * (1 - level))} of 100 such sets. Was it miswritten, bumped, or read on another range? It still counts until you take it out.`,
  };
}

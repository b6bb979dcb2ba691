/** Repeated readings in one line, and several doubts put together (JCGM 100:2008). */
import { coverage } from './quantiles.ts';

export { coverage };

export interface Summary {
  readonly n: number;
  readonly mean: number;
  /** Sample standard deviation with n − 1; 0 for a single reading, which says nothing of its spread. */
  readonly deviation: number;
  /** Standard uncertainty of the mean, Type A: deviation / √n. */
  readonly standard: number;
  /** Degrees of freedom, n − 1. */
  readonly freedom: number;
  readonly least: number;
  readonly most: number;
}

/** Sum that carries what each addition loses (A. Neumaier, 1974). */
function carefulSum(values: readonly number[], of: (value: number) => number): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const x = of(value);
    const next = sum + x;
    lost += Math.abs(sum) >= Math.abs(x) ? sum - next + x : x - next + sum;
    sum = next;
  }
  return sum + lost;
}

/** Beyond it the differences of readings could overflow. */
const LARGEST = 1e300;

/**
 * Mean and spread of readings (JCGM 100:2008, 4.2), in two passes so that large values with a small spread keep their digits.
 * Throws RangeError for no readings and for any that is not a finite number.
 */
export function summarise(values: readonly number[]): Summary {
  const n = values.length;
  if (n === 0) throw new RangeError('At least one reading is needed.');
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const [index, value] of values.entries()) {
    if (!(Math.abs(value) <= LARGEST))
      throw new RangeError(`Reading ${index + 1} is not a finite number below 1e300.`);
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  // From the middle of the range no sum can overflow, and equal readings give their own value back.
  const middle = least / 2 + most / 2;
  const first = middle + carefulSum(values, (v) => (v - middle) / n);
  const mean = Math.min(most, Math.max(least, first + carefulSum(values, (v) => (v - first) / n)));
  const widest = Math.max(most - mean, mean - least);
  const squares = widest === 0 ? 0 : carefulSum(values, (v) => ((v - mean) / widest) ** 2);
  const shift = widest === 0 ? 0 : carefulSum(values, (v) => (v - mean) / widest);
  // The correction takes out what the rounding of the mean has left (Chan, Golub and LeVeque, 1983).
  const deviation = n === 1 ? 0 : widest * Math.sqrt(Math.max(0, squares - (shift * shift) / n) / (n - 1));
  return { n, mean, deviation, standard: deviation / Math.sqrt(n), freedom: n - 1, least, most };
}

export interface Component {
  readonly name: string;
  /** Standard uncertainty of this input, in its own unit (SI). */
  readonly standard: number;
  /** Slope of the result to it: by how much the result changes for one unit of the input. */
  readonly slope: number;
  /** Degrees of freedom; `Infinity` for Type B, what is not from repeated readings. */
  readonly freedom: number;
  readonly kind: 'readings' | 'instrument' | 'resolution' | 'tolerance' | 'guess';
}

export interface Combined {
  /** Combined standard uncertainty of the result. */
  readonly standard: number;
  /** Effective degrees of freedom by Welch–Satterthwaite; `Infinity` when no part rests on few readings. */
  readonly freedom: number;
  /** Coverage factor at 95 %, from Student's t with the degrees of freedom cut to a whole number. */
  readonly factor: number;
  /** factor × standard: the ± to state. */
  readonly expanded: number;
  /** `share` of the variance; shares add to 1, and one can be negative where inputs are correlated. */
  readonly parts: readonly (Component & { readonly share: number })[];
}

/** Numbers of the parts that hang together through correlation, each group once. */
function groups(n: number, tied: (i: number, j: number) => boolean): number[][] {
  const seen = new Set<number>();
  const out: number[][] = [];
  for (let i = 0; i < n; i++) {
    if (seen.has(i)) continue;
    const group = [i];
    seen.add(i);
    for (const member of group)
      for (let j = 0; j < n; j++)
        if (!seen.has(j) && tied(member, j)) {
          seen.add(j);
          group.push(j);
        }
    out.push(group);
  }
  return out;
}

function checkComponents(components: readonly Component[]): void {
  for (const { name, standard, slope, freedom } of components) {
    if (!(standard >= 0 && standard < Number.POSITIVE_INFINITY))
      throw new RangeError(`The standard uncertainty of “${name}” must be a finite number from 0 up.`);
    if (!Number.isFinite(slope)) throw new RangeError(`The slope of “${name}” must be a finite number.`);
    if (standard > 0 && !(freedom > 0))
      throw new RangeError(`The degrees of freedom of “${name}” must be above 0.`);
  }
}

/**
 * Puts the doubts of all inputs together: law of propagation (JCGM 100:2008, 5.1.2 and 5.2.2), effective degrees of freedom
 * (G.4.1), coverage at 95 % (G.4.2).
 *
 * `correlation(i, j)` gives the correlation coefficient of two components, i ≠ j; without it they are independent.
 * Welch–Satterthwaite holds for independent inputs only, so correlated ones count as one part with the fewest degrees of
 * freedom among them. Throws RangeError for inputs out of range and for coefficients that contradict each other.
 */
export function combine(
  components: readonly Component[],
  correlation?: (i: number, j: number) => number,
): Combined {
  checkComponents(components);
  const sizes = components.map((c) => c.slope * c.standard);
  const widest = Math.max(0, ...sizes.map(Math.abs));
  const signed = sizes.map((s) => (widest === 0 ? 0 : s / widest));
  const related = (i: number, j: number): number => {
    if (i === j) return 1;
    const r = correlation?.(i, j) ?? 0;
    if (!(Math.abs(r) <= 1))
      throw new RangeError(
        `The correlation of “${components[i]!.name}” and “${components[j]!.name}” must lie from −1 to 1, not ${r}.`,
      );
    return r;
  };
  const variances = signed.map((a, i) => signed.reduce((sum, b, j) => sum + a * b * related(i, j), 0));
  const variance = variances.reduce((sum, v) => sum + v, 0);
  if (variance < -1e-12)
    throw new RangeError('The correlations contradict each other: together they make a variance below zero.');
  let sum = 0;
  for (const group of groups(components.length, (i, j) => related(i, j) !== 0)) {
    const part = group.reduce((total, i) => total + variances[i]!, 0);
    const freedom = Math.min(...group.map((i) => (signed[i] === 0 ? Infinity : components[i]!.freedom)));
    sum += (part * part) / freedom;
  }
  const total = Math.max(0, variance);
  const freedom = sum > 0 ? (total * total) / sum : Number.POSITIVE_INFINITY;
  const standard = widest * Math.sqrt(total);
  // A hair up, so that what is 4 but for rounding is not cut to 3.
  const factor = coverage(freedom >= 1 ? Math.floor(freedom * (1 + 1e-9)) : freedom);
  return {
    standard,
    freedom,
    factor,
    expanded: factor * standard,
    parts: components.map((c, i) => ({ ...c, share: total === 0 ? 0 : variances[i]! / total })),
  };
}

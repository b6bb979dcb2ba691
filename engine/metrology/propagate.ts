/** How the doubts of inputs come through a formula: JCGM 100:2008, clause 5, with slopes taken from the formula. */
import { type Combined, type Component, combine } from './readings.ts';

export interface Input extends Omit<Component, 'slope'> {
  readonly value: number;
}

/** The result for the values of all inputs, in their order. */
export type Formula = (x: readonly number[]) => number;

export interface Propagated extends Combined {
  readonly value: number;
  /** What curvature adds to the variance (5.1.2, note); 0 when not asked for. `standard` has it in. */
  readonly curvature: number;
}

export interface PropagateOptions {
  /** Correlation coefficient of two inputs, i ≠ j. */
  readonly correlation?: (i: number, j: number) => number;
  /** Exact slopes of the result to each input; without them they are taken numerically, to about nine digits. */
  readonly slopes?: readonly number[];
  /** Adds the next terms of the series, for independent inputs: where slopes are zero at the estimates. */
  readonly secondOrder?: boolean;
}

const moved = (x: readonly number[], ...steps: readonly (readonly [at: number, by: number])[]): number[] => {
  const out = [...x];
  for (const [at, by] of steps) out[at]! += by;
  return out;
};

function finite(value: number, what: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`The formula has no value ${what}.`);
  return value;
}

/** Slope to one input: a five-point stencil; at the edge of where the formula holds, a one-sided one. */
function slopeOf(formula: Formula, inputs: readonly Input[], j: number): number {
  const x = inputs.map((i) => i.value);
  const { value, standard } = inputs[j]!;
  const h = Math.max(0.1 * standard, 2e-4 * Math.abs(value)) || 1e-4;
  const at = (k: number): number => formula(moved(x, [j, k * h]));
  const centred = (8 * (at(1) - at(-1)) - (at(2) - at(-2))) / (12 * h);
  if (Number.isFinite(centred)) return centred;
  for (const side of [1, -1]) {
    const f = (k: number): number => at(side * k);
    const slope = (-25 * f(0) + 48 * f(1) - 36 * f(2) + 16 * f(3) - 3 * f(4)) / (12 * h * side);
    if (Number.isFinite(slope)) return slope;
  }
  return finite(Number.NaN, `beside the estimate of “${inputs[j]!.name}”`);
}

/** Slopes of the formula to all inputs at their values. */
export const slopesOf = (formula: Formula, inputs: readonly Input[]): number[] =>
  inputs.map((_, j) => slopeOf(formula, inputs, j));

/** Σ [½ f_ij² + f_i f_ijj] u_i² u_j² (JCGM 100:2008, 5.1.2, note), by differences over `step` of each u. */
function curvatureOf(
  formula: Formula,
  inputs: readonly Input[],
  slopes: readonly number[],
  step: number,
): number {
  const x = inputs.map((i) => i.value);
  const u = inputs.map((i) => step * i.standard);
  const f = (...steps: readonly (readonly [number, number])[]): number => formula(moved(x, ...steps));
  const middle = f();
  let sum = 0;
  for (const [i, a] of u.entries())
    for (const [j, b] of u.entries()) {
      if (a === 0 || b === 0) continue;
      // The differences hold the factors u_i u_j and u_i u_j², times the step squared and cubed.
      const second =
        i === j
          ? f([i, a]) - 2 * middle + f([i, -a])
          : (f([i, a], [j, b]) - f([i, a], [j, -b]) - f([i, -a], [j, b]) + f([i, -a], [j, -b])) / 4;
      const third =
        i === j
          ? (f([i, 2 * a]) - 2 * f([i, a]) + 2 * f([i, -a]) - f([i, -2 * a])) / 2
          : (f([i, a], [j, b]) -
              2 * f([i, a]) +
              f([i, a], [j, -b]) -
              f([i, -a], [j, b]) +
              2 * f([i, -a]) -
              f([i, -a], [j, -b])) /
            2;
      sum += 0.5 * (second / step ** 2) ** 2 + (slopes[i]! * a * third) / step ** 4;
    }
  return finite(sum, 'beside the estimates');
}

/**
 * Value and doubt of a formula of uncertain inputs. Throws RangeError where the formula has no value at or beside the
 * estimates, and for inputs out of range (see `combine`).
 */
export function propagate(
  formula: Formula,
  inputs: readonly Input[],
  options: PropagateOptions = {},
): Propagated {
  const value = finite(formula(inputs.map((i) => i.value)), 'at the estimates');
  const slopes = options.slopes ?? slopesOf(formula, inputs);
  const components = inputs.map(({ name, standard, freedom, kind }, j) => ({
    name,
    standard,
    freedom,
    kind,
    slope: slopes[j]!,
  }));
  const first = combine(components, options.correlation);
  if (!options.secondOrder) return { ...first, value, curvature: 0 };
  // Two steps taken together cancel what each leaves out of the series.
  const at = (step: number): number => curvatureOf(formula, inputs, slopes, step);
  const curvature = (4 * at(0.1) - at(0.2)) / 3;
  const variance = first.standard ** 2 + curvature;
  if (variance < 0)
    throw new RangeError('The formula bends too much within its doubt for this way; simulate it instead.');
  const standard = Math.sqrt(variance);
  return { ...first, value, curvature, standard, expanded: first.factor * standard };
}

export interface Together {
  readonly values: readonly number[];
  readonly standards: readonly number[];
  /** Correlation coefficients of the results, 1 on the diagonal. */
  readonly correlations: readonly (readonly number[])[];
  readonly covariance: readonly (readonly number[])[];
}

/** Several results of the same inputs, with how they hang together (JCGM 100:2008, H.2). */
export function propagateTogether(
  formulas: readonly Formula[],
  inputs: readonly Input[],
  correlation: (i: number, j: number) => number = () => 0,
): Together {
  const x = inputs.map((i) => i.value);
  const values = formulas.map((f) => finite(f(x), 'at the estimates'));
  const sizes = formulas.map((f) => slopesOf(f, inputs).map((c, j) => c * inputs[j]!.standard));
  const covariance = sizes.map((a) =>
    sizes.map((b) =>
      a.reduce(
        (sum, ai, i) => sum + b.reduce((s, bj, j) => s + ai * bj * (i === j ? 1 : correlation(i, j)), 0),
        0,
      ),
    ),
  );
  const standards = covariance.map((row, i) => Math.sqrt(Math.max(0, row[i]!)));
  const correlations = covariance.map((row, i) =>
    row.map((c, j) => {
      const both = standards[i]! * standards[j]!;
      return i === j ? 1 : both === 0 ? 0 : Math.max(-1, Math.min(1, c / both));
    }),
  );
  return { values, standards, correlations, covariance };
}

/** Correlation coefficient of the means of readings taken together in pairs (JCGM 100:2008, 5.2.3). */
export function correlationOf(a: readonly number[], b: readonly number[]): number {
  if (a.length !== b.length || a.length < 2)
    throw new RangeError('A correlation needs two lists of readings of the same length, at least two each.');
  const mean = (v: readonly number[]): number => v.reduce((sum, x) => sum + x / v.length, 0);
  const [ma, mb] = [mean(a), mean(b)];
  let [ab, aa, bb] = [0, 0, 0];
  for (const [i, x] of a.entries()) {
    const [da, db] = [x - ma, b[i]! - mb];
    ab += da * db;
    aa += da * da;
    bb += db * db;
  }
  return aa === 0 || bb === 0 ? 0 : Math.max(-1, Math.min(1, ab / Math.sqrt(aa) / Math.sqrt(bb)));
}

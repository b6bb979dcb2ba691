/** Straight lines, polynomials and other models that are linear in their parameters, by least squares. */
import type { Problem, Result } from '../quantity/index.ts';
import { ok, refuse } from '../quantity/index.ts';
import { factorise } from './qr.ts';

export interface LinearFit {
  /** In the order of the columns; of a polynomial in rising powers, the constant first. */
  readonly parameters: readonly number[];
  /** Standard uncertainty of each parameter; 0 where there are only as many readings as parameters. */
  readonly standards: readonly number[];
  /** Covariances of the parameters, standards² on the diagonal. */
  readonly covariance: readonly (readonly number[])[];
  /** Reading minus fit. */
  readonly residuals: readonly number[];
  readonly residualSquares: number;
  /** Residual standard deviation: how far one reading lies from the fit. */
  readonly deviation: number;
  /** Readings less parameters. */
  readonly freedom: number;
  /** Part of the variation that the fit explains; against zero instead of the mean where no column is constant. */
  readonly rSquared: number;
}

export interface CurveOfX extends LinearFit {
  /** The fit at x and its standard uncertainty, with the covariances taken in. */
  at(x: number): { readonly value: number; readonly standard: number };
}

const wrong = (message: string): Result<never> => refuse<never>({ code: 'undefined-result', message });

/** Says what is amiss with the numbers of a fit, or nothing. */
export function fitProblem(columns: readonly (readonly number[])[], parameters: number): Problem | undefined {
  const n = columns[0]?.length ?? 0;
  const says = (message: string): Problem => ({ code: 'undefined-result', message });
  for (const column of columns) {
    if (column.length !== n) return says('Every reading needs all its values: the lists differ in length.');
    const at = column.findIndex((v) => !(Math.abs(v) <= 1e150));
    if (at >= 0) return says(`Reading ${at + 1} has a value that is not a finite number below 1e150.`);
  }
  if (n < parameters)
    return says(
      `${n} reading${n === 1 ? '' : 's'} cannot settle ${parameters} unknowns; at least ${parameters} are needed, better more.`,
    );
  return undefined;
}

/** Σ v² with the rounding of a plain sum kept small by scaling. */
const squares = (values: readonly number[]): number => values.reduce((sum, v) => sum + v * v, 0);

/**
 * Least squares of `values` on columns: values ≈ Σ parameter × column. By QR, not by normal equations.
 * Refused where readings are too few or a column is made up by the others.
 */
export function fitLinear(
  columns: readonly (readonly number[])[],
  values: readonly number[],
): Result<LinearFit> {
  const p = columns.length;
  if (p === 0) return wrong('A fit needs at least one unknown.');
  const problem = fitProblem([values, ...columns], p);
  if (problem) return refuse(problem);
  const factorised = factorise(columns);
  if (factorised.dependent !== undefined)
    return wrong(
      `The readings cannot tell unknown ${factorised.dependent + 1} from the ones before it. Take readings that differ more.`,
    );
  const parameters = factorised.solve(values);
  const residuals = values.map((v, i) => parameters.reduce((sum, b, j) => sum - b * columns[j]![i]!, v));
  const residualSquares = squares(residuals);
  const freedom = values.length - p;
  const variance = freedom > 0 ? residualSquares / freedom : 0;
  const covariance = factorised.inverse().map((row) => row.map((c) => c * variance));
  const constant = columns.some((c) => c.every((v) => v === c[0]));
  const mean = constant ? values.reduce((sum, v) => sum + v / values.length, 0) : 0;
  const total = squares(values.map((v) => v - mean));
  return ok({
    parameters,
    standards: covariance.map((row, i) => Math.sqrt(row[i]!)),
    covariance,
    residuals,
    residualSquares,
    deviation: Math.sqrt(variance),
    freedom,
    rSquared: total > 0 ? Math.max(0, 1 - residualSquares / total) : 1,
  });
}

/** Multiplies out: coefficients in x of Σ b_k ((x − centre)/width)^k, as a matrix [power of x][k]. */
function powersOfX(degree: number, centre: number, width: number): number[][] {
  const matrix = Array.from({ length: degree + 1 }, () => new Array<number>(degree + 1).fill(0));
  let row = [1];
  for (let k = 0; k <= degree; k++) {
    for (const [power, c] of row.entries()) matrix[power]![k] = c;
    const next = new Array<number>(row.length + 1).fill(0);
    for (const [power, c] of row.entries()) {
      next[power]! -= (c * centre) / width;
      next[power + 1]! += c / width;
    }
    row = next;
  }
  return matrix;
}

/**
 * Polynomial of `degree` (1 to 8) through readings, with `throughOrigin` without its constant (its parameter is then 0).
 * Inside, x is measured from the middle of its range in units of its half width, so that no digits are lost far from zero.
 */
export function fitPolynomial(
  x: readonly number[],
  y: readonly number[],
  degree: number,
  options: { readonly throughOrigin?: boolean } = {},
): Result<CurveOfX> {
  if (!(Number.isInteger(degree) && degree >= 1 && degree <= 8))
    return wrong(`The degree of a polynomial is a whole number from 1 to 8, not ${degree}.`);
  const origin = options.throughOrigin === true;
  const first = origin ? 1 : 0;
  const problem = fitProblem([x, y], degree + 1 - first);
  if (problem) return refuse(problem);
  // By reduce: a spread of a hundred thousand readings would be too many arguments.
  const least = x.reduce((a, b) => Math.min(a, b));
  const most = x.reduce((a, b) => Math.max(a, b));
  const different = new Set(x).size;
  if (different < degree + 1 - first)
    return wrong(
      `The readings stand at ${different} different place${different === 1 ? '' : 's'}; this fit needs at least ${degree + 1 - first}.`,
    );
  const centre = origin ? 0 : least / 2 + most / 2;
  const width = Math.max(most - centre, centre - least) || 1;
  const powers = Array.from({ length: degree + 1 - first }, (_, k) => k + first);
  const inside = (at: number): number[] => powers.map((k) => ((at - centre) / width) ** k);
  const rows = x.map(inside);
  const fit = fitLinear(
    powers.map((_, j) => rows.map((row) => row[j]!)),
    y,
  );
  if (!fit.ok) return fit;
  const { parameters: b, covariance: c } = fit.value;
  const matrix = powersOfX(degree, centre, width).map((row) => row.slice(first));
  const covariance = matrix.map((left) => matrix.map((right) => quadratic(left, c, right)));
  return ok({
    ...fit.value,
    parameters: matrix.map((row) => row.reduce((sum, m, k) => sum + m * b[k]!, 0)),
    standards: covariance.map((row, i) => Math.sqrt(Math.max(0, row[i]!))),
    covariance,
    at(place) {
      const z = inside(place);
      return {
        value: z.reduce((sum, v, k) => sum + v * b[k]!, 0),
        standard: Math.sqrt(Math.max(0, quadratic(z, c, z))),
      };
    },
  });
}

/** Straight line y = parameters[0] + parameters[1] x; with `throughOrigin` the first is 0. */
export const fitLine = (
  x: readonly number[],
  y: readonly number[],
  options: { readonly throughOrigin?: boolean } = {},
): Result<CurveOfX> => fitPolynomial(x, y, 1, options);

const quadratic = (
  left: readonly number[],
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): number =>
  left.reduce((sum, l, i) => sum + l * right.reduce((inner, r, j) => inner + matrix[i]![j]! * r, 0), 0);

/** Curves that are not linear in their parameters: Levenberg–Marquardt with the step taken by QR. */
import type { Result } from '../quantity/index.ts';
import { ok, refuse } from '../quantity/index.ts';
import { fitProblem } from './fit-linear.ts';
import { factorise } from './qr.ts';

/** The value of the curve at x. */
export type Model = (parameters: readonly number[], x: number) => number;

export interface CurveFit {
  readonly parameters: readonly number[];
  /** Standard uncertainty of each parameter, from the linear fit at the solution. */
  readonly standards: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly residuals: readonly number[];
  readonly residualSquares: number;
  readonly deviation: number;
  readonly freedom: number;
  /** How many steps were tried. */
  readonly steps: number;
}

export interface CurveOptions {
  /** Exact slopes of the curve to each parameter; without it they are taken numerically to about ten digits. */
  readonly slopes?: (parameters: readonly number[], x: number) => readonly number[];
  /** Roughly how large each parameter is, for numeric slopes where it passes zero; the start, or 1 where that is 0. */
  readonly sizes?: readonly number[];
  /** Steps tried before giving up; 500. */
  readonly most?: number;
}

const wrong = (message: string): Result<never> => refuse<never>({ code: 'undefined-result', message });

/** Slopes by a five-point stencil: at a fifty-thousandth of the value both its error and rounding stay below 1e-9. */
function numericSlopes(model: Model, p: readonly number[], x: number, sizes: readonly number[]): number[] {
  return p.map((value, j) => {
    const h = 2e-5 * Math.max(Math.abs(value), 0.01 * sizes[j]!);
    const at = (step: number): number =>
      model(
        p.map((v, k) => (k === j ? v + step : v)),
        x,
      );
    return (8 * (at(h) - at(-h)) - (at(2 * h) - at(-2 * h))) / (12 * h);
  });
}

const sumOfSquares = (values: readonly number[]): number => values.reduce((sum, v) => sum + v * v, 0);

/**
 * Least squares of y on a curve, from a start (K. Levenberg, 1944; D. Marquardt, 1963; damping as H. B. Nielsen, 1999).
 * Refused, with what would help, where the curve has no value at the start, the readings do not settle a parameter,
 * or no minimum is found. A minimum found is a near one: try a second start where the curve is much bent.
 */
export function fitCurve(
  model: Model,
  x: readonly number[],
  y: readonly number[],
  start: readonly number[],
  options: CurveOptions = {},
): Result<CurveFit> {
  const n = start.length;
  if (n === 0) return wrong('A curve needs at least one unknown.');
  const problem = fitProblem([x, y], n) ?? fitProblem([start], 0);
  if (problem) return refuse(problem);
  const sizes = start.map((v, j) => Math.abs(options.sizes?.[j] ?? v) || 1);
  const slopesAt =
    options.slopes ?? ((p: readonly number[], at: number) => numericSlopes(model, p, at, sizes));
  const residualsAt = (p: readonly number[]): number[] => y.map((v, i) => v - model(p, x[i]!));
  const columnsAt = (p: readonly number[]): number[][] => {
    const rows = x.map((at) => slopesAt(p, at));
    return start.map((_, j) => rows.map((row) => row[j]!));
  };
  let parameters = [...start];
  let residuals = residualsAt(parameters);
  let sum = sumOfSquares(residuals);
  if (!Number.isFinite(sum))
    return wrong('The curve has no value at one of the readings from this start. Start with other values.');
  let columns = columnsAt(parameters);
  // The widest each column has been: keeps the steps right whatever the units (J. J. Moré, 1978).
  let widths = columns.map((c) => Math.sqrt(sumOfSquares(c)));
  let damping = 1e-3;
  let growth = 2;
  let steps = 0;
  let settled = false;
  for (const most = options.most ?? 500; steps < most && !settled; steps++) {
    if (columns.some((c) => c.some((v) => !Number.isFinite(v))))
      return wrong(
        'The slope of the curve has no value on the way. Start with values nearer to the readings.',
      );
    widths = columns.map((c, j) => Math.max(widths[j]!, Math.sqrt(sumOfSquares(c))) || 1);
    const padded = columns.map((c, j) => [
      ...c,
      ...start.map((_, k) => (k === j ? Math.sqrt(damping) * widths[j]! : 0)),
    ]);
    const step = factorise(padded).solve([...residuals, ...start.map(() => 0)]);
    const next = parameters.map((v, j) => v + step[j]!);
    const nextResiduals = residualsAt(next);
    const nextSum = sumOfSquares(nextResiduals);
    const foreseen = residuals.map((r, i) => step.reduce((left, s, j) => left - s * columns[j]![i]!, r));
    const gain = sum - sumOfSquares(foreseen);
    const small = step.every((s, j) => Math.abs(s) <= 1e-12 * Math.abs(parameters[j]!) + 1e-300);
    const ratio = gain > 0 ? (sum - nextSum) / gain : -1;
    if (Number.isFinite(nextSum) && (nextSum < sum || (small && nextSum <= sum))) {
      parameters = next;
      residuals = nextResiduals;
      sum = nextSum;
      columns = columnsAt(parameters);
      damping *= Math.max(1 / 3, 1 - (2 * ratio - 1) ** 3);
      damping = Math.max(damping, 1e-20);
      growth = 2;
      settled = small || sum === 0;
    } else {
      // No step, however short, gets lower: this is the bottom as far as the digits reach.
      settled = small || gain <= 1e-15 * sum;
      damping *= growth;
      growth *= 2;
    }
    if (!Number.isFinite(damping)) break;
  }
  let factorised = factorise(columns);
  if (factorised.dependent !== undefined)
    return wrong(
      `The readings do not settle unknown ${factorised.dependent + 1}: another value would fit as well. Take readings that differ more, or start with other values.`,
    );
  if (!settled)
    return wrong(`No best fit was found in ${steps} steps. Start with values nearer to the readings.`);
  // The sum of squares is flat at its bottom to half the digits; one plain step finds the rest of them.
  const last = factorised.solve(residuals).map((step, j) => parameters[j]! + step);
  const lastResiduals = residualsAt(last);
  if (sumOfSquares(lastResiduals) <= sum * (1 + 1e-13)) {
    parameters = last;
    residuals = lastResiduals;
    sum = sumOfSquares(residuals);
    factorised = factorise(columnsAt(parameters));
  }
  const freedom = y.length - n;
  const variance = freedom > 0 ? sum / freedom : 0;
  const covariance = factorised.inverse().map((row) => row.map((c) => c * variance));
  return ok({
    parameters,
    standards: covariance.map((row, i) => Math.sqrt(row[i]!)),
    covariance,
    residuals,
    residualSquares: sum,
    deviation: Math.sqrt(variance),
    freedom,
    steps,
  });
}

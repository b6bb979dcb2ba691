/** Draws of all inputs of a simulation together, correlated where they are. */
import type { Result } from '../quantity/index.ts';
import { ok, refuse } from '../quantity/index.ts';
import { type Distribution, samples } from './distributions.ts';
import type { Fill } from './random.ts';

export interface Drawn {
  readonly inputs: readonly Distribution[];
  readonly seed: number;
  /** Correlation coefficient of two normal inputs, i ≠ j. */
  readonly correlation?: (i: number, j: number) => number;
}

const wrong = (message: string): Result<never> => refuse<never>({ code: 'undefined-result', message });

/** Lower triangle L with L Lᵀ the correlation matrix (Cholesky), or undefined where the coefficients contradict each other. */
function triangle(n: number, correlation: (i: number, j: number) => number): number[][] | undefined {
  const l: number[][] = [];
  for (let i = 0; i < n; i++) {
    const row: number[] = [];
    for (let j = 0; j <= i; j++) {
      let sum = i === j ? 1 : correlation(i, j);
      for (let k = 0; k < j; k++) sum -= row[k]! * (l[j]?.[k] ?? row[k]!);
      if (i === j) {
        if (sum < -1e-12) return undefined;
        row.push(Math.sqrt(Math.max(0, sum)));
      } else {
        const pivot = l[j]![j]!;
        if (pivot < 1e-9 && Math.abs(sum) > 1e-9) return undefined;
        row.push(pivot < 1e-9 ? 0 : sum / pivot);
      }
    }
    l.push(row);
  }
  return l;
}

/** Fills one column an input. Correlated inputs are mixed from standard normal ones. */
export function drawer(simulation: Drawn): Result<(columns: readonly Float64Array[]) => void> {
  const { inputs, seed, correlation } = simulation;
  const tied = inputs.map(
    (_, i) => correlation !== undefined && inputs.some((_, j) => i !== j && correlation(i, j) !== 0),
  );
  const members = inputs.flatMap((input, i) => (tied[i] ? [{ input, i }] : []));
  if (members.some(({ input }) => input.kind !== 'normal'))
    return wrong('Only normal inputs can be correlated in a simulation.');
  const l = triangle(members.length, (a, b) => correlation!(members[a]!.i, members[b]!.i));
  if (!l) return wrong('The correlations of the inputs contradict each other.');
  const fills = inputs.map((input, i): Fill => {
    const own: Distribution = tied[i] ? { kind: 'normal', centre: 0, standard: 1 } : input;
    return samples(own, seed, i);
  });
  return ok((columns) => {
    for (const [i, fill] of fills.entries()) fill(columns[i]!);
    if (members.length === 0) return;
    const z = new Float64Array(members.length);
    for (let t = 0; t < columns[0]!.length; t++) {
      for (const [m, { i }] of members.entries()) z[m] = columns[i]![t]!;
      for (const [m, { input, i }] of members.entries()) {
        let sum = 0;
        for (let k = 0; k <= m; k++) sum += l[m]![k]! * z[k]!;
        columns[i]![t] = input.centre + (input as { standard: number }).standard * sum;
      }
    }
  });
}

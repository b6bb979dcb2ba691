/** Equations that differ by a few conductances from factored ones, by the formula of Sherman, Morrison and Woodbury. */

/** A conductance in S more (or, negative, less) between two unknowns, −1 for a reference. */
export interface Between {
  readonly a: number;
  readonly b: number;
  readonly siemens: number;
}

/**
 * What the factored equations answered, made the answer of the changed ones.
 *
 * @param answer of the factored equations; becomes that of the changed ones
 * @param columns for each change, the factored equations' answer to one ampere into a and out of b
 * @returns false where the changed equations are singular
 */
export function withChanges(
  answer: Float64Array,
  changes: readonly Between[],
  columns: readonly Float64Array[],
): boolean {
  const n = changes.length;
  const drop = (x: Float64Array, { a, b }: Between): number => (a < 0 ? 0 : x[a]!) - (b < 0 ? 0 : x[b]!);
  const m = changes.map((change, i) =>
    columns.map((column, j) => (i === j ? 1 : 0) + change.siemens * drop(column, change)),
  );
  const y = changes.map((change) => change.siemens * drop(answer, change));
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(m[i]![k]!) > Math.abs(m[best]![k]!)) best = i;
    if (!(Math.abs(m[best]![k]!) > 1e-12)) return false;
    [m[k], m[best]] = [m[best]!, m[k]!];
    [y[k], y[best]] = [y[best]!, y[k]!];
    for (let i = k + 1; i < n; i++) {
      const factor = m[i]![k]! / m[k]![k]!;
      for (let j = k; j < n; j++) m[i]![j]! -= factor * m[k]![j]!;
      y[i]! -= factor * y[k]!;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    for (let j = k + 1; j < n; j++) y[k]! -= m[k]![j]! * y[j]!;
    y[k]! /= m[k]![k]!;
  }
  columns.forEach((column, k) => {
    for (let i = 0; i < answer.length; i++) answer[i]! -= column[i]! * y[k]!;
  });
  return true;
}

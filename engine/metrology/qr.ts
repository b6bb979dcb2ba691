/** Least squares by Householder reflections: half the digits that the normal equations would lose are kept. */

/** What a factorisation can do. Columns are scaled to length 1 inside, so units of the parameters do not matter. */
export interface Factorised {
  /** The first column that the ones before it already make up (to twelve digits), if any: its parameter cannot be told. */
  readonly dependent: number | undefined;
  /** Least-squares solution for right-hand values. */
  solve(values: readonly number[]): number[];
  /** (AᵀA)⁻¹. */
  inverse(): number[][];
}

const norm = (v: ArrayLike<number>, from = 0): number => {
  let widest = 0;
  for (let i = from; i < v.length; i++) widest = Math.max(widest, Math.abs(v[i]!));
  if (widest === 0) return 0;
  let sum = 0;
  for (let i = from; i < v.length; i++) sum += (v[i]! / widest) ** 2;
  return widest * Math.sqrt(sum);
};

/** Mirrors `target` on the plane across `mirror` (length √2 from `from` on). */
function reflect(mirror: Float64Array, target: Float64Array, from: number): void {
  let dot = 0;
  for (let i = from; i < target.length; i++) dot += mirror[i]! * target[i]!;
  for (let i = from; i < target.length; i++) target[i]! -= dot * mirror[i]!;
}

/** `columns`: one array a parameter, all of the same length, at least as long as there are parameters. */
export function factorise(columns: readonly ArrayLike<number>[]): Factorised {
  const n = columns.length;
  const m = columns[0]?.length ?? 0;
  const lengths = columns.map((c) => norm(c) || 1);
  // Above the diagonal these become R, from the diagonal down the mirrors stand apart.
  const work = columns.map((c, j) => Float64Array.from(c, (v) => v / lengths[j]!));
  const mirrors: Float64Array[] = [];
  const diagonal: number[] = [];
  let dependent: number | undefined;
  for (let j = 0; j < n; j++) {
    const column = work[j]!;
    const size = norm(column, j);
    if (size < 1e-12) dependent ??= j;
    const mirror = new Float64Array(m);
    if (size > 0) {
      const alpha = column[j]! > 0 ? -size : size;
      mirror.set(column.subarray(j), j);
      mirror[j]! -= alpha;
      const length = norm(mirror, j) / Math.SQRT2;
      for (let i = j; i < m; i++) mirror[i]! /= length;
      diagonal.push(alpha);
    } else diagonal.push(0);
    for (let k = j + 1; k < n; k++) reflect(mirror, work[k]!, j);
    mirrors.push(mirror);
  }
  const back = (b: ArrayLike<number>): number[] => {
    const x = new Array<number>(n).fill(0);
    for (let j = n - 1; j >= 0; j--) {
      let sum = b[j]!;
      for (let k = j + 1; k < n; k++) sum -= work[k]![j]! * x[k]!;
      x[j] = sum / diagonal[j]!;
    }
    return x;
  };
  const once = (values: ArrayLike<number>): number[] => {
    const b = Float64Array.from(values);
    for (let j = 0; j < n; j++) reflect(mirrors[j]!, b, j);
    return back(b).map((x, j) => x / lengths[j]!);
  };
  return {
    dependent,
    solve(values) {
      const x = once(values);
      // One step of refinement takes out most of what rounding has left.
      const left = values.map((v, i) => x.reduce((sum, xj, j) => sum - columns[j]![i]! * xj, v));
      const correction = once(left);
      return x.map((xj, j) => xj + correction[j]!);
    },
    inverse() {
      // Rows of R⁻¹ from its columns.
      const unit = (j: number): number[] => Array.from({ length: n }, (_, i) => (i === j ? 1 : 0));
      const inverted = Array.from({ length: n }, (_, j) => back(unit(j)));
      return Array.from({ length: n }, (_, i) =>
        Array.from(
          { length: n },
          (_, j) => inverted.reduce((sum, c) => sum + c[i]! * c[j]!, 0) / (lengths[i]! * lengths[j]!),
        ),
      );
    },
  };
}

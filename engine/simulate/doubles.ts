/**
 * Plain arrays that hold doubles from the start. The engine reads them with fewer checks than typed arrays, which tells in
 * loops that multiply with the same weights again and again; an array begun with whole numbers would change its kind.
 */
export function doubles(length: number): number[] {
  let zeros = ZEROS.get(length);
  if (zeros === undefined) {
    zeros = [0.5];
    for (let at = 0; at < length; at++) zeros[at] = 0;
    zeros.length = length;
    ZEROS.set(length, zeros);
  }
  // A copy is made in one go; a new array grown number by number is moved several times.
  return zeros.slice();
}

/** By length; lengths are those of the few kinds of matrices there are. */
const ZEROS = new Map<number, number[]>();

export function doublesOf(from: Float64Array, length = from.length): number[] {
  const out = doubles(length);
  for (let at = 0; at < length; at++) out[at] = from[at]!;
  return out;
}

/**
 * Plain arrays that hold doubles from the start. The engine reads them with fewer checks than typed arrays, which tells in
 * loops that multiply with the same weights again and again; an array begun with whole numbers would change its kind.
 */
export function doubles(length: number): number[] {
  const out = [0.5];
  for (let at = 0; at < length; at++) out[at] = 0;
  out.length = length;
  return out;
}

export function doublesOf(from: Float64Array): number[] {
  const out = doubles(from.length);
  for (let at = 0; at < from.length; at++) out[at] = from[at]!;
  return out;
}

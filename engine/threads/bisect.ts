/** The largest argument for which something still holds. */

const STEPS = 60;

/** Between 0, where it holds, and `most`; `most` itself where it holds there too, 0 where it holds nowhere tried. */
export function largest(most: number, holds: (value: number) => boolean): number {
  if (holds(most)) return most;
  let [low, high] = [0, most];
  for (let step = 0; step < STEPS; step++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}

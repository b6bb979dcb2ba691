/** How far one gain of a loop may grow by itself before the loop swings. */
import { loopMargins } from './margins.ts';
import type { AxisModel } from './model.ts';

/** Gains beyond so many times their value are not asked after. */
const MOST = 1000;

/**
 * The gain called `name` ('proportional') at which the loop begins to swing with the others left as they are, in its own unit;
 * Infinity where a thousand times as much does not bring it so far, null where the gain is nothing or the loop swings already.
 */
export function limitOfGain(model: AxisModel, name: string): number | null {
  const own = (model.control as unknown as Readonly<Record<string, unknown>>)[name];
  if (typeof own !== 'number' || !(own > 0)) return null;
  const steady = (times: number): boolean =>
    loopMargins({ ...model, control: { ...model.control, [name]: own * times } })?.steady ?? false;
  if (!steady(1)) return null;
  let low = 1;
  let high = 1;
  do {
    low = high;
    high *= 1.5;
    if (high > MOST) return Number.POSITIVE_INFINITY;
  } while (steady(high));
  while (high / low > 1 + 1e-6) {
    const middle = Math.sqrt(low * high);
    if (steady(middle)) low = middle;
    else high = middle;
  }
  return own * low;
}

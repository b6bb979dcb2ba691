/** Whether readings taken one after the other wander. */
import { summarise } from './readings.ts';

/**
 * Correlation of each reading with the next (lag-1 autocorrelation): near 0 for readings that scatter freely, towards 1
 * where they drift, such as a meter warming up: their mean is then worth less than deviation/√n says. Towards −1 they
 * swing to and fro. 0 when all are equal. At least two readings; Σ (y_i − ȳ)(y_{i+1} − ȳ) / Σ (y_i − ȳ)².
 */
export function neighbourCorrelation(values: readonly number[]): number {
  if (values.length < 2) throw new RangeError('At least two readings are needed.');
  const { mean, least, most } = summarise(values);
  const widest = Math.max(most - mean, mean - least);
  if (widest === 0) return 0;
  let [together, alone] = [0, 0];
  for (let i = 0; i < values.length; i++) {
    const d = (values[i]! - mean) / widest;
    alone += d * d;
    if (i > 0) together += (d * (values[i - 1]! - mean)) / widest;
  }
  return together / alone;
}

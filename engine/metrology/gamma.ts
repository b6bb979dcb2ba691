/** Gamma functions that the quantiles rest on, to about fourteen digits. */

/** ln Γ(a) − [(a − ½) ln a − a + ½ ln 2π]: Stirling's series (Abramowitz and Stegun 6.1.41), for a ≥ 10. */
export function stirlingRest(a: number): number {
  const r = 1 / (a * a);
  return (
    (1 / 12 -
      r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r * (1 / 1188 - r * (691 / 360360 - r * (1 / 156))))))) /
    a
  );
}

/** ln Γ(a) for a > 0. */
export function lnGamma(a: number): number {
  let product = 1;
  let z = a;
  // Stirling's series wants a large argument: Γ(a) = Γ(a + n) / (a (a+1) … (a+n−1)).
  while (z < 10) product *= z++;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + stirlingRest(z) - Math.log(product);
}

/** a ln(a/x) + x − a without cancellation where x is near a (C. Loader, Fast and accurate computation of binomial probabilities, 2000). */
function deviance(a: number, x: number): number {
  if (Math.abs(a - x) >= 0.1 * (a + x)) return a * Math.log(a / x) + x - a;
  const v = (a - x) / (a + x);
  let sum = (a - x) * v;
  let term = 2 * a * v;
  for (let k = 3; ; k += 2) {
    term *= v * v;
    const next = sum + term / k;
    if (next === sum) return sum;
    sum = next;
  }
}

/** ln of xᵃ e⁻ˣ / Γ(a + 1). */
function lnPoisson(a: number, x: number): number {
  if (a < 10) return a * Math.log(x) - x - lnGamma(a + 1);
  return -stirlingRest(a) - deviance(a, x) - 0.5 * Math.log(2 * Math.PI * a);
}

/** Logarithms of the two parts of the incomplete gamma function ratio; the smaller is exact where the other is near 1. */
export interface LnParts {
  readonly lower: number;
  readonly upper: number;
}

const other = (ln: number): number => (ln >= 0 ? Number.NEGATIVE_INFINITY : Math.log1p(-Math.exp(ln)));

/** ln P(a, x) and ln Q(a, x) for a > 0, x ≥ 0: series below a + 1, continued fraction above (Abramowitz and Stegun 6.5.29, 6.5.31). */
export function lnGammaRatio(a: number, x: number): LnParts {
  if (x === 0) return { lower: Number.NEGATIVE_INFINITY, upper: 0 };
  const front = lnPoisson(a, x);
  if (x < a + 1) {
    let sum = 1;
    let term = 1;
    for (let k = 1; term > sum * 1e-17; k++) {
      term *= x / (a + k);
      sum += term;
    }
    const lower = front + Math.log(sum);
    return { lower, upper: other(lower) };
  }
  // Lentz's way through the fraction 1/(x+1−a− 1(1−a)/(x+3−a− 2(2−a)/(x+5−a− …
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let h = d;
  for (let k = 1; k < 100_000; k++) {
    const step = -k * (k - a);
    b += 2;
    d = 1 / (step * d + b);
    c = b + step / c;
    const change = c * d;
    h *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  const upper = Math.min(0, front + Math.log(a) + Math.log(h));
  return { lower: other(upper), upper };
}

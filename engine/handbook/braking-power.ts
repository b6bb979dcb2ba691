/** Power that a slowing axis gives back to its bus, exactly, over the speed w (a quadratic in w). */

/** Inertia, deceleration as angular acceleration, Coulomb friction, viscous friction, torque constant, resistance. */
export type Braking = readonly [J: number, alpha: number, Tc: number, b: number, Kt: number, R: number];

/** T·w − I²·R with T = J·alpha − Tc − b·w and I = T/Kt, as coefficients of w⁰, w¹, w². */
function coefficients([J, alpha, Tc, b, Kt, R]: Braking): [number, number, number] {
  const T0 = J * alpha - Tc;
  const r = R / (Kt * Kt);
  return [-r * T0 * T0, T0 + 2 * r * T0 * b, -b - r * b * b];
}

const power = ([c0, c1, c2]: readonly [number, number, number], w: number): number => c0 + w * (c1 + w * c2);

/** Speeds between 0 and w1 at which the power passes through zero, ascending. */
function crossings(c: readonly [number, number, number], w1: number): number[] {
  const [c0, c1, c2] = c;
  let roots: number[];
  if (c2 === 0) roots = c1 === 0 ? [] : [-c0 / c1];
  else {
    const disc = c1 * c1 - 4 * c2 * c0;
    if (disc <= 0) return [];
    const q = -(c1 + Math.sign(c1 || 1) * Math.sqrt(disc)) / 2;
    roots = [q / c2, c0 / q];
  }
  return roots.filter((w) => w > 0 && w < w1).sort((a, b) => a - b);
}

/** Energy in J returned while slowing from w1 to rest: the parts in which the power is positive. */
export function energyReturned(braking: Braking, w1: number): number {
  const c = coefficients(braking);
  const alpha = braking[1];
  const integral = (w: number): number => w * (c[0] + w * (c[1] / 2 + (w * c[2]) / 3));
  const edges = [0, ...crossings(c, w1), w1];
  let sum = 0;
  for (let k = 1; k < edges.length; k++) {
    const [from, to] = [edges[k - 1]!, edges[k]!];
    if (power(c, (from + to) / 2) > 0) sum += (integral(to) - integral(from)) / alpha;
  }
  return sum;
}

/** Highest power in W returned at any speed between 0 and w1; never below zero. */
export function highestPowerReturned(braking: Braking, w1: number): number {
  const c = coefficients(braking);
  const vertex = c[2] === 0 ? w1 : -c[1] / (2 * c[2]);
  const inside = vertex > 0 && vertex < w1 ? power(c, vertex) : 0;
  return Math.max(0, inside, power(c, w1));
}

/** Time for an inertia to change its speed under a torque that depends on the speed. */

/** N·m at rad/s. */
export type TorqueAt = (speed: number) => number;

/** A motor’s torque: `T` up to `base` (rad/s), its power above, and never more than `pullOut` times the square of what is left. */
export const motorTorque =
  (T: number, pullOut: number, base: number): TorqueAt =>
  (w) => {
    const left = base / Math.max(base, w);
    return Math.min(T * left, pullOut * left * left);
  };

/** Abscissae and weights of Gauss and Legendre with five points on −1 … 1. */
const GAUSS: readonly (readonly [at: number, weight: number])[] = [0, 1, 2, 3, 4].map((k) => {
  const root = [0, Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3, Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3];
  const weight = [128 / 225, (322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900];
  const which = [2, 1, 0, 1, 2][k]!;
  return [(k < 2 ? -1 : 1) * root[which]!, weight[which]!];
});
const PANELS = 4;

/**
 * s from speed `from` to `to` (rad/s) of inertia `J` (kg·m²); `net` is the torque left over, above zero throughout. `knees` are
 * the speeds at which its curve has a corner, so that each piece is smooth.
 */
export function rampTime(
  J: number,
  net: TorqueAt,
  from: number,
  to: number,
  knees: readonly number[] = [],
): number {
  const edges = [from, ...knees.filter((w) => w > from && w < to).sort((a, b) => a - b), to];
  let time = 0;
  for (let k = 1; k < edges.length; k++) {
    const width = (edges[k]! - edges[k - 1]!) / PANELS;
    for (let panel = 0; panel < PANELS; panel++) {
      const middle = edges[k - 1]! + (panel + 0.5) * width;
      for (const [at, weight] of GAUSS) time += (weight * width) / 2 / net(middle + (at * width) / 2);
    }
  }
  return J * time;
}

/** Speeds at which the torque of a motor turns from constant torque to power, and from power to pull-out. */
export const kneesOf = (T: number, pullOut: number, base: number): number[] => [base, (base * pullOut) / T];

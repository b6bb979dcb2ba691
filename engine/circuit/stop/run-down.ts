/**
 * How a shaft comes to rest: in stretches, each with its own torque, each solved exactly. Steady friction and whatever
 * brakes steadily add to T; what grows with speed to b: J·dω/dt = −T − b·ω. Closed form of the coast-down, from memory.
 */

export interface Stretch {
  /** Seconds it lasts at most; Infinity until it stands. */
  readonly lasts: number;
  /** Steady braking torque, N·m; negative where the load drives. */
  readonly torque: number;
  /** N·m·s/rad */
  readonly drag: number;
  /** Where a drive brakes: slowing in rad/s², whatever the torque. */
  readonly slows?: number;
  /** Where a drive still drives: the speed stays. */
  readonly drives?: boolean;
}

export interface RunDown {
  /** Seconds until it stands; Infinity where it never does. */
  readonly time: number;
  /** Radians. */
  readonly angle: number;
  /** Points for drawing: seconds, rad/s. */
  readonly points: readonly (readonly [time: number, speed: number])[];
}

const POINTS = 16;

/** From `speed` in rad/s with inertia in kg·m² through the stretches in turn. */
export function runDown(speed: number, inertia: number, stretches: readonly Stretch[]): RunDown {
  let time = 0;
  let angle = 0;
  let now = speed;
  const points: [number, number][] = [[0, speed]];
  for (const stretch of stretches) {
    if (now <= 0) break;
    const stop = toStand(now, inertia, stretch);
    const lasts = Math.min(stop, stretch.lasts);
    if (lasts === Number.POSITIVE_INFINITY) return { time: lasts, angle: lasts, points };
    for (let n = 1; n <= POINTS; n++) {
      const part = (lasts * n) / POINTS;
      points.push([
        time + part,
        lasts === stop && n === POINTS ? 0 : after(now, inertia, stretch, part).speed,
      ]);
    }
    const end = after(now, inertia, stretch, lasts);
    time += lasts;
    angle += end.angle;
    now = lasts === stop ? 0 : end.speed;
  }
  return now > 0
    ? { time: Number.POSITIVE_INFINITY, angle: Number.POSITIVE_INFINITY, points }
    : { time, angle, points };
}

/** Seconds until it stands under one stretch. */
function toStand(speed: number, inertia: number, { torque, drag, slows, drives }: Stretch): number {
  if (drives) return Number.POSITIVE_INFINITY;
  if (slows !== undefined) return slows > 0 ? speed / slows : Number.POSITIVE_INFINITY;
  if (torque <= 0) return Number.POSITIVE_INFINITY;
  // log1p keeps its digits where drag is small beside steady friction.
  return drag > 0 ? (inertia / drag) * Math.log1p((drag * speed) / torque) : (inertia * speed) / torque;
}

function after(
  speed: number,
  inertia: number,
  { torque, drag, slows, drives }: Stretch,
  time: number,
): { speed: number; angle: number } {
  if (drives) return { speed, angle: speed * time };
  if (slows !== undefined || drag <= 0) {
    const rate = slows ?? torque / inertia;
    return { speed: speed - rate * time, angle: speed * time - (rate * time * time) / 2 };
  }
  const k = (drag * time) / inertia;
  const lost = -Math.expm1(-k);
  const steady = torque / drag;
  return {
    speed: speed - (speed + steady) * lost,
    angle: ((speed + steady) * lost * inertia) / drag - steady * time,
  };
}

/** How far a load falls in metres while nothing holds it: torque of the load less friction, over all inertia. */
export function drop(time: number, torque: number, inertia: number, perRadian: number): number {
  return ((torque / inertia) * time * time * perRadian) / 2;
}

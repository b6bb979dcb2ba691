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
  /** Seconds until it stands or strikes; Infinity where it does neither. */
  readonly time: number;
  /** Radians. */
  readonly angle: number;
  /** rad/s with which it comes to the end of its way; absent where it stands before. */
  readonly strikes?: number;
  /** Points for drawing: seconds, rad/s. */
  readonly points: readonly (readonly [time: number, speed: number])[];
}

const POINTS = 16;

/**
 * From `speed` in rad/s with inertia in kg·m² through the stretches in turn, the last of which lasts for ever. `room`: radians
 * to where the way ends. What stands is set moving again by a load that nothing holds in a later stretch.
 */
export function runDown(
  speed: number,
  inertia: number,
  stretches: readonly Stretch[],
  room = Number.POSITIVE_INFINITY,
): RunDown {
  let elapsed = 0;
  let time = 0;
  let angle = 0;
  let now = speed;
  const points: [number, number][] = [[0, speed]];
  for (const stretch of stretches) {
    const stop = toStand(now, inertia, stretch);
    const most = Math.min(stop, stretch.lasts);
    const hit = reaches(room - angle, now, inertia, stretch, most);
    const lasts = hit ?? most;
    if (lasts === Number.POSITIVE_INFINITY) return { time: lasts, angle: lasts, points };
    const end = after(now, inertia, stretch, lasts);
    for (let n = 1; n <= POINTS && lasts > 0; n++) {
      const part = (lasts * n) / POINTS;
      const stands = hit === undefined && lasts === stop && n === POINTS;
      points.push([elapsed + part, stands ? 0 : after(now, inertia, stretch, part).speed]);
    }
    if (lasts > 0) time = elapsed + lasts;
    if (hit !== undefined) return { time, angle: room, strikes: end.speed, points };
    angle += end.angle;
    now = lasts === stop ? 0 : end.speed;
    elapsed += stretch.lasts;
  }
  return now > 0
    ? { time: Number.POSITIVE_INFINITY, angle: Number.POSITIVE_INFINITY, points }
    : { time, angle, points };
}

/** Halvings of a time that is sought: to the last bit of a double. */
const HALVINGS = 80;
/** Seconds after which what crawls is no longer waited for. */
const FOR_EVER = 1e7;

/** Seconds into a stretch after which it has turned by `room`; undefined where it does not within `most`. */
function reaches(
  room: number,
  speed: number,
  inertia: number,
  stretch: Stretch,
  most: number,
): number | undefined {
  if (room === Number.POSITIVE_INFINITY) return undefined;
  const far = (time: number): boolean => after(speed, inertia, stretch, time).angle > room;
  let high = Math.min(most, 1e-3);
  while (!far(high)) {
    if (high >= most || high > FOR_EVER) return undefined;
    high = Math.min(most, 2 * high);
  }
  let low = 0;
  for (let n = 0; n < HALVINGS; n++) {
    const middle = (low + high) / 2;
    if (far(middle)) high = middle;
    else low = middle;
  }
  return high;
}

/** Seconds until it stands under one stretch. */
function toStand(speed: number, inertia: number, { torque, drag, slows, drives }: Stretch): number {
  if (drives) return Number.POSITIVE_INFINITY;
  if (speed <= 0 && (slows !== undefined || torque >= 0)) return 0;
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

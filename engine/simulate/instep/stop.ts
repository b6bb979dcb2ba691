/** How far a spindle turns until it stands, in closed form on each straight piece of its braking torque. */
import { type TorqueCurve, torqueAt } from './model.ts';

export interface Stopping {
  /** s and rad from the order to stop until it stands; Infinity where nothing slows it. */
  readonly time: number;
  readonly angle: number;
}

/** Below this relative change a torque counts as level. */
const LEVEL = 1e-9;

/**
 * From `speed` to rest with the braking torque of the curve and a drag besides. `delay` s pass before it brakes; the
 * drive keeps the speed until then.
 */
export function stopFrom(
  inertia: number,
  braking: TorqueCurve,
  drag: number,
  speed: number,
  delay = 0,
): Stopping {
  let time = delay;
  let angle = speed * delay;
  const marks = [0, ...braking.map((each) => each.speed).filter((each) => each > 0 && each < speed), speed];
  for (let at = marks.length - 1; at > 0; at--) {
    const [low, high] = [marks[at - 1]!, marks[at]!];
    const a = torqueAt(braking, low) + drag;
    const b = torqueAt(braking, high) + drag;
    if (!(a > 0 && b > 0)) return { time: Number.POSITIVE_INFINITY, angle: Number.POSITIVE_INFINITY };
    const slope = (b - a) / (high - low);
    if (Math.abs(b - a) < LEVEL * a) {
      time += (inertia * (high - low)) / a;
      angle += (inertia * (high * high - low * low)) / (2 * a);
    } else {
      // T(w) = c + slope·w; ∫ dw/T and ∫ w dw/T.
      const c = a - slope * low;
      const log = Math.log(b / a) / slope;
      time += inertia * log;
      angle += inertia * ((high - low) / slope - (c / slope) * log);
    }
  }
  return { time, angle };
}

/** Outline of a thread's profile in its axial plane, for drawing it to scale. */
import { basicSizes } from './dimensions.ts';
import type { Thread } from './types.ts';

/** Along the axis and radially outwards, metres. */
export type Point = readonly [z: number, r: number];

const TEETH = 3;
/** Steps of a rounded crest or root. */
const ARC = 8;

/** Bolt outline over three pitches, from root to root; radius above the axis. Parallel, also for a taper thread. */
export function boltProfile(thread: Thread): readonly Point[] {
  const { pitch: P, flankAngle } = thread;
  const basic = basicSizes(thread);
  const top = basic.major / 2;
  const bottom = basic.root / 2;
  const middle = basic.pitchDiameter / 2;
  const slope = Math.tan(flankAngle / 2);
  const round = thread.family === 'whitworth' || thread.family.startsWith('pipe');
  const points: Point[] = [];
  for (let tooth = 0; tooth < TEETH; tooth++) {
    const centre = (tooth + 0.5) * P;
    // Half the width of the ridge at a radius; it is a quarter pitch at the pitch line.
    const half = (r: number): number => Math.max(0, P / 4 - (r - middle) * slope);
    const side = (sign: 1 | -1): Point[] => {
      const flank: Point[] = [
        [centre - sign * half(bottom), bottom],
        [centre - sign * half(top), top],
      ];
      return sign === 1 ? flank : flank.reverse();
    };
    points.push([tooth * P, bottom], ...side(1), ...side(-1), [(tooth + 1) * P, bottom]);
  }
  return round ? rounded(points, 0.1373291 * P, P) : points;
}

/** Cuts each corner by a short curve, so that Whitworth crests and roots look as they are. */
function rounded(points: readonly Point[], radius: number, P: number): Point[] {
  const out: Point[] = [];
  for (let at = 0; at < points.length; at++) {
    const here = points[at]!;
    const before = points[at - 1];
    const after = points[at + 1];
    if (
      !before ||
      !after ||
      radius <= 0 ||
      Math.hypot(after[0] - before[0], after[1] - before[1]) < P * 1e-6
    ) {
      out.push(here);
      continue;
    }
    const cut = (to: Point): Point => {
      const length = Math.hypot(to[0] - here[0], to[1] - here[1]);
      const share = Math.min(0.5, length === 0 ? 0 : (0.6 * radius) / length);
      return [here[0] + (to[0] - here[0]) * share, here[1] + (to[1] - here[1]) * share];
    };
    const [a, b] = [cut(before), cut(after)];
    for (let step = 0; step <= ARC; step++) {
      const t = step / ARC;
      const u = 1 - t;
      out.push([
        u * u * a[0] + 2 * u * t * here[0] + t * t * b[0],
        u * u * a[1] + 2 * u * t * here[1] + t * t * b[1],
      ]);
    }
  }
  return out;
}

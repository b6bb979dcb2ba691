/** What the control sees of the spindle: its angle in whole counts, and the mark that passes once an encoder turn. */
import type { FeedbackInStep } from './model.ts';

const TURN = 2 * Math.PI;

/** rad of the spindle for one count; 0 without steps. */
export const countAngle = ({ counts, turns }: FeedbackInStep): number =>
  counts > 0 ? TURN / (counts * turns) : 0;

/** The angle as counted, rad of the spindle. */
export function seenAngle(of: FeedbackInStep, angle: number): number {
  const step = countAngle(of);
  return step > 0 ? Math.floor(angle / step + 1e-9) * step : angle;
}

/** The first mark at or after an angle, rad of the spindle. */
export function nextMark({ turns, firstMark }: FeedbackInStep, angle: number): number {
  const apart = TURN / turns;
  return firstMark + Math.ceil((angle - firstMark) / apart - 1e-9) * apart;
}

/**
 * Angles of the spindle (rad, below a turn, rising) at which a mark may pass; `encoder` turns for `spindle` turns. None
 * where they are not whole numbers: then it passes anywhere.
 */
export function markAngles(encoder: number, spindle: number): readonly number[] {
  if (!(Number.isInteger(encoder) && Number.isInteger(spindle) && encoder > 0 && spindle > 0)) return [];
  const common = gcd(encoder, spindle);
  const places = encoder / common;
  return Array.from({ length: places }, (_, at) => (at * TURN) / places);
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

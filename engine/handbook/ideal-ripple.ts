/** Ripple of a full-wave rectifier on an ideal source: the capacitor follows the sine down, then falls in a straight line. */

export interface IdealRipple {
  /** Lowest voltage in V, just before the next peak recharges the capacitor. */
  readonly valley: number;
  /** Mean voltage in V. */
  readonly mean: number;
}

type Given = readonly [f: number, C: number, I: number, Vp: number];

/**
 * Exact for one constant current. All in SI: line frequency, capacitance, current, peak after the diodes.
 * Angles count from the peak. Call only when `idealRippleRefuses` has no reason.
 */
export function idealRipple(...[f, C, I, Vp]: Given): IdealRipple {
  const slope = I / (2 * Math.PI * f * C);
  const leave = Math.asin(slope / Vp);
  const fall = (angle: number): number => Vp * Math.cos(leave) - slope * (angle - leave);
  // Line and sine cross once between a quarter and a half turn. Their distance is convex and falls there, so Newton's
  // steps from the left come ever closer and never pass it.
  let meet = Math.PI / 2;
  for (let n = 0; n < 60; n++) {
    const step = (fall(meet) + Vp * Math.cos(meet)) / (slope + Vp * Math.sin(meet));
    if (!(step > 1e-15)) break;
    meet = Math.min(meet + step, Math.PI);
  }
  const onSine = Vp * (Math.sin(leave) + Math.sin(Math.PI - meet));
  const onLine = ((fall(leave) + fall(meet)) / 2) * (meet - leave);
  return { valley: fall(meet), mean: (onSine + onLine) / Math.PI };
}

/** Why there is no steady bus, or undefined. */
export function idealRippleRefuses(...[f, C, I, Vp]: Given): string | undefined {
  const slope = I / (2 * Math.PI * f * C);
  if (slope < Vp) {
    const leave = Math.asin(slope / Vp);
    if (Vp * Math.cos(leave) - slope * (Math.PI / 2 - leave) > 0) return undefined;
  }
  return 'the capacitor runs empty between two peaks of the mains; it is far too small for this current';
}

/**
 * Whether an axis at rest hunts: swings to and fro for ever about its place, as one with play in its loop does, or one whose
 * integrator pushes against friction that is greater from rest than in motion. Told by moving it: it is pushed off its place
 * and followed until it either lies still or repeats itself.
 */
import { loopMargins } from './margins.ts';
import { type AxisModel, travelPerRadian } from './model.ts';
import { playCycle, type Swing } from './play-cycle.ts';
import { simulate } from './simulate.ts';

export interface Hunting {
  /** Null where it comes to rest. */
  readonly swing: Swing | null;
  /** What keeps it up; null where nothing does. */
  readonly by: 'play' | 'friction' | 'counts' | 'loop' | null;
  /** The swing that play alone would keep up, reckoned without moving it; null where none. */
  readonly reckoned: Swing | null;
  /** s that the axis was followed. */
  readonly watched: number;
}

/** s that an axis is given to come to rest, and how much longer where it has not made up its mind. */
const WATCHES = [4, 16] as const;
const POINTS = 6000;
/** m by which a loop is pushed that frequency says would swing: far enough that friction does not hold it at once. */
const HARD = 5e-4;
/** m: smaller than this no machine shows it. */
const SMALLEST = 2e-8;

/** Null for a stepping motor, which has no loop. Throws ModelError for a model that cannot be. */
export function hunting(model: AxisModel): Hunting | null {
  if (model.control.kind === 'open') return null;
  const trips = { followingLimit: Number.POSITIVE_INFINITY };
  const still: AxisModel = { ...model, drive: { ...model.drive, ...trips } };
  const reckoned = playCycle(model);
  // A swing that keeps itself up once it is there may have to be kicked off.
  const pushed = loopMargins(model)?.steady ? kick(model) : Math.max(kick(model), HARD);
  const distance = Math.max(pushed, 1.5 * (reckoned?.amplitude ?? 0));
  for (const watched of WATCHES) {
    const run = simulate(still, { kind: 'step', distance }, { until: watched, points: POINTS, books: false });
    if (run.summary.unstable || run.stopped) return { swing: null, by: 'loop', reckoned, watched };
    // The last third is what lasts; the third before it shows whether that is so.
    const last = swingOf(run.time, run.actual, (2 * watched) / 3, watched);
    const earlier = swingOf(run.time, run.actual, watched / 3, (2 * watched) / 3);
    if (last.amplitude < SMALLEST) return { swing: null, by: null, reckoned, watched };
    const lasts = last.amplitude > 0.8 * earlier.amplitude && last.turns >= 4;
    const { amplitude, frequency } = last;
    if (lasts) return { swing: { amplitude, frequency }, by: cause(still, distance), reckoned, watched };
  }
  return { swing: null, by: null, reckoned, watched: WATCHES.at(-1)! };
}

/** m by which it is pushed off: more than its play and its counts. */
function kick(model: AxisModel): number {
  return Math.max(5e-6, 1.5 * model.transmission.backlash, 4 * countOf(model));
}

/** m at the slide of one count; 0 where it sees without steps. */
function countOf(model: AxisModel): number {
  const { feedback, transmission } = model;
  if (feedback.on === 'slide') return feedback.countLength;
  if (feedback.countsPerTurn === 0) return 0;
  const turn = 2 * Math.PI * (feedback.on === 'screw' ? transmission.ratio : 1);
  return (turn / feedback.countsPerTurn) * travelPerRadian(model);
}

/** The same axis without the suspect no longer hunts: that is what keeps the swing up. */
function cause(model: AxisModel, distance: number): Hunting['by'] {
  const without: readonly (readonly ['play' | 'friction' | 'counts', AxisModel])[] = [
    ['play', { ...model, transmission: { ...model.transmission, backlash: 0 } }],
    ['friction', { ...model, slide: { ...model.slide, staticFriction: model.slide.coulomb } }],
    ['counts', { ...model, feedback: { ...model.feedback, countsPerTurn: 0, countLength: 0 } }],
  ];
  const present = {
    play: model.transmission.backlash > 0,
    friction: model.slide.staticFriction > model.slide.coulomb,
    counts: countOf(model) > 0,
  };
  for (const [name, calmer] of without) if (present[name] && !keepsSwinging(calmer, distance)) return name;
  return 'loop';
}

function keepsSwinging(model: AxisModel, distance: number): boolean {
  const watched = WATCHES[0];
  const run = simulate(model, { kind: 'step', distance }, { until: watched, points: POINTS, books: false });
  return swingOf(run.time, run.actual, (2 * watched) / 3, watched).amplitude > SMALLEST;
}

/** Half the way between the ends, and how often the middle was passed, between two times. */
function swingOf(
  time: Float64Array,
  place: Float64Array,
  from: number,
  to: number,
): { readonly amplitude: number; readonly frequency: number; readonly turns: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < time.length; k++) {
    if (time[k]! < from || time[k]! > to) continue;
    low = Math.min(low, place[k]!);
    high = Math.max(high, place[k]!);
  }
  const amplitude = (high - low) / 2;
  const middle = (high + low) / 2;
  // It counts as on the other side once it is well beyond the middle, so that ripple does not count.
  let side = 0;
  let turns = 0;
  let first = 0;
  let last = 0;
  for (let k = 0; k < time.length; k++) {
    if (time[k]! < from || time[k]! > to) continue;
    const off = place[k]! - middle;
    if (Math.abs(off) < amplitude / 3) continue;
    const now = off > 0 ? 1 : -1;
    if (side !== 0 && now !== side) {
      if (turns === 0) first = time[k]!;
      last = time[k]!;
      turns++;
    }
    side = now;
  }
  const frequency = turns > 1 ? (turns - 1) / 2 / (last - first) : 0;
  return { amplitude, frequency, turns };
}

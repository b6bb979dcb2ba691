/**
 * What a model's modes came to: equations, steps of one sample, lifted steps. They depend on the model alone, not on the
 * move, so the next run of the same model begins with them. A model is never changed in place.
 */
import type { Lift } from './lift.ts';
import type { AxisModel } from './model.ts';
import { type Constants, type Ending, type Mode, slideFriction } from './modes.ts';

/** Loads whose steps are kept for the next run, for each mode; a force that varies brings new ones. */
const MOST_LOADS = 8;

/** The step of one sample for one load, and the lifted ones made from it. */
export interface Loaded {
  readonly load: number;
  /** ROWS × 5 weights of what varies, then ROWS constants; see one-sample.ts. */
  readonly matrix: Float64Array;
  /** By which energies may be asked for. */
  readonly lifts: { all: Lift | null; input: Lift | null; none: Lift | null };
}

/** A mode with what a step of one sample needs besides. */
export interface KeptMode {
  readonly mode: Mode;
  /** Slide and motor speed must stay within, else the series looks closer. */
  readonly low1: number;
  readonly high1: number;
  readonly low2: number;
  readonly high2: number;
  /** Guards besides those on speed. */
  readonly others: boolean;
  readonly dry1: number;
  readonly slope1: number;
  readonly dry2: number;
  readonly slope2: number;
  readonly damping: number;
  /** ROWS × COLUMNS for any load; null while it was not asked for. */
  sample: Float64Array | null;
  readonly loads: Loaded[];
}

export type Kept = Map<number, KeptMode>;

export function keepMode(c: Constants, mode: Mode): KeptMode {
  const { flags, guards } = mode;
  const { s1, s2 } = flags;
  const rigid = c.stiffness === Number.POSITIVE_INFINITY;
  const has = (ending: Ending): boolean => {
    for (const guard of guards) if (guard.ending === ending) return true;
    return false;
  };
  let others = false;
  for (const { ending } of guards) if (!ON_SPEED.has(ending)) others = true;
  const still1 = has('motor-still');
  const sign2 = Math.sign(s2);
  const edge = has('slide-slow') ? c.fall : has('slide-still') ? 0 : Number.NEGATIVE_INFINITY;
  const far = has('slide-fast') ? c.fall : Number.POSITIVE_INFINITY;
  const { dry, slope } = slideFriction(c, s2);
  const slips1 = rigid ? sign2 : s1;
  return {
    mode,
    low1: still1 && s1 > 0 ? 0 : Number.NEGATIVE_INFINITY,
    high1: still1 && s1 < 0 ? 0 : Number.POSITIVE_INFINITY,
    low2: sign2 > 0 ? edge : sign2 < 0 ? -far : Number.NEGATIVE_INFINITY,
    high2: sign2 > 0 ? far : sign2 < 0 ? -edge : Number.POSITIVE_INFINITY,
    others,
    dry1: slips1 * c.T1,
    slope1: slips1 === 0 ? 0 : c.b1,
    dry2: s2 === 0 ? 0 : dry,
    slope2: s2 === 0 ? 0 : slope,
    damping: rigid || flags.contact === 0 ? 0 : c.damping,
    sample: null,
    loads: [],
  };
}

const ON_SPEED: ReadonlySet<Ending> = new Set(['motor-still', 'slide-still', 'slide-slow', 'slide-fast']);

/** Keeps one more load of a mode; the oldest goes where there are many. */
export function keepLoad(kept: KeptMode, loaded: Loaded): void {
  if (kept.loads.length >= MOST_LOADS) kept.loads.shift();
  kept.loads.push(loaded);
}

const OF_MODEL = new WeakMap<AxisModel, Map<number, Kept>>();

/** What is kept for samples of `h` seconds. */
export function keptOf(model: AxisModel, h: number): Kept {
  let bySample = OF_MODEL.get(model);
  if (!bySample) {
    bySample = new Map();
    OF_MODEL.set(model, bySample);
  }
  let kept = bySample.get(h);
  if (!kept) {
    kept = new Map();
    bySample.set(h, kept);
  }
  return kept;
}

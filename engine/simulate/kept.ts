/**
 * What a model's modes came to: equations, steps of one sample, lifted steps. They depend on the model alone, not on the
 * move, so the next run of the same model begins with them. A model is never changed in place.
 */
import type { Lift } from './lift.ts';
import type { AxisModel } from './model.ts';
import type { Mode } from './modes.ts';

export class Kept {
  readonly modes = new Map<number, Mode>();
  /** Matrices of one sample, by mode. */
  readonly steps = new Map<number, Float64Array>();
  /** The same for one load, by mode and load. */
  readonly loaded = new Map<string, Float64Array>();
  /** By mode, load and which energies may be asked for; without their moments. */
  readonly lifts = new Map<string, Lift>();
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
    kept = new Kept();
    bySample.set(h, kept);
  }
  return kept;
}

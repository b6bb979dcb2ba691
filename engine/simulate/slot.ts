/** A mode in one run: its step for the load that acts, and what its lifted steps have gathered. */
import { doubles } from './doubles.ts';
import { type KeptMode, keepLoad, type Loaded } from './kept.ts';
import { type InnerLoop, type Lift, makeLift } from './lift.ts';
import { type Moments, noMoments, settle } from './lift-energy.ts';
import { oneSample } from './one-sample.ts';
import * as shapes from './shapes.ts';

const { COLUMNS, ROWS } = shapes;

/** Looks of a mode, in any one run, before its lifted step is worked out: shorter ones are not worth it. */
const LASTS = 4;
const NO_NUMBERS: readonly number[] = doubles(0);

/** Which energies a run asks of its lifted steps. */
export type Forms = 'all' | 'input' | 'none';

export class Slot {
  readonly kept: KeptMode;
  matrix: readonly number[] = NO_NUMBERS;
  load = Number.NaN;
  lift: Lift | null = null;
  private loaded: Loaded | null = null;
  private looks = 0;
  readonly moments: Moments | null;

  constructor(kept: KeptMode, books: boolean) {
    this.kept = kept;
    this.moments = books ? noMoments() : null;
  }

  /** Makes the kept step ready for this load. What was gathered at another is booked. */
  prepare(load: number, h: number, energy: Float64Array): void {
    const { kept } = this;
    let loaded: Loaded | undefined;
    for (const each of kept.loads) if (each.load === load) loaded = each;
    if (!loaded) {
      kept.sample ??= oneSample(kept.mode, h);
      loaded = { load, matrix: loadedStep(kept.sample, load), lifts: { all: null, input: null, none: null } };
      keepLoad(kept, loaded);
    }
    this.settle(energy);
    this.lift = null;
    this.loaded = loaded;
    this.matrix = loaded.matrix;
    this.load = load;
  }

  /** The lifted step for the load it was prepared for; null while the mode has not lasted. */
  lifted(loop: InnerLoop, forms: Forms): Lift | null {
    // To wait for a known one, too, keeps the first run and the next alike.
    if (this.looks++ < LASTS) return null;
    const { lifts, matrix } = this.loaded!;
    let lift = lifts[forms];
    if (lift === null) {
      const { dry1, slope1, dry2, slope2, damping } = this.kept;
      lift = makeLift({ matrix, dry1, slope1, dry2, slope2, damping, load: this.load }, loop, forms);
      lifts[forms] = lift;
    }
    this.lift = lift;
    return lift;
  }

  /** Books what lifted steps have gathered. */
  settle(energy: Float64Array): void {
    if (this.lift !== null && this.moments !== null) settle(this.lift.forms, this.moments, energy);
  }
}

function loadedStep(all: readonly number[], load: number): number[] {
  const matrix = doubles(ROWS * 6);
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column < 5; column++) matrix[row * 5 + column] = all[row * COLUMNS + column]!;
    matrix[ROWS * 5 + row] = all[row * COLUMNS + 5]! + load * all[row * COLUMNS + 6]!;
  }
  return matrix;
}

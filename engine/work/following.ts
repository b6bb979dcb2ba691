/** How an axis follows the spindle: found by moving it in the simulation, as it stands and with its doubt drawn. */
import type { MoveSetting } from '../advice/axis-model.ts';
import { type AxisModel, ModelError, type Spread, variantOf } from '../simulate/index.ts';
import { axisFollows } from './axis-follows.ts';
import { type Known, NONE } from './known.ts';
import { say } from './say.ts';

export interface Following {
  /** 1/s: gain of the plain lag that needs as much run-in. */
  readonly gain: Known;
  /** s by which it trails the spindle once settled. */
  readonly lag: Known;
  /** Where these two come from. */
  readonly gainSays: string;
}

/** How an axis moves in time: asked only where it is wanted, for it takes a while. */
export interface InTime extends Following {
  /** Null while something is missing. */
  readonly model: AxisModel | null;
  /** How far the numbers of that model may be off. */
  readonly spread: readonly Spread[];
}

/** Moving an axis takes a moment, and most work asks one axis only: so it is moved when first asked. */
class Asked implements InTime {
  readonly model: AxisModel | null;
  readonly spread: readonly Spread[];
  private readonly follow: () => Following;
  private found: Following | undefined;

  constructor(model: AxisModel | null, spread: readonly Spread[], follow: () => Following) {
    this.model = model;
    this.spread = spread;
    this.follow = follow;
  }

  private get following(): Following {
    this.found ??= this.follow();
    return this.found;
  }

  get gain(): Known {
    return this.following.gain;
  }

  get lag(): Known {
    return this.following.lag;
  }

  get gainSays(): string {
    return this.following.gainSays;
  }
}

/** `look`: s between two looks of the control at the spindle. */
export function inTimeOf(
  {
    model = null,
    spread,
    missing,
  }: Pick<MoveSetting, 'spread' | 'missing'> & { readonly model?: AxisModel | null },
  acceleration: Known,
  rapid: Known,
  look: number,
): InTime {
  return new Asked(model, spread, () => {
    if (model && acceleration.value !== null && rapid.value !== null)
      return following(model, acceleration.value, rapid.value, look);
    const needs = [...missing.map(({ path }) => path), ...acceleration.needs, ...rapid.needs];
    const unknown: Known = { value: null, needs };
    return { gain: unknown, lag: unknown, gainSays: '' };
  });
}

function following(
  model: AxisModel,
  acceleration: number,
  rapid: number,
  look: number,
  at?: readonly number[],
): Following {
  const found = axisFollows(model, acceleration, rapid, look, at);
  if (!found)
    return {
      gain: NONE,
      lag: NONE,
      gainSays: 'In the simulation this axis never follows well enough for a thread; look at it under Move.',
    };
  return {
    gain: { value: found.gain, needs: [], basis: 'guess' },
    lag: { value: found.lag, needs: [], basis: 'guess' },
    gainSays: `In the simulation it needs the run-in of an axis with a gain of ${say(found.gain, '1/s')}, and trails by ${say(found.lag, 'ms')}. What its loop is set to is worked out, not measured: the run-in is as good as that.`,
  };
}

/**
 * Axes that are moved in the simulation, each with another draw of what is in doubt; draws beyond these take them in turn.
 * Between the least and the largest of so many lie nine in ten (15 of 17 on average); each takes about a tenth of a second.
 */
export const FOLLOWING_DRAWS = 16;

/** Gains of a loop, by how it is built; a stepping motor has none. */
const GAINS = {
  cascade: ['positionGain', 'speedGain', 'speedIntegral'],
  pid: ['proportional', 'integral', 'derivative'],
  open: [],
} as const;

/** What its loop is set to is worked out, not measured, and so in doubt as the rest of the axis is. */
const withLoop = ({ control }: AxisModel, spread: readonly Spread[], share: number): readonly Spread[] => [
  ...spread,
  ...(share > 0
    ? GAINS[control.kind].map((gain): Spread => ({ path: `control.${gain}`, share, form: 'even' }))
    : []),
];

/**
 * The axis draw by draw: what is in doubt of its parts by their own doubt, and each gain of its loop by `loop` either way,
 * evenly. `number` of the axis among those of the machine, so that no two draw alike.
 */
export function followingDrawn(
  axis: InTime & { readonly acceleration: Known; readonly rapid: Known },
  { look, loop, seed, number }: { look: number; loop: number; seed: number; number: number },
): (lane: number) => InTime {
  const { model, acceleration, rapid } = axis;
  if (!model || acceleration.value === null || rapid.value === null) return () => axis;
  const [a, v] = [acceleration.value, rapid.value];
  const spread = withLoop(model, axis.spread, loop);
  const made = new Map<number, InTime>();
  return (lane) => {
    const at = lane % FOLLOWING_DRAWS;
    let found = made.get(at);
    if (!found) {
      found = new Asked(model, axis.spread, () => drawn(at));
      made.set(at, found);
    }
    return found;
  };
  function drawn(at: number): Following {
    // An axis that does not follow as it stands is told so; its draws would say no more.
    if (axis.gain.value === null) return axis;
    try {
      // As it stands it was tried at every speed; a draw is moved only at those that were the worst then.
      const paces = axisFollows(model!, a, v, look)?.worst;
      return following(
        variantOf(model!, spread, seed, number * FOLLOWING_DRAWS + at).model,
        a,
        v,
        look,
        paces,
      );
    } catch (fault) {
      if (fault instanceof ModelError) return axis;
      throw fault;
    }
  }
}

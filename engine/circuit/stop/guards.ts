/** How far away a guard must stand for what turns behind it. */
import { guardDistance } from '../../handbook/guard-distance.ts';
import { evaluate } from '../../sheet/index.ts';
import type { Model } from './model.ts';
import { type DemandStops, longest } from './stops.ts';

export interface GuardDistance {
  readonly motion: string;
  /** Seconds until it stands. */
  readonly time: number | undefined;
  /** Metres. */
  readonly needed: number | undefined;
  readonly there: number | undefined;
  readonly reserve: number | undefined;
  readonly says: string;
}

/** How far a guard without lock would have to stand, by ISO 13855. */
export function guardDistances({ motions }: Model, stops: readonly DemandStops[]): readonly GuardDistance[] {
  return motions
    .filter(({ kind }) => kind === 'spindle')
    .map((motion) => {
      const { worst } = longest(motion.id, stops);
      const there = motion.numbers.read.guard;
      const time = worst?.time;
      const found =
        time === undefined || !Number.isFinite(time) || time <= 0
          ? undefined
          : evaluate(guardDistance, { T: time, D_reach: 0 }).S_door;
      const needed = found?.state === 'known' ? found.value : undefined;
      const reserve = needed === undefined || there === undefined ? undefined : there - needed;
      return {
        motion: motion.id,
        time,
        needed,
        there,
        reserve,
        says:
          needed === undefined
            ? 'How long it turns on is not known.'
            : reserve === undefined || reserve < 0
              ? 'A guard that is not locked would have to stand that far away. Lock it until the spindle stands, or brake.'
              : 'A guard that is not locked may stand there, by this working. Measure the time on the machine.',
      };
    });
}

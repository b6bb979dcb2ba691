/** What findings of a proposal rest on: values that were taken as usual, as in a wiring that is recorded. */
import type { Refit } from '../../refit/types.ts';
import { type Resting, WiringLook } from './look.ts';
import type { Settled } from './open-questions.ts';

/** By the ids of findings, in words; of those only that would be others without what was taken. */
export const restingOf = ({ wiring }: Pick<Settled, 'wiring'>, refit: Refit): Resting =>
  new WiringLook().resting({ ...refit, wiring });

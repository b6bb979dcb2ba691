/** An assessment whose chances were drawn, not only worked out from slopes. */
import type { Refit } from '../refit/types.ts';
import { type Assessment, assess } from './assess.ts';
import { type SpreadOptions, spread } from './spread.ts';

type AssessOptions = Omit<NonNullable<Parameters<typeof assess>[1]>, 'spread'>;

/** Assesses, draws what is in doubt, and judges with the chances drawn. A tenth of a second or less on a usual machine. */
export function assessDrawn(refit: Refit, options: AssessOptions & SpreadOptions = {}): Assessment {
  const first = assess(refit, options);
  return assess(refit, { previous: first, spread: spread(first, options) });
}

/** Ways to stop a machine that can be laid out ready drawn. Add one: its file and one line here. */
import type { Refit } from '../../../refit/types.ts';
import { asksTheControl } from './asks-the-control.ts';
import { brakedStop } from './braked-stop.ts';
import { limitsInChannels } from './limits-in-channels.ts';
import { limitsWithBrake } from './limits-with-brake.ts';
import { limitsWithRelease } from './limits-with-release.ts';
import { lockedDoor } from './locked-door.ts';
import { oneContactor } from './one-contactor.ts';
import type { MotionWanted, Pattern } from './pattern.ts';
import { safetyRelay } from './safety-relay.ts';
import { twoContactors } from './two-contactors.ts';
import { verticalAxis } from './vertical-axis.ts';

export { type MotionWanted, ONLY_TO_LOOK, type Pattern } from './pattern.ts';

export const PATTERNS: readonly Pattern[] = [
  asksTheControl,
  oneContactor,
  twoContactors,
  safetyRelay,
  brakedStop,
  verticalAxis,
  lockedDoor,
  limitsInChannels,
  limitsWithBrake,
  limitsWithRelease,
];

/**
 * What a machine has that moves: what its stop circuit says already, else its axes and one spindle. Which of them drop is for
 * those to say who know the weights: see `whatMoves` in engine/advice.
 */
export function motionsOf(refit: Refit): readonly MotionWanted[] {
  if (refit.stop !== null && Object.keys(refit.stop.motions).length > 0)
    return Object.values(refit.stop.motions).map(({ id, kind, name, settings }) => ({
      id,
      kind,
      name,
      settings,
    }));
  const motions = refit.chains.map(({ id, kind }) => ({
    id,
    kind,
    name: kind === 'spindle' ? `spindle ${id}` : `${id} axis`,
  }));
  return motions.some(({ kind }) => kind === 'spindle')
    ? motions
    : [...motions, { id: 'spindle', kind: 'spindle' as const, name: 'spindle' }];
}

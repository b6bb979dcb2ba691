/** Ways to stop a machine that can be laid out ready drawn. Add one: its file and one line here. */

import { spindleDrive } from '../../../parts/spindle-drive.ts';
import { chosenPart } from '../../../refit/place.ts';
import { readFact } from '../../../refit/read-fact.ts';
import type { Refit } from '../../../refit/types.ts';
import { asksTheControl } from './asks-the-control.ts';
import { brakedStop } from './braked-stop.ts';
import { limitsInChannels } from './limits-in-channels.ts';
import { limitsWithBrake } from './limits-with-brake.ts';
import { limitsWithRelease } from './limits-with-release.ts';
import { lockedDoor } from './locked-door.ts';
import type { Phases } from './mains-feed.ts';
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
  const mains = mainsOf(refit);
  return mains === undefined
    ? namedMotions(refit)
    : namedMotions(refit).map((motion) => (motion.kind === 'spindle' ? { ...motion, mains } : motion));
}

/** Phases of the mains that the drive of the only spindle takes, as its plate says; undefined where nobody knows. */
function mainsOf(refit: Refit): Phases | undefined {
  const [spindle, another] = refit.chains.filter(({ kind }) => kind === 'spindle');
  const part = spindle && !another ? chosenPart(refit, spindle.id, 'spindle-drive') : null;
  if (!part) return undefined;
  const feeds = Object.values(refit.wiring.devices).find((each) => each.part === part.id)?.settings.feed;
  const fact = Object.hasOwn(part.facts, 'inputPhases') ? part.facts.inputPhases! : undefined;
  const read = fact && readFact(spindleDrive.facts.inputPhases!, fact.value);
  if (feeds === 'dc bus' || !read?.ok || read.value.kind !== 'choice') return undefined;
  return read.value.option === 'three' ? 'three' : read.value.option === 'single' ? 'one' : undefined;
}

function namedMotions(refit: Refit): readonly MotionWanted[] {
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

/** What a run says once nothing drives the axis any more: how far it ran on, where it stands, and whether an end stop is in the way. */
import { formatQuantity } from '../quantity/index.ts';
import { weightTorque } from './constants.ts';
import { type AxisModel, travelPerRadian } from './model.ts';
import type { Run, Summary } from './run.ts';
import { coastIntoEnd, modelFor, speedAfter } from './run-out.ts';
import { STANDS } from './running-on.ts';
import { ms, NOTHING, PROP, type Say, short, slideSpeed } from './say.ts';

const END_STOP =
  'Nothing electrical holds it then: leave that much room, or fit end stops that take the blow, and keep hands out of the way.';

/**
 * What a load that neither a brake nor its own screw holds does once the drive is off; undefined where there is none, or the
 * drive stays on. Friction of the ways is not counted on to hold a load; that of screw and motor only where it is the larger.
 */
export function looseLoad({ summary, speed, move }: Run, given: AxisModel): string | undefined {
  const model = modelFor(given, move);
  const load = Math.abs(weightTorque(model));
  if (summary.travelAfterOff === null || model.brake !== null || model.motor.coulomb >= load)
    return undefined;
  return Math.abs(speed.at(-1) ?? 0) * travelPerRadian(model) > STANDS
    ? `Nothing holds the axis once the drive is off: it drops. ${PROP}`
    : `In this model friction just holds the axis once the drive is off; do not rely on it: oil, wear and shaking free it. ${PROP}`;
}

/** How far `who` ran on after its drive let go, and where it came to rest; for a trip, a power cut and a drop. */
export function sayRunOut(
  say: Say,
  run: Run,
  { runOut }: Summary,
  commanded: Float64Array,
  who: string,
  system: 'mm' | 'in',
): void {
  if (!runOut) return;
  const { driveOff, mainsOff, restAt, end, speed } = runOut;
  if (!driveOff) {
    say('note', `The drive of ${lower(who)} stays on to the end, on what the bus still holds.`);
    return;
  }
  const falls = run.move.kind === 'drop';
  const further = end - driveOff.place;
  if (Math.abs(further) < NOTHING) {
    say('note', `After the drive is off the slide of ${lower(who)} does not move.`);
    return;
  }
  const its = lower(who);
  const ran = falls
    ? `${its} ${further < 0 ? 'falls' : 'moves'} ${short(further, system)}`
    : `${its} runs on ${short(further, system)}${further * driveOff.speed < 0 ? ' the other way' : ''}`;
  if (restAt === null) {
    say(
      'doubtful',
      `After the drive is off ${ran} up to the end of the run, ${ms(run.until - driveOff.at)} later, and still moves at ${slideSpeed(speed, system)}.`,
    );
    return;
  }
  const goal = commanded.at(-1);
  const where =
    falls || mainsOff || goal === undefined || run.move.kind === 'circle'
      ? ''
      : `, ${short(end - goal, system)} ${(end - goal) * Math.sign(goal) > 0 ? 'beyond' : 'short of'} where the move ends`;
  const place = falls ? '' : ` ${short(end, system)} from where it began${where}`;
  say(
    'note',
    `After the drive is off ${ran}; it comes to rest${place}, ${ms(restAt - driveOff.at)} after it let go.`,
  );
}

/** After the mains failed: how far it coasts, and what an end stop would feel of it. */
export function sayEndStop(
  say: Say,
  run: Run,
  model: AxisModel,
  { travel, travelFact }: { readonly travel?: number | undefined; readonly travelFact?: string | undefined },
  system: 'mm' | 'in',
): void {
  const answer = coastIntoEnd(run, model, travel);
  const { runOut } = run.summary;
  if (!answer || !runOut?.mainsOff) return;
  const { fromMains, fromDriveOff, room, anywhere } = answer;
  const { speed } = runOut.mainsOff;
  const weight = weightTorque(model);
  const way = weight === 0 ? '' : weight > 0 ? ', against its weight' : ', its weight driving it on';
  const far = short(fromMains, system);
  const after =
    fromDriveOff === null ? '' : ` (${short(fromDriveOff, system)} of that after the drive lets go)`;
  const rest =
    runOut.restAt === null ? '' : `; it stands ${ms(runOut.restAt - runOut.mainsOff.at)} after the mains`;
  say('note', `From the moment the mains fail the axis runs on ${far}${after}${way}${rest}.`);
  if (anywhere && runOut.restAt !== null)
    say(
      'bad',
      `Getting up to speed and running on take ${short(runOut.farthest, system)}, more than the whole travel of ${length(travel!, system)}: wherever it begins, it runs into the end stop. ${END_STOP}`,
    );
  if (room) {
    const left = room.left === 0 ? 'no way' : short(room.left, system);
    if (room.speed === null)
      say(
        'good',
        `With ${left} left to the end stop it comes to rest ${short(room.left - fromMains, system)} before it.`,
      );
    else
      say(
        'bad',
        `With ${left} left to the end stop it runs into it, with ${slideSpeed(room.left === 0 ? speed : room.speed, system)} left. ${END_STOP}`,
      );
    return;
  }
  if (runOut.restAt === null) {
    const on = runOut.driveOff === null ? ', its drive still on and after its command' : '';
    say(
      'doubtful',
      `${ms(run.until - runOut.mainsOff.at)} after the mains failed it still moves${on}: no room is sure to be enough. Have the mains watched, so that the axis is stopped while there is power to do it. ${END_STOP}`,
    );
    return;
  }
  if (fromMains < NOTHING) return;
  const half = slideSpeed(speedAfter(run, model, fromMains / 2), system);
  const full = slideSpeed(speed, system);
  const speeds =
    half === full ? `with up to ${full}` : `with ${half} at half of that, with ${full} right before it`;
  const known =
    travel === undefined
      ? ` The travel of this axis is not known${travelFact ? ` (${travelFact})` : ''}; give it, or the way left to the end stop, to hear whether that matters.`
      : anywhere
        ? ''
        : ` That is the last ${far} at either end of its ${length(travel, system)} of travel.`;
  say(
    'doubtful',
    `If the mains fail closer than ${far} to an end, it runs into the end stop: ${speeds}.${known} ${END_STOP}`,
  );
}

const length = (metres: number, system: 'mm' | 'in'): string =>
  formatQuantity(metres, system === 'in' ? 'in' : 'mm', { digits: 3 });

/** 'the axis' of 'The axis', to go on with within a sentence. */
const lower = (who: string): string => who.replace(/^The /, 'the ');

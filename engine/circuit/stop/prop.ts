/** The caution to prop an axis: wherever a stop leaves one that drops with anything but a brake that is known to hold it. */
import { andList } from '../../quantity/words.ts';
import type { Model, MotionUnit } from './model.ts';
import { SMALL_DROP } from './say-stopping.ts';
import type { Stopping } from './stops.ts';

/** Whether a load pulls along it, for all that is known. */
export const canDrop = ({ kind, vertical }: MotionUnit): boolean => kind === 'axis' && vertical;

/**
 * Why an axis that can drop is not held by a brake that holds, to follow its name; undefined where it is. `stop`: how it stopped;
 * absent where it does not stop or cannot be started, so that nothing was seen of its brake.
 */
export function whyNotHeld({ brake, numbers: { read } }: MotionUnit, stop?: Stopping): string | undefined {
  if (brake < 0)
    return read.vertical === undefined
      ? 'has no brake, and it is not known whether it drops without one'
      : 'has no brake';
  if (stop === undefined) return 'was not seen to be held by its brake';
  if (stop.brakeOn === Number.POSITIVE_INFINITY)
    return stop.load === 'held' ? 'is held by its drive alone' : 'has a brake that does not close';
  if (stop.drop === undefined || stop.drop > SMALL_DROP)
    return 'has a brake that closes only after its drive has let go';
  const [holds, weighs] = [read['brake-torque'], read.weight];
  if (holds === undefined || weighs === undefined)
    return 'has a brake of which it is not known whether it is strong enough';
  return holds < weighs ? 'has a brake that is too weak for its load' : undefined;
}

/** The caution for these stops together; undefined where every axis that can drop is held by a brake that holds. */
export function propCaution(
  { motions }: Pick<Model, 'motions'>,
  stops: readonly Stopping[],
  among: readonly MotionUnit[] = motions,
): string | undefined {
  const said = among.filter(canDrop).flatMap((unit) => {
    const own = stops.filter(({ motion }) => motion === unit.id);
    const [why] = (own.length > 0 ? own.map((stop) => whyNotHeld(unit, stop)) : [whyNotHeld(unit)]).filter(
      (each) => each !== undefined,
    );
    return why === undefined ? [] : [{ id: unit.id, why }];
  });
  if (said.length === 0) return undefined;
  return `Before the power goes, and before anybody works or reaches under it, prop or block ${andList(said.map(({ id }) => id))} from below: ${said.map(({ id, why }) => `${id} ${why}`).join('; ')}.`;
}

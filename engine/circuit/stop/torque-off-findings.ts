/** Whether the drives have the safe torque off that the circuit rests on, or that it could do with. */
import { type Verdict, worstVerdict } from '../../quantity/verdict.ts';
import { andList } from '../../quantity/words.ts';
import type { Looked, StopFinding } from './findings.ts';
import type { MotionUnit } from './model.ts';
import { saidOf } from './said.ts';

/** How somebody finds out whether a drive has it. */
export const FIND_TORQUE_OFF =
  'Look it up in the list of terminals in the drive’s manual: “safe torque off” or STO, one input or two. An enable input is none. Enter it with the drive.';

const UNUSED = 'not used in this circuit';
const CHANNELS = ['none', 'one channel', 'two channels'] as const;

/** 'that of X has one channel, that of Z none; of that of Y it is not known' */
export function sayTorqueOff(motions: readonly MotionUnit[]): string {
  const of = (channels: number | undefined) =>
    motions.filter(({ numbers: { read } }) => read['torque-off'] === channels).map(({ id }) => id);
  const known = [2, 1, 0].flatMap((channels) => {
    const ids = of(channels);
    return ids.length === 0 ? [] : [`${CHANNELS[channels]}: ${andList(ids)}`];
  });
  const unknown = of(undefined);
  return [...known, ...(unknown.length > 0 ? [`not known: ${andList(unknown)}`] : [])].join('; ');
}

/**
 * One finding over all drives: drawn with channels that a drive has not got fails; drawn, or missed as a second way to stop, and
 * not known of the drive is unknown; there and not drawn is said. Nothing where nothing rests on it.
 */
export function* torqueOffFinding({ base: { model }, stops, faults }: Looked): Generator<StopFinding> {
  // What one fault keeps from stopping, or an emergency stop only asks, could do with a second way.
  const missed = new Set([
    ...faults.flatMap(({ fault, judged }) =>
      fault.mayExclude
        ? []
        : judged.happenings.flatMap(({ kind, motions }) =>
            kind === 'runs-on' || kind === 'only-told' ? motions : [],
          ),
    ),
    ...stops.flatMap(({ role, stops: own }) =>
      role === 'emergency' ? own.flatMap(({ category, motion }) => (category === '2' ? [motion] : [])) : [],
    ),
  ]);
  const said: { readonly verdict: Verdict; readonly says: string; readonly id: string }[] = [];
  for (const { id, drive, numbers } of model.motions) {
    const drawn = model.drives[drive]!.sto.length;
    const has = numbers.read['torque-off'];
    const say = (verdict: Verdict, says: string) => said.push({ verdict, says, id });
    const channels = CHANNELS[drawn];
    if (has === undefined) {
      if (drawn > 0) say('unknown', `${channels} drawn; whether the drive has that is not known`);
      else if (missed.has(id))
        say('unknown', 'could do with a second way to stop; whether the drive has one is not known');
    } else if (drawn > has) say('fails', `${channels} drawn, and the drive has ${CHANNELS[has]}`);
    else if (drawn > 0) say('fits', `${channels} drawn, and the drive has ${CHANNELS[has]}`);
    else if (has > 0) say('fits', `the drive has ${CHANNELS[has]}, ${UNUSED}`);
  }
  const verdict = worstVerdict(said);
  if (verdict === undefined) return;
  const unused = said.some(({ says }) => says.endsWith(UNUSED));
  const pieces = [...new Set(said.map(({ says }) => says))].map(
    (says) => `${andList(said.filter((each) => each.says === says).map(({ id }) => id))}: ${says}.`,
  );
  yield {
    id: 'stop.torque-off',
    title: 'Have the drives an input for safe torque off?',
    verdict,
    ...saidOf(pieces),
    ...(verdict === 'unknown'
      ? { remedy: FIND_TORQUE_OFF }
      : verdict === 'fails'
        ? { remedy: 'Draw only the channels that the drive has, or take a drive that has them.' }
        : unused
          ? {
              remedy:
                'It would be a second way beside the contactors. Left out, its terminals want the bridge of the manual. On an axis that drops it may open only once the brake has closed.',
            }
          : {}),
  };
}

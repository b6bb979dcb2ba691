/** How much of what a proposal asks was answered already. */
import { chosenPart } from '../../refit/place.ts';
import type { Refit, Wiring } from '../../refit/types.ts';
import { isUsual } from '../../refit/usual.ts';
import { type AnswerPlace, PROPOSAL_SETTINGS } from '../wiring/index.ts';
import { partFacts } from '../wiring/part-facts.ts';
import { groupKey } from './ask-groups.ts';
import type { OpenQuestion } from './open-questions.ts';

/** Settings that are never laid by a proposal itself, so that somebody said what stands there. */
const TOLD =
  /^(coil-current|suppressor|clamp-volts|(main-)?(ac|dc)-(volts|amps|coil-amps)|(encoder|output|supply|mains|switch)-current|output-withstands|(ready|at-speed)-output)$/;
/** Settings with plain names are told of these kinds only: elsewhere they follow from what is known. */
const TOLD_OF: Readonly<Record<string, RegExp>> = {
  'mains-motor': /^(volts|current)$/,
  'mains-inlet': /^volts$/,
  drive: /^volts$/,
  inverter: /^volts$/,
  supply: /^current$/,
  breaker: /^amps$/,
  fuse: /^amps$/,
};

/** Groups of questions that have an answer and none open. */
export function answeredOf(open: readonly OpenQuestion[], proposed: Wiring, refit: Refit): number {
  const { devices, settings } = refit.wiring;
  const site = chosenPart(refit, null, 'site');
  // What is set for known mains is laid with the rest.
  const mains = site ? partFacts(site).value('mains') : undefined;
  const told: AnswerPlace[] = [
    ...Object.keys(PROPOSAL_SETTINGS)
      .filter((setting) => Object.hasOwn(settings, setting))
      .map((setting): AnswerPlace => ({ of: 'wiring', setting })),
    ...Object.values(devices).flatMap((device) =>
      Object.keys(device.settings).flatMap((setting): readonly AnswerPlace[] => {
        const { id, kind } = device;
        const isTold =
          TOLD.test(setting) ||
          (setting === 'mains-volts' && mains === undefined) ||
          (Object.hasOwn(TOLD_OF, kind) && TOLD_OF[kind]!.test(setting));
        return isTold && !isUsual(device, setting) ? [{ of: 'device', id, setting }] : [];
      }),
    ),
  ];
  const keys = new Set(told.map((place) => groupKey(place, proposed, refit)));
  for (const { question } of open) keys.delete(groupKey(question.place, proposed, refit));
  return keys.size;
}

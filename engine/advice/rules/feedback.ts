/** What tells feedback that can stay from feedback that must go. */
import type { PartFacts } from '../part-facts.ts';
import type { Reason } from '../types.ts';

const PRACTICE = 'common practice, no source';

export function feedbackReasons({ value, choice, choices }: PartFacts): Reason[] {
  const reasons: Reason[] = [];
  const type = choice('feedback', 'type');
  const motor = choice('motor', 'type');
  const reads = choices('drive', 'feedbacks');
  const controlReads = choices('control', 'feedbacks');
  if (type === 'resolver') {
    const read = reads?.includes('resolver') || controlReads?.includes('resolver');
    if (motor === 'brushed')
      reasons.push({
        towards: read ? 'keep' : reads === undefined ? 'find-out' : 'replace',
        source: PRACTICE,
        sentence: read
          ? 'The resolver is read; it stands heat and oil better than any encoder.'
          : 'On a brushed motor the resolver does not matter: it only tells the position, and any encoder the drive or control reads will do in its place. A converter box would keep it, at more cost than an encoder.',
      });
    else if (motor === 'brushless')
      reasons.push({
        towards: choices('drive', 'commutations')?.includes('resolver') ? 'keep' : 'find-out',
        source: PRACTICE,
        sentence:
          'On a brushless motor the resolver is part of the motor: it also tells the drive where the rotor stands. Keep it with a drive that reads resolvers; else an encoder with Hall or U V W tracks must be fitted and lined up with the rotor.',
      });
  }
  if (type === 'tacho')
    reasons.push(
      choice('drive', 'loop') === 'speed' && reads?.includes('tacho')
        ? {
            towards: 'keep',
            source: PRACTICE,
            sentence:
              'The drive closes its speed loop with this tacho: keep it. Position still has to come from an encoder or a scale, read by the control.',
          }
        : {
            towards: 'replace',
            source: PRACTICE,
            sentence: 'A tacho tells speed and not position; with this drive an encoder goes in its place.',
          },
    );
  const wants = value('feedback', 'supplyVoltage');
  const gets = value('drive', 'feedbackSupply');
  if (wants !== undefined && gets !== undefined) {
    if (gets < 0.95 * wants)
      reasons.push({
        towards: 'repair',
        source: PRACTICE,
        sentence: `It wants ${say(wants)} and the drive feeds it ${say(gets)}: it needs a supply of its own, and its output lines must then be brought down to what the drive’s inputs stand.`,
      });
    else if (wants < 8 && gets > 1.1 * wants)
      reasons.push({
        towards: 'repair',
        source: PRACTICE,
        sentence: `It is made for ${say(wants)} and the drive feeds it ${say(gets)}, which would destroy it: feed it from a supply of its own.`,
      });
  }
  return reasons;
}

const say = (volts: number): string => `${Number(volts.toPrecision(3))} V`;

/** What tells an old drive, control or supply worth its place in the cabinet. */
import type { PartFacts } from '../part-facts.ts';
import type { Reason } from '../types.ts';

const PRACTICE = 'common practice, no source';

export function driveReasons({ choice, choices }: PartFacts): Reason[] {
  const reasons: Reason[] = [];
  const gives = choices('control', 'commands');
  const takes = choices('drive', 'commands');
  if (gives && takes && !takes.some((each) => gives.includes(each)))
    reasons.push({
      towards: 'replace',
      source: PRACTICE,
      sentence:
        'It takes no command that the control gives. A converter between them adds delay and one more box to fail; choose drive and control together.',
    });
  if (
    choice('drive', 'loop') === 'speed' &&
    choice('feedback', 'type') === 'tacho' &&
    choices('drive', 'feedbacks')?.includes('tacho')
  )
    reasons.push({
      towards: 'keep',
      source: PRACTICE,
      sentence:
        'A drive with a speed loop, its motor and its tacho are a set that worked together: keep it whole, and let the control close the position loop by ±10 V.',
    });
  return reasons;
}

export function supplyReasons({ choice }: PartFacts): Reason[] {
  return choice('supply', 'type') === 'transformer'
    ? [
        {
          towards: 'keep',
          source: PRACTICE,
          sentence:
            'Transformer and rectifier outlive everything around them; only the capacitors age. Change them where they are over fifteen years old, bulge or leak.',
        },
      ]
    : [];
}

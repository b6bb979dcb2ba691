/** Whether the stop circuit that is examined is the one that is wired. */
import { worstVerdict } from '../../../quantity/verdict.ts';
import type { StopCircuit } from '../../../refit/types.ts';
import type { ReadWiring } from '../../wiring/index.ts';
import type { StopFinding } from '../findings.ts';
import type { Model } from '../model.ts';
import { conductorDifferences } from './conductors.ts';
import { elementDifferences } from './elements.ts';
import { powerDifferences } from './power.ts';
import { Sides } from './sides.ts';
import type { Difference } from './types.ts';

export type { Difference, DifferenceKind } from './types.ts';

export const AS_WIRED = 'stop.as-wired';
const TITLE = 'Is the machine wired as this circuit is drawn?';
/** Differences said one by one; of more only how many. */
const SAID = 12;
const ORDER = ['fails', 'unknown', 'tight'] as const;

/** Where stop circuit and wiring differ, worst first: elements, then power, then conductors. Empty where they agree. */
export function differencesOf(circuit: StopCircuit, model: Model, read: ReadWiring): readonly Difference[] {
  const sides = new Sides(circuit, model, read);
  const power = powerDifferences(sides);
  const found = [
    ...elementDifferences(sides),
    ...power.differences,
    ...conductorDifferences(sides, power.left),
  ];
  return ORDER.flatMap((verdict) => found.filter((each) => each.verdict === verdict));
}

/** One finding over all of it. What is not wired at all is not known. */
export function asWiredFinding(circuit: StopCircuit, model: Model, read: ReadWiring): StopFinding {
  const common = { id: AS_WIRED, title: TITLE };
  if (read.wires.size === 0)
    return {
      ...common,
      verdict: 'unknown',
      sentence:
        'The wiring is not laid yet, so nobody can say whether the machine will be wired as this circuit is drawn.',
      remedy: 'Have the wiring proposed: it takes this circuit over, terminal by terminal.',
    };
  const differences = differencesOf(circuit, model, read);
  const [first] = differences;
  if (!first)
    return {
      ...common,
      verdict: 'fits',
      sentence:
        'Every element of this circuit is in the wiring, every conductor of it leads there from the same terminal to the same, and the power of every drive goes through the same contactors by as many poles.',
    };
  const more = differences.length - SAID;
  const pieces = [
    ...differences.slice(0, SAID).map(({ says, change }) => `${says} ${change}`),
    ...(more > 0 ? [`And ${more} more.`] : []),
  ];
  return {
    ...common,
    verdict: worstVerdict(differences)!,
    sentence: `What is examined here is not what is wired. ${pieces.join(' ')}`,
    pieces: [
      `What is examined here is not what is wired; until both agree, the answers count for the drawing only.`,
      ...pieces,
    ],
  };
}

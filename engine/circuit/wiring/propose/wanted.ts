/** What the job asks of the control besides what follows from the machine. */
import { chosenPart } from '../../../refit/place.ts';
import type { Refit } from '../../../refit/types.ts';
import { partFacts } from '../part-facts.ts';
import type { Question } from './questions.ts';

export interface Wished {
  readonly questions: readonly Question[];
  /** What was left out and why, in sentences. */
  readonly left: readonly string[];
}

export const NOT_WISHED: Wished = { questions: [], left: [] };

/** Whether the job wants this of the control. */
export function isWished(refit: Refit, ability: 'probing' | 'handwheel'): boolean {
  const job = chosenPart(refit, null, 'job');
  return job !== null && partFacts(job).choices('control-wanted').includes(ability);
}

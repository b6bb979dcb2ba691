/** Facts of the job, of a chain, and of a control that may not be the chosen one. */

import { factsAround, type PartFacts } from '../advice/part-facts.ts';
import { factSpec } from '../parts/index.ts';
import { own } from '../quantity/own.ts';
import { chosenPart } from '../refit/place.ts';
import { type ReadFact, readFact } from '../refit/read-fact.ts';
import type { Part, Refit } from '../refit/types.ts';

export const chainFacts = (refit: Refit, chain: string): PartFacts => factsAround(refit, chain);

export interface OwnFacts {
  /** SI. */
  readonly value: (fact: string) => number | undefined;
  readonly choice: (fact: string) => string | undefined;
  readonly choices: (fact: string) => readonly string[] | undefined;
  readonly text: (fact: string) => string | undefined;
}

/** Facts of one part; what cannot be read counts as not known. */
export function factsOf(place: string, part: Part | null): OwnFacts {
  const read = <K extends ReadFact['kind']>(
    fact: string,
    kind: K,
  ): Extract<ReadFact, { kind: K }> | undefined => {
    const spec = factSpec(place, fact);
    const known = part && own(part.facts, fact);
    const found = spec && known ? readFact(spec, known.value) : undefined;
    return found?.ok && found.value.kind === kind
      ? (found.value as Extract<ReadFact, { kind: K }>)
      : undefined;
  };
  return {
    value: (fact) => read(fact, 'quantity')?.value,
    choice: (fact) => read(fact, 'choice')?.option,
    choices: (fact) => read(fact, 'choices')?.options,
    text: (fact) => read(fact, 'text')?.text,
  };
}

export const jobFacts = (refit: Refit): OwnFacts => factsOf('job', chosenPart(refit, null, 'job'));

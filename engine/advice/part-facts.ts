/** The facts around one part, read; what cannot be read counts as not known. */

import { type FactId, factSpec, type PlaceId } from '../parts/index.ts';
import { type Money, parseMoney } from '../quantity/index.ts';
import { own } from '../quantity/own.ts';
import { findPlace } from '../refit/place.ts';
import { readFact } from '../refit/read-fact.ts';
import type { Part, Refit } from '../refit/types.ts';

export interface PartFacts {
  /** SI. */
  readonly value: <P extends PlaceId>(place: P, fact: FactId<P>) => number | undefined;
  readonly choice: <P extends PlaceId>(place: P, fact: FactId<P>) => string | undefined;
  readonly choices: <P extends PlaceId>(place: P, fact: FactId<P>) => readonly string[] | undefined;
  /** Whether the place is filled; undefined while that is not known. */
  readonly fitted: (place: PlaceId) => boolean | undefined;
}

/** Facts of the parts chosen beside a place, on its axis or for the whole machine. */
export function factsAround(refit: Refit, chain: string | null): PartFacts {
  const partIn = (place: string): Part | undefined => {
    const found =
      (chain === null ? undefined : findPlace(refit, chain, place)) ?? findPlace(refit, null, place);
    return found?.chosen ? refit.parts[found.chosen] : undefined;
  };
  const read = (place: string, fact: string) => {
    const spec = factSpec(place, fact);
    const part = partIn(place);
    const known = part && own(part.facts, fact);
    const result = spec && known ? readFact(spec, known.value) : undefined;
    return result?.ok ? result.value : undefined;
  };
  return {
    value: (place, fact) => {
      const found = read(place, fact);
      return found?.kind === 'quantity' ? found.value : undefined;
    },
    choice: (place, fact) => {
      const found = read(place, fact);
      return found?.kind === 'choice' ? found.option : undefined;
    },
    choices: (place, fact) => {
      const found = read(place, fact);
      return found?.kind === 'choices' ? found.options : undefined;
    },
    fitted: (place) => {
      const found =
        (chain === null ? undefined : findPlace(refit, chain, place)) ?? findPlace(refit, null, place);
      if (!found || found.chosen === null) return undefined;
      return found.chosen !== 'none';
    },
  };
}

/** A price kept with a part; undefined where there is none or it cannot be read. */
export function moneyOf(part: Part | undefined, fact: string): Money | undefined {
  const known = part && own(part.facts, fact);
  if (known?.value.kind !== 'text') return undefined;
  const read = parseMoney(known.value.text);
  return read.ok ? read.value : undefined;
}

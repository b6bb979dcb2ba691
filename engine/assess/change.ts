/** A refit with one fact or one place changed, for trying things without recording them. */
import { findPlace } from '../refit/place.ts';
import { target } from '../refit/set.ts';
import type { FactValue, Part, Refit } from '../refit/types.ts';

/** The refit with another value for a fact that is known. Returns the same refit when there is no such fact. */
export function withFact(refit: Refit, path: string, value: FactValue): Refit {
  const found = target(refit, path);
  if (!found.ok || found.value.fact === undefined) return refit;
  const { chain, place, fact } = found.value;
  const id = found.value.part ?? findPlace(refit, chain, place)?.chosen;
  const part: Part | undefined = id ? refit.parts[id] : undefined;
  const old = part?.facts[fact];
  if (!part || !old) return refit;
  const changed: Part = { ...part, facts: { ...part.facts, [fact]: { ...old, value } } };
  return { ...refit, parts: { ...refit.parts, [part.id]: changed } };
}

/** The refit with another option in a place. */
export function withOption(refit: Refit, chain: string | null, place: string, chosen: string): Refit {
  if (chain === null) {
    return { ...refit, places: { ...refit.places, [place]: { ...refit.places[place]!, chosen } } };
  }
  return {
    ...refit,
    chains: refit.chains.map((each) =>
      each.id === chain
        ? { ...each, places: { ...each.places, [place]: { ...each.places[place]!, chosen } } }
        : each,
    ),
  };
}

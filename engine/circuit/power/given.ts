/** What the rest of the refit says of its supply, and what has been worked out for its drives elsewhere. */
import { chosenPart } from '../../refit/index.ts';
import type { Refit } from '../../refit/types.ts';
import { NO_FACTS, type PartFacts, partFacts } from '../wiring/part-facts.ts';

/** Results of the assessment; what is not handed in is not known. */
export interface Drawn {
  /** All axes speeding up together: current from the drives' bus, A. */
  readonly busPeakAmps?: number;
  /** The hardest-working axis at its peak, the others holding: A. */
  readonly busOneAmps?: number;
  /** For good: A. */
  readonly busSteadyAmps?: number;
  /** Highest (mains high, nothing moving) and lowest (mains low, loaded) voltage of the bus. */
  readonly busHigh?: number;
  readonly busLow?: number;
}

export interface PowerFacts {
  readonly site: PartFacts;
  readonly supply: PartFacts;
  /** By the id of a part of the refit. */
  readonly part: (id: string) => PartFacts;
  readonly drawn: Drawn;
}

export function powerFacts(refit: Refit, drawn: Drawn = {}): PowerFacts {
  const at = (place: string): PartFacts => {
    const found = chosenPart(refit, null, place);
    return found ? partFacts(found) : NO_FACTS;
  };
  return {
    site: at('site'),
    supply: at('supply'),
    part: (id) => (Object.hasOwn(refit.parts, id) ? partFacts(refit.parts[id]!) : NO_FACTS),
    drawn,
  };
}

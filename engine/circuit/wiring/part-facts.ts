/** Facts of the part that a device stands for, read; what is unknown or cannot be read is undefined. */

import { PARTS } from '../../parts/index.ts';
import { own } from '../../quantity/own.ts';
import { readFact } from '../../refit/read-fact.ts';
import type { Part } from '../../refit/types.ts';

export interface PartFacts {
  /** SI. */
  readonly value: (fact: string) => number | undefined;
  readonly choice: (fact: string) => string | undefined;
  readonly choices: (fact: string) => readonly string[];
}

export const NO_FACTS: PartFacts = { value: () => undefined, choice: () => undefined, choices: () => [] };

export function partFacts(part: Part): PartFacts {
  const kind = own(PARTS, part.kind);
  const read = (name: string) => {
    const spec = kind && own(kind.facts, name);
    const fact = own(part.facts, name);
    if (!spec || !fact) return undefined;
    const found = readFact(spec, fact.value);
    return found.ok ? found.value : undefined;
  };
  return {
    value: (name) => {
      const found = read(name);
      return found?.kind === 'quantity' ? found.value : undefined;
    },
    choice: (name) => {
      const found = read(name);
      return found?.kind === 'choice' ? found.option : undefined;
    },
    choices: (name) => {
      const found = read(name);
      return found?.kind === 'choices' ? found.options : [];
    },
  };
}

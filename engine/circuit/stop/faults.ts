/** Every single thing that can go wrong with a stop circuit, named. */

import { contactFaults } from './contact-faults.ts';
import type { Model } from './model.ts';
import { moverFaults } from './mover-faults.ts';
import type { Fault } from './network.ts';
import { touchFaults, wireFaults } from './wire-faults.ts';

export type FaultGroup = 'contact' | 'wire' | 'coil' | 'mechanical' | 'input' | 'supply' | 'brake' | 'unit';

export interface NamedFault {
  /** 'K1 1-2 welded' */
  readonly id: string;
  readonly group: FaultGroup;
  readonly element: string;
  /** In words, as the beginning of a sentence: 'Contact 1-2 of K1 is welded'. */
  readonly says: string;
  readonly faults: readonly Fault[];
  /** Why it may be left out of account by a standard, where it may. */
  readonly mayExclude?: string;
}

export function singleFaults(model: Model): readonly NamedFault[] {
  return [
    ...contactFaults(model),
    ...moverFaults(model),
    ...wireFaults(model),
    ...touchFaults(model),
    ...supplyFaults(model),
  ];
}

function* supplyFaults(model: Model): Generator<NamedFault> {
  for (const element of new Set(model.sources.map((each) => each.element)))
    yield {
      id: `${element} lost`,
      group: 'supply',
      element,
      says: `Supply ${element} fails`,
      faults: model.sources.flatMap((each, source) =>
        each.element === element ? [{ kind: 'supply-lost' as const, source }] : [],
      ),
    };
}

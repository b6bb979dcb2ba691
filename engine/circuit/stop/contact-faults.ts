/** What can go wrong with contacts and fuses. */
import type { NamedFault } from './faults.ts';
import type { Model } from './model.ts';

export function* contactFaults({ contacts, movers, safety }: Model): Generator<NamedFault> {
  for (const [contact, { id, element, fuse, doubled, main, mover }] of contacts.entries()) {
    const kind = mover < 0 ? 'hand' : movers[mover]!.kind;
    if (fuse) {
      yield {
        id: `${element} melted`,
        group: 'supply',
        element,
        says: `Fuse ${element} is open`,
        faults: [{ kind: 'contact-open', contact }],
      };
      continue;
    }
    if (main) {
      const poles = contacts.flatMap((each, at) => (each.main && each.mover === mover ? [at] : []));
      // A welded contact holds the armature, and with it the others: the worst case.
      if (poles[0] === contact)
        yield {
          id: `${element} welded`,
          group: 'contact',
          element,
          says: `The main contacts of ${element} are welded`,
          faults: poles.map((pole) => ({ kind: 'contact-closed', contact: pole })),
        };
    } else if (!doubled) {
      const hand = kind === 'hand';
      yield {
        id: `${id} ${hand ? 'stays closed' : 'welded'}`,
        group: 'contact',
        element,
        says: hand ? `Contact ${id} does not open` : `Contact ${id} is stuck closed (welded)`,
        faults: [{ kind: 'contact-closed', contact }],
      };
    }
    yield {
      id: `${id} does not close`,
      group: 'contact',
      element,
      says: `Contact ${id} does not close`,
      faults: [{ kind: 'contact-open', contact }],
    };
  }
  for (const [unit, { element }] of safety.entries())
    yield {
      id: `${element} inside`,
      group: 'unit',
      element,
      says: `One of the two contacts inside the outputs of ${element} is stuck closed`,
      faults: [{ kind: 'unit-contact', unit }],
    };
}

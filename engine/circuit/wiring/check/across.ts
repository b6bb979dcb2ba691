/** The two ends of an input put together: what is across it when it is on and when it is off. */
import type { Across } from '../levels.ts';
import type { Component } from './components.ts';
import type { Drive } from './drive.ts';

export interface End {
  readonly drives: readonly Drive[];
  readonly rail: Component | undefined;
}

export type Met =
  | {
      readonly kind: 'met';
      readonly across: Across;
      /** The drive that switches; of two fixed ends, the higher. */
      readonly by: Drive;
      readonly other: Drive | undefined;
      /** Contacts on the way: it is switched by them. */
      readonly contacts: boolean;
      /** It is on while the output is off. */
      readonly inverted: boolean;
      /** Nothing switches it: on for good. */
      readonly always: boolean;
    }
  /** The output and what should carry the current do the same thing; nothing flows. */
  | { readonly kind: 'same-way'; readonly by: Drive }
  | { readonly kind: 'no-pull-up'; readonly by: Drive }
  /** Both ends have a voltage, and nothing joins what the voltages count against. */
  | { readonly kind: 'no-common'; readonly by: Drive; readonly other: Drive }
  | { readonly kind: 'foreign'; readonly by: Drive }
  | { readonly kind: 'open'; readonly end: 'plus' | 'minus' | 'both' };

const FOREIGN: ReadonlySet<Drive['how']> = new Set(['ac', 'motor', 'sensor', 'analogue']);
const switched = ({ how }: Drive): boolean =>
  how === 'push-pull' || how === 'sinking' || how === 'sourcing' || how === 'pair';

/** Every way the ends meet: one for each thing that drives, besides pull-ups. */
export function meet(
  plus: End,
  minus: End,
  pull?: { readonly ohms: number; readonly to: number },
  /** An input that takes no current of its own: a contact to 0 V says something only beside a pull-up. */
  logic = false,
): readonly Met[] {
  const foreign = [...plus.drives, ...minus.drives].find(({ how }) => FOREIGN.has(how));
  if (foreign) return [{ kind: 'foreign', by: foreign }];
  const drivers = plus.drives.filter(switched);
  const pulls = plus.drives.filter((each) => each.how === 'fixed' && each.ohms > 0 && (each.high ?? 1) > 0);
  const fixed = distinct(plus.drives.filter((each) => each.how === 'fixed' && each.ohms === 0));
  const against = distinct(minus.drives.filter((each) => each.ohms === 0 || !switched(each)));
  const zero = (drive: Drive): Drive | undefined => {
    // A signal ground that nothing feeds is the zero of the output that counts against it.
    if (against.length > 0 || drive.against === undefined || drive.against !== minus.rail) return undefined;
    return { how: 'fixed', path: NO_PATH, against: drive.against, high: 0, least: 0, top: 0, ohms: 0 };
  };
  if (plus.drives.length === 0) {
    // The ground of an output may be the plus end's zero only where nothing else is there.
    return [{ kind: 'open', end: against.length === 0 ? 'both' : 'plus' }];
  }
  const made: Met[] = [];
  for (const drive of drivers.length > 0 ? drivers : fixed.length > 0 ? fixed : pulls) {
    const own = zero(drive);
    const others = own ? [own] : against;
    if (others.length === 0) {
      made.push({ kind: 'open', end: 'minus' });
      continue;
    }
    for (const other of others) made.push(pair(drive, other, pulls, pull, logic));
  }
  return made;
}

/** The minus poles of several supplies on one rail are one 0 V. */
function distinct(drives: readonly Drive[]): readonly Drive[] {
  const seen = new Set<string>();
  return drives.filter(({ how, high, against, path, ohms }) => {
    if (how !== 'fixed' || high === undefined) return true;
    const key = `${high} ${against?.number} ${ohms} ${path.contacts.join()}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

const NO_PATH = { source: '', contacts: [], resistors: [] } as const;

function pair(
  plus: Drive,
  minus: Drive,
  pulls: readonly Drive[],
  inner: { readonly ohms: number; readonly to: number } | undefined,
  logic: boolean,
): Met {
  if (plus.against === undefined || minus.against === undefined || plus.against !== minus.against)
    return { kind: 'no-common', by: plus, other: minus };
  const contacts = plus.path.contacts.length > 0 || minus.path.contacts.length > 0;
  const ohms = plus.ohms + minus.ohms;
  const made = (across: Across, by: Drive, more: Partial<Extract<Met, { kind: 'met' }>> = {}): Met => ({
    kind: 'met',
    across,
    by,
    other: by === plus ? minus : plus,
    contacts,
    inverted: false,
    always: false,
    ...more,
  });
  const minusLow = minus.low ?? (minus.how === 'fixed' ? minus.high : undefined);
  if (plus.how === 'pair' && minus.how === 'pair') return made({ on: 2, off: 0, top: plus.top, ohms }, plus);
  switch (plus.how) {
    case 'sinking': {
      if (minus.how !== 'fixed') return { kind: 'same-way', by: plus };
      const lift = pulls.find(({ against }) => against === plus.against);
      const supply = lift?.high ?? inner?.to;
      const through = lift?.ohms ?? inner?.ohms;
      if (supply === undefined || through === undefined) return { kind: 'no-pull-up', by: plus };
      return made(
        { on: supply - (minus.high ?? 0), off: plus.low, top: lift?.top ?? supply, ohms: through },
        plus,
        { inverted: true },
      );
    }
    case 'sourcing':
      if (minus.how === 'sourcing' || minus.how === 'sinking') return { kind: 'same-way', by: plus };
      return made(
        {
          on: less(plus.high, minus.how === 'fixed' ? minus.high : minus.low),
          off: null,
          top: plus.top,
          ohms,
          leaks: plus.leaks,
        },
        plus,
      );
    case 'push-pull':
    case 'pair':
      if (minus.how !== 'fixed') return { kind: 'same-way', by: plus };
      return made(
        { on: less(plus.high, minus.high), off: less(plus.low, minus.high), top: plus.top, ohms },
        plus,
      );
    default:
      break;
  }
  // The plus end is held; whatever is at the minus end switches, or nothing does.
  switch (minus.how) {
    case 'sinking':
      return made(
        { on: less(plus.least, minus.low), off: null, top: plus.top, ohms, leaks: minus.leaks },
        minus,
      );
    case 'sourcing':
      return { kind: 'same-way', by: minus };
    case 'push-pull':
    case 'pair':
      return made(
        {
          on: less(plus.least, minus.low),
          // High, it comes up to its supply where nothing loads it: the least it is sure of counts.
          off:
            plus.high === undefined || minus.high === undefined
              ? undefined
              : Math.max(0, plus.high - minus.high),
          top: plus.top,
          ohms,
        },
        minus,
      );
    default:
      // A contact to 0 V on an input that is pulled up: low while closed, high while open.
      if (plus.high === 0 && contacts && (inner || logic)) {
        const lift = pulls.find(({ against }) => against === plus.against);
        const supply = lift?.high ?? inner?.to;
        if (supply === undefined) return { kind: 'no-pull-up', by: plus };
        return made({ on: supply, off: 0, top: lift?.top ?? supply, ohms: lift?.ohms ?? 0 }, plus, {
          inverted: true,
        });
      }
      return made(
        { on: less(plus.least, minusLow), off: contacts ? null : undefined, top: plus.top, ohms },
        plus,
        { always: !contacts },
      );
  }
}

const less = (a: number | undefined, b: number | undefined): number | undefined =>
  a === undefined || b === undefined ? undefined : a - b;

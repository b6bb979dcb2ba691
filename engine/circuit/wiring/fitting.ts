/** What a terminal may be joined to: for choosing the other end of a wire. */
import type { Change, Wiring } from '../../refit/types.ts';
import { WiringChecker } from './check/checker.ts';
import { pairing } from './pairing.ts';
import { readWiring } from './read.ts';
import type { Around } from './read-device.ts';
import type { Terminal } from './types.ts';

export interface Fit {
  readonly terminal: string;
  readonly fits: boolean;
  readonly why: string;
}

/** So many of the best are tried with all rules. */
const TRIED = 12;
const TRIAL = 'trial-wire';

/**
 * Every other terminal with whether the two may be joined, best first, those that may not last, each with the reason.
 * The best are tried: a wire is laid, the rules are asked, and it is taken off again.
 */
export function fitting(wiring: Wiring, terminal: string, around: Around | null = null): readonly Fit[] {
  const read = readWiring(wiring, around);
  const own = read.terminals.get(terminal);
  if (!own) return [];
  const wired = new Set([...read.wires.values()].flatMap(({ from, to }) => [from, to]));
  const joined = new Set(read.netOf.get(terminal)!.terminals);
  const rated = [...read.terminals.values()]
    .filter(({ id }) => id !== terminal)
    .map((other) => {
      if (joined.has(other.id)) return { other, fits: false, score: 0, why: 'They are joined already.' };
      const { fits, rank, why } = pairing(own, other);
      return { other, fits, why, score: fits ? score(own, other, rank, wired.has(other.id)) : 0 };
    })
    .sort((a, b) => b.score - a.score || (a.other.id < b.other.id ? -1 : 1));
  const checker = new WiringChecker(wiring, around);
  for (const each of rated.slice(0, TRIED)) {
    if (!each.fits) continue;
    const fault = tryWire(checker, wiring, terminal, each.other.id);
    if (fault === undefined) continue;
    each.fits = false;
    each.score = 0;
    each.why = fault;
  }
  return rated
    .sort((a, b) => b.score - a.score || (a.other.id < b.other.id ? -1 : 1))
    .map(({ other, fits, why }) => ({ terminal: other.id, fits, why }));
}

/** Like signals first, then what is made for each other, then what is still free; what waits for another signal last. */
function score(own: Terminal, other: Terminal, rank: number, taken: boolean): number {
  const alike = own.signal !== '' && nameOf(own) === nameOf(other) && own.device !== other.device;
  const many = ['supply', 'earth', 'joint', 'common', 'feed'].includes(other.nature.kind);
  return (
    rank * 10 +
    (alike ? 8 : 0) +
    (taken && !many ? 0 : 4) +
    (other.needed ? (alike || other.signal === '' ? 1 : -3) : 0) -
    (own.device === other.device ? 6 : 0)
  );
}

/** 'step' of 'step+': a single line for a pair of ends bears the same name. */
const nameOf = ({ signal }: Terminal): string => signal.replace(/[+-]$/, '');

/** What a rule says against the wire, or undefined. */
function tryWire(checker: WiringChecker, wiring: Wiring, from: string, to: string): string | undefined {
  const wire = { id: TRIAL, from, to, cable: null, settings: {} };
  const laid: Change = { do: 'wire', id: TRIAL, old: null, new: wire };
  const { changed } = checker.apply([laid], { ...wiring, wires: { ...wiring.wires, [TRIAL]: wire } });
  checker.apply([{ ...laid, old: wire, new: null }], wiring);
  // What is only half connected, or waits for a further wire, is no fault of this one.
  const fault = changed.find(
    ({ verdict, rule, margin }) => verdict === 'fails' && (margin !== undefined || HARD.has(rule)),
  );
  return fault?.sentence;
}

/** Rules whose `fails` stays, whatever is wired besides. */
const HARD: ReadonlySet<string> = new Set(['outputs-joined', 'supplies-joined', 'mains', 'motor']);

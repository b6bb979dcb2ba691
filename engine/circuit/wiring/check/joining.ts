/** Which wire joins two terminals that must never be joined: the one that parts what belongs to each of them best. */

import type { Nature, Terminal, Wire } from '../types.ts';
import { SIGNAL_KINDS } from './signal-kinds.ts';
import type { WiringState } from './state.ts';

interface Step {
  readonly from: string;
  readonly to: string;
  /** Undefined where metal, a fuse or a contact joins them. */
  readonly wire: string | undefined;
}

type Belongs = 'here' | 'there' | undefined;

/** A wire that others lie beside parts nothing. */
const BESIDE = 1e6;

/** The id of the wire to take away first, or undefined where no wire joins them. */
export function joiningWire(state: WiringState, here: string, there: string): string | undefined {
  const way = shortest(state, here, there);
  if (!way) return undefined;
  const belongs = belongingTo(state, here, there);
  const { counts, beside } = flooded(state, here, way, belongs);
  const kind = state.terminals.get(there)!.nature.kind;
  const isLike = state.terminals.get(here)!.nature.kind === kind;
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  let most = 0;
  way.forEach(({ wire }, at) => {
    if (wire === undefined) return;
    const sides = [counts.slice(0, at + 1), counts.slice(at + 1)] as const;
    const misfits = sum(sides[0], 'there') + sum(sides[1], 'here');
    const cost = misfits + (beside[at] ? BESIDE : 0);
    // Of equals: between sources of one kind the one that leaves much on both sides; else that nearest to what suffers.
    const even = isLike ? Math.min(sum(sides[0], 'all'), sum(sides[1], 'all')) : at;
    if (cost < least || (cost === least && even >= most)) [best, least, most] = [wire, cost, even];
  });
  return best;
}

interface Count {
  here: number;
  there: number;
  all: number;
}

const sum = (counts: readonly Count[], of: keyof Count): number =>
  counts.reduce((total, each) => total + each[of], 0);

/** The wires of the shortest way between two terminals, contacts closed. */
export const wiresOfWay = (state: WiringState, here: string, there: string): readonly string[] =>
  (shortest(state, here, there) ?? []).flatMap(({ wire }) => wire ?? []);

function shortest(state: WiringState, here: string, there: string): readonly Step[] | undefined {
  const before = new Map<string, Step | undefined>([[here, undefined]]);
  for (const [at] of before) {
    if (at === there) break;
    for (const step of stepsFrom(state, at, true)) if (!before.has(step.to)) before.set(step.to, step);
  }
  if (!before.has(there)) return undefined;
  const way: Step[] = [];
  for (let step = before.get(there); step; step = before.get(step.from)) way.unshift(step);
  return way;
}

function* stepsFrom(state: WiringState, at: string, contacts: boolean): Generator<Step> {
  for (const [id, to] of state.rails.at(at) ?? [])
    yield { from: at, to, wire: id.startsWith('wire:') ? id.slice(5) : undefined };
  const terminal = state.terminals.get(at);
  if (contacts && terminal?.nature.kind === 'contact' && terminal.with !== null)
    yield { from: at, to: terminal.with, wire: undefined };
}

/** What hangs on each stop of the way besides the way itself: how much of it belongs to either end. */
function flooded(
  state: WiringState,
  here: string,
  way: readonly Step[],
  belongs: (terminal: Terminal) => Belongs,
) {
  const stops = [here, ...way.map(({ to }) => to)];
  const stopAt = new Map(stops.map((id, at) => [id, at]));
  const seen = new Set<string>();
  const beside = way.map(() => false);
  const counts = stops.map((stop, at) => {
    const count: Count = { here: 0, there: 0, all: 0 };
    if (seen.has(stop)) return count;
    seen.add(stop);
    const queue = [stop];
    for (const each of queue) {
      const side = belongs(state.terminals.get(each)!);
      if (side) count[side]++;
      count.all++;
      for (const step of stepsFrom(state, each, false)) {
        const own = stopAt.get(each);
        const next = stopAt.get(step.to);
        // A step of the way itself, once; a second wire beside it is another.
        if (own !== undefined && next !== undefined && isOnWay(way, own, next, step.wire)) continue;
        if (next !== undefined) for (let n = at; n < next; n++) beside[n] = true;
        if (seen.has(step.to)) continue;
        seen.add(step.to);
        queue.push(step.to);
      }
    }
    return count;
  });
  return { counts, beside };
}

const isOnWay = (way: readonly Step[], a: number, b: number, wire: Wire['id'] | undefined): boolean =>
  Math.abs(a - b) === 1 && way[Math.min(a, b)]!.wire === wire;

/** Which of both ends a terminal on the way is made for, as far as it tells. */
function belongingTo(state: WiringState, here: string, there: string): (terminal: Terminal) => Belongs {
  const [one, other] = [state.terminals.get(here)!.nature, state.terminals.get(there)!.nature];
  if (one.kind === 'mains' && other.kind === 'mains')
    return ({ nature }) =>
      nature.kind !== 'mains'
        ? undefined
        : nature.pole === one.pole
          ? 'here'
          : nature.pole === other.pole
            ? 'there'
            : undefined;
  if (one.kind === 'mains')
    return ({ nature }) => (isOfMains(nature) ? 'here' : isSmall(nature) ? 'there' : undefined);
  if (one.kind === 'supply' && other.kind === 'supply' && one.pole !== other.pole)
    return ({ nature }) => {
      const pole = poleOf(nature);
      return pole && (pole === one.pole ? 'here' : 'there');
    };
  const [low, high] = [voltsOf(one), voltsOf(other)];
  if (low === undefined || high === undefined) return () => undefined;
  return ({ nature }) => {
    const made = voltsOf(nature);
    if (made === undefined) return undefined;
    return Math.abs(Math.log(made / low)) < Math.abs(Math.log(made / high)) ? 'here' : 'there';
  };
}

const isOfMains = (nature: Nature): boolean =>
  nature.kind === 'mains' ||
  (nature.kind === 'winding' && nature.side === 'primary') ||
  (nature.kind === 'motor-phase' && nature.side === 'takes' && nature.of === 'induction') ||
  (nature.kind === 'load' && nature.supply === 'ac');

const OF_SIGNALS: ReadonlySet<Nature['kind']> = new Set([...SIGNAL_KINDS, 'earth']);

const isSmall = (nature: Nature): boolean =>
  OF_SIGNALS.has(nature.kind) || (nature.kind === 'load' && nature.supply === 'dc');

function poleOf(nature: Nature): 'plus' | 'minus' | undefined {
  if (nature.kind === 'supply' || nature.kind === 'feed') return nature.pole;
  if (nature.kind === 'common') return 'minus';
  if (nature.kind === 'load' && nature.leg !== 'either') return nature.leg;
  return undefined;
}

/** Volts it is made for or gives. */
function voltsOf(nature: Nature): number | undefined {
  const volts =
    nature.kind === 'input'
      ? nature.rated
      : nature.kind === 'feed'
        ? (nature.volts ?? nature.most)
        : nature.kind === 'supply' || nature.kind === 'load'
          ? nature.volts
          : undefined;
  return volts !== undefined && volts > 0 ? volts : undefined;
}

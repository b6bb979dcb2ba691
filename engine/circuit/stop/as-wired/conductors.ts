/** Each conductor of the stop circuit followed through the wiring, and back. */
import { andList } from '../../../quantity/words.ts';
import type { Sides, WiredContact } from './sides.ts';
import type { Difference } from './types.ts';

/** Contacts in a row that are followed. */
const LONGEST = 8;

export function* conductorDifferences(sides: Sides, left: ReadonlySet<string>): Generator<Difference> {
  const pairs = sides.model.nodes.flatMap((name) => {
    const terminal = sides.own(name);
    return terminal === undefined || !sides.used.has(name) || left.has(name)
      ? []
      : [[name, terminal] as const];
  });
  const ways = new Ways(sides);
  yield* apart(sides, pairs, ways);
  yield* joined(sides, pairs);
  yield* past(sides, pairs, ways);
}

type Pairs = readonly (readonly [name: string, terminal: string])[];

/** Joined in the stop circuit, and not in the wiring. */
function* apart(sides: Sides, pairs: Pairs, ways: Ways): Generator<Difference> {
  for (const members of groupsBy(pairs, ([name]) => sides.drawn(name)).values()) {
    const parts = [...groupsBy(members, ([, terminal]) => sides.laid(terminal)).values()].sort(
      (a, b) => b.length - a.length,
    );
    const [main, ...others] = parts;
    for (const other of others) {
      const [one, two] = [main![0]![1], other[0]![1]];
      const way = ways.between(sides.laid(one), sides.laid(two));
      const loose = other
        .filter(([, terminal]) => !sides.wired.has(terminal))
        .map(([, terminal]) => terminal);
      if (way)
        yield {
          kind: 'in-the-way',
          verdict: 'tight',
          about: [...new Set(way.map(({ device }) => device)), one, two],
          says: `Between ${one} and ${two} lies in the wiring ${sayContacts(way)}; in the stop circuit a plain wire joins them.`,
          change: `Draw ${andList([...new Set(way.map(({ device }) => device))])} into the stop circuit there, so that it is examined as it is built.`,
        };
      else if (loose.length === other.length)
        yield {
          kind: 'unlaid',
          verdict: 'unknown',
          about: [...loose, one],
          says: `No wire goes to ${andList(loose)} in the wiring yet; the stop circuit joins ${loose.length === 1 ? 'it' : 'them'} to ${one}.`,
          change: `Lay a wire from ${one} to ${loose[0]!}.`,
        };
      else
        yield {
          kind: 'apart',
          verdict: 'fails',
          about: [one, two],
          says: `The stop circuit joins ${one} and ${two}; in the wiring nothing joins them.`,
          change: `Lay a wire from ${one} to ${two}, or draw the stop circuit as it is wired.`,
        };
    }
  }
}

/** Joined in the wiring, and not in the stop circuit. */
function* joined(sides: Sides, pairs: Pairs): Generator<Difference> {
  for (const members of groupsBy(pairs, ([, terminal]) => sides.laid(terminal)).values()) {
    const parts = [...groupsBy(members, ([name]) => sides.drawn(name)).values()];
    const [main, ...others] = parts;
    for (const other of others) {
      const [one, two] = [main![0]!, other[0]!];
      const between = sides.model.contacts.find(({ a, b, fuse }) => {
        const ends = [sides.drawn(sides.model.nodes[a]!), sides.drawn(sides.model.nodes[b]!)];
        return (
          !fuse &&
          ends.includes(sides.drawn(one[0])) &&
          ends.includes(sides.drawn(two[0])) &&
          ends[0] !== ends[1]
        );
      });
      yield {
        kind: 'joined',
        verdict: 'fails',
        about: [...(between ? [between.element] : []), one[1], two[1]],
        says: between
          ? `The wiring joins ${one[1]} and ${two[1]}: contact ${between.id}, which the stop circuit counts on there, cuts nothing.`
          : `The wiring joins ${one[1]} and ${two[1]}; the stop circuit keeps them apart.`,
        change: between
          ? `Take out the wire that leads past ${between.id}.`
          : `Take out the wire that joins them, or draw it into the stop circuit and look at it again.`,
      };
    }
  }
}

/** Contacts that the stop circuit has not, from one conductor of it to another. */
function* past(sides: Sides, pairs: Pairs, ways: Ways): Generator<Difference> {
  const at = groupsBy(pairs, ([, terminal]) => sides.laid(terminal));
  const seen = new Set<string>();
  for (const [from, members] of at)
    for (const { to, way } of ways.from(from, new Set(at.keys()))) {
      const [one, two] = [members[0]!, at.get(to)![0]!];
      const key = way
        .map(({ a }) => a)
        .sort()
        .join(' ');
      if (
        seen.has(key) ||
        members.some(([name]) => at.get(to)!.some(([other]) => sides.drawn(name) === sides.drawn(other)))
      )
        continue;
      seen.add(key);
      const devices = [...new Set(way.map(({ device }) => device))];
      yield {
        kind: 'past',
        verdict: 'fails',
        about: [...devices, one[1], two[1]],
        says: `In the wiring ${sayContacts(way)} leads from ${one[1]} to ${two[1]}; the stop circuit knows nothing of it. Closed, it lets current past what is there to stop.`,
        change: `Take it out, or draw ${andList(devices)} into the stop circuit and look at it again.`,
      };
    }
}

const sayContacts = (way: readonly WiredContact[]): string =>
  `${way.length === 1 ? 'the contact' : 'the contacts'} ${andList(way.map(({ device, a, b }) => `${device} ${markOf(a)}-${markOf(b)}`))}`;
const markOf = (terminal: string): string => terminal.slice(terminal.indexOf('.') + 1);

/** Ways over contacts that only the wiring has. */
class Ways {
  readonly #at = new Map<string, { readonly to: string; readonly contact: WiredContact }[]>();

  constructor(sides: Sides) {
    for (const contact of sides.extra) {
      const [a, b] = [sides.laid(contact.a), sides.laid(contact.b)];
      if (a === b) continue;
      for (const [from, to] of [
        [a, b],
        [b, a],
      ] as const)
        this.#at.set(from, [...(this.#at.get(from) ?? []), { to, contact }]);
    }
  }

  /** To each of `ends`, the shortest; no way leads through one of them. */
  *from(
    start: string,
    ends: ReadonlySet<string>,
  ): Generator<{ readonly to: string; readonly way: readonly WiredContact[] }> {
    const seen = new Set([start]);
    let front: readonly { readonly at: string; readonly way: readonly WiredContact[] }[] = [
      { at: start, way: [] },
    ];
    for (let n = 0; n < LONGEST && front.length > 0; n++) {
      const next: { at: string; way: readonly WiredContact[] }[] = [];
      for (const { at, way } of front)
        for (const { to, contact } of this.#at.get(at) ?? []) {
          if (seen.has(to)) continue;
          seen.add(to);
          const longer = [...way, contact];
          if (ends.has(to)) yield { to, way: longer };
          else next.push({ at: to, way: longer });
        }
      front = next;
    }
  }

  between(a: string, b: string): readonly WiredContact[] | undefined {
    for (const { to, way } of this.from(a, new Set([b]))) if (to === b) return way;
    return undefined;
  }
}

function groupsBy<T>(list: readonly T[], key: (each: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const each of list) groups.set(key(each), [...(groups.get(key(each)) ?? []), each]);
  return groups;
}

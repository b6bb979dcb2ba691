/** From where a picture is fed: what gives, what leads in from elsewhere, and how far each device is from the mains. */
import { deviceOf } from '../wiring/device-of.ts';
import { terminalsIn, terminalsOf } from './terminals.ts';
import type { DrawnWire, Piece, Plan, TerminalGroup } from './types.ts';

const SOURCES: ReadonlySet<string> = new Set(['mains', 'power-supply', 'battery', 'rectifier']);
export const NO_DEPTH: ReadonlyMap<string, number> = new Map();

const fedBy = (group: TerminalGroup): ReadonlySet<string> => new Set('box' in group ? group.fed : []);

/** Terminals at which a supply gives. */
export const feedersOf = ({ devices }: Plan): ReadonlySet<string> =>
  new Set(
    devices.flatMap(({ groups }) =>
      groups.flatMap((group) => {
        const fed = fedBy(group);
        return SOURCES.has(group.symbol) ? terminalsIn(group).filter((each) => !fed.has(each)) : [];
      }),
    ),
  );

/** Supplies that give in this picture: one that only takes its mains here is a load like others. */
export function givers(pieces: readonly Piece[], wires: readonly DrawnWire[]): readonly string[] {
  const drawn = new Set(wires.flatMap(({ from, to }) => [from, to]));
  return pieces
    .filter((piece) => {
      const fed = fedBy(piece.group);
      const own = terminalsOf(piece);
      return (
        SOURCES.has(piece.group.symbol) &&
        (own.some((each) => drawn.has(each) && !fed.has(each)) ||
          !own.some((each) => drawn.has(each) && fed.has(each)))
      );
    })
    .map(({ id }) => id);
}

/** Steps of each device from the mains, along all wires but those of earth and of returns. */
export function depthsOf({ devices, wires }: Plan): ReadonlyMap<string, number> {
  const beside = new Map<string, Set<string>>();
  for (const { from, to, rail } of wires) {
    if (rail?.role === 'earth' || rail?.role === 'returns') continue;
    const [a, b] = [deviceOf(from), deviceOf(to)];
    for (const [one, other] of [
      [a, b],
      [b, a],
    ] as const) {
      const own = beside.get(one);
      if (own) own.add(other);
      else beside.set(one, new Set([other]));
    }
  }
  const depth = new Map(
    devices.filter(({ groups }) => groups.some(({ symbol }) => symbol === 'mains')).map(({ id }) => [id, 0]),
  );
  for (const id of depth.keys())
    for (const next of beside.get(id) ?? []) if (!depth.has(next)) depth.set(next, depth.get(id)! + 1);
  return depth;
}

/** Points of strips by which a picture is fed from a part nearer to the mains. */
export function entries(
  pieces: readonly Piece[],
  wires: readonly DrawnWire[],
  at: ReadonlyMap<string, Piece>,
  depth: ReadonlyMap<string, number>,
): readonly string[] {
  const far = (id: string): number => depth.get(id) ?? Number.POSITIVE_INFINITY;
  const own = new Set(pieces);
  const found = new Set(pieces.filter(({ group, device }) => 'points' in group && depth.has(device)));
  for (const { from, to } of wires)
    for (const [near, other] of [
      [at.get(from)!, at.get(to)!],
      [at.get(to)!, at.get(from)!],
    ] as const)
      if (own.has(near) && far(other.device) <= far(near.device)) found.delete(near);
  return [...found].map(({ id }) => id);
}

/** What is fed stands behind what feeds it, however near it is by another way. Changes `rank`. */
export function pushOn(
  rank: Map<string, number>,
  wires: readonly DrawnWire[],
  at: ReadonlyMap<string, Piece>,
): void {
  const steps = wires.flatMap(({ from, to }): [Piece, Piece][] => {
    const [a, b] = [at.get(from)!, at.get(to)!];
    const [isA, isB] = [fedBy(a.group).has(from), fedBy(b.group).has(to)];
    return isA === isB || a === b ? [] : isA ? [[b, a]] : [[a, b]];
  });
  // Where things feed each other in a ring there is no end of it.
  for (let pass = 0, moved = true; moved && pass < PASSES; pass++) {
    moved = false;
    for (const [feeds, fed] of steps)
      if (rank.get(fed.id)! <= rank.get(feeds.id)!) {
        rank.set(fed.id, rank.get(feeds.id)! + 1);
        moved = true;
      }
  }
}

const PASSES = 4;

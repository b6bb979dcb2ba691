/**
 * Cuts one circuit into clusters that are laid out each for itself. What is common to many (a plus, a minus, earth) is
 * not drawn as a web of lines: each terminal on it says where its wires go. Large boxes are drawn as several.
 */

import { deviceOf } from '../wiring/device-of.ts';
import { elsewhereOf } from './elsewhere.ts';
import { depthsOf, entries, feedersOf, givers, NO_DEPTH, pushOn } from './feeding.ts';
import { looseJoints } from './joints.ts';
import { markOf, shorten } from './measure.ts';
import { terminalsOf } from './terminals.ts';
import type {
  Cluster,
  DrawnDevice,
  DrawnWire,
  Flag,
  FlagLine,
  Piece,
  Plan,
  Rail,
  TerminalGroup,
} from './types.ts';

/** A box with more terminals in use than this is drawn in pieces. */
const LARGE = 8;
/** Most terminals of a piece of such a box. */
const SLICE = 8;
/** Ranks from left to right that fit side by side; farther on, wires go on in another cluster. */
const DEEP = 6;
/** Most pieces of a cluster. */
const CROWD = 30;
/** Longest label of a wire in a flag. */
const LABEL = 40;
const NONE: ReadonlySet<string> = new Set();
/** Most lines of a flag that only tells of other circuits. */
const MENTION = 3;

export function clustersOf(plan: Plan, circuit: string): readonly Cluster[] {
  const own = plan.wires.filter((wire) => wire.circuit === circuit);
  const used = new Set(own.flatMap(({ from, to }) => [from, to]));
  const devices = new Map(plan.devices.map((device) => [device.id, device]));
  const elsewhere = elsewhereOf(plan, circuit);
  const touched = [...new Set([...used].map(deviceOf))].flatMap((id) => devices.get(id) ?? []);
  const drawn = own.filter(({ rail }) => rail === null);
  const leads = leadsOf(drawn);
  const all = touched.flatMap((device) => piecesOf(device, used)).flatMap((piece) => slices(piece, leads));
  const loose = looseJoints(all, own);
  const pieces = all
    .filter((piece) => !terminalsOf(piece).some((each) => loose.has(each)))
    .map((piece) => ({ ...piece, refers: [...piece.refers, ...elsewhere(piece)] }));
  const at = pieceAt(pieces);
  const mentions = mentionsOf(plan, circuit, at);
  // Where one end is at a device that is not there, the other says so.
  const whole = drawn.filter(({ from, to }) => at.has(from) && at.has(to));
  const isCut = cuts(pieces, whole, at, own);
  const kept = whole.filter((wire) => !isCut(wire));
  const isKept = new Set(kept);
  const flags = flagsOf(
    own.filter((wire) => !isKept.has(wire)),
    mentions,
    at,
    loose,
    feedersOf(plan),
  );
  const depth = depthsOf(plan);
  return gathered(pieces, kept, flags, at).map(({ group, wires, flags: own }) => ({
    pieces: group,
    flags: own,
    wires,
    rank: ranksOf(group, wires, own, at, depth),
  }));
}

interface Gathered {
  readonly group: readonly Piece[];
  readonly wires: readonly DrawnWire[];
  readonly flags: readonly Flag[];
}

/** Pieces that hang together, with what lies between them and what hangs on them. */
function gathered(
  pieces: readonly Piece[],
  wires: readonly DrawnWire[],
  flags: readonly Flag[],
  at: ReadonlyMap<string, Piece>,
): readonly Gathered[] {
  const groups = groupsOf(pieces, wires, at).map((group) => ({
    group,
    wires: [] as DrawnWire[],
    flags: [] as Flag[],
  }));
  const of = new Map(groups.flatMap((each) => each.group.map((piece) => [piece, each] as const)));
  for (const wire of wires) of.get(at.get(wire.from)!)!.wires.push(wire);
  for (const flag of flags) of.get(at.get(flag.at)!)!.flags.push(flag);
  return groups;
}

/** The symbols of a device of which a terminal is in use. */
function piecesOf({ id, name, groups }: DrawnDevice, used: ReadonlySet<string>): readonly Piece[] {
  const piece = (group: TerminalGroup, first: string): Piece => ({
    id: `${id}/${first}`,
    device: id,
    name,
    group,
    refers: [],
  });
  return groups.flatMap((group): readonly Piece[] => {
    if ('poles' in group) {
      const poles = group.poles.filter(([a, b]) => used.has(a) || used.has(b));
      return poles.length === 0 ? [] : [piece({ ...group, poles }, poles[0]![0])];
    }
    if ('box' in group) {
      const box = group.box.filter((each) => used.has(each));
      return box.length === 0 ? [] : [piece({ ...group, box }, box[0]!)];
    }
    return group.points
      .filter((each) => used.has(each))
      .map((each) => ({
        ...piece({ symbol: group.symbol, points: [each] }, each),
        refers: group.bridged?.[each] ? [`bridged to ${group.bridged[each]}`] : [],
      }));
  });
}

/** Devices at the other ends of a terminal's wires. */
function leadsOf(wires: readonly DrawnWire[]): ReadonlyMap<string, ReadonlySet<string>> {
  const leads = new Map<string, Set<string>>();
  const add = (near: string, far: string): void => {
    const own = leads.get(near);
    if (own) own.add(deviceOf(far));
    else leads.set(near, new Set([deviceOf(far)]));
  };
  for (const { from, to } of wires) {
    add(from, to);
    add(to, from);
  }
  return leads;
}

/** A large box falls into pieces of terminals that lead to the same devices. */
function slices(piece: Piece, leads: ReadonlyMap<string, ReadonlySet<string>>): readonly Piece[] {
  const { group } = piece;
  if (!('box' in group)) return [piece];
  const whole = (box: readonly string[]): Piece => {
    const signs = new Set(box.map((each) => group.signs?.[each]));
    const [sign] = signs;
    return {
      ...piece,
      id: `${piece.device}/${box[0]}`,
      group: { ...group, symbol: signs.size === 1 && sign ? sign : group.symbol, box },
    };
  };
  if (group.box.length <= LARGE) return [whole(group.box)];
  const targetOf = (terminal: string): string => [...(leads.get(terminal) ?? [])].sort().join(' ');
  const shared = new Map<string, number>();
  for (const each of group.box) shared.set(targetOf(each), (shared.get(targetOf(each)) ?? 0) + 1);
  const byTarget = new Map<string, string[]>();
  for (const each of group.box) {
    const target = targetOf(each);
    // What leads somewhere alone stands with others of its sort.
    const key = shared.get(target)! > 1 ? target : `alone ${group.signs?.[each] ?? ''}`;
    byTarget.set(key, [...(byTarget.get(key) ?? []), each]);
  }
  return [...byTarget.values()].flatMap((box) => {
    const parts: Piece[] = [];
    for (let first = 0; first < box.length; first += SLICE)
      parts.push(whole(box.slice(first, first + SLICE)));
    return parts;
  });
}

function pieceAt(pieces: readonly Piece[]): ReadonlyMap<string, Piece> {
  return new Map(pieces.flatMap((piece) => terminalsOf(piece).map((each) => [each, piece] as const)));
}

/** What a terminal in this circuit also carries in others. */
function mentionsOf(plan: Plan, circuit: string, shown: ReadonlyMap<string, Piece>): readonly DrawnWire[] {
  const titles = new Map(plan.circuits.map(({ id, title }) => [id, title]));
  return plan.wires
    .filter((wire) => wire.circuit !== circuit && (shown.has(wire.from) || shown.has(wire.to)))
    .map((wire) => ({ ...wire, circuit: titles.get(wire.circuit) ?? wire.circuit }));
}

/** Wires that go on elsewhere: where a chain is too long for a sheet, or a cluster too crowded. */
function cuts(
  pieces: readonly Piece[],
  wires: readonly DrawnWire[],
  at: ReadonlyMap<string, Piece>,
  all: readonly DrawnWire[],
): (wire: DrawnWire) => boolean {
  const part = new Map<Piece, number>();
  let last = 0;
  const rails = flagsOf(
    all.filter(({ rail }) => rail !== null),
    [],
    at,
    NONE,
    NONE,
  );
  for (const { group, wires: inside, flags: own } of gathered(pieces, wires, rails, at)) {
    const rank = ranksOf(group, inside, own, at, NO_DEPTH);
    const deepest = Math.max(...rank.values());
    if (group.length <= CROWD && deepest < DEEP) {
      last++;
      for (const piece of group) part.set(piece, last);
      continue;
    }
    const sorted = [...group].sort((a, b) => rank.get(a.id)! - rank.get(b.id)!);
    const bands = new Map<number, number>();
    let count = 0;
    last++;
    for (const piece of sorted) {
      const band = Math.floor(rank.get(piece.id)! / DEEP);
      if (!bands.has(band) || count >= CROWD) {
        bands.set(band, ++last);
        count = 0;
      }
      count++;
      part.set(piece, bands.get(band)!);
    }
  }
  return ({ from, to }) => part.get(at.get(from)!) !== part.get(at.get(to)!);
}

/** Pieces joined by wires, in the order of their first piece. */
function groupsOf(
  pieces: readonly Piece[],
  wires: readonly DrawnWire[],
  at: ReadonlyMap<string, Piece>,
): readonly (readonly Piece[])[] {
  const root = new Map<Piece, Piece>();
  const find = (piece: Piece): Piece => {
    let now = piece;
    while (root.has(now)) now = root.get(now)!;
    if (now !== piece) root.set(piece, now);
    return now;
  };
  for (const { from, to } of wires) {
    const [a, b] = [at.get(from), at.get(to)];
    if (!a || !b) continue;
    const [x, y] = [find(a), find(b)];
    if (x !== y) root.set(y, x);
  }
  const groups = new Map<Piece, Piece[]>();
  for (const piece of pieces) {
    const first = find(piece);
    const own = groups.get(first);
    if (own) own.push(piece);
    else groups.set(first, [piece]);
  }
  return [...groups.values()];
}

function flagsOf(
  wires: readonly DrawnWire[],
  mentions: readonly DrawnWire[],
  at: ReadonlyMap<string, Piece>,
  loose: ReadonlySet<string>,
  feeders: ReadonlySet<string>,
): readonly Flag[] {
  const flags = new Map<string, { rail: Rail | null; lines: FlagLine[]; more: number; isFed: boolean }>();
  const hang = (terminal: string, other: string, wire: DrawnWire, where: string): void => {
    if (!at.has(terminal)) return;
    const flag = flags.get(terminal) ?? { rail: null, lines: [], more: 0, isFed: false };
    if (feeders.has(other) && !feeders.has(terminal)) flag.isFed = true;
    // A pole that is earthed as well is called by its pole.
    if (wire.rail && (flag.rail === null || flag.rail.role === 'earth')) flag.rail = wire.rail;
    if (where && flag.lines.length >= MENTION) flag.more++;
    else if (loose.has(other))
      flag.lines.push({
        wire: wire.id,
        text: `${deviceOf(other)}:${markOf(other)} · ${shorten(wire.label, LABEL)}`,
        joint: other,
      });
    else {
      const far = where ? `${shorten(other, 20)} (${shorten(where, 26)})` : shorten(other, 20);
      flag.lines.push({ wire: wire.id, text: `${shorten(wire.label, LABEL)} → ${far}` });
    }
    flags.set(terminal, flag);
  };
  for (const wire of wires) {
    hang(wire.from, wire.to, wire, '');
    hang(wire.to, wire.from, wire, '');
  }
  for (const wire of mentions) {
    hang(wire.from, wire.to, wire, wire.circuit);
    hang(wire.to, wire.from, wire, wire.circuit);
  }
  return [...flags].map(([terminal, { rail, lines, more, isFed }]) => ({
    id: `flag ${terminal}`,
    at: terminal,
    rail,
    isFed: rail ? rail.role === 'feeds' : isFed,
    lines: more > 0 ? [...lines, { wire: '', text: `and ${more} more` }] : lines,
  }));
}

/** How far each piece and flag is from what feeds. */
function ranksOf(
  pieces: readonly Piece[],
  wires: readonly DrawnWire[],
  flags: readonly Flag[],
  at: ReadonlyMap<string, Piece>,
  depth: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> {
  const beside = new Map<string, string[]>(pieces.map(({ id }) => [id, []]));
  for (const { from, to } of wires) {
    const [a, b] = [at.get(from)!.id, at.get(to)!.id];
    beside.get(a)!.push(b);
    beside.get(b)!.push(a);
  }
  const hung = (role: Rail['role']) =>
    flags.filter(({ rail }) => rail?.role === role).map((flag) => at.get(flag.at)!.id);
  const named = (symbols: ReadonlySet<string>) =>
    pieces.filter(({ group }) => symbols.has(group.symbol)).map(({ id }) => id);
  const fed = flags.filter(({ isFed }) => isFed).map((flag) => at.get(flag.at)!.id);
  const feeds = [...givers(pieces, wires), ...entries(pieces, wires, at, depth), ...fed];
  const starts = feeds.length > 0 ? feeds : named(LATER);
  const rank =
    starts.length > 0
      ? spread(starts, beside)
      : hung('returns').length > 0
        ? reversed(spread(hung('returns'), beside))
        : aroundLargest(pieces, wires, at);
  for (const { id } of pieces) if (!rank.has(id)) rank.set(id, 0);
  pushOn(rank, wires, at);
  for (const flag of flags) {
    const own = rank.get(at.get(flag.at)!.id)!;
    rank.set(flag.id, flag.isFed ? own - 0.5 : own + 0.5);
  }
  return rank;
}

/** What feeds where nothing else does. */
const LATER: ReadonlySet<string> = new Set([
  'transformer',
  'rectifier',
  'drive',
  'inverter',
  'direct-converter',
]);

/** Steps from the nearest of some pieces. */
function spread(
  starts: readonly string[],
  beside: ReadonlyMap<string, readonly string[]>,
): Map<string, number> {
  const rank = new Map<string, number>(starts.map((id) => [id, 0]));
  for (const id of rank.keys())
    for (const next of beside.get(id)!) if (!rank.has(next)) rank.set(next, rank.get(id)! + 1);
  return rank;
}

function reversed(rank: Map<string, number>): Map<string, number> {
  const deepest = Math.max(0, ...rank.values());
  for (const [id, value] of rank) rank.set(id, deepest - value);
  return rank;
}

/** A box rather than a pole of as many terminals. */
const weight = (piece: Piece): number => terminalsOf(piece).length + ('box' in piece.group ? 0.5 : 0);

/** Where nothing feeds: what the largest piece takes stands on its left, what it gives on its right. */
function aroundLargest(
  pieces: readonly Piece[],
  wires: readonly DrawnWire[],
  at: ReadonlyMap<string, Piece>,
): Map<string, number> {
  const rank = new Map<string, number>();
  const way = new Map<string, number>();
  const [largest] = [...pieces].sort((a, b) => weight(b) - weight(a));
  if (!largest) return rank;
  const takes = new Set('box' in largest.group ? largest.group.takes : []);
  rank.set(largest.id, 0);
  const ends = new Map<string, [own: string, other: string][]>();
  for (const { from, to } of wires)
    for (const [own, other] of [
      [from, to],
      [to, from],
    ] as const) {
      const id = at.get(own)!.id;
      ends.set(id, [...(ends.get(id) ?? []), [own, other]]);
    }
  for (const id of rank.keys())
    for (const [own, other] of ends.get(id) ?? []) {
      const next = at.get(other)!.id;
      if (rank.has(next)) continue;
      const step = way.get(id) ?? (takes.has(own) ? -1 : 1);
      way.set(next, step);
      rank.set(next, rank.get(id)! + step);
    }
  const least = Math.min(...rank.values());
  for (const [id, value] of rank) rank.set(id, value - least);
  return rank;
}

/** The ways of current between two nets through contacts: rows of contacts, and ways beside each other. */

/** Contacts are positions in the model. A row without pieces is a wire. */
export type Way =
  | { readonly kind: 'link'; readonly contact: number }
  | { readonly kind: 'row'; readonly pieces: readonly Way[] }
  | { readonly kind: 'beside'; readonly ways: readonly Way[] };

export interface Edge {
  readonly contact: number;
  readonly a: number;
  readonly b: number;
}

/** Ways from end to end that are followed at most; a stop circuit has a handful. */
const MOST = 64;

/**
 * All ways from one net to another that pass no net of `shut`; undefined where there is none. Where contacts bridge between
 * rows, so that no rows and branches say it, every way stands beside the others and a contact stands in several.
 */
export function waysBetween(
  edges: readonly Edge[],
  from: number,
  to: number,
  shut: ReadonlySet<number>,
): Way | undefined {
  if (from === to) return { kind: 'row', pieces: [] };
  const at = new Map<number, Edge[]>();
  for (const edge of edges) for (const net of [edge.a, edge.b]) at.set(net, [...(at.get(net) ?? []), edge]);
  const paths: Edge[][] = [];
  const walk = (net: number, path: readonly Edge[], been: ReadonlySet<number>): void => {
    for (const edge of at.get(net) ?? []) {
      const next = edge.a === net ? edge.b : edge.a;
      if (paths.length >= MOST || been.has(next)) continue;
      if (next === to) paths.push([...path, edge]);
      else if (!shut.has(next)) walk(next, [...path, edge], new Set([...been, next]));
    }
  };
  walk(from, [], new Set([from]));
  if (paths.length === 0) return undefined;
  return (
    reduced([...new Set(paths.flat())], from, to) ??
    beside(paths.map((path) => row(path.map(({ contact }) => ({ kind: 'link', contact })))))
  );
}

interface Piece {
  readonly a: number;
  readonly b: number;
  /** From a to b. */
  readonly way: Way;
}

/** Rows and branches by taking together what lies in a row or side by side, until one piece is left; undefined where more are. */
function reduced(edges: readonly Edge[], from: number, to: number): Way | undefined {
  let pieces: readonly Piece[] = edges.map(({ a, b, contact }) => ({ a, b, way: { kind: 'link', contact } }));
  for (;;) {
    const next = sideBySide(pieces) ?? inARow(pieces, from, to);
    if (!next) break;
    pieces = next;
  }
  const [last] = pieces;
  return pieces.length === 1 && last ? turned(last, from).way : undefined;
}

function sideBySide(pieces: readonly Piece[]): readonly Piece[] | undefined {
  for (const [n, piece] of pieces.entries()) {
    const same = pieces.filter(
      ({ a, b }, at) => at >= n && ((a === piece.a && b === piece.b) || (a === piece.b && b === piece.a)),
    );
    if (same.length < 2) continue;
    const way = beside(same.map((each) => turned(each, piece.a).way));
    return [...pieces.filter((each) => !same.includes(each)), { a: piece.a, b: piece.b, way }];
  }
  return undefined;
}

function inARow(pieces: readonly Piece[], from: number, to: number): readonly Piece[] | undefined {
  for (const net of new Set(pieces.flatMap(({ a, b }) => [a, b]))) {
    if (net === from || net === to) continue;
    const [one, two, ...more] = pieces.filter(({ a, b }) => a === net || b === net);
    if (!one || !two || more.length > 0) continue;
    const far = one.a === net ? one.b : one.a;
    const [first, second] = [turned(one, far), turned(two, net)];
    return [
      ...pieces.filter((each) => each !== one && each !== two),
      { a: far, b: second.b, way: row([first.way, second.way]) },
    ];
  }
  return undefined;
}

const turned = (piece: Piece, from: number): Piece =>
  piece.a === from ? piece : { a: piece.b, b: piece.a, way: backwards(piece.way) };

function backwards(way: Way): Way {
  if (way.kind === 'link') return way;
  return way.kind === 'row'
    ? { kind: 'row', pieces: way.pieces.map(backwards).reverse() }
    : { kind: 'beside', ways: way.ways.map(backwards) };
}

const row = (ways: readonly Way[]): Way => ({
  kind: 'row',
  pieces: ways.flatMap((each) => (each.kind === 'row' ? each.pieces : [each])),
});

const beside = (ways: readonly Way[]): Way => {
  const all = ways.flatMap((each) => (each.kind === 'beside' ? each.ways : [each]));
  return all.length === 1 ? all[0]! : { kind: 'beside', ways: all };
};

/** Every contact of it, in order. */
export const contactsOf = (way: Way): readonly number[] =>
  way.kind === 'link'
    ? [way.contact]
    : way.kind === 'row'
      ? way.pieces.flatMap(contactsOf)
      : way.ways.flatMap(contactsOf);

/** Whether it is joined from end to end. */
export const isJoined = (way: Way, closed: (contact: number) => boolean): boolean =>
  way.kind === 'link'
    ? closed(way.contact)
    : way.kind === 'row'
      ? way.pieces.every((each) => isJoined(each, closed))
      : way.ways.some((each) => isJoined(each, closed));

/** Contacts that stand open where it is not joined, in order. */
export function gapsOf(way: Way, closed: (contact: number) => boolean): readonly number[] {
  if (isJoined(way, closed)) return [];
  return way.kind === 'link'
    ? [way.contact]
    : (way.kind === 'row' ? way.pieces : way.ways).flatMap((each) => gapsOf(each, closed));
}

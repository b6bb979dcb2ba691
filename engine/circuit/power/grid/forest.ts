/**
 * The metal and the sources of a supply as a graph, with one way from every point to every other kept ready while single
 * links come and go.
 *
 * The links that make up these ways are the spanning forest of least rank. Ranks are all different, so there is one such
 * forest and no other: what is worked out along it does not depend on the order in which the links came.
 */

/** In microvolts, as an arrow: effective volts in phase, and a quarter of a period ahead. */
export interface Arrow {
  readonly re: number;
  readonly im: number;
}

export interface Link {
  readonly id: string;
  readonly a: string;
  readonly b: string;
  /** Ways keep to the lower class where they can: 0 metal, 1 contacts, 2 fuses, 3 sources. */
  readonly rank: 0 | 1 | 2 | 3;
  readonly ohms: number;
  /** How far `a` stands above `b`; of sources. */
  readonly lifts?: Arrow;
  readonly wire?: string;
  /** Source it is part of. */
  readonly source?: string;
}

/** A current of one load, along its way. Amperes are whole nanoamperes, so that sums do not depend on their order. */
export interface Strand {
  readonly load: string;
  /** By channel: see `channels.ts`. */
  readonly amps: readonly (readonly [channel: string, nano: number])[];
  /** Settings that would say its current. */
  readonly needs: readonly string[];
}

export class Edge {
  link: Link;
  readonly a: Vertex;
  readonly b: Vertex;
  inTree = false;
  /** Links outside the forest whose way round leads through here. */
  readonly covers = new Set<Edge>();
  /** Of one outside the forest: the way from `a` to `b` inside it. */
  round: readonly Edge[] = [];
  /** What flows from `a` to `b`, by channel, as if links outside the forest carried nothing. */
  readonly sums = new Map<string, number>();
  /** Those that pass here; with a need, those that ask. */
  readonly strands = new Set<Strand>();
  readonly asking = new Set<Strand>();
  /** Loops it is part of, once looked at. */
  block: Block | undefined;

  constructor(link: Link, a: Vertex, b: Vertex) {
    this.link = link;
    this.a = a;
    this.b = b;
  }

  get looped(): boolean {
    return !this.inTree || this.covers.size > 0;
  }
}

export interface Vertex {
  readonly id: string;
  up: Edge | null;
  readonly edges: Set<Edge>;
  mark: number;
  via: Edge | null;
}

/** Loops that share a link: their currents follow from their resistances together. */
export interface Block {
  /** In the order of their ids. */
  readonly edges: readonly Edge[];
  /** Whether a source is among them. */
  readonly lifted: boolean;
  /** Kept by whoever works it out. */
  solved?: unknown;
}

export interface ForestListener {
  /** What flows here may be other than before. */
  readonly flow: (edge: Edge) => void;
  /** The way of this one is interrupted. */
  readonly cut: (strand: Strand) => void;
  /** Ways around this vertex have changed, though it hangs together with what it did. */
  readonly turned: (vertex: string) => void;
  /** Whether there is another way round this link may be other than before. */
  readonly looped: (edge: Edge) => void;
  /** Links at a vertex have changed. */
  readonly links: (vertex: string) => void;
}

const before = (a: Link, b: Link): boolean => (a.rank !== b.rank ? a.rank < b.rank : a.id < b.id);
const far = (edge: Edge, from: Vertex): Vertex => (edge.a === from ? edge.b : edge.a);

export class Forest {
  readonly edges = new Map<string, Edge>();
  readonly vertices = new Map<string, Vertex>();
  /** Links that close a loop. */
  readonly extras = new Set<Edge>();
  readonly #told: ForestListener;
  #mark = 0;

  constructor(listener: ForestListener) {
    this.#told = listener;
  }

  addVertex(id: string): void {
    if (!this.vertices.has(id)) this.vertices.set(id, { id, up: null, edges: new Set(), mark: 0, via: null });
  }

  /** Its links must have been taken off before. */
  removeVertex(id: string): void {
    this.vertices.delete(id);
  }

  /** Both ends must be there and differ. */
  add(link: Link): void {
    const [a, b] = [this.vertices.get(link.a)!, this.vertices.get(link.b)!];
    const edge = new Edge(link, a, b);
    this.edges.set(link.id, edge);
    a.edges.add(edge);
    b.edges.add(edge);
    this.#told.links(a.id);
    this.#told.links(b.id);
    const way = this.#between(a, b);
    if (way === undefined) {
      this.#join(edge);
      return;
    }
    let last = edge;
    for (const each of way) if (before(last.link, each.link)) last = each;
    if (last === edge) {
      this.#goRound(edge);
      return;
    }
    const loose = [last, ...last.covers];
    for (const each of last.covers) this.#leaveRound(each);
    this.#part(last);
    this.#join(edge);
    for (const each of loose) this.#goRound(each);
    this.#told.turned(a.id);
  }

  remove(id: string): void {
    const edge = this.edges.get(id);
    if (!edge) return;
    this.edges.delete(id);
    const loose = [...edge.covers];
    if (!edge.inTree) this.#leaveRound(edge);
    else {
      for (const each of loose) this.#leaveRound(each);
      this.#part(edge);
    }
    edge.a.edges.delete(edge);
    edge.b.edges.delete(edge);
    this.#told.links(edge.a.id);
    this.#told.links(edge.b.id);
    this.#told.flow(edge);
    if (loose.length === 0) return;
    const next = loose.reduce((least, each) => (before(each.link, least.link) ? each : least));
    this.#join(next);
    for (const each of loose) if (each !== next) this.#goRound(each);
    this.#told.turned(edge.a.id);
  }

  /** Takes over what does not change where it leads. */
  replace(link: Link): void {
    const edge = this.edges.get(link.id)!;
    edge.link = link;
    this.#forget(edge);
    this.#told.flow(edge);
    this.#told.links(edge.a.id);
    this.#told.links(edge.b.id);
  }

  /** The links from one vertex to another, in this order; undefined where none lead there. */
  way(from: string, to: string): readonly Edge[] | undefined {
    const [a, b] = [this.vertices.get(from), this.vertices.get(to)];
    return a && b ? this.#between(a, b) : undefined;
  }

  /** Lays a current from `from`, where it is drawn, back to `to`: it flows along the way from `to` to `from`. */
  lay(strand: Strand, way: readonly Edge[], from: string, sign: 1 | -1 = 1): void {
    let at = this.vertices.get(from)!;
    for (const edge of way) {
      const next = far(edge, at);
      // Listed against the flow, from where it is drawn.
      const along = next === edge.a ? sign : -sign;
      for (const [channel, nano] of strand.amps) {
        const sum = (edge.sums.get(channel) ?? 0) + along * nano;
        if (sum === 0) edge.sums.delete(channel);
        else edge.sums.set(channel, sum);
      }
      if (sign === 1) {
        edge.strands.add(strand);
        if (strand.needs.length > 0) edge.asking.add(strand);
      } else {
        edge.strands.delete(strand);
        edge.asking.delete(strand);
      }
      if (edge.covers.size > 0) this.#forget(edge);
      this.#told.flow(edge);
      at = next;
    }
  }

  /** The loops a looped link is part of. */
  blockOf(edge: Edge): Block {
    if (edge.block) return edge.block;
    const seen = new Set<Edge>();
    const queue: Edge[] = edge.inTree ? [...edge.covers] : [edge];
    for (const each of queue) seen.add(each);
    for (let at = 0; at < queue.length; at++)
      for (const each of queue[at]!.round) {
        if (seen.has(each)) continue;
        seen.add(each);
        for (const other of each.covers)
          if (!seen.has(other)) {
            seen.add(other);
            queue.push(other);
          }
      }
    const edges = [...seen].sort((a, b) => (a.link.id < b.link.id ? -1 : 1));
    const block: Block = { edges, lifted: edges.some(({ link }) => link.lifts !== undefined) };
    for (const each of seen) each.block = block;
    return block;
  }

  #forget(edge: Edge): void {
    if (!edge.block) return;
    for (const each of edge.block.edges) {
      each.block = undefined;
      this.#told.flow(each);
    }
  }

  #goRound(edge: Edge): void {
    edge.inTree = false;
    this.extras.add(edge);
    edge.round = this.#between(edge.a, edge.b)!;
    for (const each of edge.round) {
      this.#forget(each);
      each.covers.add(edge);
      this.#told.looped(each);
      this.#told.flow(each);
    }
    this.#told.flow(edge);
  }

  #leaveRound(edge: Edge): void {
    this.extras.delete(edge);
    this.#forget(edge);
    for (const each of edge.round) {
      this.#forget(each);
      each.covers.delete(edge);
      this.#told.looped(each);
      this.#told.flow(each);
    }
    edge.round = [];
  }

  #join(edge: Edge): void {
    edge.inTree = true;
    // The end nearer to its root is turned over.
    const [a, b] = [this.#depth(edge.a), this.#depth(edge.b)];
    const moved = a < b ? edge.a : edge.b;
    this.#evert(moved);
    moved.up = edge;
    this.#told.flow(edge);
  }

  /** Takes a link out of the forest; no way round may lead through it any more. */
  #part(edge: Edge): void {
    for (const strand of [...edge.strands]) this.#told.cut(strand);
    if (edge.a.up === edge) edge.a.up = null;
    else edge.b.up = null;
    edge.inTree = false;
    edge.block = undefined;
    edge.covers.clear();
  }

  #depth(vertex: Vertex): number {
    let depth = 0;
    for (let at = vertex; at.up; at = far(at.up, at)) depth++;
    return depth;
  }

  #evert(vertex: Vertex): void {
    let at = vertex;
    let via: Edge | null = null;
    for (;;) {
      const up: Edge | null = at.up;
      at.up = via;
      if (!up) return;
      via = up;
      at = far(up, at);
    }
  }

  /** Climbs from both ends in turn, so that it costs the way and not the height. */
  #between(a: Vertex, b: Vertex): readonly Edge[] | undefined {
    if (a === b) return [];
    const [fromA, fromB] = [++this.#mark, ++this.#mark];
    a.mark = fromA;
    b.mark = fromB;
    a.via = null;
    b.via = null;
    let [x, y]: [Vertex | undefined, Vertex | undefined] = [a, b];
    for (;;) {
      if (!x && !y) return undefined;
      for (const side of [fromA, fromB] as const) {
        const at: Vertex | undefined = side === fromA ? x : y;
        if (!at) continue;
        const next: Vertex | undefined = at.up ? far(at.up, at) : undefined;
        if (next) {
          if (next.mark === fromA || next.mark === fromB) return this.#meet(next, at, side === fromA);
          next.mark = side;
          next.via = at.up;
        }
        if (side === fromA) x = next;
        else y = next;
      }
    }
  }

  /** The way through the vertex where both climbs met; `last` is where the later one came from. */
  #meet(top: Vertex, last: Vertex, lastFromA: boolean): readonly Edge[] {
    const down = (from: Vertex): Edge[] => {
      const edges: Edge[] = [];
      for (let at = from; at.via; ) {
        const edge: Edge = at.via;
        edges.push(edge);
        at = far(edge, at);
      }
      return edges;
    };
    const late = [last.up!, ...down(last)];
    const early = down(top);
    return lastFromA ? [...late.reverse(), ...early] : [...early.reverse(), ...late];
  }
}

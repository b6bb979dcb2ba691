/**
 * What hangs together, kept while single edges come and go. Joining moves the smaller side; parting searches from
 * both ends at once and stops when the smaller side is exhausted, so that an edit costs what it separates, not what
 * there is.
 */

export interface Component {
  readonly number: number;
  /** Terminals by what they are. */
  readonly byKind: Map<string, Set<string>>;
  size: number;
  edges: number;
}

export interface Watcher {
  /** A terminal belongs to another component than before. */
  readonly moved: (vertex: string) => void;
  /** The terminals of this kind in this component are others than before. */
  readonly changed: (component: Component, kind: string) => void;
  /** Its number of edges changed. */
  readonly edges: (component: Component) => void;
}

export class Components {
  private readonly of = new Map<string, Component>();
  private readonly kinds = new Map<string, string>();
  private readonly next = new Map<string, Map<string, string>>();
  private readonly ends = new Map<string, readonly [string, string]>();
  private count = 0;
  private readonly watch: Watcher;

  constructor(watch: Watcher) {
    this.watch = watch;
  }

  has(vertex: string): boolean {
    return this.of.has(vertex);
  }

  find(vertex: string): Component | undefined {
    return this.of.get(vertex);
  }

  /** Edges at a vertex with their other ends. */
  at(vertex: string): ReadonlyMap<string, string> | undefined {
    return this.next.get(vertex);
  }

  /** How many vertices and edges are kept. */
  get sizes(): readonly [vertices: number, edges: number] {
    return [this.of.size, this.ends.size];
  }

  addVertex(vertex: string, kind: string): void {
    const component = this.fresh();
    this.kinds.set(vertex, kind);
    this.next.set(vertex, new Map());
    this.put(vertex, component);
    this.watch.moved(vertex);
  }

  /** Its edges must have been taken off before. */
  removeVertex(vertex: string): void {
    this.take(vertex, this.of.get(vertex)!);
    this.of.delete(vertex);
    this.kinds.delete(vertex);
    this.next.delete(vertex);
    this.watch.moved(vertex);
  }

  setKind(vertex: string, kind: string): void {
    if (this.kinds.get(vertex) === kind) return;
    const component = this.of.get(vertex)!;
    this.take(vertex, component);
    this.kinds.set(vertex, kind);
    this.put(vertex, component);
  }

  addEdge(id: string, a: string, b: string): void {
    this.ends.set(id, [a, b]);
    this.next.get(a)!.set(id, b);
    this.next.get(b)!.set(id, a);
    const [one, other] = [this.of.get(a)!, this.of.get(b)!];
    if (one === other) {
      one.edges++;
      this.watch.edges(one);
      return;
    }
    const [small, large] = one.size < other.size ? [one, other] : [other, one];
    large.edges += small.edges + 1;
    this.move(
      [...small.byKind.values()].flatMap((set) => [...set]),
      small,
      large,
    );
    small.edges = 0;
    this.watch.edges(small);
    this.watch.edges(large);
  }

  removeEdge(id: string): void {
    const ends = this.ends.get(id);
    if (!ends) return;
    const [a, b] = ends;
    this.ends.delete(id);
    this.next.get(a)!.delete(id);
    this.next.get(b)!.delete(id);
    const component = this.of.get(a)!;
    component.edges--;
    const parted = a === b ? undefined : this.smallerSide(a, b);
    if (parted) {
      const made = this.fresh();
      for (const vertex of parted)
        for (const other of this.next.get(vertex)!.values()) if (vertex <= other) made.edges++;
      // An edge of a vertex with itself was counted once above, and it stands once in its list.
      component.edges -= made.edges;
      this.move(parted, component, made);
      this.watch.edges(made);
    }
    this.watch.edges(component);
  }

  /** The vertices of the smaller of two sides, or undefined where they still hang together. */
  private smallerSide(a: string, b: string): readonly string[] | undefined {
    const sides = [a, b].map((start) => ({ seen: new Set([start]), queue: [start], at: 0 }));
    for (;;) {
      for (const [n, side] of sides.entries()) {
        const vertex = side.queue[side.at++];
        if (vertex === undefined) return side.queue;
        for (const other of this.next.get(vertex)!.values()) {
          if (sides[1 - n]!.seen.has(other)) return undefined;
          if (side.seen.has(other)) continue;
          side.seen.add(other);
          side.queue.push(other);
        }
      }
    }
  }

  private fresh(): Component {
    return { number: this.count++, byKind: new Map(), size: 0, edges: 0 };
  }

  private move(vertices: readonly string[], from: Component, to: Component): void {
    for (const vertex of vertices) {
      this.take(vertex, from);
      this.put(vertex, to);
      this.watch.moved(vertex);
    }
  }

  private put(vertex: string, component: Component): void {
    const kind = this.kinds.get(vertex)!;
    this.of.set(vertex, component);
    const set = component.byKind.get(kind);
    if (set) set.add(vertex);
    else component.byKind.set(kind, new Set([vertex]));
    component.size++;
    this.watch.changed(component, kind);
  }

  private take(vertex: string, component: Component): void {
    const kind = this.kinds.get(vertex)!;
    const set = component.byKind.get(kind)!;
    set.delete(vertex);
    if (set.size === 0) component.byKind.delete(kind);
    component.size--;
    this.watch.changed(component, kind);
  }
}

/**
 * Conductances between nodes, taken apart star by star: a node is taken out, and what hung on it is joined in a mesh
 * (the star–mesh transformation, Gauss's elimination in terms of a circuit). Each conductance carries the amperes of
 * a source beside it (Norton), which are moved along.
 *
 * Nothing but positive conductances is ever added, so a milliohm beside a teraohm costs no figures and no reference
 * is needed. A change is worked in along the way from its nodes to the root of the tree of elimination; in a wiring,
 * nearly a tree, that is short however large the wiring is.
 */
import type { MeshOrder } from './mesh-order.ts';
import { Sums } from './sums.ts';

export interface Branch {
  readonly a: number;
  readonly b: number;
  /** Above zero. */
  readonly siemens: number;
  /** Amperes that the source beside it drives into `a` and out of `b`. */
  readonly amps: number;
}

/** One number for each place: what stands there before elimination and what elimination adds. */
class Places {
  readonly siemens: Sums;
  readonly amps: Sums;
  /** How many conductances stand in a place: only with none of them is it empty. */
  readonly count: Int32Array;

  constructor(length: number) {
    this.siemens = new Sums(length);
    this.amps = new Sums(length);
    this.count = new Int32Array(length);
  }
}

export class StarMesh {
  readonly order: MeshOrder;
  readonly #now: Places;
  readonly #base: Places;
  /** How many branches end at a node. */
  readonly #degree: Int32Array;
  /** Places and branches changed since the base. */
  readonly #changed: number[] = [];
  readonly #isChanged: Uint8Array;
  #branches: (readonly [Branch, 1 | -1])[] = [];
  readonly #onWay: Int32Array;
  #way = 0;
  readonly #volts: Float64Array;
  /** At which state the volts of a node were worked out last. */
  readonly #known: Int32Array;
  #state = 1;
  readonly #flow: Float64Array;

  /** @param branches those of the base, from which changes depart */
  constructor(order: MeshOrder, branches: Iterable<Branch>) {
    this.order = order;
    const places = order.later.length;
    this.#now = new Places(places);
    this.#base = new Places(places);
    this.#degree = new Int32Array(order.size);
    this.#isChanged = new Uint8Array(places);
    this.#onWay = new Int32Array(order.size);
    this.#volts = new Float64Array(order.size);
    this.#known = new Int32Array(order.size);
    this.#flow = new Float64Array(order.size);
    this.reset(branches);
  }

  /** Another base. */
  reset(branches: Iterable<Branch>): void {
    const { siemens, amps, count } = this.#now;
    siemens.clearAll();
    amps.clearAll();
    count.fill(0);
    this.#degree.fill(0);
    for (const branch of branches) this.#put(branch, 1);
    for (let k = 0; k < this.order.size; k++) this.#takeOut(k, 1, this.#now);
    this.#base.siemens.copyAll(siemens);
    this.#base.amps.copyAll(amps);
    this.#base.count.set(count);
    this.#isChanged.fill(0);
    this.#changed.length = 0;
    this.#branches = [];
    this.#state++;
  }

  /**
   * The base with other branches put in and some of its own taken out; changes made before are taken back.
   *
   * @throws RangeError for a branch between nodes that the order does not foresee
   */
  change(added: readonly Branch[], removed: readonly Branch[]): void {
    this.#restore();
    const ends: number[] = [];
    for (const [list, sign] of [
      [added, 1],
      [removed, -1],
    ] as const)
      for (const branch of list) {
        this.#put(branch, sign);
        this.#branches.push([branch, sign]);
        if (branch.a !== branch.b) ends.push(Math.min(branch.a, branch.b));
      }
    for (const k of this.#ways(ends)) {
      if (!this.#isRowChanged(k)) continue;
      this.#takeOut(k, -1, this.#base);
      this.#takeOut(k, 1, this.#now);
    }
  }

  /** Resistance between two nodes in ohms; `Infinity` where no path leads. */
  ohms(a: number, b: number): number {
    if (a === b) return 0;
    if (this.rootOf(a) !== this.rootOf(b)) return Number.POSITIVE_INFINITY;
    const { siemens, count } = this.#now;
    const { start, later } = this.order;
    // Share of an ampere into a and out of b that reaches each node; its square over the node's star is the heat.
    const share = this.#flow;
    const ways = this.#ways([a, b]);
    for (const k of ways) share[k] = 0;
    share[a] = 1;
    share[b] = -1;
    let ohms = 0;
    for (const k of ways) {
      const part = share[k]!;
      const all = this.#star(k, this.#now);
      if (part === 0 || all === 0) continue;
      ohms += (part * part) / all;
      for (let at = start[k]!; at < start[k + 1]!; at++)
        if (count[at]! > 0) share[later[at]!]! += (part * siemens.high[at]!) / all;
    }
    return ohms;
  }

  /** The last node of all that hang together with this one: the same for two nodes just when a path joins them. */
  rootOf(node: number): number {
    for (let k = node; ; ) {
      const next = this.#nextOf(k);
      if (next < 0) return k;
      k = next;
    }
  }

  /** Whether any branch ends at a node. */
  isThere(node: number): boolean {
    return node >= 0 && this.#degree[node]! > 0;
  }

  /** Volts of a node against its root, worked out along its way. */
  volts(node: number): number {
    if (this.#known[node] !== this.#state) {
      const way = this.#ways([node]);
      for (let n = way.length - 1; n >= 0; n--) this.#level(way[n]!);
    }
    return this.#volts[node]!;
  }

  /** Volts and roots of all nodes at once; the root −1 for a node at which no branch ends. */
  all(volts: Float64Array, roots: Int32Array): void {
    for (let k = this.order.size - 1; k >= 0; k--) {
      this.#level(k);
      volts[k] = this.#volts[k]!;
      const next = this.#nextOf(k);
      // Where a node has branches, those of elimination beside it have too.
      roots[k] = next < 0 ? (this.#degree[k] === 0 ? -1 : k) : roots[next]!;
    }
  }

  /** Adds to the volts of all nodes what these amperes into them cause; the amperes are used up. */
  respond(into: Float64Array, volts: Float64Array): void {
    const { start, later } = this.order;
    const { siemens, count } = this.#now;
    for (let k = 0; k < into.length; k++) {
      const part = into[k]!;
      const all = part === 0 ? 0 : this.#star(k, this.#now);
      if (all === 0) continue;
      for (let at = start[k]!; at < start[k + 1]!; at++)
        if (count[at]! > 0) into[later[at]!]! += (part * siemens.high[at]!) / all;
    }
    for (let k = into.length - 1; k >= 0; k--) {
      let flow = into[k]!;
      let all = 0;
      for (let at = start[k]!; at < start[k + 1]!; at++) {
        if (count[at]! === 0) continue;
        all += siemens.high[at]!;
        flow += siemens.high[at]! * into[later[at]!]!;
      }
      into[k] = all === 0 ? 0 : flow / all;
      volts[k]! += into[k]!;
    }
    into.fill(0);
  }

  #restore(): void {
    const { siemens, amps, count } = this.#base;
    for (const at of this.#changed) {
      this.#now.siemens.copy(siemens, at);
      this.#now.amps.copy(amps, at);
      this.#now.count[at] = count[at]!;
      this.#isChanged[at] = 0;
    }
    this.#changed.length = 0;
    for (const [{ a, b }, sign] of this.#branches) {
      this.#degree[a]! -= sign;
      this.#degree[b]! -= sign;
    }
    this.#branches = [];
    this.#state++;
  }

  #level(k: number): void {
    if (this.#known[k] === this.#state) return;
    this.#known[k] = this.#state;
    const { siemens, amps, count } = this.#now;
    const { start, later } = this.order;
    let flow = 0;
    let all = 0;
    for (let at = start[k]!; at < start[k + 1]!; at++) {
      if (count[at] === 0) continue;
      all += siemens.high[at]!;
      flow += amps.high[at]! + siemens.high[at]! * this.#volts[later[at]!]!;
    }
    this.#volts[k] = all === 0 ? 0 : flow / all;
  }

  #nextOf(k: number): number {
    const { start, later } = this.order;
    for (let at = start[k]!; at < start[k + 1]!; at++) if (this.#now.count[at]! > 0) return later[at]!;
    return -1;
  }

  #star(k: number, { siemens, count }: Places): number {
    const { start } = this.order;
    let all = 0;
    for (let at = start[k]!; at < start[k + 1]!; at++) if (count[at]! > 0) all += siemens.high[at]!;
    return all;
  }

  #isRowChanged(k: number): boolean {
    const { start } = this.order;
    for (let at = start[k]!; at < start[k + 1]!; at++) if (this.#isChanged[at]) return true;
    return false;
  }

  /** All nodes from these up to their roots in the tree of elimination, in its order. */
  #ways(nodes: readonly number[]): readonly number[] {
    const way = ++this.#way;
    const found: number[] = [];
    for (const node of nodes)
      for (let k = node; k >= 0 && this.#onWay[k] !== way; k = this.order.parent[k]!) {
        this.#onWay[k] = way;
        found.push(k);
      }
    return found.sort((a, b) => a - b);
  }

  #put({ a, b, siemens, amps }: Branch, sign: 1 | -1): void {
    this.#degree[a]! += sign;
    this.#degree[b]! += sign;
    if (a === b) return;
    const at = this.order.place(Math.min(a, b), Math.max(a, b));
    if (at < 0) throw new RangeError('No branch is foreseen between these nodes.');
    this.#add(at, sign, siemens, a < b ? amps : -amps);
  }

  /** What taking out a node, its row as in `places`, leaves between its neighbours. */
  #takeOut(k: number, sign: 1 | -1, places: Places): void {
    const { start, later } = this.order;
    const { count } = places;
    const siemens = places.siemens.high;
    const amps = places.amps.high;
    const end = start[k + 1]!;
    const all = this.#star(k, places);
    if (all === 0) return;
    for (let one = start[k]!; one < end; one++) {
      if (count[one] === 0) continue;
      for (let other = one + 1; other < end; other++) {
        if (count[other] === 0) continue;
        this.#add(
          this.order.place(later[one]!, later[other]!),
          sign,
          (siemens[one]! * siemens[other]!) / all,
          (siemens[one]! * amps[other]! - siemens[other]! * amps[one]!) / all,
        );
      }
    }
  }

  #add(at: number, sign: 1 | -1, siemens: number, amps: number): void {
    if (this.#isChanged[at] === 0) {
      this.#isChanged[at] = 1;
      this.#changed.push(at);
    }
    const { count } = this.#now;
    count[at]! += sign;
    if (count[at] === 0) {
      this.#now.siemens.clear(at);
      this.#now.amps.clear(at);
    } else {
      this.#now.siemens.add(at, sign * siemens);
      this.#now.amps.add(at, sign * amps);
    }
  }
}

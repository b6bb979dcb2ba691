/**
 * The equations of one or several pieces: Kirchhoff's current law at each node but the reference, and the law of
 * each element whose current is an unknown of its own (modified nodal analysis).
 */
import { nodesOf } from './check.ts';
import { type Junction, junction, limited, through } from './junction.ts';
import { Factors, fewestNeighbours } from './linear.ts';
import type { Diode, Element, Piece, Transistor } from './types.ts';
import { closedAt, valueAt } from './value.ts';

/** Resistance of an open contact without one of its own, where it must not cut a run in time in two. */
export const OPEN_OHMS = 1e9;

/**
 * How what is stored follows its rate of change over a step: stored = reach·rate + from. Capacitors store their
 * voltage, inductors their current. Undefined: the steady state.
 */
export interface StepRule {
  readonly reach: number;
  readonly from: Float64Array;
}

/** What the sources do: at which moment, which share of them, and how much every node leaks (to find a way in). */
export interface Drive {
  readonly time: number;
  readonly share: number;
  readonly leak: number;
  readonly rule?: StepRule;
}

interface Exponential {
  readonly junction: Junction;
  /** Unknowns of both sides, −1 for a reference. */
  readonly p: number;
  readonly n: number;
}

interface Active {
  readonly element: Transistor;
  readonly c: number;
  readonly b: number;
  readonly e: number;
  readonly be: Junction;
  readonly bc: Junction;
}

export class System {
  readonly size: number;
  readonly elements: readonly Element[];
  /** What each unknown is, for messages: a node or an element. */
  readonly names: readonly string[];
  /** Elements that store, in the order of a step rule. */
  readonly stores: readonly Element[];
  /** Last linearised voltages of all junctions. */
  readonly bias: Float64Array;
  readonly #factors: Factors;
  readonly #base: Float64Array;
  readonly #known: Float64Array;
  readonly #right: Float64Array;
  readonly #index: Map<string, number>;
  readonly #diodes: readonly Exponential[];
  readonly #actives: readonly Active[];
  readonly #nodes: number;
  /** Nodes, by the order of elimination. */
  readonly #nodeAt: readonly number[];

  constructor(pieces: readonly Piece[]) {
    this.elements = pieces.flatMap((piece) => piece.elements);
    const raw = new Map<string, number>();
    const names: string[] = [];
    const add = (key: string, name: string): void => {
      raw.set(key, names.length);
      names.push(name);
    };
    for (const piece of pieces) {
      raw.set(`n:${piece.reference}`, -1);
      for (const node of piece.nodes) if (node !== piece.reference) add(`n:${node}`, node);
    }
    for (const e of this.elements) if (e.kind === 'diode' && e.ohms > 0) add(`i:${e.id}`, e.id);
    this.#nodes = names.length;
    for (const e of this.elements) if (e.kind === 'voltage' || e.kind === 'inductor') add(`b:${e.id}`, e.id);
    const pairs = [...this.#pairs(raw)];
    const order = fewestNeighbours(names.length, pairs);
    const place = new Int32Array(names.length);
    order.forEach((unknown, at) => {
      place[unknown] = at;
    });
    this.#index = new Map([...raw].map(([key, at]) => [key, at < 0 ? -1 : place[at]!]));
    this.names = [...order].map((unknown) => names[unknown]!);
    this.#nodeAt = Array.from({ length: this.#nodes }, (_, k) => place[k]!);
    this.size = names.length;
    this.#factors = new Factors(
      this.size,
      pairs.map(([a, b]) => [place[a]!, place[b]!] as const),
    );
    this.#base = new Float64Array(this.#factors.matrix.length);
    this.#known = new Float64Array(this.size);
    this.#right = new Float64Array(this.size);
    this.stores = this.elements.filter((e) => e.kind === 'capacitor' || e.kind === 'inductor');
    this.#diodes = this.elements
      .filter((e): e is Diode => e.kind === 'diode')
      .map((e) => ({
        junction: junction(e.saturation, e.emission, e.breakdown),
        p: e.ohms > 0 ? this.#index.get(`i:${e.id}`)! : this.node(e.anode),
        n: this.node(e.cathode),
      }));
    this.#actives = this.elements
      .filter((e): e is Transistor => e.kind === 'transistor')
      .map((element) => ({
        element,
        c: this.node(element.collector),
        b: this.node(element.base),
        e: this.node(element.emitter),
        be: junction(element.saturation, 1),
        bc: junction(element.saturation, 1),
      }));
    this.bias = new Float64Array(this.#diodes.length + 2 * this.#actives.length);
  }

  node(name: string): number {
    return this.#index.get(`n:${name}`)!;
  }

  branch(id: string): number {
    return this.#index.get(`b:${id}`)!;
  }

  /** Unknown inside a diode, between its resistance and its junction; its anode where it has no resistance. */
  inside(e: Diode): number {
    return e.ohms > 0 ? this.#index.get(`i:${e.id}`)! : this.node(e.anode);
  }

  isNode(unknown: number): boolean {
    return this.#nodeAt.includes(unknown);
  }

  *#pairs(raw: ReadonlyMap<string, number>): Iterable<readonly [number, number]> {
    const all = (keys: readonly string[]): number[] =>
      keys.map((key) => raw.get(key)!).filter((at) => at >= 0);
    for (const e of this.elements) {
      const keys = nodesOf(e).map((node) => `n:${node}`);
      if (raw.has(`b:${e.id}`)) keys.push(`b:${e.id}`);
      if (raw.has(`i:${e.id}`)) keys.push(`i:${e.id}`);
      if (e.kind === 'mirror') keys.push(`b:${e.of}`);
      const at = all(keys);
      for (const a of at) for (const b of at) if (a < b) yield [a, b];
    }
  }

  /** Puts down all that does not change from one step of Newton's to the next. */
  prepare({ time, share, leak, rule }: Drive): void {
    const m = this.#base;
    const right = this.#known;
    m.fill(0);
    right.fill(0);
    const add = (row: number, column: number, value: number): void => {
      if (row >= 0 && column >= 0) m[this.#factors.slot(row, column)]! += value;
    };
    const give = (row: number, value: number): void => {
      if (row >= 0) right[row]! += value;
    };
    const conductance = (a: number, b: number, g: number): void => {
      add(a, a, g);
      add(b, b, g);
      add(a, b, -g);
      add(b, a, -g);
    };
    let stored = 0;
    for (const e of this.elements)
      switch (e.kind) {
        case 'resistor':
          conductance(this.node(e.a), this.node(e.b), 1 / e.ohms);
          break;
        case 'switch': {
          const ohms = closedAt(e.closed, time) ? e.onOhms : (e.offOhms ?? (rule ? OPEN_OHMS : undefined));
          if (ohms !== undefined) conductance(this.node(e.a), this.node(e.b), 1 / ohms);
          break;
        }
        case 'voltage': {
          const [p, n, b] = [this.node(e.plus), this.node(e.minus), this.branch(e.id)];
          add(p, b, -1);
          add(n, b, 1);
          add(b, p, 1);
          add(b, n, -1);
          add(b, b, e.ohms);
          give(b, share * valueAt(e.volts, time));
          break;
        }
        case 'current': {
          const amps = share * valueAt(e.amps, time);
          give(this.node(e.from), -amps);
          give(this.node(e.to), amps);
          break;
        }
        case 'mirror': {
          const b = this.branch(e.of);
          add(this.node(e.from), b, e.gain);
          add(this.node(e.to), b, -e.gain);
          break;
        }
        case 'capacitor':
          if (rule) {
            const g = e.farads / rule.reach;
            const [a, b] = [this.node(e.a), this.node(e.b)];
            conductance(a, b, g);
            give(a, g * rule.from[stored]!);
            give(b, -g * rule.from[stored]!);
          }
          stored++;
          break;
        case 'inductor': {
          const [a, b, i] = [this.node(e.a), this.node(e.b), this.branch(e.id)];
          add(a, i, 1);
          add(b, i, -1);
          add(i, a, 1);
          add(i, b, -1);
          const z = rule ? e.henries / rule.reach : 0;
          add(i, i, -(e.ohms + z));
          if (rule) give(i, -z * rule.from[stored]!);
          stored++;
          break;
        }
        case 'diode':
          if (e.ohms > 0) conductance(this.node(e.anode), this.inside(e), 1 / e.ohms);
          break;
        case 'transistor':
          break;
      }
    if (leak > 0) for (const at of this.#nodeAt) add(at, at, leak);
  }

  /**
   * One step of Newton's from the unknowns `x`, which become the next ones.
   *
   * @returns the unknown at which the equations are singular or −1, and whether a junction was held back
   */
  step(x: Float64Array): { readonly singular: number; readonly held: boolean } {
    const { bias } = this;
    const m = this.#factors.matrix;
    const right = this.#right;
    m.set(this.#base);
    right.set(this.#known);
    const at = (unknown: number): number => (unknown < 0 ? 0 : x[unknown]!);
    const add = (row: number, column: number, value: number): void => {
      if (row >= 0 && column >= 0) m[this.#factors.slot(row, column)]! += value;
    };
    const give = (row: number, value: number): void => {
      if (row >= 0) right[row]! += value;
    };
    let held = false;
    const hold = (k: number, j: Junction, wanted: number): number => {
      const next = limited(j, wanted, bias[k]!);
      if (Math.abs(next - wanted) > 1e-9 + 1e-6 * Math.abs(wanted)) held = true;
      bias[k] = next;
      return next;
    };
    this.#diodes.forEach(({ junction: j, p, n }, k) => {
      const volts = hold(k, j, at(p) - at(n));
      const [current, slope] = through(j, volts);
      const rest = current - slope * volts;
      add(p, p, slope);
      add(n, n, slope);
      add(p, n, -slope);
      add(n, p, -slope);
      give(p, -rest);
      give(n, rest);
    });
    this.#actives.forEach(({ element, c, b, e, be, bc }, k) => {
      const first = this.#diodes.length + 2 * k;
      const sign = element.polarity === 'npn' ? 1 : -1;
      const vbe = hold(first, be, sign * (at(b) - at(e)));
      const vbc = hold(first + 1, bc, sign * (at(b) - at(c)));
      const [forward, gf] = through(be, vbe);
      const [reverse, gr] = through(bc, vbc);
      const [kf, kr] = [1 / element.gain, 1 / element.reverseGain];
      // Collector current: what is carried across, less what the collector junction takes itself.
      const ic = forward - reverse - kr * reverse;
      const ib = kf * forward + kr * reverse;
      const stamp = (row: number, current: number, byBe: number, byBc: number): void => {
        add(row, b, byBe + byBc);
        add(row, e, -byBe);
        add(row, c, -byBc);
        give(row, -sign * (current - byBe * vbe - byBc * vbc));
      };
      stamp(c, ic, gf, -(1 + kr) * gr);
      stamp(b, ib, kf * gf, kr * gr);
      stamp(e, -ic - ib, -(1 + kf) * gf, gr);
    });
    const singular = this.#factors.factor();
    if (singular >= 0) return { singular, held };
    this.#factors.solve(right);
    x.set(right);
    return { singular: -1, held };
  }

  /** Factors the equations as prepared, for `respond`; false where they are singular. */
  hold(): boolean {
    this.#factors.matrix.set(this.#base);
    return this.#factors.factor() < 0;
  }

  /** Unknowns of held equations for the sources as prepared (or without them) and more currents into nodes. */
  respond(currents: readonly (readonly [unknown: number, amps: number])[], sources: boolean): Float64Array {
    const right = this.#right;
    if (sources) right.set(this.#known);
    else right.fill(0);
    for (const [unknown, amps] of currents) if (unknown >= 0) right[unknown]! += amps;
    this.#factors.solve(right);
    return right.slice();
  }

  /** Junctions at the voltages of these unknowns, to start from. */
  startFrom(x: Float64Array): void {
    const at = (unknown: number): number => (unknown < 0 ? 0 : x[unknown]!);
    this.#diodes.forEach(({ p, n }, k) => {
      this.bias[k] = at(p) - at(n);
    });
    this.#actives.forEach(({ element, c, b, e }, k) => {
      const sign = element.polarity === 'npn' ? 1 : -1;
      this.bias[this.#diodes.length + 2 * k] = sign * (at(b) - at(e));
      this.bias[this.#diodes.length + 2 * k + 1] = sign * (at(b) - at(c));
    });
  }

  /** Without junctions one step settles everything. */
  get isLinear(): boolean {
    return this.bias.length === 0;
  }
}

/**
 * A program as a graph of operations on pairs of lanes. Equal operations on equal operands are one node, so what
 * several formulas share is computed once.
 */

/** Primitive operations with their opcode in WebAssembly's SIMD instruction set. */
export const PRIMITIVES = {
  add: 0xf0,
  sub: 0xf1,
  mul: 0xf2,
  div: 0xf3,
  sqrt: 0xef,
  abs: 0xec,
  neg: 0xed,
  ceil: 0x74,
  floor: 0x75,
  trunc: 0x7a,
  /** b < a ? b : a, so that a NaN in a stays. */
  pmin: 0xf6,
  /** a < b ? b : a, so that a NaN in a stays. */
  pmax: 0xf7,
  eq: 0x47,
  ne: 0x48,
  lt: 0x49,
  gt: 0x4a,
  le: 0x4b,
  ge: 0x4c,
  not: 0x4d,
  and: 0x4e,
  /** a and not b. */
  andnot: 0x4f,
  or: 0x50,
  xor: 0x51,
  /** (a, b, mask): a where the mask is set, b elsewhere. */
  select: 0x52,
  integerAdd: 0xce,
  integerNegate: 0xc1,
} as const;

export type Primitive = keyof typeof PRIMITIVES;

/** Scalar functions of JavaScript that take over where a routine's fast form does not hold. */
export type SlowFunction = 'exp' | 'log' | 'log10' | 'sin' | 'cos' | 'tan' | 'pow';

export type GraphNode =
  | { readonly kind: 'constant'; readonly bits: bigint }
  /** The value of a symbol as it lies in memory. */
  | { readonly kind: 'load'; readonly key: string }
  | { readonly kind: 'primitive'; readonly primitive: Primitive; readonly args: readonly number[] }
  | {
      readonly kind: 'shift';
      readonly direction: 'left' | 'right';
      readonly by: number;
      readonly args: readonly number[];
    }
  /** args: the fast result, the mask of lanes where it does not hold, then the arguments of the slow function. */
  | { readonly kind: 'guard'; readonly slow: SlowFunction; readonly args: readonly number[] };

const scratch = new DataView(new ArrayBuffer(8));

export function bitsOf(value: number): bigint {
  scratch.setFloat64(0, value);
  return scratch.getBigUint64(0);
}

export function numberOf(bits: bigint): number {
  scratch.setBigUint64(0, bits);
  return scratch.getFloat64(0);
}

/** Builds nodes; a node is known by its place in `nodes`, and stands after all its arguments. */
export class Graph {
  readonly nodes: GraphNode[] = [];
  private readonly known = new Map<string, number>();
  /** Nodes that are never infinite: finite, or NaN for no answer. */
  private readonly tame = new Set<number>();

  private add(node: GraphNode, name: string): number {
    const found = this.known.get(name);
    if (found !== undefined) return found;
    const id = this.nodes.push(node) - 1;
    this.known.set(name, id);
    return id;
  }

  constant(value: number): number {
    return this.markTame(this.bits(bitsOf(value)), Number.isFinite(value) || Number.isNaN(value));
  }

  bits(bits: bigint): number {
    return this.add({ kind: 'constant', bits }, `#${bits}`);
  }

  load(key: string): number {
    return this.add({ kind: 'load', key }, `@${key}`);
  }

  make(primitive: Primitive, ...args: readonly number[]): number {
    return this.add({ kind: 'primitive', primitive, args }, `${primitive} ${args.join(' ')}`);
  }

  shift(direction: 'left' | 'right', by: number, arg: number): number {
    return this.add({ kind: 'shift', direction, by, args: [arg] }, `${direction} ${by} ${arg}`);
  }

  guard(slow: SlowFunction, fast: number, fails: number, ...args: readonly number[]): number {
    return this.add({ kind: 'guard', slow, args: [fast, fails, ...args] }, `${slow} ${args.join(' ')}`);
  }

  constantValue(id: number): number | undefined {
    const node = this.nodes[id]!;
    return node.kind === 'constant' ? numberOf(node.bits) : undefined;
  }

  markTame(id: number, tame = true): number {
    if (tame) this.tame.add(id);
    return id;
  }

  isTame(id: number): boolean {
    return this.tame.has(id);
  }

  /** Turns an infinite value into NaN, so that it cannot come back as a finite number later. */
  seal(id: number): number {
    if (this.isTame(id)) return id;
    return this.markTame(this.make('sub', id, this.make('sub', id, id)));
  }

  /** `value`, or NaN where `from` is. */
  keepVoid(value: number, from: number): number {
    return this.make('or', value, this.make('ne', from, from));
  }

  /**
   * c[0] + c[1]·x + c[2]·x² …, terms joined in pairs, then pairs in pairs (Estrin's scheme): a long chain would wait for
   * each of its links.
   */
  polynomial(x: number, coefficients: readonly number[]): number {
    let terms = coefficients.map((each) => this.constant(each));
    for (let power = x; terms.length > 1; power = this.make('mul', power, power)) {
      const joined: number[] = [];
      for (let at = 0; at < terms.length; at += 2) {
        const [low, high] = [terms[at]!, terms[at + 1]];
        joined.push(high === undefined ? low : this.make('add', low, this.make('mul', high, power)));
      }
      terms = joined;
    }
    return terms[0]!;
  }
}

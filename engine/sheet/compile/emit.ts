/** Graph nodes → instructions. A node used more than once is kept in a local; constants and uniform values lie in memory. */
import { type FunctionBody, V128 } from './bytes.ts';
import { type Graph, PRIMITIVES, type SlowFunction } from './graph.ts';

const LOAD_SPLAT = 0x0a;
const LOAD = 0x00;
const STORE = 0x0b;
const STORE_LANE = 0x5b;
const ANY_TRUE = 0x53;
const OR = 0x50;
const EXTRACT = 0x21;
const REPLACE = 0x22;
const SHIFT = { left: 0xcb, right: 0xcd } as const;

/** Where a node's value can be read from memory: the same for all lanes, or in a column of the block. */
export type Place = { readonly slot: number } | { readonly column: number };

export interface Surroundings {
  /** Byte address of a node that lies in memory; undefined for one that has to be computed here. */
  readonly placeOf: (node: number) => Place | undefined;
  /** Index of the imported function; without it fast forms are taken and the lanes where they fail are noted. */
  readonly importOf?: (slow: SlowFunction) => number;
}

const BASE = 0;

export class Emitter {
  private readonly graph: Graph;
  private readonly body: FunctionBody;
  private readonly around: Surroundings;
  private readonly uses: ReadonlyMap<number, number>;
  private readonly locals = new Map<number, number>();
  /** Local that gathers the lanes in which a fast form does not hold. */
  private doubt: number | undefined;

  constructor(graph: Graph, body: FunctionBody, around: Surroundings, roots: readonly number[]) {
    this.graph = graph;
    this.body = body;
    this.around = around;
    this.uses = countUses(graph, roots, around);
  }

  /** Computes a node and stores it, in its column or (one lane of it) in its slot. */
  store(node: number, to: Place): void {
    if ('slot' in to) {
      this.body.zero();
      this.push(node);
      this.body.memory(STORE_LANE, to.slot, 3, 0);
    } else {
      this.body.get(BASE);
      this.push(node);
      this.body.memory(STORE, to.column, 4);
    }
  }

  private push(node: number): void {
    const local = this.locals.get(node);
    if (local !== undefined) {
      this.body.get(local);
      return;
    }
    const place = this.around.placeOf(node);
    if (place && 'slot' in place) {
      this.body.zero().memory(LOAD_SPLAT, place.slot, 3);
      return;
    }
    if (place) this.body.get(BASE).memory(LOAD, place.column, 4);
    else this.compute(node);
    if ((this.uses.get(node) ?? 0) > 1) this.keep(node);
  }

  private keep(node: number): number {
    const local = this.body.local(V128);
    this.locals.set(node, local);
    this.body.tee(local);
    return local;
  }

  private compute(id: number): void {
    const node = this.graph.nodes[id]!;
    switch (node.kind) {
      case 'primitive':
        for (const arg of node.args) this.push(arg);
        this.body.simd(PRIMITIVES[node.primitive]);
        return;
      case 'shift':
        this.push(node.args[0]!);
        this.body.code.byte(0x41, ...signedByte(node.by));
        this.body.simd(SHIFT[node.direction]);
        return;
      case 'guard':
        this.computeGuard(node.slow, node.args);
        return;
      default:
        throw new TypeError(`a ${node.kind} lies in memory`);
    }
  }

  /** Leaves an i32 on the stack: not zero when a fast form did not hold in some lane. */
  pushDoubt(): void {
    if (this.doubt === undefined) this.body.zero();
    else this.body.get(this.doubt).simd(ANY_TRUE);
  }

  private computeGuard(slow: SlowFunction, [fast, fails, ...args]: readonly number[]): void {
    if (this.around.importOf) this.computeCarefully(this.around.importOf(slow), fast!, fails!, args);
    else {
      this.doubt ??= this.body.local(V128);
      this.push(fails!);
      this.body.get(this.doubt).simd(OR).set(this.doubt);
      this.push(fast!);
    }
  }

  /** Takes the fast result unless it fails in some lane; then asks JavaScript lane by lane. */
  private computeCarefully(slow: number, fast: number, fails: number, args: readonly number[]): void {
    const result = this.body.local(V128);
    const locals = args.map((arg) => {
      this.push(arg);
      const local = this.body.local(V128);
      this.body.set(local);
      return local;
    });
    this.push(fast);
    this.body.set(result);
    this.push(fails);
    this.body.simd(ANY_TRUE).when(() => {
      for (const lane of [0, 1]) {
        this.body.get(result);
        for (const local of locals) this.body.get(local).simd(EXTRACT, lane);
        this.body.call(slow).simd(REPLACE, lane).set(result);
      }
    });
    this.body.get(result);
  }
}

/** Signed LEB128 of a number from 0 to 127. */
const signedByte = (value: number): readonly number[] => (value < 64 ? [value] : [value | 0x80, 0]);

/** How often each computed node is used by what the roots need. */
function countUses(
  graph: Graph,
  roots: readonly number[],
  around: Surroundings,
): ReadonlyMap<number, number> {
  const uses = new Map<number, number>();
  const visit = (id: number): void => {
    const before = uses.get(id) ?? 0;
    uses.set(id, before + 1);
    if (before > 0 || around.placeOf(id)) return;
    const node = graph.nodes[id]!;
    if ('args' in node) for (const arg of node.args) visit(arg);
  };
  for (const root of roots) visit(root);
  return uses;
}

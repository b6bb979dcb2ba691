/** A sheet as WebAssembly: what stays the same is computed once, the rest in one fused loop over a block of lanes. */
import { treesOf } from '../trees.ts';
import type { Sheet } from '../types.ts';
import { build, lawfulNode } from './build.ts';
import { encodeModule, F64, FunctionBody, type FunctionType } from './bytes.ts';
import { Emitter, type Place, type Surroundings } from './emit.ts';
import { Graph, type SlowFunction } from './graph.ts';
import { type Arena, arenaFor } from './memory.ts';
import { makePlan, type Plan } from './plan.ts';

type Run = (base: number, end: number) => void;
/** Gives a number that is not zero when a fast form did not hold in some lane. */
type FastRun = (base: number, end: number) => number;

export interface ProgramStage {
  readonly once: Run;
  readonly loop: Run;
  readonly procedures: readonly string[];
}

export interface Program {
  readonly plan: Plan;
  readonly arena: Arena;
  readonly stages: readonly ProgramStage[];
  /** Where kept values lie: index of the slot among the arena's numbers, for those the same for all lanes. */
  readonly slots: ReadonlyMap<string, number>;
  /** For those that vary: distance of their column from the block's start, in numbers. */
  readonly columns: ReadonlyMap<string, number>;
  /** First slot and number of slots, so that a run can be put aside and taken up again. */
  readonly slotRange: readonly [first: number, count: number];
  readonly lanesPerBlock: number;
  readonly blockBytes: number;
}

/** Columns of a block together stay within this, about half of a core's own cache. */
const BLOCK_TARGET = 512 * 1024;
const LEAST_LANES = 128;
const MOST_LANES = 2048;
/** Keeps columns from falling on the same cache lines. */
const STAGGER = 8;

const nan = Number.isNaN;
const SLOW: Readonly<Record<SlowFunction, (x: number, y: number) => number>> = {
  exp: Math.exp,
  log: Math.log,
  log10: Math.log10,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  // JavaScript says NaN⁰ = 1; here what has no answer keeps none.
  pow: (x, y) => (nan(x) || nan(y) ? Number.NaN : x ** y),
};

export function compileProgram(
  sheet: Sheet,
  varying: ReadonlySet<string>,
  wanted: ReadonlySet<string>,
): Program {
  const plan = makePlan(sheet, varying, wanted);
  const columnsKept = plan.kept.filter((key) => plan.varies.has(key));
  const room = Math.floor(BLOCK_TARGET / (8 * Math.max(1, columnsKept.length)) / 2) * 2;
  const lanesPerBlock = Math.min(MOST_LANES, Math.max(LEAST_LANES, room));
  const columns = new Map(columnsKept.map((key, at) => [key, at * (lanesPerBlock + STAGGER)]));
  const slotIndex = new Map(plan.kept.filter((key) => !plan.varies.has(key)).map((key, at) => [key, at]));

  const parts = plan.stages.map((_, stage) => new StageParts(sheet, plan, stage));
  let count = slotIndex.size;
  const bases = parts.map((part) => {
    const base = count;
    count += part.size;
    return base;
  });
  const { arena, address } = arenaFor(count);
  const placeOfKey = (key: string): Place => {
    const slot = slotIndex.get(key);
    return slot === undefined ? { column: columns.get(key)! * 8 } : { slot: address + slot * 8 };
  };

  const starts = bases.map((base) => address + base * 8);
  for (const [at, part] of parts.entries()) part.fillConstants(arena, starts[at]!);
  const slow: SlowFunction[] = [...new Set(parts.flatMap((part) => part.slowFunctions()))];
  const make = (isCareful: boolean): WebAssembly.Exports => {
    const importOf = isCareful ? { importOf: (name: SlowFunction): number => slow.indexOf(name) } : {};
    const functions = parts.flatMap((part, at) =>
      part
        .emit(starts[at]!, { placeOfKey, ...importOf })
        .map((body, which) => ({ name: `${'ol'[which]}${at}`, body })),
    );
    return instantiate(encodeModule({ imports: isCareful ? slow.map(importedAs) : [], functions }), arena);
  };
  const fast = make(false);
  let careful: WebAssembly.Exports | undefined;
  const guarded = (name: string): Run => {
    const run = fast[name] as FastRun;
    return (base, end) => {
      if (run(base, end) === 0) return;
      careful ??= make(true);
      (careful[name] as Run)(base, end);
    };
  };
  return {
    plan,
    arena,
    stages: plan.stages.map((stage, at) => ({
      once: guarded(`o${at}`),
      loop: guarded(`l${at}`),
      procedures: stage.procedures,
    })),
    slots: new Map([...slotIndex].map(([key, at]) => [key, address / 8 + at])),
    columns,
    slotRange: [address / 8, count],
    lanesPerBlock,
    blockBytes: Math.max(1, columnsKept.length) * (lanesPerBlock + STAGGER) * 8,
  };
}

function importedAs(name: SlowFunction): { name: string; type: FunctionType } {
  return { name, type: { parameters: name === 'pow' ? [F64, F64] : [F64], results: [F64] } };
}

function instantiate(bytes: Uint8Array<ArrayBuffer>, arena: Arena): WebAssembly.Exports {
  const module = new WebAssembly.Module(bytes);
  return new WebAssembly.Instance(module, { m: { memory: arena.memory, ...SLOW } }).exports;
}

/** Graph of one stage, split into what is the same for all lanes and what is not. */
class StageParts {
  private readonly graph = new Graph();
  private readonly plan: Plan;
  /** Nodes to store with the key whose place they go to. */
  private readonly roots: { readonly node: number; readonly key: string }[] = [];
  private readonly varies: boolean[] = [];
  private readonly reached = new Set<number>();
  private readonly constants: number[] = [];
  /** Nodes the same for all lanes that the loop reads. */
  private readonly hoisted = new Set<number>();

  constructor(sheet: Sheet, plan: Plan, stage: number) {
    this.plan = plan;
    const { expressions } = treesOf(sheet);
    const values = new Map<string, number>();
    const keeps = new Set(plan.kept);
    const symbols = (key: string): number => {
      const found = values.get(key);
      if (found !== undefined) return found;
      const spec = sheet.symbols[key]!;
      if (spec.kind === 'constant') return this.graph.constant(sheet.constants[key]!);
      const loaded = this.graph.load(key);
      const node =
        spec.kind === 'input' ? lawfulNode(this.graph, loaded, spec.domain) : this.graph.markTame(loaded);
      values.set(key, node);
      return node;
    };
    for (const key of plan.stages[stage]!.formulas) {
      const spec = sheet.symbols[key]!;
      const node = lawfulNode(
        this.graph,
        build(this.graph, expressions.get(key)!, symbols),
        'domain' in spec ? spec.domain : undefined,
      );
      values.set(key, node);
      if (keeps.has(key)) this.roots.push({ node, key });
    }
    this.markVarying();
    for (const { node, key } of this.roots) this.reach(node, plan.varies.has(key));
  }

  /** How many numbers the stage keeps in memory: constants, then hoisted values. */
  get size(): number {
    return this.constants.length + this.hoisted.size;
  }

  slowFunctions(): SlowFunction[] {
    return [...this.reached].flatMap((id) => {
      const node = this.graph.nodes[id]!;
      return node.kind === 'guard' ? [node.slow] : [];
    });
  }

  fillConstants(arena: Arena, start: number): void {
    const bits = new BigUint64Array(arena.memory.buffer, start, this.constants.length);
    this.constants.forEach((id, at) => {
      const node = this.graph.nodes[id]!;
      if (node.kind === 'constant') bits[at] = node.bits;
    });
  }

  /** The function for what stays the same, then the loop. */
  emit(
    start: number,
    { placeOfKey, ...around }: Omit<Surroundings, 'placeOf'> & { placeOfKey: (key: string) => Place },
  ): readonly [FunctionBody, FunctionBody] {
    const addresses = new Map<number, number>();
    for (const id of [...this.constants, ...this.hoisted]) addresses.set(id, start + addresses.size * 8);
    const loaded = (id: number): Place | undefined => {
      const node = this.graph.nodes[id]!;
      if (node.kind === 'load') return placeOfKey(node.key);
      return node.kind === 'constant' ? { slot: addresses.get(id)! } : undefined;
    };
    const fixed = this.roots.filter(({ key }) => !this.plan.varies.has(key));
    const varying = this.roots.filter(({ key }) => this.plan.varies.has(key));

    const once = new FunctionBody(2);
    const onceRoots = [...fixed.map(({ node }) => node), ...this.hoisted];
    const onceEmitter = new Emitter(this.graph, once, { placeOf: loaded, ...around }, onceRoots);
    for (const { node, key } of fixed) onceEmitter.store(node, placeOfKey(key));
    for (const id of this.hoisted) onceEmitter.store(id, { slot: addresses.get(id)! });
    onceEmitter.pushDoubt();

    const loop = new FunctionBody(2);
    if (varying.length === 0) loop.zero();
    else {
      const placeOf = (id: number): Place | undefined =>
        loaded(id) ?? (this.hoisted.has(id) ? { slot: addresses.get(id)! } : undefined);
      const roots = varying.map(({ node }) => node);
      const emitter = new Emitter(this.graph, loop, { placeOf, ...around }, roots);
      loop.loop(0, 1, 16, () => {
        for (const { node, key } of varying) emitter.store(node, placeOfKey(key));
      });
      emitter.pushDoubt();
    }
    return [once, loop];
  }

  private markVarying(): void {
    for (const node of this.graph.nodes) {
      if (node.kind === 'load') this.varies.push(this.plan.varies.has(node.key));
      else this.varies.push('args' in node && node.args.some((arg) => this.varies[arg]));
    }
  }

  private reach(id: number, fromLoop: boolean): void {
    const node = this.graph.nodes[id]!;
    const varies = this.varies[id]!;
    if (fromLoop && !varies && 'args' in node) this.hoisted.add(id);
    if (this.reached.has(id)) return;
    this.reached.add(id);
    if (node.kind === 'constant') this.constants.push(id);
    if ('args' in node) for (const arg of node.args) this.reach(arg, varies);
  }
}

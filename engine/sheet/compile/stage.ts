/** One stage of a program as a graph, and its two functions. */
import { treesOf } from '../trees.ts';
import type { Sheet } from '../types.ts';
import { build, lawfulNode } from './build.ts';
import { FunctionBody } from './bytes.ts';
import { Emitter, type Place, type Surroundings } from './emit.ts';
import { Graph, type SlowFunction } from './graph.ts';
import type { Arena } from './memory.ts';
import type { Plan } from './plan.ts';

/** Graph of one stage, split into what is the same for all lanes and what is not. */
export class StageParts {
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

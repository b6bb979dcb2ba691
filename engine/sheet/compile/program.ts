/** A sheet as WebAssembly: what stays the same is computed once, the rest in one fused loop over a block of lanes. */
import type { Sheet } from '../types.ts';
import { encodeModule, F64, type FunctionType } from './bytes.ts';
import type { Place } from './emit.ts';
import type { SlowFunction } from './graph.ts';
import { type Arena, arenaFor } from './memory.ts';
import { makePlan, type Plan } from './plan.ts';
import { StageParts } from './stage.ts';

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

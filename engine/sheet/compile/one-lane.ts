/** A sheet's program for one set of values, with its places in memory looked up beforehand. */
import type { Given, Outcome, Sheet, SymbolSpec } from '../types.ts';
import { programFor } from './cache.ts';
import type { Arena } from './memory.ts';
import { LaneRun } from './run.ts';

export interface OneLane {
  readonly arena: Arena;
  readonly inputs: readonly { readonly key: string; readonly spec: SymbolSpec; readonly free: boolean }[];
  /** All keys in working order; the constants with their outcome. */
  readonly template: Readonly<Record<string, Outcome | undefined>>;
  readonly derived: readonly { readonly key: string; readonly slot: number }[];
  /** Computes all derived symbols; NaN lies in the slot of one without a number. */
  readonly run: (given: Given<string>) => void;
}

/** Undefined where WebAssembly is refused. */
export function oneLane(sheet: Sheet): OneLane | undefined {
  const program = programFor(sheet, new Set(), new Set(sheet.derived));
  if (!program) return undefined;
  const { arena, slots, stages } = program;
  const read = sheet.inputs.flatMap((key) => {
    const slot = slots.get(key);
    return slot === undefined ? [] : [{ key, slot }];
  });
  const straight = stages.length === 1 && stages[0]!.procedures.length === 0;
  const run = (given: Given<string>): void => {
    const { numbers } = arena;
    for (let at = 0; at < read.length; at++) {
      const { key, slot } = read[at]!;
      const argument = given[key];
      numbers[slot] = typeof argument === 'number' ? argument : Number.NaN;
    }
    stages[0]!.once(0, 0);
  };
  return {
    arena,
    run: straight ? run : (given) => new LaneRun(program, sheet, given).start(),
    inputs: sheet.inputs.map((key) => {
      const spec = sheet.symbols[key]!;
      return { key, spec, free: spec.kind === 'input' && (spec.domain ?? 'any') === 'any' };
    }),
    template: Object.fromEntries(
      sheet.order.map((key) => {
        const value = sheet.constants[key];
        return [key, value === undefined ? undefined : Object.freeze({ state: 'known' as const, value })];
      }),
    ),
    derived: sheet.derived.map((key) => ({ key, slot: slots.get(key)! })),
  };
}

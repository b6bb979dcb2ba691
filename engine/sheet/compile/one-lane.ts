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

/** A program for the derived symbols wanted, all when left out. Undefined where WebAssembly is refused. */
export function oneLane(sheet: Sheet, wanted: readonly string[] = sheet.derived): OneLane | undefined {
  const program = programFor(sheet, new Set(), new Set(wanted));
  if (!program) return undefined;
  const { arena, slots, stages } = program;
  const straight = stages.length === 1 && stages[0]!.procedures.length === 0;
  const places = inputPlaces(sheet, slots);
  const run = (given: Given<string>): void => {
    const { numbers } = arena;
    const { present, absent } = places(given);
    const values = Object.values(given);
    for (let at = 0; at < present.length; at++) {
      const argument = values[at];
      const slot = present[at]!;
      if (slot >= 0) numbers[slot] = typeof argument === 'number' ? argument : Number.NaN;
    }
    for (const slot of absent) numbers[slot] = Number.NaN;
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
    derived: wanted.map((key) => ({ key, slot: slots.get(key)! })),
  };
}

interface InputPlaces {
  /** Slot of each key given, in its order; −1 for one that is not read. */
  readonly present: readonly number[];
  /** Slots of inputs that are not given. */
  readonly absent: readonly number[];
}

/** Finds slots by key only when the keys differ from the time before: callers give the same ones again and again. */
function inputPlaces(
  sheet: Sheet,
  slots: ReadonlyMap<string, number>,
): (given: Given<string>) => InputPlaces {
  let keys: readonly string[] | undefined;
  let places: InputPlaces = { present: [], absent: [] };
  const read = new Map(
    sheet.inputs.flatMap((key) => {
      const slot = slots.get(key);
      return slot === undefined ? [] : [[key, slot] as const];
    }),
  );
  return (given) => {
    const now = Object.keys(given);
    if (!keys || !sameKeys(keys, now)) {
      keys = now;
      const there = new Set(now);
      places = {
        present: now.map((key) => read.get(key) ?? -1),
        absent: [...read].filter(([key]) => !there.has(key)).map(([, slot]) => slot),
      };
    }
    return places;
  };
}

function sameKeys(a: readonly string[], b: readonly string[]): boolean {
  if (a.length !== b.length) return false;
  for (let at = 0; at < a.length; at++) if (a[at] !== b[at]) return false;
  return true;
}

/** One answer for every symbol of a sheet. */
import { type OneLane, oneLane } from './compile/one-lane.ts';
import type { Given, Outcome, Sheet } from './types.ts';
import type { Absence, Value } from './walk.ts';
import { inputValue, known, toOutcome, walkSheet, walkSymbol } from './walk-sheet.ts';

/** Compiling takes longer than a few walks; a sheet evaluated again and again is worth it. */
const WALKS_BEFORE_COMPILING = 6;

interface Use {
  count: number;
  program?: OneLane;
}
const USES = new WeakMap<object, Use>();

/**
 * Values of all symbols in SI. What is not given is `missing` with the inputs it needs, and only what is really
 * needed counts: of a condition that is known, one branch. A curve that is given counts as known; its value is the
 * number of its points.
 */
export function evaluate<K extends string>(sheet: Sheet<K>, given: Given<K>): Record<K, Outcome> {
  let use = USES.get(sheet);
  if (!use) {
    use = { count: 0 };
    USES.set(sheet, use);
  }
  if (use.program) return runOneLane(use.program, sheet, given);
  use.count++;
  if (use.count > WALKS_BEFORE_COMPILING) {
    const program = oneLane(sheet as Sheet);
    if (program) use.program = program;
    else use.count = Number.NEGATIVE_INFINITY;
  }
  return walkSheet(sheet, given);
}

/** Runs the compiled program, and walks the tree only for what has no number, to say why. */
function runOneLane<K extends string>(
  program: OneLane,
  sheet: Sheet<K>,
  given: Given<K>,
): Record<K, Outcome> {
  program.run(given as Given<string>);
  // A copy of an object that has all keys already is much cheaper than one that grows key by key.
  const outcomes = { ...program.template } as Record<K, Outcome>;
  for (let at = 0; at < program.inputs.length; at++) {
    const { key, spec, free } = program.inputs[at]!;
    const argument = given[key as K];
    outcomes[key as K] =
      free && typeof argument === 'number' && argument - argument === 0
        ? known(argument)
        : toOutcome(inputValue(spec, key, argument));
  }
  const read = (key: string): Value => {
    const outcome = outcomes[key as K];
    return outcome.state === 'known' ? outcome.value : (outcome as Absence);
  };
  const { numbers } = program.arena;
  for (let at = 0; at < program.derived.length; at++) {
    const { key, slot } = program.derived[at]!;
    const value = numbers[slot]!;
    outcomes[key as K] = Number.isNaN(value)
      ? toOutcome(walkSymbol(sheet as Sheet, key, given as Given<string>, read))
      : known(value);
  }
  return outcomes;
}

/** Exact derivatives of every derived symbol, carried forward along the trees. */

import { isLawful } from './compile/procedures.ts';
import { slopesOf } from './derivatives.ts';
import { type Expression, isTruth, type OperationNode } from './expression.ts';
import { treesOf } from './trees.ts';
import type { Argument, Given, Outcome, ProcedureSymbol, Sheet, SymbolSpec } from './types.ts';
import { type Absence, applyOperation, bothAbsent, reasonFor, undefinedFor, walk } from './walk.ts';
import { callProcedure, inDomain, inputValue, nameOf } from './walk-sheet.ts';

export interface Gradient<K extends string> {
  readonly outcomes: Record<K, Outcome>;
  /**
   * For each derived symbol that is known, how much it moves with each input, SI per SI. An input without a finite
   * slope there (the square root of zero) is left out.
   */
  readonly partials: { readonly [P in K]?: { readonly [Q in K]?: number } };
}

/** A value and its slope over each input asked for. */
interface Dual {
  readonly value: number;
  readonly slopes: Float64Array;
}
type DualValue = Dual | Absence;
type ReadDual = (key: string) => DualValue;

const isDual = (value: DualValue): value is Dual => 'value' in value;

/**
 * Slopes of all derived symbols over the inputs `wrt` (all numeric inputs given, when left out): exact for formulas,
 * central differences through procedures. Where a formula has a kink, the branch in force counts.
 */
export function gradient<K extends string>(
  sheet: Sheet<K>,
  given: Given<K>,
  wrt: readonly K[] = sheet.inputs.filter((key) => typeof given[key] === 'number'),
): Gradient<K> {
  const { expressions } = treesOf(sheet as Sheet);
  const duals = new Map<string, DualValue>();
  const flat = new Float64Array(wrt.length);
  const read: ReadDual = (key) => duals.get(key)!;
  const outcomes = {} as Record<K, Outcome>;
  const partials: Record<string, Record<string, number>> = {};
  for (const key of sheet.order) {
    const spec = sheet.symbols[key] as SymbolSpec;
    const where = nameOf(sheet as Sheet, key);
    let dual: DualValue;
    if (spec.kind === 'constant') dual = { value: sheet.constants[key]!, slopes: flat };
    else if (spec.kind === 'formula') dual = forward(expressions.get(key)!, read, where, flat);
    else if (spec.kind === 'procedure')
      dual = throughProcedure(sheet as Sheet, spec, where, given as Given<string>, read, flat);
    else dual = seed(inputValue(spec, key, given[key]), wrt.indexOf(key), flat);
    if (isDual(dual)) {
      const lawful = inDomain(spec, spec.kind === 'input' ? spec.name : where, dual.value);
      if (typeof lawful !== 'number') dual = lawful;
    }
    duals.set(key, dual);
    outcomes[key] = isDual(dual) ? { state: 'known', value: dual.value } : dual;
    if (isDual(dual) && (spec.kind === 'formula' || spec.kind === 'procedure')) {
      const { slopes } = dual;
      const own: Record<string, number> = {};
      for (let at = 0; at < wrt.length; at++) if (Number.isFinite(slopes[at]!)) own[wrt[at]!] = slopes[at]!;
      partials[key] = own;
    }
  }
  return { outcomes, partials: partials as Gradient<K>['partials'] };
}

function seed(value: number | Absence, at: number, flat: Float64Array): DualValue {
  if (typeof value !== 'number') return value;
  if (at < 0) return { value, slopes: flat };
  const slopes = new Float64Array(flat.length);
  slopes[at] = 1;
  return { value, slopes };
}

function forward(node: Expression, read: ReadDual, where: string, flat: Float64Array): DualValue {
  if (node.kind === 'number') return { value: node.value, slopes: flat };
  if (node.kind === 'symbol') return read(node.key);
  if (node.operation === 'choose') {
    const condition = walk(node.args[0]!, plainRead(read), where);
    if (typeof condition !== 'number') return condition;
    return forward(node.args[condition ? 1 : 2]!, read, where, flat);
  }
  if (isTruth(node)) throw new TypeError('a comparison has no slope');
  return forwardOperation(node, read, where, flat);
}

const plainRead =
  (read: ReadDual) =>
  (key: string): number | Absence => {
    const dual = read(key);
    return isDual(dual) ? dual.value : dual;
  };

function forwardOperation(node: OperationNode, read: ReadDual, where: string, flat: Float64Array): DualValue {
  let absent: Absence | undefined;
  const args: Dual[] = [];
  for (const arg of node.args) {
    const dual = forward(arg, read, where, flat);
    if (isDual(dual)) args.push(dual);
    else absent = absent ? bothAbsent(absent, dual) : dual;
  }
  if (absent) return absent;
  if (node.operation === 'min' || node.operation === 'max') {
    const less = node.operation === 'min';
    return args.reduce((a, b) => ((less ? b.value < a.value : b.value > a.value) ? b : a));
  }
  const [a, b] = args as [Dual, Dual | undefined];
  const value = applyOperation(node, a.value, b?.value ?? 0);
  if (!Number.isFinite(value)) return undefinedFor(reasonFor(node, a.value, b?.value ?? 0, where));
  const [byA, byB] = slopesOf(node.operation, a.value, b?.value ?? 0, value);
  return { value, slopes: combine(a.slopes, byA, b?.slopes ?? flat, byB) };
}

/** Chain rule. An operand that does not move adds nothing, even where the slope over it is infinite. */
function combine(a: Float64Array, byA: number, b: Float64Array, byB: number): Float64Array {
  const slopes = new Float64Array(a.length);
  for (let at = 0; at < slopes.length; at++) {
    slopes[at] = (a[at] === 0 ? 0 : a[at]! * byA) + (b[at] === 0 ? 0 : b[at]! * byB);
  }
  return slopes;
}

function throughProcedure(
  sheet: Sheet,
  spec: ProcedureSymbol,
  where: string,
  given: Given<string>,
  read: ReadDual,
  flat: Float64Array,
): DualValue {
  let absent: Absence | undefined;
  const args: Argument[] = [];
  const slopes: (Float64Array | undefined)[] = [];
  for (const key of spec.reads) {
    const dual = read(key);
    const curve = given[key];
    if (!isDual(dual)) absent = absent ? bothAbsent(absent, dual) : dual;
    else {
      args.push(typeof curve === 'object' ? curve : dual.value);
      slopes.push(typeof curve === 'object' ? undefined : dual.slopes);
    }
  }
  if (absent) return absent;
  const value = callProcedure(spec, where, args);
  if (typeof value !== 'number') return value;
  let total = flat;
  slopes.forEach((each, at) => {
    if (!each?.some((slope) => slope !== 0)) return;
    total = combine(total, 1, each, numericSlope(sheet, spec, where, args, at, value));
  });
  return { value, slopes: total };
}

/** The cube root of the rounding unit: where rounding and curvature spoil a central difference equally. */
const STEP = Math.cbrt(Number.EPSILON);

/** Central difference; one-sided where one side has no answer, NaN where neither has. */
function numericSlope(
  sheet: Sheet,
  spec: ProcedureSymbol,
  where: string,
  args: readonly Argument[],
  at: number,
  middle: number,
): number {
  const x = args[at] as number;
  const step = STEP * (Math.abs(x) || 1);
  const read = sheet.symbols[spec.reads[at]!]!;
  const valueAt = (moved: number): number => {
    if (!isLawful(moved, 'domain' in read ? read.domain : undefined)) return Number.NaN;
    const value = callProcedure(spec, where, args.with(at, moved));
    return typeof value === 'number' ? value : Number.NaN;
  };
  const [low, high] = [x - step, x + step];
  const [below, above] = [valueAt(low), valueAt(high)];
  if (Number.isNaN(below)) return (above - middle) / (high - x);
  if (Number.isNaN(above)) return (middle - below) / (x - low);
  return (above - below) / (high - low);
}

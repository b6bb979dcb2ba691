/** The tree walk over a sheet: values of all symbols in SI, or why there is none. */
import { curveProblem } from './curves.ts';
import { treesOf } from './trees.ts';
import type { Argument, Curve, Given, Outcome, ProcedureSymbol, Sheet, SymbolSpec } from './types.ts';
import { type Absence, bothAbsent, missing, type Read, undefinedFor, type Value, walk } from './walk.ts';

const NAMES = new WeakMap<Sheet, Map<string, string>>();

/** 'allowed speed (n_c)': how reasons name a symbol. */
export function nameOf(sheet: Sheet, key: string): string {
  let names = NAMES.get(sheet);
  if (!names) {
    names = new Map();
    NAMES.set(sheet, names);
  }
  let name = names.get(key);
  if (name === undefined) {
    name = `${sheet.symbols[key]!.name} (${key})`;
    names.set(key, name);
  }
  return name;
}

export const known = (value: number): Outcome => ({ state: 'known', value });
export const toOutcome = (value: Value): Outcome => (typeof value === 'number' ? known(value) : value);

/** One answer for every symbol, by walking the trees. */
export function walkSheet<K extends string>(sheet: Sheet<K>, given: Given<K>): Record<K, Outcome> {
  const values = walkValues(sheet as Sheet, given as Given<string>);
  const outcomes = {} as Record<K, Outcome>;
  for (const key of sheet.order) outcomes[key] = toOutcome(values.get(key)!);
  return outcomes;
}

/** As `walkSheet`, as bare numbers or absences. */
export function walkValues(sheet: Sheet, given: Given<string>): Map<string, Value> {
  const values = new Map<string, Value>();
  const read: Read = (key) => values.get(key)!;
  for (const key of sheet.order) values.set(key, walkSymbol(sheet, key, given, read));
  return values;
}

/** One symbol's value from those it reads. */
export function walkSymbol(sheet: Sheet, key: string, given: Given<string>, read: Read): Value {
  const spec = sheet.symbols[key]!;
  if (spec.kind === 'constant') return sheet.constants[key]!;
  if (spec.kind === 'input' || spec.kind === 'curve') return inputValue(spec, key, given[key]);
  const where = nameOf(sheet, key);
  if (spec.kind === 'procedure') return inDomain(spec, where, runProcedure(spec, where, given, read));
  return inDomain(spec, where, walk(treesOf(sheet).expressions.get(key)!, read, where));
}

/** An input or curve as given, or why it cannot be used. */
export function inputValue(spec: SymbolSpec, key: string, argument: Argument | undefined): Value {
  if (argument === undefined) return missing([key]);
  if (spec.kind === 'curve') {
    const problem = curveProblem(spec.name, argument);
    return problem === undefined ? (argument as Curve).x.length : undefinedFor(problem);
  }
  if (typeof argument !== 'number') return undefinedFor(`${spec.name} must be one number, not a curve`);
  if (!Number.isFinite(argument)) return undefinedFor(`${spec.name} is not a finite number`);
  return inDomain(spec, spec.name, argument);
}

/** Keeps a value that lies in its symbol's domain, and says what the domain is for one that does not. */
export function inDomain(spec: SymbolSpec, where: string, value: Value): Value {
  if (typeof value !== 'number' || !('domain' in spec)) return value;
  switch (spec.domain) {
    case 'positive':
      return value > 0 ? value : undefinedFor(`${where} must be above zero`);
    case 'not negative':
      return value >= 0 ? value : undefinedFor(`${where} must not be below zero`);
    case 'fraction':
      return value >= 0 && value <= 1 ? value : undefinedFor(`${where} must lie between 0 and 1`);
    default:
      return value;
  }
}

function runProcedure(spec: ProcedureSymbol, where: string, given: Given<string>, read: Read): Value {
  let absent: Absence | undefined;
  const args: Argument[] = [];
  for (const key of spec.reads) {
    const value = read(key);
    if (typeof value !== 'number') absent = absent ? bothAbsent(absent, value) : value;
    const curve = given[key];
    args.push(typeof curve === 'object' ? (curve satisfies Curve) : (value as number));
  }
  return absent ?? callProcedure(spec, where, args);
}

/** Runs a procedure on arguments that are all there. */
export function callProcedure(spec: ProcedureSymbol, where: string, args: readonly Argument[]): Value {
  const refused = spec.refuses?.(...args);
  if (refused !== undefined) return undefinedFor(refused);
  const result = spec.run(...args);
  return Number.isFinite(result) ? result : undefinedFor(`${where} has no answer for these values`);
}

/** Makes a sheet from its symbols, and refuses one that is wrong before any number goes through it. */
import { parseQuantity, parseUnit } from '../quantity/index.ts';
import type { Unit } from '../quantity/types.ts';
import { checkDimension } from './dimensions.ts';
import { ExpressionError, SheetError } from './errors.ts';
import { type Expression, RESERVED, symbolsOf } from './expression.ts';
import { parseExpression } from './parse.ts';
import { keepTrees } from './trees.ts';
import type { Sheet, SymbolSpec } from './types.ts';

export interface SheetSpec<S extends Readonly<Record<string, SymbolSpec>>> {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly symbols: S;
}

const KEY = /^[A-Za-z][A-Za-z0-9_]*$/;

/**
 * Checks and orders a sheet. Throws SheetError, naming sheet and symbol, for an unsafe name, a unit or constant
 * that cannot be read, an expression outside the language, an unknown symbol, a cycle, or a wrong dimension.
 */
export function defineSheet<const S extends Readonly<Record<string, SymbolSpec>>>(
  spec: SheetSpec<S>,
): Sheet<keyof S & string> {
  const { id, symbols } = spec;
  const keys = Object.keys(symbols);
  for (const key of keys) checkKey(id, key);

  const units = new Map<string, Unit>();
  const expressions = new Map<string, Expression>();
  const reads = new Map<string, readonly string[]>();
  const constants: Record<string, number> = {};
  for (const key of keys) {
    const one = symbols[key]!;
    units.set(key, readUnit(id, key, one.unit));
    if (one.kind === 'curve') readUnit(id, key, one.xUnit);
    if (one.kind === 'constant') constants[key] = readConstant(id, key, one.value, one.unit);
    if (one.kind === 'formula') expressions.set(key, readExpression(id, key, one.expression));
    reads.set(key, readsOf(one, expressions.get(key)));
  }
  for (const key of keys) checkReads(id, key, reads.get(key)!, symbols);

  const derived = workingOrder(id, keys, symbols, reads);
  const dimensions = Object.fromEntries(keys.map((key) => [key, units.get(key)!.dimension]));
  for (const [key, expression] of expressions) {
    naming(id, key, () => checkDimension(expression, (read) => dimensions[read]!, dimensions[key]!));
  }

  const inputs = keys.filter((key) => symbols[key]!.kind === 'input' || symbols[key]!.kind === 'curve');
  const sheet: Sheet = {
    id,
    title: spec.title,
    about: spec.about,
    symbols,
    inputs,
    derived,
    order: [...inputs, ...Object.keys(constants), ...derived],
    constants,
    dimensions,
    dependsOn: dependencies(keys, inputs, derived, reads),
  };
  keepTrees(sheet, { expressions, units });
  return sheet as Sheet<keyof S & string>;
}

function checkKey(id: string, key: string): void {
  if (!KEY.test(key) || key in Object.prototype) {
    throw new SheetError(
      id,
      key,
      'a key is a letter, then letters, digits and _, and no name of the language itself',
    );
  }
  if (RESERVED.has(key))
    throw new SheetError(id, key, `'${key}' is a word of the formula language; choose another key`);
}

function readUnit(id: string, key: string, text: string): Unit {
  const unit = parseUnit(text);
  if (!unit.ok) throw new SheetError(id, key, `the unit '${text}' cannot be read: ${unit.problem.message}`);
  return unit.value;
}

function readConstant(id: string, key: string, text: string, unit: string): number {
  const quantity = parseQuantity(text, unit);
  if (!quantity.ok)
    throw new SheetError(id, key, `the value '${text}' cannot be read: ${quantity.problem.message}`);
  return quantity.value.value;
}

function readExpression(id: string, key: string, text: string): Expression {
  return naming(id, key, () => parseExpression(text));
}

function naming<T>(id: string, key: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof ExpressionError) throw new SheetError(id, key, error.message);
    throw error;
  }
}

function readsOf(one: SymbolSpec, expression: Expression | undefined): readonly string[] {
  if (one.kind === 'procedure') return one.reads;
  return expression ? [...symbolsOf(expression)] : [];
}

function checkReads(
  id: string,
  key: string,
  reads: readonly string[],
  symbols: Readonly<Record<string, SymbolSpec>>,
): void {
  for (const read of reads) {
    if (!Object.hasOwn(symbols, read))
      throw new SheetError(id, key, `it reads '${read}', which the sheet does not have`);
    if (symbols[read]!.kind === 'curve' && symbols[key]!.kind === 'formula') {
      throw new SheetError(id, key, `it reads the curve '${read}', which only a procedure can`);
    }
  }
}

/** Derived symbols, each after what it needs; otherwise in the order in which they are written. */
function workingOrder(
  id: string,
  keys: readonly string[],
  symbols: Readonly<Record<string, SymbolSpec>>,
  reads: ReadonlyMap<string, readonly string[]>,
): string[] {
  const done = new Set<string>();
  const path: string[] = [];
  const order: string[] = [];
  const visit = (key: string): void => {
    if (done.has(key)) return;
    const from = path.indexOf(key);
    if (from >= 0) {
      const cycle = [...path.slice(from), key].join(' → ');
      throw new SheetError(id, key, `it needs itself to be worked out: ${cycle}`);
    }
    path.push(key);
    for (const read of reads.get(key)!) visit(read);
    path.pop();
    done.add(key);
    const { kind } = symbols[key]!;
    if (kind === 'formula' || kind === 'procedure') order.push(key);
  };
  for (const key of keys) visit(key);
  return order;
}

function dependencies(
  keys: readonly string[],
  inputs: readonly string[],
  derived: readonly string[],
  reads: ReadonlyMap<string, readonly string[]>,
): Record<string, readonly string[]> {
  const needs = new Map<string, ReadonlySet<string>>(inputs.map((key) => [key, new Set([key])]));
  for (const key of derived) {
    needs.set(key, new Set(reads.get(key)!.flatMap((read) => [...(needs.get(read) ?? [])])));
  }
  const isDerived = new Set(derived);
  return Object.fromEntries(
    keys.map((key) => [key, isDerived.has(key) ? inputs.filter((each) => needs.get(key)!.has(each)) : []]),
  );
}

/**
 * Many sheets as one: each piece is a sheet whose inputs are bound to keys of the whole, so that all of a machine runs
 * as one program and what several sheets share is computed once.
 */
import { type Expression, operation, symbol } from './expression.ts';
import { keepTrees, treesOf } from './trees.ts';
import type { CurveSymbol, Domain, InputSymbol, Sheet, SymbolSpec } from './types.ts';

/** One sheet in its place. */
export interface SheetPiece {
  /** Its symbols become `name/symbol`. */
  readonly name: string;
  readonly sheet: Sheet;
  /** Key of the whole for each input; an input left out has no value. */
  readonly bind: Readonly<Record<string, string>>;
}

/** The sum or the least of several keys. */
export interface TotalPiece {
  readonly name: string;
  readonly how: Total;
  readonly of: readonly string[];
}

export type Total = 'sum' | 'least';

const TOTALS = { sum: 'add', least: 'min' } as const;

export type Piece = SheetPiece | TotalPiece;

const isTotal = (piece: Piece): piece is TotalPiece => 'how' in piece;

interface Building {
  readonly symbols: Record<string, SymbolSpec>;
  readonly expressions: Map<string, Expression>;
  readonly constants: Record<string, number>;
  readonly inputs: string[];
  readonly derived: string[];
  readonly needs: Map<string, ReadonlySet<string>>;
}

const NONE: ReadonlySet<string> = new Set();

/**
 * Joins pieces, each after those it reads. `inputs` are what is given from outside: numbers and curves by key. The
 * sheets were proved right when they were defined, so dimensions are not proved again; a key that nobody made throws
 * RangeError.
 */
export function joinSheets(
  id: string,
  inputs: Readonly<Record<string, InputSymbol | CurveSymbol>>,
  pieces: readonly Piece[],
): Sheet {
  const whole: Building = {
    symbols: { ...inputs },
    expressions: new Map(),
    constants: {},
    inputs: Object.keys(inputs),
    derived: [],
    needs: new Map(Object.keys(inputs).map((key) => [key, new Set([key])])),
  };
  for (const piece of pieces) {
    if (isTotal(piece)) addTotal(whole, piece);
    else addSheet(whole, piece);
  }
  const { symbols, constants, derived, needs } = whole;
  const sheet: Sheet = {
    id,
    title: id,
    about: `${pieces.length} sheets joined`,
    symbols,
    inputs: whole.inputs,
    derived,
    order: [...whole.inputs, ...Object.keys(constants), ...derived],
    constants,
    dimensions: {},
    dependsOn: Object.fromEntries(Object.keys(symbols).map((key) => [key, [...(needs.get(key) ?? NONE)]])),
  };
  keepTrees(sheet, { expressions: whole.expressions, units: new Map() });
  return sheet;
}

function need(whole: Building, key: string, by: string): SymbolSpec {
  const spec = whole.symbols[key];
  if (!spec) throw new RangeError(`${by} reads '${key}', which no piece before it makes`);
  return spec;
}

function addFormula(
  whole: Building,
  key: string,
  expression: Expression,
  reads: Iterable<string>,
  spec: { readonly name: string; readonly unit: string; readonly domain?: Domain },
): void {
  whole.symbols[key] = { ...spec, kind: 'formula', expression: '', source: '' };
  whole.expressions.set(key, expression);
  addDerived(whole, key, reads);
}

function addDerived(whole: Building, key: string, reads: Iterable<string>): void {
  const needs = new Set<string>();
  for (const read of reads) for (const each of whole.needs.get(read) ?? NONE) needs.add(each);
  whole.needs.set(key, needs);
  whole.derived.push(key);
}

function addTotal(whole: Building, { name, how, of }: TotalPiece): void {
  const [first, ...rest] = of.map((key) => {
    need(whole, key, name);
    return symbol(key) as Expression;
  });
  if (!first) throw new RangeError(`${name} is a total of nothing`);
  const expression = rest.reduce((a, b) => operation(TOTALS[how], a, b), first);
  const { unit } = whole.symbols[of[0]!]!;
  addFormula(whole, name, expression, of, { name, unit });
}

function addSheet(whole: Building, { name, sheet, bind }: SheetPiece): void {
  /** Symbol of the sheet → key of the whole. */
  const keys = new Map<string, string>();
  for (const input of sheet.inputs)
    keys.set(input, bindInput(whole, name, sheet.symbols[input]!, input, bind));
  for (const [constant, value] of Object.entries<number | undefined>(sheet.constants)) {
    const key = `${name}/${constant}`;
    keys.set(constant, key);
    whole.symbols[key] = sheet.symbols[constant]!;
    whole.constants[key] = value!;
  }
  const { expressions } = treesOf(sheet);
  for (const derived of sheet.derived) {
    const key = `${name}/${derived}`;
    keys.set(derived, key);
    const spec = sheet.symbols[derived]!;
    if (spec.kind === 'procedure') {
      const reads = spec.reads.map((read) => keys.get(read)!);
      whole.symbols[key] = { ...spec, reads };
      addDerived(whole, key, reads);
    } else {
      const expression = renamed(expressions.get(derived)!, keys);
      const reads = sheet.dependsOn[derived]!.map((input) => keys.get(input)!);
      whole.symbols[key] = spec;
      whole.expressions.set(key, expression);
      addDerived(whole, key, reads);
    }
  }
}

/** The key an input's value lies under: the bound one itself, or a symbol that holds it to the input's own domain. */
function bindInput(
  whole: Building,
  name: string,
  spec: SymbolSpec,
  input: string,
  bind: Readonly<Record<string, string>>,
): string {
  const own = `${name}/${input}`;
  const bound = Object.hasOwn(bind, input) ? bind[input]! : undefined;
  if (bound === undefined) {
    whole.symbols[own] = spec;
    whole.inputs.push(own);
    whole.needs.set(own, new Set([own]));
    return own;
  }
  const source = need(whole, bound, own);
  if (spec.kind !== 'input' || spec.domain === undefined || spec.domain === 'any') return bound;
  if ('domain' in source && source.domain === spec.domain) return bound;
  addFormula(whole, own, symbol(bound), [bound], { name: spec.name, unit: spec.unit, domain: spec.domain });
  return own;
}

function renamed(expression: Expression, keys: ReadonlyMap<string, string>): Expression {
  if (expression.kind === 'number') return expression;
  if (expression.kind === 'symbol') return symbol(keys.get(expression.key)!);
  return { ...expression, args: expression.args.map((arg) => renamed(arg, keys)) };
}

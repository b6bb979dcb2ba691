/** Formulas → graph. A lane without an answer becomes NaN and stays NaN, as the tree walk would refuse it. */

import type { Expression, FunctionName, OperationNode } from '../expression.ts';
import { isComparison } from '../expression.ts';
import type { Domain } from '../types.ts';
import { applyOperation } from '../walk.ts';
import type { Graph, Primitive } from './graph.ts';
import { power } from './power.ts';
import { acos, asin, atan, atan2, cos, exp, ln, log10, round, sign, sin, tan } from './routines.ts';

const ROUTINES = { acos, asin, atan, cos, exp, ln, log10, round, sign, sin, tan };

/** A yes or no: the mask of lanes that say yes, and a node that is 0, or NaN where the question has no answer. */
interface Truth {
  readonly mask: number;
  readonly doubt: number | undefined;
}

type Symbols = (key: string) => number;

const COMPARE = {
  less: 'lt',
  lessOrEqual: 'le',
  greater: 'gt',
  greaterOrEqual: 'ge',
  equal: 'eq',
  unequal: 'ne',
} as const satisfies Record<string, Primitive>;

/** Node of an expression's value; `symbols` gives the nodes of what it reads. */
export function build(g: Graph, node: Expression, symbols: Symbols): number {
  if (node.kind === 'number') return g.constant(node.value);
  if (node.kind === 'symbol') return symbols(node.key);
  if (node.operation === 'choose') return buildChoose(g, node, symbols);
  const args = node.args.map((arg) => build(g, arg, symbols));
  return folded(g, node, args) ?? buildOperation(g, node.operation, args);
}

/** Makes a value lawful: NaN where it is infinite or outside its domain. */
export function lawfulNode(g: Graph, value: number, domain: Domain | undefined): number {
  const sealed = g.seal(value);
  const voidWhere = (mask: number): number => g.markTame(g.make('or', sealed, mask));
  switch (domain) {
    case 'positive':
      return voidWhere(g.make('le', sealed, g.constant(0)));
    case 'not negative':
      return voidWhere(g.make('lt', sealed, g.constant(0)));
    case 'fraction':
      return voidWhere(
        g.make('or', g.make('lt', sealed, g.constant(0)), g.make('gt', sealed, g.constant(1))),
      );
    default:
      return sealed;
  }
}

function folded(g: Graph, node: OperationNode, args: readonly number[]): number | undefined {
  if (args.length > 2) return undefined;
  const values = args.map((arg) => g.constantValue(arg));
  if (values.includes(undefined)) return undefined;
  const value = applyOperation(node, values[0]!, values[1] ?? 0);
  return Number.isFinite(value) ? g.constant(value) : g.constant(Number.NaN);
}

function buildOperation(g: Graph, operation: OperationNode['operation'], args: readonly number[]): number {
  const [a = 0, b = 0] = args;
  switch (operation) {
    case 'add':
      return g.make('add', a, b);
    case 'subtract':
      return g.make('sub', a, b);
    case 'multiply':
      return g.make('mul', a, b);
    case 'divide':
      return g.make('div', a, g.seal(b));
    case 'negate':
      return keepTame(g, a, g.make('neg', a));
    case 'power':
      return power(g, g.seal(a), g.seal(b));
    case 'min':
    case 'max':
      return args.reduce((left, right) => extreme(g, operation === 'min' ? 'pmin' : 'pmax', left, right));
    default:
      return buildFunction(g, operation as FunctionName, a, b);
  }
}

const keepTame = (g: Graph, from: number, to: number): number => g.markTame(to, g.isTame(from));

function extreme(g: Graph, primitive: 'pmin' | 'pmax', a: number, b: number): number {
  const left = g.seal(a);
  const right = g.seal(b);
  // pmin and pmax keep a NaN of their first operand; this brings in one of the second.
  const first = g.constantValue(b) === undefined ? g.make('sub', left, g.make('sub', right, right)) : left;
  return g.markTame(g.make(primitive, first, right));
}

function buildFunction(g: Graph, name: FunctionName, a: number, b: number): number {
  switch (name) {
    case 'sqrt':
    case 'abs':
    case 'floor':
    case 'ceil':
      return keepTame(g, a, g.make(name, a));
    case 'round':
      return keepTame(g, a, round(g, a));
    case 'atan2':
      return atan2(g, g.seal(a), g.seal(b));
    case 'min':
    case 'max':
      return extreme(g, name === 'min' ? 'pmin' : 'pmax', a, b);
    default:
      return ROUTINES[name](g, g.seal(a));
  }
}

function buildChoose(g: Graph, node: OperationNode, symbols: Symbols): number {
  const condition = buildTruth(g, node.args[0]!, symbols);
  const yes = build(g, node.args[1]!, symbols);
  const no = build(g, node.args[2]!, symbols);
  const chosen = g.make('select', yes, no, condition.mask);
  g.markTame(chosen, g.isTame(yes) && g.isTame(no));
  if (condition.doubt === undefined) return chosen;
  return keepTame(g, chosen, g.make('sub', chosen, condition.doubt));
}

function buildTruth(g: Graph, node: Expression, symbols: Symbols): Truth {
  if (node.kind !== 'operation') throw new TypeError('a condition is a comparison');
  if (isComparison(node.operation)) return compare(g, node, symbols);
  const [a, b] = node.args.map((arg) => buildTruth(g, arg, symbols));
  if (node.operation === 'not') return { mask: g.make('not', a!.mask), doubt: a!.doubt };
  const both = node.operation === 'and';
  // The second question only counts where the first does not decide.
  const second = b!.doubt === undefined ? undefined : g.make(both ? 'and' : 'andnot', b!.doubt, a!.mask);
  return { mask: g.make(both ? 'and' : 'or', a!.mask, b!.mask), doubt: sum(g, a!.doubt, second) };
}

function compare(g: Graph, node: OperationNode, symbols: Symbols): Truth {
  const [a, b] = node.args.map((arg) => g.seal(build(g, arg, symbols)));
  const mask = g.make(COMPARE[node.operation as keyof typeof COMPARE], a!, b!);
  const doubts = [a!, b!]
    .filter((each) => g.constantValue(each) === undefined)
    .map((each) => g.make('sub', each, each));
  return { mask, doubt: sum(g, ...doubts) };
}

function sum(g: Graph, ...terms: readonly (number | undefined)[]): number | undefined {
  const there = terms.filter((term) => term !== undefined);
  return there.length ? there.reduce((a, b) => g.make('add', a, b)) : undefined;
}

/** The tree every use of a formula starts from: a number, a symbol, or an operation on further expressions. */

export interface NumberNode {
  readonly kind: 'number';
  readonly value: number;
  /** Set for a named constant of the language. */
  readonly name?: 'pi';
}

export interface SymbolNode {
  readonly kind: 'symbol';
  readonly key: string;
}

export interface OperationNode {
  readonly kind: 'operation';
  readonly operation: Operation;
  readonly args: readonly Expression[];
}

export type Expression = NumberNode | SymbolNode | OperationNode;

export type Arithmetic = 'add' | 'subtract' | 'multiply' | 'divide' | 'power' | 'negate';
export type Comparison = 'less' | 'lessOrEqual' | 'greater' | 'greaterOrEqual' | 'equal' | 'unequal';
export type Logic = 'and' | 'or' | 'not';

/** Functions of the language with the number of arguments they take. `round` rounds halves away from zero. */
export const FUNCTIONS = {
  sqrt: [1, 1],
  abs: [1, 1],
  min: [2, 20],
  max: [2, 20],
  exp: [1, 1],
  ln: [1, 1],
  log10: [1, 1],
  sin: [1, 1],
  cos: [1, 1],
  tan: [1, 1],
  asin: [1, 1],
  acos: [1, 1],
  atan: [1, 1],
  atan2: [2, 2],
  floor: [1, 1],
  ceil: [1, 1],
  round: [1, 1],
  sign: [1, 1],
} as const satisfies Record<string, readonly [least: number, most: number]>;

export type FunctionName = keyof typeof FUNCTIONS;

/** `choose` is `condition ? a : b`. */
export type Operation = Arithmetic | Comparison | Logic | 'choose' | FunctionName;

/** Words of the language that cannot be a symbol's key. */
export const RESERVED: ReadonlySet<string> = new Set([
  ...Object.keys(FUNCTIONS),
  ...['pi', 'and', 'or', 'not', 'xor', 'mod', 'to', 'in', 'true', 'false', 'null', 'undefined'],
  ...['NaN', 'Infinity', 'end'],
]);

export const isFunctionName = (name: string): name is FunctionName => Object.hasOwn(FUNCTIONS, name);

const COMPARISONS: ReadonlySet<string> = new Set([
  'less',
  'lessOrEqual',
  'greater',
  'greaterOrEqual',
  'equal',
  'unequal',
]);
export const isComparison = (operation: Operation): operation is Comparison => COMPARISONS.has(operation);

/** Whether an expression is a yes or no rather than a number. */
export const isTruth = (expression: Expression): boolean =>
  expression.kind === 'operation' &&
  (isComparison(expression.operation) || ['and', 'or', 'not'].includes(expression.operation));

export const number = (value: number): NumberNode => ({ kind: 'number', value });
export const symbol = (key: string): SymbolNode => ({ kind: 'symbol', key });
export const operation = (name: Operation, ...args: readonly Expression[]): OperationNode => ({
  kind: 'operation',
  operation: name,
  args,
});

/** Keys an expression reads, each once, in the order of their first use. */
export function symbolsOf(expression: Expression, found: Set<string> = new Set()): Set<string> {
  if (expression.kind === 'symbol') found.add(expression.key);
  else if (expression.kind === 'operation') for (const arg of expression.args) symbolsOf(arg, found);
  return found;
}

/** Text of an expression → our tree. mathjs only parses; nothing of it is evaluated (docs/decisions/0002). */
import { create, type MathNode, parseDependencies } from 'mathjs';
import { ExpressionError } from './errors.ts';
import {
  type Expression,
  FUNCTIONS,
  isFunctionName,
  isTruth,
  number,
  type Operation,
  operation,
  symbol,
} from './expression.ts';

const { parse } = create({ parseDependencies: parseDependencies! });

const LONGEST = 2000;
const DEEPEST = 100;

const OPERATORS: Readonly<Record<string, Operation>> = {
  add: 'add',
  subtract: 'subtract',
  multiply: 'multiply',
  divide: 'divide',
  pow: 'power',
  unaryMinus: 'negate',
  smaller: 'less',
  smallerEq: 'lessOrEqual',
  larger: 'greater',
  largerEq: 'greaterOrEqual',
  equal: 'equal',
  unequal: 'unequal',
  and: 'and',
  or: 'or',
  not: 'not',
};

/** What mathjs reads beyond our language, by the name of its node. */
const REFUSED: Readonly<Record<string, string>> = {
  ArrayNode: 'a matrix',
  AssignmentNode: 'an assignment',
  FunctionAssignmentNode: 'an assignment',
  BlockNode: 'several expressions',
  ObjectNode: 'an object',
  AccessorNode: 'an index or a dot',
  IndexNode: 'an index',
  RangeNode: 'a range',
  RelationalNode: 'a chain of comparisons (join two with "and")',
};

/** The fields of mathjs's nodes that are read here. */
interface ParsedNode {
  readonly type: string;
  readonly op?: string;
  readonly fn?: string | { readonly name?: string };
  readonly implicit?: boolean;
  readonly isPercentage?: boolean;
  readonly args?: readonly ParsedNode[];
  readonly content?: ParsedNode;
  readonly value?: unknown;
  readonly name?: string;
  readonly condition?: ParsedNode;
  readonly trueExpr?: ParsedNode;
  readonly falseExpr?: ParsedNode;
}

/** Reads one expression. Throws ExpressionError naming what is outside the language. */
export function parseExpression(text: string): Expression {
  if (text.trim() === '') throw new ExpressionError('the expression is empty');
  if (text.length > LONGEST) throw new ExpressionError(`the expression is longer than ${LONGEST} characters`);
  // mathjs drops what follows '#', and reads quotes, brackets and line ends as things we do not have.
  const stray = /[#"'`;\n\r[\]{}\\$@&|~]/.exec(text);
  if (stray)
    throw new ExpressionError(`the character ${JSON.stringify(stray[0])} has no place in an expression`);
  let parsed: MathNode;
  try {
    parsed = parse(text);
  } catch (error) {
    throw new ExpressionError(
      `'${text}' could not be read: ${error instanceof Error ? error.message : 'unreadable'}`,
    );
  }
  const tree = convert(parsed as unknown as ParsedNode, 0);
  if (isTruth(tree)) {
    throw new ExpressionError(`'${text}' is a yes or no, not a number; write (${text}) ? 1 : 0`);
  }
  return tree;
}

function convert(node: ParsedNode, depth: number): Expression {
  if (depth > DEEPEST) throw new ExpressionError(`the expression is nested deeper than ${DEEPEST}`);
  switch (node.type) {
    case 'ParenthesisNode':
      return convert(node.content!, depth + 1);
    case 'ConstantNode':
      return constantNode(node.value);
    case 'SymbolNode':
      return symbolNode(node.name!);
    case 'ConditionalNode':
      return operation(
        'choose',
        truth(convert(node.condition!, depth + 1), 'a condition'),
        value(convert(node.trueExpr!, depth + 1), '?'),
        value(convert(node.falseExpr!, depth + 1), ':'),
      );
    case 'OperatorNode':
      return operatorNode(node, depth);
    case 'FunctionNode':
      return functionNode(node, depth);
    default:
      throw new ExpressionError(`${REFUSED[node.type] ?? node.type} has no place in an expression`);
  }
}

function constantNode(value: unknown): Expression {
  if (typeof value !== 'number') throw new ExpressionError(`'${String(value)}' is not a number`);
  if (!Number.isFinite(value)) throw new ExpressionError('a number is too large');
  return number(value);
}

function symbolNode(name: string): Expression {
  if (name === 'pi') return { kind: 'number', value: Math.PI, name: 'pi' };
  if (isFunctionName(name))
    throw new ExpressionError(`the function '${name}' needs its argument in parentheses`);
  return symbol(name);
}

function operatorNode(node: ParsedNode, depth: number): Expression {
  const name = OPERATORS[String(node.fn)];
  if (name === undefined || node.isPercentage) {
    throw new ExpressionError(
      `the operator '${node.isPercentage ? '%' : node.op}' has no place in an expression`,
    );
  }
  if (node.implicit) {
    throw new ExpressionError("a multiplication has to be written out: '2 * a', not '2 a'");
  }
  const check = name === 'and' || name === 'or' || name === 'not' ? truth : value;
  return operation(name, ...node.args!.map((arg) => check(convert(arg, depth + 1), `'${node.op}'`)));
}

function functionNode(node: ParsedNode, depth: number): Expression {
  const name = (typeof node.fn === 'object' ? node.fn.name : node.fn) ?? '';
  if (!isFunctionName(name)) {
    throw new ExpressionError(
      `there is no function '${name}'; there are ${Object.keys(FUNCTIONS).join(', ')}`,
    );
  }
  const [least, most] = FUNCTIONS[name];
  const args = node.args!;
  if (args.length < least || args.length > most) {
    throw new ExpressionError(
      `'${name}' takes ${least === most ? least : `at least ${least}`} argument(s), not ${args.length}`,
    );
  }
  return operation(name, ...args.map((arg) => value(convert(arg, depth + 1), `'${name}'`)));
}

function truth(expression: Expression, where: string): Expression {
  if (isTruth(expression)) return expression;
  throw new ExpressionError(`${where} needs a comparison such as 'a < b' in parentheses, not a number`);
}

function value(expression: Expression, where: string): Expression {
  if (!isTruth(expression)) return expression;
  throw new ExpressionError(`${where} needs numbers, not a comparison; write (a < b) ? 1 : 0`);
}

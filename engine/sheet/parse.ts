/**
 * Text of an expression → its tree. From loose to tight: `c ? a : b`, `or`, `and`, `not`, a comparison, `+ -`, `* /`,
 * `-a`, `^`; powers group from the right, the others from the left.
 */
import { own } from '../quantity/own.ts';
import { ExpressionError } from './errors.ts';
import {
  type Comparison,
  type Expression,
  FUNCTIONS,
  type FunctionName,
  isFunctionName,
  isTruth,
  number,
  type Operation,
  operation,
  RESERVED,
  symbol,
} from './expression.ts';
import { type Token, tokensOf } from './tokens.ts';

const LONGEST = 2000;
const DEEPEST = 60;

const COMPARISONS: Readonly<Record<string, Comparison>> = {
  '<': 'less',
  '<=': 'lessOrEqual',
  '>': 'greater',
  '>=': 'greaterOrEqual',
  '==': 'equal',
  '!=': 'unequal',
};
const SUMS: Readonly<Record<string, Operation>> = { '+': 'add', '-': 'subtract' };
const PRODUCTS: Readonly<Record<string, Operation>> = { '*': 'multiply', '/': 'divide' };

/** Reads one expression. Throws ExpressionError naming what is outside the language. */
export function parseExpression(text: string): Expression {
  if (text.trim() === '') throw new ExpressionError('the expression is empty');
  if (text.length > LONGEST) throw new ExpressionError(`the expression is longer than ${LONGEST} characters`);
  const parser = new Parser(tokensOf(text));
  const tree = parser.whole();
  if (isTruth(tree)) {
    throw new ExpressionError(`'${text}' is a yes or no, not a number; write (${text}) ? 1 : 0`);
  }
  return tree;
}

class Parser {
  private readonly tokens: readonly Token[];
  private next = 0;
  private depth = 0;

  constructor(tokens: readonly Token[]) {
    this.tokens = tokens;
  }

  whole(): Expression {
    const tree = this.choice();
    const { kind, text } = this.peek();
    if (kind === 'end') return tree;
    if (kind === 'number' || kind === 'name' || text === '(') {
      throw new ExpressionError(
        `before '${text}' an operator is missing; a multiplication has to be written out: '2 * a', not '2 a'`,
      );
    }
    throw new ExpressionError(`'${text}' stands where the expression should end`);
  }

  private peek(): Token {
    return this.tokens[this.next]!;
  }

  private take(text: string): boolean {
    if (this.peek().text !== text || this.peek().kind === 'end') return false;
    this.next++;
    return true;
  }

  private expect(text: string, where: string): void {
    if (this.take(text)) return;
    const found = this.peek();
    if (found.kind === 'number' || found.kind === 'name') {
      throw new ExpressionError(
        `before '${found.text}' an operator is missing; a multiplication has to be written out: '2 * a', not '2 a'`,
      );
    }
    throw new ExpressionError(`${where} needs '${text}', but '${found.text}' stands there`);
  }

  private choice(): Expression {
    if (++this.depth > DEEPEST) throw new ExpressionError(`the expression is nested deeper than ${DEEPEST}`);
    const condition = this.or();
    let tree = condition;
    if (this.take('?')) {
      const yes = value(this.choice(), "'?'");
      this.expect(':', "'?'");
      const no = value(this.choice(), "':'");
      tree = operation('choose', truth(condition, "'?'"), yes, no);
    }
    this.depth--;
    return tree;
  }

  private or(): Expression {
    let tree = this.and();
    while (this.take('or')) tree = operation('or', truth(tree, "'or'"), truth(this.and(), "'or'"));
    return tree;
  }

  private and(): Expression {
    let tree = this.not();
    while (this.take('and')) tree = operation('and', truth(tree, "'and'"), truth(this.not(), "'and'"));
    return tree;
  }

  private not(): Expression {
    let count = 0;
    while (this.take('not')) count++;
    let tree = this.comparison();
    for (; count > 0; count--) tree = operation('not', truth(tree, "'not'"));
    return tree;
  }

  private comparison(): Expression {
    const left = this.grouped(SUMS, () => this.product());
    const sign = this.peek().text;
    const name = this.peek().kind === 'sign' && own(COMPARISONS, sign);
    if (!name) return left;
    this.next++;
    const right = this.grouped(SUMS, () => this.product());
    const after = this.peek();
    if (after.kind === 'sign' && Object.hasOwn(COMPARISONS, after.text)) {
      throw new ExpressionError("comparisons do not chain; write 'a < b and b < c'");
    }
    return operation(name, value(left, `'${sign}'`), value(right, `'${sign}'`));
  }

  private product(): Expression {
    return this.grouped(PRODUCTS, () => this.signed());
  }

  private grouped(signs: Readonly<Record<string, Operation>>, part: () => Expression): Expression {
    let tree = part();
    for (;;) {
      const { kind, text } = this.peek();
      if (kind !== 'sign' || !Object.hasOwn(signs, text)) return tree;
      this.next++;
      tree = operation(signs[text]!, value(tree, `'${text}'`), value(part(), `'${text}'`));
    }
  }

  private signed(): Expression {
    let count = 0;
    while (this.take('-')) count++;
    let tree = this.power();
    for (; count > 0; count--) tree = operation('negate', value(tree, "'-'"));
    return tree;
  }

  private power(): Expression {
    const base = this.atom();
    if (!this.take('^')) return base;
    if (++this.depth > DEEPEST) throw new ExpressionError(`the expression is nested deeper than ${DEEPEST}`);
    const exponent = value(this.signed(), "'^'");
    this.depth--;
    return operation('power', value(base, "'^'"), exponent);
  }

  private atom(): Expression {
    const token = this.peek();
    this.next++;
    if (token.kind === 'number') return numberOf(token.text);
    if (token.kind === 'name') return this.named(token.text);
    if (token.text === '(') {
      const tree = this.choice();
      this.expect(')', "'('");
      return tree;
    }
    throw new ExpressionError(`a number or a symbol is missing before '${token.text}'`);
  }

  private named(name: string): Expression {
    const called = this.peek().text === '(';
    if (name === 'pi' && !called) return { kind: 'number', value: Math.PI, name: 'pi' };
    if (!called && isFunctionName(name)) {
      throw new ExpressionError(`the function '${name}' needs its argument in parentheses`);
    }
    if (!called && RESERVED.has(name)) throw new ExpressionError(`'${name}' has no place there`);
    if (!called) return symbol(name);
    if (!isFunctionName(name)) {
      throw new ExpressionError(
        `there is no function '${name}'; there are ${Object.keys(FUNCTIONS).join(', ')}`,
      );
    }
    return this.call(name);
  }

  private call(name: FunctionName): Expression {
    this.next++;
    const args: Expression[] = [];
    do args.push(value(this.choice(), `'${name}'`));
    while (this.take(','));
    this.expect(')', `'${name}('`);
    const [least, most] = FUNCTIONS[name];
    if (args.length < least || args.length > most) {
      const wanted = least === most ? String(least) : `${least} to ${most}`;
      throw new ExpressionError(`'${name}' takes ${wanted} argument(s), not ${args.length}`);
    }
    return operation(name, ...args);
  }
}

function numberOf(text: string): Expression {
  const parsed = Number(text);
  if (!Number.isFinite(parsed)) throw new ExpressionError(`the number ${text} is too large`);
  return number(parsed);
}

function truth(expression: Expression, where: string): Expression {
  if (isTruth(expression)) return expression;
  throw new ExpressionError(`${where} needs a comparison such as 'a < b', not a number`);
}

function value(expression: Expression, where: string): Expression {
  if (!isTruth(expression)) return expression;
  throw new ExpressionError(`${where} needs numbers, not a comparison; write (a < b) ? 1 : 0`);
}

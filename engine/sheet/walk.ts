/** Evaluates a tree for one set of values, saying why where there is no answer. */
import { APPLY } from './arithmetic.ts';
import type { Expression, OperationNode } from './expression.ts';
import { plainText } from './print-plain.ts';
import type { Outcome } from './types.ts';

/** Why there is no number. */
export type Absence = Exclude<Outcome, { state: 'known' }>;
/** A number (1 and 0 for yes and no), or why there is none. */
export type Value = number | Absence;
export type Read = (key: string) => Value;

export const missing = (needs: readonly string[]): Absence => ({ state: 'missing', needs });
export const undefinedFor = (reason: string): Absence => ({ state: 'undefined', reason });

/** Joins what is absent: no answer at all outweighs an answer that only lacks inputs. */
export function bothAbsent(a: Absence, b: Absence): Absence {
  if (a.state === 'undefined') return a;
  if (b.state === 'undefined') return b;
  return missing([...new Set([...a.needs, ...b.needs])]);
}

/** `where` names the symbol in reasons: 'allowed speed (n_c)'. */
export function walk(node: Expression, read: Read, where: string): Value {
  if (node.kind === 'number') return node.value;
  if (node.kind === 'symbol') return read(node.key);
  switch (node.operation) {
    case 'choose': {
      const condition = walk(node.args[0]!, read, where);
      if (typeof condition !== 'number') return condition;
      return walk(node.args[condition ? 1 : 2]!, read, where);
    }
    case 'and':
    case 'or':
      return walkLogic(node, read, where);
    default:
      return walkStrict(node, read, where);
  }
}

/** 'and' is decided by one no, 'or' by one yes, whatever is unknown of the other. */
function walkLogic(node: OperationNode, read: Read, where: string): Value {
  const decisive = node.operation === 'and' ? 0 : 1;
  const a = walk(node.args[0]!, read, where);
  if (a === decisive) return decisive;
  const b = walk(node.args[1]!, read, where);
  if (typeof a === 'number') return b;
  if (b === decisive && a.state === 'missing') return decisive;
  return typeof b === 'number' ? a : bothAbsent(a, b);
}

function walkStrict(node: OperationNode, read: Read, where: string): Value {
  let absent: Absence | undefined;
  let a = 0;
  let b = 0;
  for (let at = 0; at < node.args.length; at++) {
    const value = walk(node.args[at]!, read, where);
    if (typeof value !== 'number') absent = absent ? bothAbsent(absent, value) : value;
    else if (at === 0) a = value;
    else if (at === 1 || node.operation === 'atan2') b = value;
    else b = APPLY[node.operation as 'min' | 'max'](b, value);
  }
  if (absent) return absent;
  const result = applyOperation(node, a, b);
  return Number.isFinite(result) ? result : undefinedFor(reasonFor(node, a, b, where));
}

/** One strict operation on numbers; not finite where it has no answer. */
export function applyOperation(node: OperationNode, a: number, b: number): number {
  switch (node.operation) {
    case 'add':
      return a + b;
    case 'subtract':
      return a - b;
    case 'multiply':
      return a * b;
    case 'divide':
      return a / b;
    case 'power':
      return a ** b;
    case 'negate':
      return -a;
    case 'less':
      return a < b ? 1 : 0;
    case 'lessOrEqual':
      return a <= b ? 1 : 0;
    case 'greater':
      return a > b ? 1 : 0;
    case 'greaterOrEqual':
      return a >= b ? 1 : 0;
    case 'equal':
      return a === b ? 1 : 0;
    case 'unequal':
      return a !== b ? 1 : 0;
    case 'not':
      return a ? 0 : 1;
    case 'and':
    case 'or':
    case 'choose':
      throw new TypeError(`${node.operation} is not strict`);
    default:
      return APPLY[node.operation](a, b);
  }
}

/** Names what went wrong in an operation whose result is not a finite number. */
export function reasonFor(node: OperationNode, a: number, b: number, where: string): string {
  const part = (at: number): string => plainText(node.args[at]!);
  const says = (what: string): string => `${where} has no answer: it ${what}`;
  switch (node.operation) {
    case 'divide':
      if (b === 0) return says(`divides by ${part(1)}, which is zero`);
      break;
    case 'sqrt':
      return says(`takes the square root of ${part(0)}, which is negative`);
    case 'ln':
    case 'log10':
      return says(`takes the logarithm of ${part(0)}, which is not above zero`);
    case 'asin':
    case 'acos':
      return says(`asks for an angle from ${part(0)}, which is outside −1 to 1`);
    case 'power':
      if (a === 0) return says(`divides by ${part(0)}, which is zero`);
      if (a < 0 && !Number.isInteger(b)) {
        return says(`raises ${part(0)}, which is negative, to a power that is not whole`);
      }
      break;
    default:
  }
  return says(`comes to a number too large to hold in ${plainText(node)}`);
}

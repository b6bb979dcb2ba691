/** An expression as readable Unicode text for the terminal and for messages. */
import type { Comparison, Expression, OperationNode } from './expression.ts';
import { GREEK } from './letters.ts';

/** How tightly an expression holds together; a part that holds less tightly than its place needs parentheses. */
const HOLD = {
  choose: 0,
  or: 1,
  and: 2,
  not: 3,
  compare: 4,
  add: 5,
  multiply: 6,
  negate: 7,
  power: 8,
  atom: 9,
};
type Hold = number;

const COMPARE: Readonly<Record<Comparison, string>> = {
  less: '<',
  lessOrEqual: '≤',
  greater: '>',
  greaterOrEqual: '≥',
  equal: '=',
  unequal: '≠',
};

const RAISED = new Map([...'0123456789-'].map((digit, at) => [digit, [...'⁰¹²³⁴⁵⁶⁷⁸⁹⁻'][at]!]));

/** Text of a leaf and whether it is one word; '20 mm' is not, and needs parentheses beside a power or a division. */
export interface Leaf {
  readonly text: string;
  readonly word: boolean;
}
export type Leaves = (key: string) => Leaf;

/** `eta_b` as `η_b`. */
export function plainKey(key: string): string {
  const [head = '', ...rest] = key.split('_');
  return [GREEK[head] ?? head, ...rest].join('_');
}

const keyLeaf: Leaves = (key) => ({ text: plainKey(key), word: true });

const raised = (digits: string): string => [...digits].map((digit) => RAISED.get(digit)!).join('');

/** A number of the formula itself, not of a person: all its digits, and `6.6 × 10⁻⁹` for 6.6e-9. */
function numberText(value: number): string {
  const [head = '', exponent] = String(value).replace('e+', 'e').split('e');
  const digits = head.replace('-', '−');
  return exponent === undefined ? digits : `${digits} × 10${raised(exponent)}`;
}

export function plainText(expression: Expression, leaves: Leaves = keyLeaf): string {
  return print(expression, leaves)[0];
}

type Printed = readonly [text: string, hold: Hold];

function print(node: Expression, leaves: Leaves): Printed {
  if (node.kind === 'number') {
    if (node.name === 'pi') return ['π', HOLD.atom];
    const text = numberText(node.value);
    return [text, node.value < 0 ? HOLD.negate : text.includes('×') ? HOLD.multiply : HOLD.atom];
  }
  if (node.kind === 'symbol') {
    const leaf = leaves(node.key);
    return [leaf.text, leaf.word ? HOLD.atom : leaf.text.startsWith('-') ? HOLD.compare : HOLD.multiply];
  }
  return printOperation(node, leaves);
}

function printOperation(node: OperationNode, leaves: Leaves): Printed {
  const at = (index: number, least: Hold): string => {
    const [text, hold] = print(node.args[index]!, leaves);
    // A sign of its own never follows another: 'a · (−b)'.
    return hold < least || (index > 0 && hold === HOLD.negate && least > HOLD.or) ? `(${text})` : text;
  };
  const h = HOLD;
  switch (node.operation) {
    case 'add':
      return [`${at(0, h.add)} + ${at(1, h.add)}`, h.add];
    case 'subtract':
      return [`${at(0, h.add)} − ${at(1, h.multiply)}`, h.add];
    case 'multiply':
      return [`${at(0, h.multiply)} · ${at(1, h.multiply)}`, h.multiply];
    case 'divide':
      return [`${at(0, h.multiply)} / ${at(1, h.negate)}`, h.multiply];
    case 'negate':
      return [`−${at(0, h.negate)}`, h.negate];
    case 'power':
      return [at(0, h.atom) + exponentText(node.args[1]!, leaves), h.power];
    case 'and':
      return [`${at(0, h.and)} and ${at(1, h.and)}`, h.and];
    case 'or':
      return [`${at(0, h.or)} or ${at(1, h.or)}`, h.or];
    case 'not':
      return [`not ${at(0, h.atom)}`, h.not];
    case 'choose':
      return [`${at(1, h.or)} if ${at(0, h.or)}, otherwise ${at(2, h.choose)}`, h.choose];
    case 'less':
    case 'lessOrEqual':
    case 'greater':
    case 'greaterOrEqual':
    case 'equal':
    case 'unequal':
      return [`${at(0, h.add)} ${COMPARE[node.operation]} ${at(1, h.add)}`, h.compare];
    case 'sqrt':
      return [`√(${at(0, h.choose)})`, h.atom];
    case 'abs':
      return [`|${at(0, h.choose)}|`, h.atom];
    default:
      return [`${node.operation}(${node.args.map((_, index) => at(index, h.or)).join(', ')})`, h.atom];
  }
}

/** Whole powers as raised digits, any other as `^(…)`. */
function exponentText(exponent: Expression, leaves: Leaves): string {
  const value = wholeNumber(exponent);
  if (value !== undefined) {
    return raised(String(value));
  }
  const [text, hold] = print(exponent, leaves);
  return hold >= HOLD.atom ? `^${text}` : `^(${text})`;
}

function wholeNumber(node: Expression): number | undefined {
  if (node.kind === 'operation' && node.operation === 'negate') {
    const value = wholeNumber(node.args[0]!);
    return value === undefined ? undefined : -value;
  }
  if (node.kind !== 'number' || node.name) return undefined;
  return Number.isInteger(node.value) && Math.abs(node.value) < 1000 ? node.value : undefined;
}

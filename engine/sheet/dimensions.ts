/** Dimension check over a tree. What is tallied (angles, counts, turns) is a plain number here. */
import type { Dimension } from '../quantity/types.ts';
import { ExpressionError } from './errors.ts';
import { type Expression, isComparison, type OperationNode } from './expression.ts';
import { plainText } from './print-plain.ts';

const BASE = ['m', 'kg', 's', 'A', 'K'] as const;

/** Exponents of metre, kilogram, second, ampere, kelvin; `zero` is the literal 0, which agrees with anything. */
type Exponents = readonly number[] | 'zero';

const PLAIN: Exponents = [0, 0, 0, 0, 0];

const exponents = (dimension: Dimension): readonly number[] => BASE.map((base) => dimension[base]);

const agree = (a: Exponents, b: Exponents): boolean =>
  a === 'zero' || b === 'zero' || a.every((power, at) => Math.abs(power - b[at]!) < 1e-9);

const isPlain = (a: Exponents): boolean => agree(a, PLAIN);

const SUPERSCRIPT: Readonly<Record<string, string>> = { '-': '⁻', '.': '·', '2': '²', '3': '³', '4': '⁴' };

/** A dimension as base units: `kg·m·s⁻²`; `a plain number` when there is none. */
export function dimensionText(dimension: Dimension): string {
  return exponentText(exponents(dimension));
}

function exponentText(powers: Exponents): string {
  if (powers === 'zero' || powers.every((power) => power === 0)) return 'a plain number';
  const factor = (base: string, power: number): string => {
    if (power === 1) return base;
    const text = String(Number(power.toPrecision(6)));
    const raised = [...text].map((digit) => SUPERSCRIPT[digit]);
    if (text === '-1') return `${base}⁻¹`;
    return raised.every((digit) => digit !== undefined && digit !== '·')
      ? base + raised.join('')
      : `${base}^${text}`;
  };
  return BASE.map((base, at) => [base, powers[at]!] as const)
    .filter(([, power]) => power !== 0)
    .map(([base, power]) => factor(base, power))
    .join('·');
}

/**
 * Proves that an expression has the dimension wanted.
 * Throws ExpressionError that names the part of the expression and both dimensions.
 */
export function checkDimension(
  expression: Expression,
  dimensionOf: (key: string) => Dimension,
  wanted: Dimension,
): void {
  const found = dimensionOfExpression(expression, dimensionOf);
  if (!agree(found, exponents(wanted))) {
    throw new ExpressionError(
      `the expression comes out as ${exponentText(found)}, but its unit says ${dimensionText(wanted)}`,
    );
  }
}

function dimensionOfExpression(node: Expression, dimensionOf: (key: string) => Dimension): Exponents {
  if (node.kind === 'number') return node.value === 0 ? 'zero' : PLAIN;
  if (node.kind === 'symbol') return exponents(dimensionOf(node.key));
  return ofOperation(
    node,
    node.args.map((arg) => dimensionOfExpression(arg, dimensionOf)),
  );
}

function ofOperation(node: OperationNode, args: readonly Exponents[]): Exponents {
  const [a = PLAIN, b = PLAIN, c = PLAIN] = args;
  if (isComparison(node.operation)) {
    same(node, args);
    return PLAIN;
  }
  switch (node.operation) {
    case 'multiply':
      return combine(a, b, 1);
    case 'divide':
      return combine(a, b, -1);
    case 'power':
      return raised(node, a, b);
    case 'sqrt':
      return a === 'zero' ? a : a.map((power) => power / 2);
    case 'add':
    case 'subtract':
    case 'min':
    case 'max':
      return same(node, args);
    case 'atan2':
      same(node, args);
      return PLAIN;
    case 'negate':
    case 'abs':
      return a;
    case 'choose':
      return same(node, [b, c]);
    case 'sign':
    case 'and':
    case 'or':
    case 'not':
      return PLAIN;
    default:
      if (!isPlain(a)) {
        throw new ExpressionError(
          `'${node.operation}' takes a plain number, but ${plainText(node.args[0]!)} is ${exponentText(a)}`,
        );
      }
      return PLAIN;
  }
}

function combine(a: Exponents, b: Exponents, direction: 1 | -1): Exponents {
  if (a === 'zero' || b === 'zero') return 'zero';
  return a.map((power, at) => power + direction * b[at]!);
}

function same(node: OperationNode, args: readonly Exponents[]): Exponents {
  const first = args.find((arg) => arg !== 'zero') ?? 'zero';
  for (const arg of args) {
    if (!agree(first, arg)) {
      throw new ExpressionError(
        `${plainText(node)} joins ${exponentText(first)} with ${exponentText(arg)}, which cannot be compared or added`,
      );
    }
  }
  return first;
}

function raised(node: OperationNode, base: Exponents, exponent: Exponents): Exponents {
  const [, power] = node.args;
  if (!isPlain(exponent)) {
    throw new ExpressionError(
      `the exponent in ${plainText(node)} is ${exponentText(exponent)}, not a plain number`,
    );
  }
  if (base === 'zero' || isPlain(base)) return base === 'zero' ? PLAIN : base;
  const value = constantValue(power!);
  if (value === undefined) {
    throw new ExpressionError(
      `${plainText(node)} raises ${exponentText(base)} to a power that is not a fixed number`,
    );
  }
  return base.map((each) => each * value);
}

/** Value of an expression made of numbers and arithmetic only, e.g. `1 / 3`; undefined for any other. */
export function constantValue(node: Expression): number | undefined {
  if (node.kind === 'number') return node.value;
  if (node.kind === 'symbol') return undefined;
  const [a, b] = node.args.map(constantValue);
  if (a === undefined) return undefined;
  if (node.operation === 'negate') return -a;
  if (b === undefined) return undefined;
  switch (node.operation) {
    case 'add':
      return a + b;
    case 'subtract':
      return a - b;
    case 'multiply':
      return a * b;
    case 'divide':
      return a / b;
    default:
      return undefined;
  }
}

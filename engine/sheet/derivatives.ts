/** How much the result of an operation moves with each of its operands. */
import type { OperationNode } from './expression.ts';

/**
 * Slopes of an operation's result over its first and second operand, where `result` is its value.
 * At a kink the slope of the branch in force; not finite where there is none.
 */
export function slopesOf(
  operation: OperationNode['operation'],
  a: number,
  b: number,
  result: number,
): readonly [number, number] {
  switch (operation) {
    case 'add':
      return [1, 1];
    case 'subtract':
      return [1, -1];
    case 'multiply':
      return [b, a];
    case 'divide':
      return [1 / b, -result / b];
    case 'power':
      return [b === 0 ? 0 : b * a ** (b - 1), overExponent(a, b, result)];
    case 'negate':
      return [-1, 0];
    case 'sqrt':
      return [0.5 / result, 0];
    case 'abs':
      return [a < 0 ? -1 : 1, 0];
    case 'exp':
      return [result, 0];
    case 'ln':
      return [1 / a, 0];
    case 'log10':
      return [1 / (a * Math.LN10), 0];
    case 'sin':
      return [Math.cos(a), 0];
    case 'cos':
      return [-Math.sin(a), 0];
    case 'tan':
      return [1 + result * result, 0];
    case 'asin':
      return [1 / Math.sqrt((1 - a) * (1 + a)), 0];
    case 'acos':
      return [-1 / Math.sqrt((1 - a) * (1 + a)), 0];
    case 'atan':
      return [1 / (1 + a * a), 0];
    case 'atan2': {
      const square = a * a + b * b;
      return [b / square, -a / square];
    }
    default:
      // Steps (floor, ceil, round, sign, comparisons) are flat between their jumps.
      return [0, 0];
  }
}

/** A base of zero stays zero for every exponent above zero; one below zero has powers only at whole exponents. */
function overExponent(base: number, exponent: number, result: number): number {
  if (base === 0 && exponent > 0) return 0;
  return base > 0 ? result * Math.log(base) : Number.NaN;
}

/**
 * Arithmetic of intervals. Every result is widened a little outward, so that rounding here and in the compiled
 * program stays inside. A string says why an operation has no bounds.
 */
import { roundHalfAway } from './arithmetic.ts';
import type { OperationNode } from './expression.ts';
import type { Interval } from './types.ts';

/** More than the few units of the last place by which any function here or in the compiled program is off. */
const WIDENING = 4e-15;

/** Below it numbers lose digits, so that the same power worked out two ways may differ wholly. */
const SMALLEST_NORMAL = 2.2250738585072014e-308;

const widened = (low: number, high: number): Interval => [
  lossy(low) ? Math.min(0, Math.sign(low) * SMALLEST_NORMAL) : low - Math.abs(low) * WIDENING,
  lossy(high) ? Math.max(0, Math.sign(high) * SMALLEST_NORMAL) : high + Math.abs(high) * WIDENING,
];

const lossy = (end: number): boolean => end !== 0 && Math.abs(end) < SMALLEST_NORMAL;

const hullOf = (values: readonly number[]): Interval => [Math.min(...values), Math.max(...values)];

const within = ([low, high]: Interval, least: number, most: number): Interval => [
  Math.min(most, Math.max(least, low)),
  Math.max(least, Math.min(most, high)),
];

export const hull = (a: Interval, b: Interval): Interval => [Math.min(a[0], b[0]), Math.max(a[1], b[1])];

const holdsZero = ([low, high]: Interval): boolean => low <= 0 && high >= 0;

/** Bounds of a rising function between its ends. */
const rising = ([low, high]: Interval, f: (x: number) => number): Interval => widened(f(low), f(high));

const exactly = ([low, high]: Interval, f: (x: number) => number): Interval => [f(low), f(high)];

/** Yes, no or undecided as [1, 1], [0, 0], [0, 1]. */
const truth = (surelyYes: boolean, surelyNo: boolean): Interval => [surelyYes ? 1 : 0, surelyNo ? 0 : 1];

const ZERO: Interval = [0, 0];

/** Bounds of one operation other than `choose`, or what it would do that has no answer. */
export function boundOperation(
  operation: OperationNode['operation'],
  args: readonly Interval[],
): Interval | string {
  const [a = ZERO, b = ZERO] = args;
  switch (operation) {
    case 'add':
      return widened(a[0] + b[0], a[1] + b[1]);
    case 'subtract':
      return widened(a[0] - b[1], a[1] - b[0]);
    case 'multiply':
      return widened(...hullOf([a[0] * b[0], a[0] * b[1], a[1] * b[0], a[1] * b[1]]));
    case 'divide':
      if (holdsZero(b)) return 'may divide by zero';
      return widened(...hullOf([a[0] / b[0], a[0] / b[1], a[1] / b[0], a[1] / b[1]]));
    case 'power':
      return powerBounds(a, b);
    case 'negate':
      return [-a[1], -a[0]];
    case 'min':
      return [Math.min(...args.map(([low]) => low)), Math.min(...args.map(([, high]) => high))];
    case 'max':
      return [Math.max(...args.map(([low]) => low)), Math.max(...args.map(([, high]) => high))];
    case 'abs':
      return holdsZero(a) ? [0, Math.max(-a[0], a[1])] : hullOf([Math.abs(a[0]), Math.abs(a[1])]);
    case 'less':
      return truth(a[1] < b[0], a[0] >= b[1]);
    case 'lessOrEqual':
      return truth(a[1] <= b[0], a[0] > b[1]);
    case 'greater':
      return truth(a[0] > b[1], a[1] <= b[0]);
    case 'greaterOrEqual':
      return truth(a[0] >= b[1], a[1] < b[0]);
    case 'equal':
      return truth(isPoint(a) && isPoint(b) && a[0] === b[0], a[1] < b[0] || b[1] < a[0]);
    case 'unequal':
      return truth(a[1] < b[0] || b[1] < a[0], isPoint(a) && isPoint(b) && a[0] === b[0]);
    case 'and':
      return [Math.min(a[0], b[0]), Math.min(a[1], b[1])];
    case 'or':
      return [Math.max(a[0], b[0]), Math.max(a[1], b[1])];
    case 'not':
      return [1 - a[1], 1 - a[0]];
    default:
      return boundFunction(operation, a, b);
  }
}

export const isPoint = ([low, high]: Interval): boolean => low === high;

function boundFunction(name: OperationNode['operation'], a: Interval, b: Interval): Interval | string {
  switch (name) {
    case 'sqrt':
      return a[0] < 0 ? 'may take the square root of a negative number' : rising(a, Math.sqrt);
    case 'exp':
      return within(rising(a, Math.exp), 0, Number.POSITIVE_INFINITY);
    case 'ln':
      return a[0] <= 0 ? 'may take the logarithm of zero or less' : rising(a, Math.log);
    case 'log10':
      return a[0] <= 0 ? 'may take the logarithm of zero or less' : rising(a, Math.log10);
    case 'sin':
      return waveBounds(a, Math.sin, Math.PI / 2);
    case 'cos':
      return waveBounds(a, Math.cos, 0);
    case 'tan':
      return contains(a, Math.PI / 2, Math.PI)
        ? 'may take the tangent of a right angle'
        : rising(a, Math.tan);
    case 'asin':
      return outsideUnit(withoutSlack(a)) ?? rising(withoutSlack(a), Math.asin);
    case 'acos': {
      const unit = withoutSlack(a);
      return outsideUnit(unit) ?? widened(Math.acos(unit[1]), Math.acos(unit[0]));
    }
    case 'atan':
      return rising(a, Math.atan);
    case 'atan2':
      return angleBounds(a, b);
    case 'floor':
      return exactly(a, Math.floor);
    case 'ceil':
      return exactly(a, Math.ceil);
    case 'round':
      return exactly(a, roundHalfAway);
    case 'sign':
      return exactly(a, Math.sign);
    default:
      throw new TypeError(`no bounds for ${name}`);
  }
}

const outsideUnit = ([low, high]: Interval): string | undefined =>
  low < -1 || high > 1 ? 'may ask for an angle from a number outside −1 to 1' : undefined;

const SLACK = 1e-12;

/** Takes an end that only widening has pushed past 1 or −1 back to it. */
export const withoutSlack = ([low, high]: Interval): Interval => [
  low < -1 && low > -1 - SLACK ? -1 : low,
  high > 1 && high < 1 + SLACK ? 1 : high,
];

function powerBounds(a: Interval, b: Interval): Interval | string {
  if (a[0] < 0) {
    if (!isPoint(b) || !Number.isInteger(b[0]))
      return 'may raise a negative number to a power that is not whole';
    return wholePowerBounds(a, b[0]);
  }
  if (a[0] === 0 && b[0] < 0) return 'may divide by zero';
  // With a base not below zero the power rises or falls steadily along each edge.
  const corners = [a[0] ** b[0], a[0] ** b[1], a[1] ** b[0], a[1] ** b[1]];
  if (a[0] === 0 && b[0] === 0 && !isPoint(b)) corners.push(0, 1);
  return widened(...hullOf(corners));
}

function wholePowerBounds(a: Interval, n: number): Interval | string {
  if (n < 0 && holdsZero(a)) return 'may divide by zero';
  const ends = [a[0] ** n, a[1] ** n];
  if (n > 0 && n % 2 === 0 && holdsZero(a)) ends.push(0);
  return widened(...hullOf(ends));
}

/** Whether the interval holds `first` + a whole number of `period`, with a little to spare. */
function contains([low, high]: Interval, first: number, period: number): boolean {
  const slack = 4 * Number.EPSILON * Math.max(1, Math.abs(low), Math.abs(high));
  return Math.ceil((low - slack - first) / period) <= Math.floor((high + slack - first) / period);
}

/** Sine or cosine, whose crest lies at `crest` and every turn after. */
function waveBounds(a: Interval, f: (x: number) => number, crest: number): Interval {
  const turn = 2 * Math.PI;
  if (a[1] - a[0] >= turn) return [-1, 1];
  const ends = widened(...hullOf([f(a[0]), f(a[1])]));
  const high = contains(a, crest, turn) ? 1 : ends[1];
  const low = contains(a, crest - Math.PI, turn) ? -1 : ends[0];
  return within([low, high], -1, 1);
}

function angleBounds(y: Interval, x: Interval): Interval {
  // Angles jump by a turn where y changes sign left of the origin.
  if (x[0] <= 0 && y[0] <= 0 && y[1] >= 0) return widened(-Math.PI, Math.PI);
  return widened(
    ...hullOf([
      Math.atan2(y[0], x[0]),
      Math.atan2(y[0], x[1]),
      Math.atan2(y[1], x[0]),
      Math.atan2(y[1], x[1]),
    ]),
  );
}

/** Guaranteed bounds of every symbol when inputs are only known to lie in intervals. */
import type { Expression, OperationNode } from './expression.ts';
import { boundOperation, hull, isPoint, withoutSlack } from './interval.ts';
import { plainText } from './print-plain.ts';
import { treesOf } from './trees.ts';
import type { Argument, Curve, Interval, ProcedureSymbol, Sheet, SymbolSpec } from './types.ts';
import { type Absence, bothAbsent, missing, undefinedFor } from './walk.ts';
import { callProcedure, inDomain, inputValue, nameOf } from './walk-sheet.ts';

/** An interval in which a symbol surely lies, or why none can be given. */
export type Bounds = { readonly state: 'known'; readonly interval: Interval } | Absence;
export type BoundGiven<K extends string> = { readonly [P in K]?: Interval | Argument | undefined };

type Bound = Interval | Absence;
type ReadBound = (key: string) => Bound;
const isBound = (value: Bound): value is Interval => Array.isArray(value);

/**
 * Bounds of all symbols in SI. They hold every value that `evaluate` or `lanes` gives for inputs within theirs; they
 * may be wider than needed where an input stands in a formula twice. A condition that is not decided counts both ways.
 */
export function bounds<K extends string>(sheet: Sheet<K>, given: BoundGiven<K>): Record<K, Bounds> {
  const { expressions } = treesOf(sheet as Sheet);
  const found = new Map<string, Bound>();
  const read: ReadBound = (key) => found.get(key)!;
  const result = {} as Record<K, Bounds>;
  for (const key of sheet.order) {
    const spec = sheet.symbols[key] as SymbolSpec;
    const where = nameOf(sheet as Sheet, key);
    let bound: Bound;
    if (spec.kind === 'constant') bound = [sheet.constants[key]!, sheet.constants[key]!];
    else if (spec.kind === 'formula')
      bound = domainBound(spec, where, walkBounds(expressions.get(key)!, read, where));
    else if (spec.kind === 'procedure') {
      bound = domainBound(spec, where, procedureBounds(spec, where, given as BoundGiven<string>, read));
    } else bound = inputBound(spec, key, given[key]);
    found.set(key, bound);
    result[key] = isBound(bound) ? { state: 'known', interval: bound } : bound;
  }
  return result;
}

const isInterval = (given: Interval | Argument): given is Interval => Array.isArray(given);

function inputBound(spec: SymbolSpec, key: string, given: Interval | Argument | undefined): Bound {
  if (given === undefined) return missing([key]);
  const [low, high] = isInterval(given) ? given : [given, given];
  const first = inputValue(spec, key, low);
  const last = inputValue(spec, key, high);
  if (typeof first !== 'number') return first;
  if (typeof last !== 'number') return last;
  return first <= last ? [first, last] : undefinedFor(`${spec.name} has its lower bound above its upper one`);
}

function domainBound(spec: SymbolSpec, where: string, bound: Bound): Bound {
  if (!isBound(bound)) return bound;
  const fitted = 'domain' in spec && spec.domain === 'fraction' ? withoutSlack(bound) : bound;
  for (const end of fitted) {
    const lawful = inDomain(spec, where, end);
    if (typeof lawful !== 'number') return lawful;
  }
  return fitted;
}

function walkBounds(node: Expression, read: ReadBound, where: string): Bound {
  if (node.kind === 'number') return [node.value, node.value];
  if (node.kind === 'symbol') return read(node.key);
  if (node.operation === 'choose') return chooseBounds(node, read, where);
  const args = node.args.map((arg) => walkBounds(arg, read, where));
  const decisive = node.operation === 'and' ? 0 : node.operation === 'or' ? 1 : undefined;
  if (decisive !== undefined) {
    const decided = args.find((arg) => isBound(arg) && isPoint(arg) && arg[0] === decisive);
    const first = args[0]!;
    if (decided && (isBound(first) || first.state === 'missing')) return decided;
  }
  const absences = args.filter((arg): arg is Absence => !isBound(arg));
  if (absences.length > 0) return absences.reduce((a, b) => bothAbsent(a, b));
  const bound = boundOperation(node.operation, args as Interval[]);
  if (typeof bound === 'string') {
    return undefinedFor(`${where} has no bounds: it ${bound} in ${plainText(node)}`);
  }
  if (!bound.every(Number.isFinite)) {
    return undefinedFor(
      `${where} has no bounds: it may come to a number too large to hold in ${plainText(node)}`,
    );
  }
  return bound;
}

function chooseBounds(node: OperationNode, read: ReadBound, where: string): Bound {
  const condition = walkBounds(node.args[0]!, read, where);
  if (!isBound(condition)) return condition;
  if (isPoint(condition)) return walkBounds(node.args[condition[0] ? 1 : 2]!, read, where);
  const yes = walkBounds(node.args[1]!, read, where);
  const no = walkBounds(node.args[2]!, read, where);
  if (isBound(yes) && isBound(no)) return hull(yes, no);
  return isBound(yes) ? no : isBound(no) ? yes : bothAbsent(yes, no);
}

/** A procedure is a closed box: it is bounded at a point, or where it says itself how. */
function procedureBounds(
  spec: ProcedureSymbol,
  where: string,
  given: BoundGiven<string>,
  read: ReadBound,
): Bound {
  let absent: Absence | undefined;
  const args: (Interval | Curve)[] = [];
  for (const key of spec.reads) {
    const bound = read(key);
    const curve = given[key];
    if (!isBound(bound)) absent = absent ? bothAbsent(absent, bound) : bound;
    else args.push(typeof curve === 'object' && !isInterval(curve) ? curve : bound);
  }
  if (absent) return absent;
  const points = args.map((arg) => ('x' in arg ? arg : isPoint(arg) ? arg[0] : undefined));
  if (points.every((point) => point !== undefined)) {
    const value = callProcedure(spec, where, points);
    return typeof value === 'number' ? [value, value] : value;
  }
  const own = spec.bounds?.(...args);
  if (own?.every(Number.isFinite) && own[0] <= own[1]) return own;
  return undefinedFor(`${where} has no bounds: it is worked out step by step, not by a formula`);
}

/**
 * What the timings work: all sheets of each sample joined, and sixty formulas of about six terms; or the sheets of a module
 * named on the command line.
 */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { assess } from '../dist/engine/assess/index.js';
import { join as joinWorkings } from '../dist/engine/assess/joined.js';
import { readRefit } from '../dist/engine/refit/index.js';
import { defineSheet, evaluate, formula, input } from '../dist/engine/sheet/index.js';
import { keepTrees, treesOf } from '../dist/engine/sheet/trees.js';

const KINDS = [
  'p * q + r / s - t * u',
  'sqrt(p * q + r * r) / (s + t) * u',
  'p^2 * q / (r + s) + t - u',
  'exp(-p / q) * r + s * t - u',
  'p * sin(q) + r * cos(s) + t * u',
  'ln(p / q) * r + s / (t + u)',
  'p * q^1.5 + r * s - t / u',
  'atan(p / q) * r - s * t + u',
  '(p - q) / (r + s) * t + u^2',
  'max(p * q, r * s) + t / u',
  'p > q ? r * s + t : u * t - r',
  'p^0.7 * q + r / s + t * u',
  'tan(p / 4) * q + r * s - t / u',
  '1 / (p + q) + t * u / (r + s)',
  'p * q * r / (s * t * u)',
];
const INPUTS = Array.from({ length: 20 }, (_, at) => `x${at + 1}`);

function localSheet() {
  const symbols = Object.fromEntries(INPUTS.map((key) => [key, input(key, '1')]));
  for (let at = 0; at < 60; at++) {
    const names = new Map([...'pqrstu'].map((letter, place) => [letter, INPUTS[(at * 7 + place * 3) % 20]]));
    const expression = KINDS[at % KINDS.length].replace(/\b[p-u]\b/g, (letter) => names.get(letter));
    symbols[`f${at + 1}`] = formula(`f${at + 1}`, '1', expression, 'made up for the timings');
  }
  return defineSheet({ id: 'timings', title: 'Timings', about: 'made up', symbols });
}

/** Seeded numbers from 0 to 1. */
export function seeded(seed) {
  let state = seed;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
}

/** A value an input may have: from 0.5 to 2, a fraction from 0.5 to 1. */
export const plausible = (sheet, key, next) =>
  sheet.symbols[key].domain === 'fraction' ? 0.5 + next() / 2 : 0.5 + next() * 1.5;

/**
 * All workings of a sample as one sheet. What a procedure gives is given from outside on both sides: it has no
 * counterpart there. `wanted`: what its checks compare.
 */
function sampleSheet(id) {
  const text = readFileSync(new URL(`../samples/${id}.json`, import.meta.url), 'utf8');
  const { sheet, sources, given, compares } = joinWorkings(assess(readRefit(text).value));
  const isProcedure = (key) => sheet.symbols[key].kind === 'procedure';
  const procedures = sheet.derived.filter(isProcedure);
  const doubtful = new Set(
    [...sources]
      .filter(([, { value }]) => value.state === 'known' && value.doubt.size > 0)
      .map(([key]) => key),
  );
  const plain = {
    ...sheet,
    id,
    symbols: Object.fromEntries(
      sheet.order.map((key) => [
        key,
        isProcedure(key) ? { kind: 'input', name: key, unit: '1' } : sheet.symbols[key],
      ]),
    ),
    inputs: [...sheet.inputs, ...procedures],
    derived: sheet.derived.filter((key) => !isProcedure(key)),
    dependsOn: Object.fromEntries(
      sheet.order.map((key) => [
        key,
        [...new Set([...sheet.dependsOn[key], ...procedures.filter((each) => reaches(sheet, key, each))])],
      ]),
    ),
  };
  keepTrees(plain, treesOf(sheet));
  const nominal = evaluate(sheet, given);
  const value = (key) => given[key] ?? nominal[key]?.value;
  const varies = (key) => doubtful.has(key) || sheet.dependsOn[key]?.some((each) => doubtful.has(each));
  const wanted = [...new Set([...compares.values()].flatMap((each) => Object.values(each)))];
  return {
    sheet: plain,
    wanted: wanted.filter((key) => plain.derived.includes(key)),
    formulas: neededFormulas(plain, wanted),
    given: (next, lanes) =>
      Object.fromEntries(
        plain.inputs
          .filter((key) => typeof value(key) === 'number')
          .map((key) => [
            key,
            lanes && varies(key)
              ? Float64Array.from({ length: lanes }, () => value(key) * (0.98 + 0.04 * next()))
              : value(key) * (lanes ? 1 : 0.98 + 0.04 * next()),
          ]),
      ),
  };
}

const readsOf = (node) =>
  node.kind === 'symbol' ? [node.key] : node.kind === 'operation' ? node.args.flatMap(readsOf) : [];

function reaches(sheet, key, target, seen = new Set()) {
  if (key === target) return true;
  if (seen.has(key)) return false;
  seen.add(key);
  const spec = sheet.symbols[key];
  const tree = treesOf(sheet).expressions.get(key);
  const reads = spec.kind === 'procedure' ? spec.reads : tree ? readsOf(tree) : [];
  return reads.some((read) => reaches(sheet, read, target, seen));
}

/** Formulas that what is wanted needs, in working order. A symbol that only stands for another is no formula of its own. */
function neededFormulas(sheet, wanted) {
  const { expressions } = treesOf(sheet);
  const needed = new Set();
  const visit = (key) => {
    if (needed.has(key) || !expressions.has(key)) return;
    needed.add(key);
    for (const read of readsOf(expressions.get(key))) visit(read);
  };
  for (const key of wanted) visit(key);
  return sheet.derived
    .filter((key) => needed.has(key))
    .map((key) => ({ key, tree: expressions.get(key), isAlias: expressions.get(key).kind === 'symbol' }));
}

export const SAMPLE_IDS = ['carriage-works-lathe', 'boatyard-mill'];

/**
 * What to time: `{ sheet, wanted, formulas, given(next, lanes) }`. `path` and `name` say where a list or record of sheets is
 * exported; without them the samples and the local sheet. Formulas that need a procedure are left out of a module's
 * sheets: they have no counterpart outside.
 */
export async function benchSheets(path, name) {
  if (!path) return [...SAMPLE_IDS.map(sampleSheet), plainSheet(localSheet())];
  const exported = (await import(pathToFileURL(path).href))[name ?? 'HANDBOOK'];
  const sheets = Array.isArray(exported) ? exported : Object.values(exported);
  return sheets.map(plainSheet).filter(({ formulas }) => formulas.length);
}

function plainSheet(sheet) {
  const formulas = plainFormulas(sheet);
  const inputs = sheet.inputs.filter((key) => sheet.symbols[key].kind === 'input');
  return {
    sheet,
    wanted: formulas.map(({ key }) => key),
    formulas,
    given: (next, lanes) =>
      Object.fromEntries(
        inputs.map((key) => [
          key,
          lanes
            ? Float64Array.from({ length: lanes }, () => plausible(sheet, key, next))
            : plausible(sheet, key, next),
        ]),
      ),
  };
}

function plainFormulas(sheet) {
  const { expressions } = treesOf(sheet);
  const plain = new Set();
  for (const key of sheet.derived) {
    const tree = expressions.get(key);
    const derived = tree && readsOf(tree).filter((read) => sheet.derived.includes(read));
    if (derived?.every((read) => plain.has(read))) plain.add(key);
  }
  return [...plain].map((key) => ({ key, tree: expressions.get(key), isAlias: false }));
}

/** Operators and functions of the formula language as an outside language writes them. */
export function written(node, { symbol, operators, functions, choose, negate, not }) {
  const write = (each) => written(each, { symbol, operators, functions, choose, negate, not });
  if (node.kind === 'number') return String(node.value);
  if (node.kind === 'symbol') return symbol(node.key);
  const args = node.args.map(write);
  if (node.operation === 'choose') return choose(...args);
  if (node.operation === 'negate') return negate(args[0]);
  if (node.operation === 'not') return not(args[0]);
  const operator = operators[node.operation];
  if (operator) return `(${args.join(` ${operator} `)})`;
  return functions(node.operation, args);
}

export const OPERATORS = {
  add: '+',
  subtract: '-',
  multiply: '*',
  divide: '/',
  less: '<',
  lessOrEqual: '<=',
  greater: '>',
  greaterOrEqual: '>=',
  equal: '==',
  unequal: '!=',
};

export const median = (times) => [...times].sort((a, b) => a - b)[times.length >> 1];

export function report(label, ours, theirs, unit) {
  const line = (name, times) =>
    `${name.padEnd(34)} min ${(Math.min(...times) * unit.scale).toFixed(2)} ${unit.name}, median ${(median(times) * unit.scale).toFixed(2)} ${unit.name}`;
  console.log(line(ours.name, ours.times));
  console.log(line(theirs.name, theirs.times));
  const ratio = (of) => (of(theirs.times) / of(ours.times)).toFixed(2);
  console.log(
    `${label}: ${ratio((times) => Math.min(...times))} times (min), ${ratio(median)} times (median)\n`,
  );
}

/** Sixty formulas of about six terms for the timings, or the sheets of a module named on the command line. */
import { pathToFileURL } from 'node:url';
import { defineSheet, formula, input } from '../dist/engine/sheet/index.js';
import { treesOf } from '../dist/engine/sheet/trees.js';

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
 * Sheets to time. `path` and `name` say where a list or record of sheets is exported; without them the local one.
 * Only formulas that need no procedure are timed: the others have no counterpart outside.
 */
export async function benchSheets(path, name) {
  const exported = path ? (await import(pathToFileURL(path).href))[name ?? 'HANDBOOK'] : [localSheet()];
  const sheets = Array.isArray(exported) ? exported : Object.values(exported);
  return sheets
    .map((sheet) => ({ sheet, formulas: plainFormulas(sheet) }))
    .filter(({ formulas }) => formulas.length);
}

function plainFormulas(sheet) {
  const { expressions } = treesOf(sheet);
  const plain = new Set();
  const reads = (node) =>
    node.kind === 'symbol' ? [node.key] : node.kind === 'operation' ? node.args.flatMap(reads) : [];
  for (const key of sheet.derived) {
    const tree = expressions.get(key);
    const derived = tree && reads(tree).filter((read) => sheet.derived.includes(read));
    if (derived?.every((read) => plain.has(read))) plain.add(key);
  }
  return [...plain].map((key) => ({ key, tree: expressions.get(key), text: sheet.symbols[key].expression }));
}

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

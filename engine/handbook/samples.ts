/** Random plausible inputs for any sheet, for the tests that walk all of them. */
import { parseQuantity } from '../quantity/index.ts';
import { evaluate } from '../sheet/index.ts';
import type { Argument, Curve, Outcome, Sheet, SymbolSpec } from '../sheet/types.ts';

/** Usual sizes in the unit as typed; any other unit is sampled from a tenth to ten of it. */
const SIZES: Readonly<Record<string, readonly [low: number, high: number]>> = {
  '1': [0.05, 4],
  '%': [5, 95],
  '°': [5, 85],
  '°C': [10, 150],
  mm: [2, 800],
  µm: [0.5, 50],
  N: [50, 5000],
  kN: [2, 50],
  N·m: [0.1, 20],
  'N·m/A': [0.05, 1],
  'N/µm': [50, 1000],
  'kg·m²': [1e-5, 1e-2],
  kg: [5, 300],
  'kg/m³': [2500, 8000],
  'r/min': [100, 3000],
  'm/min': [0.5, 20],
  'mm/min': [10, 5000],
  V: [4, 120],
  A: [0.5, 20],
  W: [5, 1000],
  VA: [50, 2000],
  Ω: [0.1, 20],
  µF: [100, 20000],
  mH: [0.5, 20],
  Hz: [10, 1000],
  kHz: [5, 500],
  K: [1, 60],
  ms: [2, 200],
  µs: [0.5, 50],
  'rad/s²': [50, 5000],
  'N·m·s/rad': [1e-5, 1e-2],
  teeth: [12, 60],
  lines: [100, 2500],
};

export type Point = Readonly<Record<string, Argument>>;

/** A repeatable source of numbers from 0 to 1: mulberry32. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** One random point for all inputs of a sheet, in SI. */
export function samplePoint(sheet: Sheet, random: () => number): Point {
  return Object.fromEntries(sheet.inputs.map((key) => [key, sampleOf(sheet.symbols[key]!, random)]));
}

/**
 * Random points, seeded by the sheet's id, until each derived symbol was known `times` times.
 * Symbols that were never known in `tries` points are named in `never`.
 */
export function samplePoints(
  sheet: Sheet,
  times: number,
  tries = 20_000,
): { points: { point: Point; outcomes: Record<string, Outcome> }[]; never: string[] } {
  const random = seeded([...sheet.id].reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), 7));
  const wanted = new Map(sheet.derived.map((key) => [key, times]));
  const points: { point: Point; outcomes: Record<string, Outcome> }[] = [];
  for (let n = 0; n < tries && wanted.size > 0; n += 1) {
    const point = samplePoint(sheet, random);
    const outcomes = evaluate(sheet, point);
    const news = [...wanted.keys()].filter((key) => outcomes[key]!.state === 'known');
    if (news.length === 0) continue;
    points.push({ point, outcomes });
    for (const key of news) {
      const left = wanted.get(key)! - 1;
      if (left > 0) wanted.set(key, left);
      else wanted.delete(key);
    }
  }
  return { points, never: [...wanted.keys()] };
}

function sampleOf(spec: SymbolSpec, random: () => number): Argument {
  if (spec.kind !== 'curve') return sizeIn(spec.unit, 'domain' in spec ? spec.domain : 'any', random);
  const rising: number[] = [];
  for (let k = 0; k < 5; k += 1)
    rising.push((rising.at(-1) ?? 0) + sizeIn(spec.xUnit, 'positive', random) / 2);
  return { x: rising, y: rising.map(() => sizeIn(spec.unit, 'positive', random)) } satisfies Curve;
}

function sizeIn(unit: string, domain: string | undefined, random: () => number): number {
  const [low, high] =
    domain === 'fraction' ? (unit === '%' ? [2, 98] : [0.02, 0.98]) : (SIZES[unit] ?? [0.1, 10]);
  const size = low * (high / low) ** random();
  const sign = (domain === undefined || domain === 'any') && unit !== '°C' && random() < 0.3 ? -1 : 1;
  const parsed = parseQuantity(unit === '1' ? `${sign * size}` : `${sign * size} ${unit}`, unit);
  if (!parsed.ok) throw new Error(`'${size} ${unit}' cannot be read: ${parsed.problem.message}`);
  return parsed.value.value;
}

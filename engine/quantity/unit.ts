/** Units as people write them: `parseUnit`, and the reading that heeds what is expected. */
import { LONGEST, normalise, quote } from './characters.ts';
import { isNamed } from './describe.ts';
import { productOf } from './dimension.ts';
import { nearestUnit } from './nearest.ts';
import type { Dimension, Problem, Result, Unit } from './types.ts';
import { ok, refuse } from './types.ts';
import type { Factor } from './unit-scan.ts';
import { scanUnit } from './unit-scan.ts';
import type { Piece } from './unit-symbol.ts';
import { symbolOf } from './unit-symbol.ts';
import type { Meaning } from './unit-table.ts';

/** One way of reading a unit's text. */
export interface UnitReading {
  readonly unit: Unit;
  /** Set where a spelling alone was taken in a meaning other than its usual one: 'lb was read as pound-force'. */
  readonly note?: string;
}

const tidyExponent = (n: number): number => Math.round(n * 1e9) / 1e9;

const isForce = (m: Meaning | undefined): m is Meaning =>
  m !== undefined && m.dimension.kg === 1 && m.dimension.s === -2 && m.dimension.m === 1;

const isAlone = (factors: readonly Factor[]): boolean => factors.length === 1 && factors[0]!.power === 1;

/** Alone, a spelling can have any of its meanings; in a compound only mass and force change places. */
function meaningOf(meanings: readonly Meaning[], variant: number, alone: boolean): Meaning {
  const other = meanings[variant];
  return other && (alone || isForce(other)) ? other : meanings[0]!;
}

function build(factors: readonly Factor[], variant: number): Unit {
  const terms: [Dimension, number][] = [];
  let scale = 1;
  const pieces: Piece[] = [];
  const alone = isAlone(factors);
  let offset = 0;
  for (const f of factors) {
    const exponent = tidyExponent(f.power);
    if (typeof f.of === 'number') {
      scale *= f.of ** exponent;
      if (f.of !== 1) pieces.push({ symbol: String(f.of), power: exponent, hyphen: f.hyphen });
      continue;
    }
    const meaning = meaningOf(f.of.meanings, variant, alone);
    terms.push([meaning.dimension, exponent]);
    scale *= meaning.scale ** exponent;
    // Inside a compound, degrees Celsius are differences.
    if (alone) offset = meaning.offset;
    pieces.push({ symbol: variant === 0 ? f.of.print : meaning.symbol, power: exponent, hyphen: f.hyphen });
  }
  return { symbol: symbolOf(pieces), dimension: productOf(terms), scale, offset };
}

/** Pounds and inches to the same power are a torque in whatever compound they stand: rpm/oz-in. */
function holdsTorque(factors: readonly Factor[]): boolean {
  const powers = (pick: (m: readonly Meaning[]) => boolean): readonly number[] => {
    const sums = new Map<string, number>();
    for (const { of, power: p } of factors)
      if (typeof of !== 'number' && pick(of.meanings)) sums.set(of.print, (sums.get(of.print) ?? 0) + p);
    return [...sums.values()].filter((sum) => sum !== 0);
  };
  const forces = powers((m) => isForce(m[1]));
  return powers((m) => m[0]!.dimension.m === 1 && m[0]!.dimension.s === 0).some((p) => forces.includes(p));
}

function usualReading(factors: readonly Factor[], readings: readonly Unit[]): number {
  const named = readings.findIndex((unit) => isNamed(unit.dimension));
  if (named >= 0) return named;
  return readings.length > 1 && holdsTorque(factors) ? 1 : 0;
}

const GD2 = /(?:^\(? ?G ?D(?:\^2|2) ?\)? ?)|(?: ?[·(]? ?\(? ?G ?D(?:\^2|2) ?\)?$)/i;

/** Flywheel effect GD² = 4 J, given in kgf·m² or kg·m² alike: the kilograms are those of the rotor's mass. */
function flywheelEffect(text: string): Result<readonly UnitReading[]> | undefined {
  const normal = normalise(text);
  if (!GD2.test(normal)) return undefined;
  const rest = normal
    .replace(GD2, '')
    .replace(/\bkgf/g, 'kg')
    .replace(/\bkp/g, 'kg')
    .replace(/\blbf/g, 'lb')
    .replace(/\bgf/g, 'g');
  const inner = readUnit(rest);
  if (!inner.ok) return inner;
  const inertia = inner.value.find(
    ({ unit }) => unit.dimension.kg === 1 && unit.dimension.m === 2 && unit.dimension.s === 0,
  );
  if (!inertia)
    return refuse({
      code: 'malformed',
      message: 'GD² is a mass times a length squared, such as kgf·m² GD².',
      suggestion: 'kgf·m² GD²',
    });
  const { unit } = inertia;
  const symbol = `${unit.symbol} GD²`;
  return ok([
    { unit: { ...unit, symbol, scale: unit.scale / 4 }, note: 'GD² was read as four times the inertia' },
  ]);
}

const read = new Map<string, Result<readonly UnitReading[]>>();

/** All ways to read a unit's text, the usual one first. */
export function readUnit(text: string): Result<readonly UnitReading[]> {
  const seen = read.get(text);
  if (seen) return seen;
  const result = readAfresh(text);
  // The same few units come again and again; what people mistype does not fill the memory.
  if (result.ok && text.length < 40 && read.size < 2000) read.set(text, result);
  return result;
}

function readAfresh(text: string): Result<readonly UnitReading[]> {
  if (text.length > LONGEST)
    return refuse({
      code: 'too-long',
      message: `The unit has more than ${LONGEST} characters. Write it as on the plate, e.g. N·m.`,
    });
  if (normalise(text) === '')
    return refuse({ code: 'empty', message: 'No unit is given. Write one, e.g. mm.', suggestion: 'mm' });
  const flywheel = flywheelEffect(text);
  if (flywheel) return flywheel;
  const scanned = scanUnit(text);
  if (!scanned.ok) return refuse(withSuggestion(text, scanned.problem));
  const factors = scanned.value;
  if (factors.some((f) => typeof f.of === 'number' && f.of !== 1 && f.power > 0))
    return refuse({
      code: 'malformed',
      message: `A number stands inside the unit ${quote(text)}. Only below a stroke may one stand, such as V/1000 rpm.`,
    });
  const alone = isAlone(factors);
  const variants = Math.max(
    1,
    ...factors.map((f) =>
      typeof f.of === 'number' ? 1 : alone ? f.of.meanings.length : isForce(f.of.meanings[1]) ? 2 : 1,
    ),
  );
  const readings: Unit[] = [];
  for (let v = 0; v < variants; v++) {
    const unit = build(factors, v);
    if (!Number.isFinite(unit.scale) || unit.scale <= 0)
      return refuse({
        code: 'not-finite',
        message: `The unit ${quote(text)} is too large or too small to work with.`,
      });
    readings.push(unit);
  }
  const usual = usualReading(factors, readings);
  const [only] = factors;
  const atom = alone && typeof only?.of === 'object' ? only.of : undefined;
  const others = readings.flatMap((unit, i): UnitReading[] => {
    // What comes before the usual one in the list names no quantity that anybody meets.
    if (i <= usual) return [];
    const name = atom ? atom.meanings[i]!.name : unit.symbol;
    return [{ unit, note: `“${normalise(text)}” was read as ${name}` }];
  });
  // The usual reading keeps the plate's spelling: oz-in, not ozf-in.
  return ok([{ unit: { ...readings[usual]!, symbol: readings[0]!.symbol } }, ...others]);
}

function withSuggestion(text: string, problem: Problem): Problem {
  const { where, ...rest } = problem;
  if (problem.code !== 'unit-unknown' || where === undefined) return rest;
  const near = nearestUnit(where);
  if (near === undefined)
    return { ...rest, message: `${rest.message} Write it as on the plate, e.g. N·m, mm or r/min.` };
  const whole = normalise(text).replace(where, near);
  return { ...rest, message: `${rest.message} Did you mean “${near}”?`, suggestion: whole };
}

/**
 * Reads a unit: `N·m`, `oz-in-sec^2`, `V/1000 rpm`, `kgf·m² GD²`; `1` is the plain number.
 * Ounces, pounds and kilograms alone are masses; in a compound they are what makes a usual quantity (force in oz-in, mass in oz-in²).
 */
export function parseUnit(text: string): Result<Unit> {
  const readings = readUnit(text);
  return readings.ok ? ok(readings.value[0]!.unit) : readings;
}

/** A unit from the program's own text. Throws RangeError when it is none: that is a slip in the program, not in what a person typed. */
export function unitOf(text: string): Unit {
  const unit = parseUnit(text);
  if (!unit.ok) throw new RangeError(`Unit ${quote(text)}: ${unit.problem.message}`);
  return unit.value;
}

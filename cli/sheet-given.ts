/** What a person types for the symbols of a sheet, as numbers in SI with their doubt. */

import { type Basis, parseQuantity, standardUncertainty } from '../engine/quantity/index.ts';
import { nearest } from '../engine/quantity/nearest.ts';
import { readFact } from '../engine/refit/read-fact.ts';
import type { Argument, CurveSymbol, Sheet, SheetDescription } from '../engine/sheet/index.ts';
import { shown } from './arguments.ts';
import { assignment } from './assignment.ts';
import { Refusal } from './refusal.ts';

export interface SheetGiven {
  readonly values: Readonly<Record<string, Argument>>;
  /** Standard uncertainty by symbol, SI. */
  readonly doubts: ReadonlyMap<string, number>;
  /** How a value was read, where that is not plain: 'P: read as …'. */
  readonly notes: readonly string[];
}

const MOST_TYPED = 20_000;

/** Throws Refusal that names the symbol. */
export function readGiven(
  sheet: Sheet,
  description: SheetDescription,
  words: readonly string[],
  basis: Basis,
): SheetGiven {
  const values: Record<string, Argument> = Object.create(null);
  const doubts = new Map<string, number>();
  const notes: string[] = [];
  for (const word of words) {
    const [name, text] = assignment(word, `symbol=value, such as ${example(sheet)}`);
    const key = symbolOf(sheet, description, name);
    if (Object.hasOwn(values, key)) throw new Refusal(`${key} was given twice; give it once.`);
    const spec = sheet.symbols[key]!;
    const before = `${key} (${spec.name}): `;
    if (text === '')
      throw new Refusal(`${before}nothing was given after the “=”; leave it out while it is not known.`);
    if (text.length > MOST_TYPED) throw new Refusal(`${before}that is too long to be a value.`);
    if (spec.kind === 'curve') {
      values[key] = readPoints(spec, text, before);
      continue;
    }
    const read = parseQuantity(text, { unit: spec.unit, ...lengthOf(spec.name) });
    if (!read.ok) {
      const { message, readings = [] } = read.problem;
      throw new Refusal([`${before}${message}`, ...readings.map((each) => `– ${each}`)].join('\n'));
    }
    const { starts } = read.value;
    const times = spec.name === 'lead' ? (starts ?? 1) : 1;
    values[key] = read.value.value * times;
    doubts.set(key, standardUncertainty(read.value, basis) * times);
    if (starts !== undefined && times === 1 && starts !== 1)
      notes.push(`${key}: the pitch alone; the ${starts} starts have their own symbol`);
    notes.push(...read.value.notes.map((note) => `${key}: ${note}`));
  }
  return { values, doubts, notes };
}

/** So that 'radius 8 mm' given for a diameter is read as 16 mm. */
function lengthOf(name: string): { of?: 'diameter' | 'radius' } {
  if (/\bdiameter\b/.test(name)) return { of: 'diameter' };
  return /\bradius\b/.test(name) ? { of: 'radius' } : {};
}

function example(sheet: Sheet): string {
  const key = sheet.inputs.find((each) => sheet.symbols[each]!.kind === 'input');
  const unit = key === undefined ? '1' : sheet.symbols[key]!.unit;
  return `${key ?? 'x'}='1.2${unit === '1' ? '' : ` ${unit}`}'`;
}

/** By its key or as it is printed (η_b); a slip of capitals is forgiven where only one symbol is meant. */
function symbolOf(sheet: Sheet, { symbols }: SheetDescription, typed: string): string {
  const exact = symbols.find(({ key, plain }) => key === typed || plain === typed);
  const loose = symbols.filter(({ key }) => key.toLowerCase() === typed.toLowerCase());
  const found = exact ?? (loose.length === 1 ? loose[0] : undefined);
  if (!found) {
    const near = nearest(shown(typed), sheet.inputs);
    throw new Refusal(
      `The sheet ${sheet.id} has no symbol “${shown(typed)}”.${near ? ` Did you mean ${near}?` : ''} It asks for ${sheet.inputs.join(', ')}.`,
    );
  }
  if (sheet.inputs.includes(found.key)) return found.key;
  throw new Refusal(
    found.kind === 'constant'
      ? `${found.key} (${found.name}) is a fixed number in the sheet ${sheet.id}: ${found.value}.`
      : `${found.key} (${found.name}) is what the sheet ${sheet.id} works out; it asks for ${sheet.inputs.join(', ')}.`,
  );
}

/** A curve is written as it is in a refit. */
function readPoints(spec: CurveSymbol, text: string, before: string): Argument {
  const { name, unit, xName, xUnit } = spec;
  const read = readFact(
    { kind: 'curve', name, unit, xName, xUnit, trouble: 1, findOut: '' },
    { kind: 'curve', text },
  );
  if (!read.ok) throw new Refusal(`${before}${read.problem.message}`);
  if (read.value.kind !== 'curve') throw new TypeError('a curve reads as a curve');
  return read.value.curve;
}

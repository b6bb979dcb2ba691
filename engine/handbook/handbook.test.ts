/** What must hold for every sheet of the handbook. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { bounds, evaluate, gradient, lanes } from '../sheet/index.ts';
import type { Argument, Curve, Interval, Sheet } from '../sheet/types.ts';
import { HANDBOOK } from './index.ts';
import { samplePoints, seeded } from './samples.ts';

test('derived: no two sheets share an id, and the list is in alphabetical order', () => {
  const ids = HANDBOOK.map((sheet) => sheet.id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(ids).toEqual([...ids].sort());
});

test('derived: every sheet that stands in this room is in the list', () => {
  const list = readFileSync(join(import.meta.dirname, 'index.ts'), 'utf8');
  const files = readdirSync(import.meta.dirname).filter(
    (file) => file.endsWith('.ts') && !file.endsWith('.test.ts'),
  );
  const sheets = files.filter((file) =>
    readFileSync(join(import.meta.dirname, file), 'utf8').includes('= defineSheet('),
  );
  expect(sheets.filter((file) => !list.includes(`'./${file}'`))).toEqual([]);
  expect(HANDBOOK).toHaveLength(sheets.length);
});

describe.each(HANDBOOK.map((sheet) => ({ id: sheet.id, sheet })))('$id', ({ sheet }) => {
  test('derived: every symbol has a plain name, every number and formula a source', () => {
    expect(sheet.title).toMatch(/\S/);
    expect(sheet.about).toMatch(/\.$/);
    for (const key of sheet.order) {
      const spec = sheet.symbols[key]!;
      expect(spec.name, key).toMatch(/\S/);
      if (spec.kind === 'constant' || spec.kind === 'formula' || spec.kind === 'procedure')
        expect(spec.source.trim(), `${key} has no source`).not.toBe('');
      if (spec.kind === 'procedure') expect(spec.says.trim(), key).not.toBe('');
    }
  });

  test('derived: every input is used', () => {
    const used = new Set(sheet.derived.flatMap((key) => sheet.dependsOn[key]!));
    expect(sheet.inputs.filter((key) => !used.has(key))).toEqual([]);
  });

  test('derived: every result is known for some plausible inputs, and never NaN', () => {
    const { points, never } = samplePoints(sheet, 5);
    expect(never).toEqual([]);
    for (const { outcomes } of points) {
      for (const key of sheet.derived) {
        const outcome = outcomes[key]!;
        if (outcome.state === 'known') expect(Number.isFinite(outcome.value), key).toBe(true);
        else expect(outcome.state, key).toBe('undefined');
      }
    }
  });

  test('derived: many lanes at once give what one answer at a time gives', () => {
    const { points } = samplePoints(sheet, 3);
    const given = Object.fromEntries(
      sheet.inputs.map((key) => {
        const first = points[0]!.point[key]!;
        if (typeof first !== 'number') return [key, first];
        return [key, Float64Array.from(points, ({ point }) => point[key] as number)];
      }),
    );
    const results = lanes(sheet, given, points.length);
    points.forEach(({ point }, lane) => {
      const alone = evaluate(sheet, { ...point, ...onlyCurves(given) });
      for (const key of sheet.derived) {
        const values = results.values[key]!;
        const value = typeof values === 'number' ? values : values[lane]!;
        const outcome = alone[key]!;
        if (outcome.state === 'known')
          expect(close(value, outcome.value, 1e-12), `${key}: ${value}`).toBe(true);
        else expect(value, key).toBeNaN();
      }
    });
  });

  test('derived: exact slopes agree with differences, each result over each of its inputs', () => {
    const { points } = samplePoints(sheet, 5);
    const left = new Set(
      sheet.derived.flatMap((key) => numbers(sheet, sheet.dependsOn[key]!).map((by) => `${key} over ${by}`)),
    );
    for (const { point } of points) {
      const { partials, outcomes } = gradient(sheet, point);
      for (const by of numbers(sheet, sheet.inputs)) {
        const at = point[by] as number;
        const step = 1e-5 * Math.abs(at);
        const below = evaluate(sheet, { ...point, [by]: at - step });
        const above = evaluate(sheet, { ...point, [by]: at + step });
        for (const key of sheet.derived) {
          const [low, here, high] = [below[key]!, outcomes[key]!, above[key]!];
          const slope = partials[key]?.[by];
          if (
            low.state !== 'known' ||
            here.state !== 'known' ||
            high.state !== 'known' ||
            slope === undefined
          )
            continue;
          // Both as the change of the result when the input doubles, so that units do not matter.
          const exact = slope * at;
          const difference = ((high.value - low.value) / (2 * step)) * at;
          const room = 1e-6 * (Math.abs(exact) + Math.abs(here.value));
          expect(
            Math.abs(difference - exact),
            `${key} over ${by}: ${difference}, ${exact}`,
          ).toBeLessThanOrEqual(room);
          left.delete(`${key} over ${by}`);
        }
      }
    }
    expect([...left], 'never compared').toEqual([]);
  });

  test('derived: bounds hold every value within them', () => {
    const { points } = samplePoints(sheet, 5);
    const random = seeded(11);
    const left = new Set(sheet.derived.filter((key) => !throughProcedure(sheet, key)));
    for (const { point } of points) {
      const intervals = Object.fromEntries(
        sheet.inputs.map((key) => [
          key,
          typeof point[key] === 'number' ? around(point[key], 1e-3) : point[key]!,
        ]),
      );
      const found = bounds(sheet, intervals);
      for (let n = 0; n < 20; n += 1) {
        const inside = Object.fromEntries(
          Object.entries(intervals).map(([key, each]) => [
            key,
            isInterval(each) ? within(each, random) : each,
          ]),
        );
        const outcomes = evaluate(sheet, inside);
        for (const key of sheet.derived) {
          const [bound, outcome] = [found[key]!, outcomes[key]!];
          if (bound.state !== 'known') continue;
          expect(outcome.state, `${key} has bounds but no value`).toBe('known');
          if (outcome.state !== 'known') continue;
          expect(outcome.value, key).toBeGreaterThanOrEqual(bound.interval[0]);
          expect(outcome.value, key).toBeLessThanOrEqual(bound.interval[1]);
          left.delete(key);
        }
      }
    }
    expect([...left], 'never bounded').toEqual([]);
  });
});

function onlyCurves(given: Readonly<Record<string, Argument | Float64Array>>): Record<string, Curve> {
  const curves: Record<string, Curve> = {};
  for (const [key, value] of Object.entries(given))
    if (typeof value === 'object' && 'x' in value) curves[key] = value;
  return curves;
}

function close(a: number, b: number, relative: number): boolean {
  return a === b || Math.abs(a - b) <= relative * Math.max(Math.abs(a), Math.abs(b));
}

/** Inputs that are numbers, not curves. */
function numbers(sheet: Sheet, keys: readonly string[]): string[] {
  return keys.filter((key) => sheet.symbols[key]!.kind === 'input');
}

/** Whether a symbol is a procedure or may depend on one: those may refuse to be bounded. */
function throughProcedure(sheet: Sheet, key: string): boolean {
  const inputs = new Set(sheet.dependsOn[key]!);
  return sheet.derived.some(
    (each) =>
      sheet.symbols[each]!.kind === 'procedure' &&
      (each === key || sheet.dependsOn[each]!.every((input) => inputs.has(input))),
  );
}

const around = (value: number, relative: number): Interval =>
  value >= 0
    ? [value * (1 - relative), value * (1 + relative)]
    : [value * (1 + relative), value * (1 - relative)];

const isInterval = (each: Interval | Argument): each is Interval => Array.isArray(each);

const within = ([low, high]: Interval, random: () => number): number => low + random() * (high - low);

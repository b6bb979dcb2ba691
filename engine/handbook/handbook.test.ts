/** What must hold for every sheet of the handbook. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { evaluate, lanes } from '../sheet/index.ts';
import type { Argument, Curve } from '../sheet/types.ts';
import { HANDBOOK } from './index.ts';
import { samplePoints } from './samples.ts';

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

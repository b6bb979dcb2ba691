/** What must hold for every bench method, and for whatever anybody types into one. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { HANDBOOK } from '../handbook/index.ts';
import { seeded } from '../handbook/samples.ts';
import { factSpec } from '../parts/index.ts';
import { parseUnit, sameDimension } from '../quantity/index.ts';
import { DRAWING_SIZE, METHOD, METHODS, type Method, runMethod, type Shape } from './index.ts';

test('derived: every file of methods is in the list, each with its own id', () => {
  const files = readdirSync(join(import.meta.dirname, 'methods')).map((file) => file.replace(/\.ts$/, ''));
  expect(METHODS.map(({ id }) => id).sort()).toEqual(files.sort());
  expect(METHOD.size).toBe(METHODS.length);
});

const pointsOf = (shape: Shape): readonly (readonly [number, number])[] => {
  if (shape.kind === 'line') return shape.points;
  if (shape.kind === 'text') return [shape.at];
  const [x, y] = shape.centre;
  return [
    [x - shape.radius, y - shape.radius],
    [x + shape.radius, y + shape.radius],
  ];
};

const GARBAGE = [
  '',
  ' ',
  '0',
  '-1',
  '1e308',
  '1e-308',
  'NaN',
  'Infinity',
  '5 bananas',
  '±',
  '1 ± 1e9',
  '1,234',
  '../..',
  '__proto__',
  '٣',
  '1/0',
  '<b>',
  '9'.repeat(400),
  '5 ±(0.8 % + 3 digits)',
  '12',
  '3.5',
  '0.001 mm',
  '24 V',
  '1 A',
];

describe.each(METHODS.map((each) => ({ id: each.id, each })))('$id', ({ each }) => {
  test('derived: words, sheets, facts and units are all there', () => {
    expect(each.purpose).toMatch(/\.$/);
    for (const list of [each.hazards, each.tools, each.steps]) expect(list.length).toBeGreaterThan(0);
    for (const sentence of [...each.hazards, ...each.steps]) expect(sentence).toMatch(/[.?]$/);
    for (const id of each.sheets)
      expect(
        HANDBOOK.some((sheet) => sheet.id === id),
        id,
      ).toBe(true);
    for (const { place, fact } of each.settles)
      expect(factSpec(place, fact), `${place}.${fact}`).toBeDefined();
    const asked = [...each.given, ...each.columns];
    expect(new Set(asked.map(({ key }) => key)).size).toBe(asked.length);
    for (const one of asked) {
      expect(one.help, one.key).toMatch(/[.?]$/);
      if (one.kind !== 'choice') expect(parseUnit(one.unit).ok, one.unit).toBe(true);
      if (one.kind === 'accuracy')
        for (const key of one.of)
          expect(
            asked.some((other) => other.key === key),
            key,
          ).toBe(true);
    }
  });

  test('derived: the drawing lies in its box, says what it shows and is more than a few lines', () => {
    const { says, shapes } = each.drawing;
    expect(says).toMatch(/\.$/);
    expect(shapes.length).toBeGreaterThan(8);
    for (const shape of shapes)
      for (const [x, y] of pointsOf(shape)) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(DRAWING_SIZE.width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(DRAWING_SIZE.height);
      }
  });

  test('derived: an answer or a sentence for whatever is typed, never NaN and never thrown', () => {
    const random = seeded(each.id.length * 1009);
    const any = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
    let answered = 0;
    for (let n = 0; n < 400; n++) {
      const ran = runMethod(each, {
        given: Object.fromEntries(
          each.given.filter(() => random() < 0.8).map((entry) => [entry.key, typed(entry, random, any)]),
        ),
        readings: Object.fromEntries(
          each.columns
            .filter(() => random() < 0.9)
            .map((column) => [
              column.key,
              Array.from({ length: 1 + Math.floor(4 * random()) }, () => typed(column, random, any)),
            ]),
        ),
        aside: random() < 0.1 ? [0] : [],
      });
      if (!ran.ok) {
        expect(ran.problem.message).toMatch(/[.?:)]$/);
        // What was typed may be quoted.
        expect(ran.problem.message.replace(/“[^”]*”/g, '')).not.toMatch(/NaN|undefined|Infinity/);
        continue;
      }
      answered += 1;
      expect(JSON.stringify(ran.value)).not.toMatch(/NaN|undefined/);
      for (const result of ran.value.results)
        if (result.kind === 'quantity') {
          expect(
            Number.isFinite(result.value) && result.standard >= 0 && Number.isFinite(result.expanded),
          ).toBe(true);
          const spec = result.fact && factSpec(result.fact.place, result.fact.fact);
          if (spec?.kind === 'quantity')
            expect(sameUnit(spec.unit, result.unit), `${result.unit} for ${spec.unit}`).toBe(true);
        }
      for (const { likely } of ran.value.candidates ?? []) expect(likely >= 0 && likely <= 1).toBe(true);
    }
    expect(answered, 'nothing was ever answered').toBeGreaterThan(0);
  });
});

/** Mostly what could be, sometimes what could not. */
function typed(
  asked: Method['given'][number] | Method['columns'][number],
  random: () => number,
  any: <T>(list: readonly T[]) => T,
): string {
  if (random() < 0.04) return any(GARBAGE);
  if (asked.kind === 'choice') return any(Object.keys(asked.options));
  if (asked.kind === 'accuracy') return '1 %';
  if (asked.whole) return String(1 + Math.floor(20 * random()));
  return (10 * random()).toFixed(2);
}

function sameUnit(a: string, b: string): boolean {
  const [x, y] = [parseUnit(a), parseUnit(b)];
  return x.ok && y.ok && sameDimension(x.value.dimension, y.value.dimension);
}

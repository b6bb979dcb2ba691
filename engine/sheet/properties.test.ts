import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, test, vi } from 'vitest';
import { bounds, defineSheet, evaluate, formula, gradient, input, lanes } from './index.ts';

/** Random expressions as text, so that the parser is under test as well. `smooth` leaves out kinks and steps. */
function expressions(smooth: boolean): fc.Arbitrary<string> {
  const leaf = fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom('a', 'b', 'c') },
    { weight: 2, arbitrary: fc.integer({ min: 0, max: 40 }).map((n) => String(n / 4)) },
    { weight: 1, arbitrary: fc.constant('pi') },
  );
  const { number } = fc.letrec<{ number: string; truth: string }>((tie) => {
    const part = tie('number');
    const binary = fc
      .tuple(part, fc.constantFrom('+', '-', '*', '/'), part)
      .map(([left, sign, right]) => `(${left} ${sign} ${right})`);
    const bare = fc
      .tuple(leaf, fc.constantFrom('+', '-', '*', '/'), leaf, fc.constantFrom('+', '-', '*', '/'), part)
      .map(([x, first, y, second, z]) => `(${x} ${first} ${y} ${second} -${z})`);
    const power = fc
      .tuple(part, fc.constantFrom('2', '3', '-1', '-2', '0.5', '1.5', '0.7', '(1 / 3)', '(a / 4)', '0'))
      .map(([base, exponent]) => `${base} ^ ${exponent}`);
    const names = ['sqrt', 'exp', 'ln', 'log10', 'sin', 'cos', 'tan', 'asin', 'acos', 'atan'];
    const steps = ['floor', 'ceil', 'round', 'sign', 'abs'];
    const call = fc
      .tuple(fc.constantFrom(...names, ...(smooth ? [] : steps)), part)
      .map(([name, of]) => `${name}(${of})`);
    const pair = fc
      .tuple(fc.constantFrom('atan2', ...(smooth ? [] : ['min', 'max'])), part, part)
      .map(([name, x, y]) => `${name}(${x}, ${y})`);
    const choose = fc.tuple(tie('truth'), part, part).map(([c, x, y]) => `(${c} ? ${x} : ${y})`);
    const compare = fc
      .tuple(part, fc.constantFrom('<', '<=', '>', '>=', '==', '!='), part)
      .map(([left, sign, right]) => `(${left} ${sign} ${right})`);
    const logic = fc
      .tuple(tie('truth'), fc.constantFrom('and', 'or'), tie('truth'))
      .map(([left, sign, right]) => `(${left} ${sign} ${right})`);
    const not = tie('truth').map((inner) => `not (${inner})`);
    return {
      number: fc.oneof(
        { maxDepth: 4, withCrossShrink: true },
        leaf,
        binary,
        bare,
        call,
        power.map((text) => `(${text})`),
        pair,
        ...(smooth ? [] : [choose]),
      ) as fc.Arbitrary<string>,
      truth: fc.oneof({ maxDepth: 3 }, compare, logic, not) as fc.Arbitrary<string>,
    };
  });
  return number;
}

const sheetOf = (expression: string) =>
  defineSheet({
    id: 'random',
    title: 'Random',
    about: 'a random expression',
    symbols: {
      a: input('a', '1'),
      b: input('b', '1'),
      c: input('c', '1'),
      f: formula('f', '1', expression, 'random'),
    },
  });

const size = fc.oneof(
  fc.double({ min: -4, max: 4, noNaN: true }),
  fc.constantFrom(0, 1, -1, 0.5, 2, -2.5, 1e-9, 1e160, -1e300),
);
const point = fc.record({ a: size, b: size, c: size });
const options = { seed: 1954, numRuns: 600 };

/** mathjs with its comparisons made exact, as ours are, and with the names of our language. */
const outside = create(all!, { relTol: 1e-300, absTol: 0 });
outside.import({ ln: Math.log }, { override: true });

function outsideValue(expression: string, given: Record<string, number>): unknown {
  try {
    return outside.compile(expression).evaluate({ ...given });
  } catch {
    // Complex numbers, which it makes where ours has no answer, do not fit all its functions.
    return undefined;
  }
}

/** Whether two results agree as well as the bounds of their own rounding allow. */
function expectInside(
  expression: string,
  given: { a: number; b: number; c: number },
  value: number,
): boolean {
  const bound = bounds(sheetOf(expression), given).f;
  if (bound.state !== 'known') return false;
  const [low, high] = bound.interval;
  expect(value, `${expression} at ${JSON.stringify(given)}`).toBeGreaterThanOrEqual(low);
  expect(value, `${expression} at ${JSON.stringify(given)}`).toBeLessThanOrEqual(high);
  return true;
}

describe('outside: general-purpose expression library', () => {
  test('outside: general-purpose expression library: random expressions over lanes and one by one', () => {
    let compared = 0;
    let tried = 0;
    fc.assert(
      fc.property(
        expressions(false),
        fc.array(point, { minLength: 1, maxLength: 7 }),
        (expression, points) => {
          const sheet = sheetOf(expression);
          const column = (key: 'a' | 'b' | 'c') => Float64Array.from(points, (each) => each[key]);
          const given = { a: column('a'), b: column('b'), c: column('c') };
          const { f } = lanes(sheet, given, points.length).values;
          points.forEach((each, lane) => {
            tried++;
            const ours = typeof f === 'number' ? f : f![lane]!;
            const theirs = outsideValue(expression, each);
            if (Number.isNaN(ours) || typeof theirs !== 'number' || !Number.isFinite(theirs)) return;
            if (!expectInside(expression, each, ours)) return;
            expectInside(expression, each, theirs);
            compared++;
          });
        },
      ),
      options,
    );
    expect(compared).toBeGreaterThan(tried / 4);
  });

  test('outside: general-purpose expression library: symbolic derivatives at a few points', () => {
    const given = { a: 0.7, b: 1.9, c: -0.4 };
    for (const [expression, theirs = expression] of [
      ['a^2 * b / (1 + c^2)'],
      ['sqrt(a * b) * sin(c) - cos(a * c)'],
      ['exp(-a * b) / (a + c)', 'exp(-a * b) / (a + c)'],
      ['ln(b)^3 * atan(c)', 'log(b)^3 * atan(c)'],
      ['a ^ b + b ^ 1.3'],
      ['asin(c) * acos(a) / tan(b)'],
      ['log10(a * b) + abs(c)', 'log10(a * b) + abs(c)'],
    ] as const) {
      const { partials } = gradient(sheetOf(expression), given);
      for (const key of ['a', 'b', 'c'] as const) {
        const wanted = outside.derivative(theirs, key).evaluate({ ...given }) as number;
        expect(partials.f?.[key], `d(${expression})/d${key}`).toBeCloseTo(wanted, 12);
      }
    }
  });
});

describe('derived: random expressions', () => {
  test('derived: no finite input gives a result that is neither a number nor named', () => {
    fc.assert(
      fc.property(expressions(false), point, (expression, given) => {
        const sheet = sheetOf(expression);
        const walked = evaluate(sheet, given).f;
        for (let turn = 0; turn < 8; turn++) evaluate(sheet, given);
        const compiled = evaluate(sheet, given).f;
        for (const outcome of [walked, compiled]) {
          if (outcome.state === 'known') expect(Number.isFinite(outcome.value)).toBe(true);
          else
            expect(outcome).toMatchObject({
              state: 'undefined',
              reason: expect.stringMatching(/has no answer: it /),
            });
        }
        const { f } = lanes(sheet, { ...given, a: Float64Array.of(given.a) }, 1).values;
        const lane = typeof f === 'number' ? f : f![0]!;
        expect(Number.isFinite(lane) || Number.isNaN(lane)).toBe(true);
        // Bounds that exist say that no rounding decides whether there is an answer.
        if (walked.state === 'known' && bounds(sheet, given).f.state === 'known') expect(lane).not.toBeNaN();
      }),
      options,
    );
  });

  test('derived: bounds hold every value at points within them', () => {
    let held = 0;
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const range = fc.tuple(size, fc.double({ min: 0, max: 2, noNaN: true }));
    fc.assert(
      fc.property(
        expressions(false),
        fc.record({ a: range, b: range, c: range }),
        fc.array(fc.record({ a: share, b: share, c: share }), { minLength: 3, maxLength: 12 }),
        (expression, ranges, shares) => {
          const sheet = sheetOf(expression);
          const intervals = Object.fromEntries(
            Object.entries(ranges).map(([key, [low, width]]) => [key, [low, low + width] as const]),
          );
          const bound = bounds(sheet, intervals).f;
          if (bound.state !== 'known') return;
          for (const each of shares) {
            const at = (key: 'a' | 'b' | 'c'): number => {
              const [low, high] = intervals[key]!;
              return Math.min(high, low + (high - low) * each[key]);
            };
            const outcome = evaluate(sheet, { a: at('a'), b: at('b'), c: at('c') }).f;
            if (outcome.state !== 'known') continue;
            held++;
            expect(outcome.value).toBeGreaterThanOrEqual(bound.interval[0]);
            expect(outcome.value).toBeLessThanOrEqual(bound.interval[1]);
          }
        },
      ),
      options,
    );
    expect(held).toBeGreaterThan(500);
  });

  test('derived: exact slopes against finite differences', () => {
    let compared = 0;
    const near = fc.double({ min: 0.2, max: 3, noNaN: true });
    fc.assert(
      fc.property(expressions(true), fc.record({ a: near, b: near, c: near }), (expression, given) => {
        const sheet = sheetOf(expression);
        const { partials } = gradient(sheet, given);
        if (!partials.f) return;
        for (const key of ['a', 'b', 'c'] as const) {
          const difference = (step: number): number => {
            const value = (moved: number): number => {
              const { f } = evaluate(sheet, { ...given, [key]: given[key] + moved });
              return f.state === 'known' ? f.value : Number.NaN;
            };
            return (value(step) - value(-step)) / (2 * step);
          };
          const [coarse, fine] = [difference(2e-5), difference(1e-5)];
          const scale = Math.max(1e-3, Math.abs(fine));
          // Two step sizes that disagree say that the difference itself cannot be trusted there.
          if (!(Math.abs(coarse - fine) < 1e-7 * scale)) continue;
          compared++;
          expect(
            Math.abs(partials.f[key]! - fine),
            `d(${expression})/d${key} at ${JSON.stringify(given)}`,
          ).toBeLessThan(1e-5 * scale);
        }
      }),
      options,
    );
    expect(compared).toBeGreaterThan(600);
  });
});

describe('derived: where WebAssembly is refused', () => {
  test('derived: lanes and single answers are the same, by walking the trees', async () => {
    const refusing = class {
      constructor() {
        throw new Error('refused by the page');
      }
    };
    const compiled = await import('./index.ts');
    const cases = fc.sample(expressions(false), { seed: 7, numRuns: 60 });
    const points = fc.sample(point, { seed: 8, numRuns: 9 });
    const columns = {
      a: Float64Array.from(points, ({ a }) => a),
      b: Float64Array.from(points, ({ b }) => b),
      c: 1.25,
    };
    vi.resetModules();
    vi.stubGlobal('WebAssembly', { ...WebAssembly, Module: refusing });
    try {
      const walking = await import('./index.ts');
      const { webAssemblyAllowed } = await import('./compile/cache.ts');
      expect(webAssemblyAllowed()).toBe(false);
      for (const expression of cases) {
        const symbols = sheetOf(expression).symbols;
        const sheet = walking.defineSheet({ id: 'w', title: 'W', about: 'walked', symbols });
        const { f } = walking.lanes(sheet, columns, points.length).values;
        points.forEach((each, lane) => {
          const wanted = walking.evaluate(sheet, { a: each.a, b: each.b, c: 1.25 }).f;
          const got = typeof f === 'number' ? f : f![lane]!;
          if (wanted.state === 'known') expect(got).toBe(wanted.value);
          else expect(got).toBeNaN();
        });
      }
    } finally {
      vi.unstubAllGlobals();
      vi.resetModules();
    }
    expect(compiled.lanes).toBeTypeOf('function');
  });
});

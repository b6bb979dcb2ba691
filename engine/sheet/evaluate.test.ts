import { describe, expect, test } from 'vitest';
import { curve, defineSheet, evaluate, formula, type Given, input, lanes, procedure } from './index.ts';
import type { Argument, Curve } from './types.ts';

const source = 'test';

const sheet = defineSheet({
  id: 'trial',
  title: 'Trial',
  about: 'every kind of trouble',
  symbols: {
    d: input('diameter', 'mm', { domain: 'positive' }),
    eta: input('efficiency', '%', { domain: 'fraction' }),
    x: input('number', '1'),
    y: input('other number', '1'),
    pull: curve('pull-out torque', 'N·m', 'speed', 'r/min'),
    q: formula('quotient', '1', 'x / y', source),
    r: formula('root', '1', 'sqrt(x - y)', source),
    l: formula('logarithm', '1', 'ln(x) + log10(x)', source),
    p: formula('power', '1', 'x ^ y', source),
    a: formula('angle', '1', 'asin(x)', source),
    big: formula('big number', '1', 'exp(x) * 1', source),
    hidden: formula('hidden infinity', '1', '1 / (1 / y)', source),
    late: formula('late infinity', '1', 'atan(x / y) + min(x / y, 5)', source),
    chosen: formula('chosen', '1', 'y > 0 ? x / y : 7', source),
    both: formula('both', '1', 'y != 0 and x / y > 2 ? 1 : 0', source),
    either: formula('either', '1', 'y == 0 or x / y > 2 ? 1 : 0', source),
    inDomain: formula('positive result', '1', 'x - y', source, { domain: 'positive' }),
    after: formula('after', '1', 'inDomain + 1', source),
    area: formula('area', 'mm²', 'pi * d^2 / 4 * eta', source),
    nothing: formula('nothing', '1', '0 * x', source),
    torque: procedure('torque', 'N·m', {
      reads: ['pull', 'x'],
      run: (points: Argument, at: Argument) => (points as Curve).y[0]! * (at as number),
      refuses: (_, at) => ((at as number) > 9 ? 'the speed is beyond the curve' : undefined),
      says: 'first point times x',
      source,
    }),
    twice: formula('twice', 'N·m', '2 * torque', source),
  },
});
type Key = keyof typeof sheet.symbols;
type Trial = Given<Key>;

/** Walks first, compiled later: both have to say the same. */
function both(given: Trial) {
  const walked = evaluate(sheet, given);
  for (let turn = 0; turn < 10; turn++) evaluate(sheet, given);
  const compiled = evaluate(sheet, given);
  return { walked, compiled };
}

function reason(given: Trial, key: Key): string {
  const outcome = evaluate(sheet, given)[key];
  return outcome.state === 'undefined' ? outcome.reason : `no reason: ${JSON.stringify(outcome)}`;
}

const known = (value: number) => ({ state: 'known', value });
const missing = (...needs: string[]) => ({ state: 'missing', needs });

describe('derived: outcomes of a sheet', () => {
  test('derived: only what is really needed is missing', () => {
    const outcomes = evaluate(sheet, { y: 0 });
    expect(outcomes.x).toEqual(missing('x'));
    expect(outcomes.chosen).toEqual(known(7));
    expect(outcomes.both).toEqual(known(0));
    expect(outcomes.either).toEqual(known(1));
    expect(outcomes.nothing).toEqual(missing('x'));
    expect(outcomes.area).toEqual(missing('d', 'eta'));
    expect(outcomes.after).toEqual(missing('x'));
    expect(outcomes.twice).toEqual(missing('pull', 'x'));
  });

  test('derived: reasons name the symbol and the part of the formula', () => {
    expect(reason({ x: 1, y: 0 }, 'q')).toBe('quotient (q) has no answer: it divides by y, which is zero');
    expect(reason({ x: 1, y: 2 }, 'r')).toBe(
      'root (r) has no answer: it takes the square root of x − y, which is negative',
    );
    expect(reason({ x: 0, y: 2 }, 'l')).toContain('the logarithm of x, which is not above zero');
    expect(reason({ x: -2, y: 0.5 }, 'p')).toContain(
      'raises x, which is negative, to a power that is not whole',
    );
    expect(reason({ x: 0, y: -1 }, 'p')).toContain('divides by x, which is zero');
    expect(reason({ x: 1.5 }, 'a')).toContain('asks for an angle from x, which is outside −1 to 1');
    expect(reason({ x: 1000 }, 'big')).toContain('too large to hold in exp(x)');
    expect(reason({ x: 1e300, y: 1e300 }, 'p')).toContain('too large to hold');
  });

  test('derived: an infinity on the way does not come back as a number', () => {
    expect(reason({ x: 1, y: 0 }, 'hidden')).toContain('divides by y');
    expect(reason({ x: 1, y: 0 }, 'late')).toContain('divides by y');
  });

  test('derived: values outside their domain are refused by name, and what needs them with them', () => {
    const given = { d: 0, eta: 1.2, x: 1, y: 3 };
    expect(reason(given, 'd')).toBe('diameter must be above zero');
    expect(reason(given, 'eta')).toBe('efficiency must lie between 0 and 1');
    expect(reason(given, 'area')).toBe('diameter must be above zero');
    expect(reason(given, 'inDomain')).toBe('positive result (inDomain) must be above zero');
    expect(reason(given, 'after')).toBe('positive result (inDomain) must be above zero');
  });

  test('derived: numbers that are none and curves that are none are refused', () => {
    expect(reason({ x: Number.NaN }, 'x')).toBe('number is not a finite number');
    expect(reason({ x: Number.POSITIVE_INFINITY }, 'q')).toBe('number is not a finite number');
    expect(reason({ x: { x: [1], y: [1] } }, 'x')).toBe('number must be one number, not a curve');
    expect(reason({ pull: 3 }, 'pull')).toBe('pull-out torque must be a curve, not one number');
    expect(reason({ pull: { x: [], y: [] } }, 'pull')).toBe('pull-out torque has no points');
    expect(reason({ pull: { x: [2, 1], y: [1, 1] }, x: 1 }, 'twice')).toContain('in ascending order');
    expect(reason({ pull: { x: [1, 2], y: [1] } }, 'pull')).toContain('as many values across as up');
    expect(reason({ pull: { x: [1], y: [Number.NaN] } }, 'pull')).toContain('not a finite number');
  });

  test('derived: procedures run between formulas and give their own reasons', () => {
    const pull = { x: [0, 10], y: [3, 2] };
    expect(evaluate(sheet, { pull, x: 2 }).twice).toEqual(known(12));
    expect(reason({ pull, x: 10 }, 'twice')).toBe('the speed is beyond the curve');
  });

  test.each<Trial>([
    {},
    { x: 1, y: 2, d: 0.01, eta: 0.5, pull: { x: [0, 10], y: [3, 2] } },
    { x: 1, y: 0 },
    { x: -1, y: 0.5, d: -1, eta: 2 },
    { x: 1e308, y: 1e-308 },
    { y: 0 },
    { y: 3 },
    { x: Number.NaN, y: Number.NEGATIVE_INFINITY, pull: 4 },
    { x: 20, pull: { x: [1], y: [1] } },
  ])('derived: walked and compiled say the same for %j', (given) => {
    const { walked, compiled } = both(given);
    for (const key of sheet.order) {
      const [a, b] = [walked[key], compiled[key]];
      if (a.state === 'known' && b.state === 'known') expect(b.value).toBeCloseTo(a.value, 12);
      else expect(b, key).toEqual(a);
    }
  });
});

describe('derived: lanes of a sheet', () => {
  const pull = { x: [0, 10], y: [3, 2] };
  const count = 5001;
  const x = Float64Array.from({ length: count }, (_, lane) => (lane % 41) / 4 - 2);
  const y = Float64Array.from({ length: count }, (_, lane) => (lane % 7) - 3);

  test('derived: each lane equals its own evaluation, NaN where that has no number', () => {
    const { values, outcomes } = lanes(sheet, { x, y, pull, d: 0.02, eta: 0.5 }, count);
    for (let lane = 0; lane < count; lane += 13) {
      const wanted = outcomes(lane);
      for (const key of sheet.derived) {
        const column = values[key]!;
        const got = typeof column === 'number' ? column : column[lane]!;
        const outcome = wanted[key];
        if (outcome.state === 'known') expect(got, key).toBeCloseTo(outcome.value, 11);
        else expect(got, `${key} in lane ${lane}`).toBeNaN();
      }
    }
  });

  test('derived: what does not vary is one number, and only what is asked for is given', () => {
    const { values } = lanes(sheet, { x, y: 2, d: 0.02, eta: 0.5 }, count, { only: ['area', 'q'] });
    expect(Object.keys(values).sort()).toEqual(['area', 'q']);
    expect(values.area).toBeCloseTo(Math.PI * 1e-4 * 0.5, 12);
    expect(values.q).toBeInstanceOf(Float64Array);
  });

  test('derived: arrays of a wrong length and curves over lanes are refused by name', () => {
    expect(() => lanes(sheet, { x: new Float64Array(3) }, 4)).toThrow("'x' has 3 values for 4 lanes");
    expect(() => lanes(sheet, { pull: new Float64Array(4) }, 4)).toThrow("the curve 'pull'");
    expect(() => lanes(sheet, { x: 1 }, 0)).toThrow('lanes are counted');
  });
});

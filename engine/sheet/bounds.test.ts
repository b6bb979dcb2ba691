import { describe, expect, test } from 'vitest';
import { bounds, defineSheet, formula, gradient, input, lanes, lanesInPieces, procedure } from './index.ts';
import type { Curve, Interval } from './types.ts';

const source = 'test';
const body = { says: 'a square', source, reads: ['x'] };
const square = (x: unknown): number => (x as number) ** 2;

const sheet = defineSheet({
  id: 'trial',
  title: 'Trial',
  about: 'intervals and slopes',
  symbols: {
    x: input('number', '1'),
    y: input('other number', '1'),
    eta: input('efficiency', '%', { domain: 'fraction' }),
    wave: formula('wave', '1', 'sin(x) + cos(y)', source),
    inverse: formula('inverse', '1', '1 / x', source),
    step: formula('step', '1', 'x > 1 ? y : -y', source),
    kept: formula('kept', '1', '1 * eta', source, { domain: 'fraction' }),
    even: formula('even power', '1', 'x ^ 2', source),
    angle: formula('angle', '1', 'atan2(y, x)', source),
    boxed: procedure('boxed', '1', { ...body, run: square }),
    open: procedure('open', '1', {
      ...body,
      run: square,
      bounds: (x: Interval | Curve) => [0, Math.max(...(x as Interval).map((end) => end ** 2))],
    }),
    through: formula('through', '1', 'open * y + abs(x)', source),
    root: formula('root', '1', 'sqrt(x)', source),
    most: formula('most', '1', 'max(x, y, 2 * x)', source),
  },
});

const interval = (
  given: Parameters<typeof bounds<keyof typeof sheet.symbols>>[1],
  key: keyof typeof sheet.symbols,
) => {
  const bound = bounds(sheet, given)[key];
  return bound.state === 'known' ? bound.interval : bound;
};
const near = (low: number, high: number) => [expect.closeTo(low, 12), expect.closeTo(high, 12)];

describe('derived: bounds', () => {
  test('derived: waves reach their crest and trough only where these lie inside', () => {
    expect(interval({ x: [0, 1], y: 0 }, 'wave')).toEqual(near(1, 1 + Math.sin(1)));
    expect(interval({ x: [1, 2], y: 0 }, 'wave')).toEqual(near(1 + Math.sin(1), 2));
    expect(interval({ x: [4, 5], y: 0 }, 'wave')).toEqual(near(0, 1 + Math.sin(4)));
    expect(interval({ x: [0, 100], y: [3, 3.5] }, 'wave')).toEqual(near(-2, 1 + Math.cos(3.5)));
  });

  test('derived: an even power over zero, a division over zero, an undecided condition', () => {
    expect(interval({ x: [-2, 1] }, 'even')).toEqual(near(0, 4));
    expect(interval({ x: [-2, 1] }, 'inverse')).toMatchObject({
      state: 'undefined',
      reason: 'inverse (inverse) has no bounds: it may divide by zero in 1 / x',
    });
    expect(interval({ x: [0, 2], y: [3, 4] }, 'step')).toEqual([-4, 4]);
    expect(interval({ x: [1.5, 2], y: [3, 4] }, 'step')).toEqual([3, 4]);
  });

  test('derived: angles behind the origin may be any', () => {
    expect(interval({ x: [-2, -1], y: [-1, 1] }, 'angle')).toEqual(near(-Math.PI, Math.PI));
    expect(interval({ x: [1, 2], y: [-1, 1] }, 'angle')).toEqual(near(-Math.PI / 4, Math.PI / 4));
  });

  test('derived: procedures are bounded at a point or where they say how', () => {
    expect(interval({ x: 3 }, 'boxed')).toEqual([9, 9]);
    expect(interval({ x: [2, 3] }, 'boxed')).toMatchObject({ state: 'undefined' });
    expect(interval({ x: [2, 3] }, 'open')).toEqual([0, 9]);
  });

  test('derived: domains hold at both ends, and rounding alone does not break one', () => {
    expect(interval({ eta: [0.5, 1] }, 'kept')).toEqual([expect.closeTo(0.5, 12), 1]);
    expect(interval({ eta: [0.5, 1.1] }, 'kept')).toMatchObject({
      reason: 'efficiency must lie between 0 and 1',
    });
    expect(interval({ x: [2, 1] }, 'even')).toMatchObject({ reason: expect.stringContaining('lower bound') });
    expect(interval({}, 'wave')).toEqual({ state: 'missing', needs: ['x', 'y'] });
  });
});

describe('derived: slopes', () => {
  test('derived: through a procedure by central differences', () => {
    const { partials } = gradient(sheet, { x: 3, y: 2 });
    expect(partials.through?.x).toBeCloseTo(2 * 3 * 2 + 1, 7);
    expect(partials.through?.y).toBeCloseTo(9, 12);
  });

  test('derived: the branch in force at a kink, none where the slope is infinite', () => {
    const { partials } = gradient(sheet, { x: 0, y: 2 });
    expect(partials.step).toEqual({ x: 0, y: -1 });
    expect(partials.through?.x).toBeCloseTo(1, 7);
    expect(partials.root).toEqual({ y: 0 });
    expect(gradient(sheet, { x: 3, y: 2 }).partials.most).toEqual({ x: 2, y: 0 });
  });

  test('derived: unknown inputs are tolerated, and only what is asked for is differentiated', () => {
    const { partials, outcomes } = gradient(sheet, { x: 4 }, ['x']);
    expect(partials.root).toEqual({ x: 0.25 });
    expect(partials.wave).toBeUndefined();
    expect(outcomes.wave).toEqual({ state: 'missing', needs: ['y'] });
  });
});

describe('derived: lanes in pieces', () => {
  test('derived: a procedure may run lanes of its own, however large', () => {
    const inner = (x: unknown): number => {
      const { values } = lanes(sheet, { x: new Float64Array(5000).fill(x as number), y: 1 }, 5000);
      return (values.even as Float64Array)[4999]!;
    };
    const outer = defineSheet({
      id: 'outer',
      title: 'Outer',
      about: 'runs another sheet',
      symbols: {
        x: input('number', '1'),
        before: formula('before', '1', 'x + 1', source),
        nested: procedure('nested', '1', { ...body, run: inner }),
        after: formula('after', '1', 'nested + before', source),
      },
    });
    const { values } = lanes(outer, { x: Float64Array.of(1, 2, 3) }, 3);
    expect([...(values.after as Float64Array)]).toEqual([3, 7, 13]);
    expect([...(values.before as Float64Array)]).toEqual([2, 3, 4]);
  });

  test('derived: arrays given are written to, and refused when they are too short', () => {
    const x = Float64Array.of(1, 2, 3);
    const mine = new Float64Array(3);
    const { values } = lanes(sheet, { x }, 3, { only: ['even'], into: { even: mine } });
    expect(values.even).toBe(mine);
    expect([...mine]).toEqual([1, 4, 9]);
    expect(() => lanes(sheet, { x }, 3, { into: { even: new Float64Array(2) } })).toThrow(
      "'even' is to be written to 2",
    );
  });

  test('derived: shares rise to the end, pieces of two runs may take turns, and a run may be left', () => {
    const count = 10_000;
    const column = (slope: number) => Float64Array.from({ length: count }, (_, lane) => lane * slope);
    const first = lanesInPieces(sheet, { x: column(1), y: 1 }, count, {
      piece: 3000,
      only: ['through', 'wave'],
    });
    const second = lanesInPieces(sheet, { x: column(2), y: 5 }, count, {
      piece: 1000,
      only: ['through', 'wave'],
    });
    const shares: number[] = [];
    let one = first.next();
    second.next();
    while (!one.done) {
      shares.push(one.value);
      second.next();
      one = first.next();
    }
    expect(shares).toEqual([0.3, 0.6, 0.9]);
    const through = one.value.values.through as Float64Array;
    expect([through[7], through[9999]]).toEqual([7 ** 2 + 7, 9999 ** 2 + 9999]);
    expect(second.return({} as never).done).toBe(true);
  });
});

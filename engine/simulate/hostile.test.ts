/** Models and moves that cannot be, or hardly: a clear answer, in bounded time, and never NaN. */
import { describe, expect, test } from 'vitest';
import { AX1, cascade, changed, PID } from './axis.fixture.ts';
import { band, checkModel, checkMove, MOVES, ModelError, type Move, type Run, simulate } from './index.ts';
import { SHOP } from './sampled.fixture.ts';

const RAPID: Move = { kind: 'rapid', distance: 0.02, speed: 0.1, acceleration: 2, jerk: 0 };

function everyNumber(run: Run): number[] {
  const found: number[] = [];
  const walk = (value: unknown): void => {
    if (typeof value === 'number') found.push(value);
    else if (value instanceof Float64Array) found.push(...value);
    else if (value && typeof value === 'object') for (const each of Object.values(value)) walk(each);
  };
  walk(run);
  return found;
}
const clean = (run: Run): void => {
  for (const each of everyNumber(run)) if (!Number.isFinite(each)) throw new Error(`${each}`);
};

describe('refused by the name of the field', () => {
  const cases: readonly (readonly [string, unknown])[] = [
    ['slide.mass', { slide: { mass: -5 } }],
    ['slide.mass', { slide: { mass: Number.NaN } }],
    ['slide.mass', { slide: { mass: '120' } }],
    ['slide.mass', { slide: { mass: Number.POSITIVE_INFINITY } }],
    ['motor.resistance', { motor: { resistance: 0 } }],
    ['motor.inductance', { motor: { inductance: -1e-3 } }],
    ['motor.kind', { motor: { kind: 'steam' } }],
    ['transmission.lead', { transmission: { lead: 0 } }],
    ['transmission.couplingShare', { transmission: { couplingShare: 1.5 } }],
    ['transmission.stiffness', { transmission: { backlash: 1e-5 } }],
    ['slide.staticFriction', { slide: { staticFriction: 10, coulomb: 20 } }],
    ['feedback.on', { feedback: { on: 'table' } }],
    ['control.positionEvery', { control: { speedEvery: 4, positionEvery: 6 } }],
    ['control.sample', { control: { sample: 0 }, feedback: { countsPerTurn: 4000 } }],
    ['control.kind', { control: { kind: 'open', sample: 1e-4 } }],
    ['supply.kind', { supply: { kind: 'nuclear' } }],
    ['supply.dumpOff', { supply: { kind: 'regulated', dumpOn: 80, dumpOff: 90, dumpResistance: 10 } }],
  ];
  test.each(cases)('derived: %s', (where, changes) => {
    const problems = checkModel(changed(AX1, changes as Parameters<typeof changed>[1]));
    expect(problems.map((each) => each.where)).toContain(where);
    for (const { message } of problems) expect(message).toMatch(/\.$/);
    expect(() => simulate(changed(AX1, changes as Parameters<typeof changed>[1]), RAPID)).toThrow(ModelError);
  });
  test('derived: what is no model at all', () => {
    for (const odd of [null, undefined, 5, 'x', [], {}, { motor: null }])
      expect(checkModel(odd as never).length).toBeGreaterThan(0);
  });
  test('derived: every field of every move, left out, negative where it cannot be, and not a number', () => {
    for (const [kind, { fields }] of Object.entries(MOVES)) {
      const good = Object.fromEntries(
        Object.entries(fields).map(([name, { options }]) => [name, options?.[0] ?? 1]),
      );
      expect(checkMove({ kind, ...good } as Move), kind).toEqual([]);
      for (const [name, { none, options }] of Object.entries(fields))
        for (const odd of [undefined, Number.NaN, '1', Number.POSITIVE_INFINITY, 1e300]) {
          // What a move can do without may be left out.
          if (odd === undefined && (none !== undefined || options !== undefined)) continue;
          if (odd === Number.POSITIVE_INFINITY && none !== undefined) continue;
          expect(checkMove({ kind, ...good, [name]: odd } as never).map(({ where }) => where)).toContain(
            `move.${name}`,
          );
        }
    }
    expect(checkMove({ kind: 'fly' } as never)[0]!.where).toBe('move.kind');
  });
  test('derived: a sample longer than the whole move, and far too many samples', () => {
    const slow = changed(SHOP, { control: { sample: 2 } });
    expect(() => simulate(slow, RAPID)).toThrow(/would never act/);
    const fine = changed(SHOP, { control: { sample: 1e-9 } });
    expect(() => simulate(fine, RAPID)).toThrow(/at most 4000000/);
    // What a person typed is named, not the sample that nobody chose.
    const circle = {
      kind: 'circle',
      radius: 0.01,
      turns: 1e9,
      speed: 0.01,
      acceleration: 1,
      jerk: 0,
    } as const;
    const fault = (run: () => unknown): readonly string[] => {
      try {
        run();
      } catch (error) {
        return (error as ModelError).problems.map(({ where }) => where ?? '');
      }
      return [];
    };
    expect(fault(() => simulate(SHOP, circle))).toEqual(['move.turns']);
    expect(fault(() => simulate(SHOP, { ...RAPID, distance: 1e6 } as Move))).toEqual(['move.distance']);
  });
});

describe('odd but possible', () => {
  test('derived: a gain a million times too high is called unstable, with its moment', () => {
    for (const model of [
      changed(SHOP, { control: { positionGain: 40e6 } }),
      changed(SHOP, { control: { speedGain: 0.7e6, speedIntegral: 35e6 } }),
      changed(AX1, { control: { ...PID, proportional: 47e6 }, supply: { voltage: 75 } }),
    ]) {
      const run = simulate(model, RAPID);
      clean(run);
      expect(run.summary.unstable?.says).toMatch(/^unstable: .* from [\d.e-]+ s on$/);
      expect(run.events.some(({ kind }) => kind === 'unstable')).toBe(true);
    }
  });
  test('derived: without limits it grows without bound, and the run stops there', () => {
    const run = simulate(
      changed(AX1, { control: { ...PID, proportional: 47e4 }, supply: { voltage: 1e15 } }),
      RAPID,
    );
    clean(run);
    expect(run.summary.unstable?.says).toContain('grows without bound');
    expect(run.stopped).not.toBeNull();
  });
  test('derived: an analogue loop far too fast to follow ends in bounded time', () => {
    const run = simulate(changed(AX1, cascade({ currentGain: 9.5e6, currentIntegral: 3.8e9 })), RAPID);
    clean(run);
    expect(run.stopped).toContain('gains');
  }, 60_000);
  test('derived: no inductance is the limit of little', () => {
    const none = changed(SHOP, {
      motor: { inductance: 0 },
      control: { currentGain: 0.5, currentIntegral: 4000 },
    });
    const little = changed(none, { motor: { inductance: 1e-7 } });
    const a = simulate(none, RAPID);
    const b = simulate(little, RAPID);
    clean(a);
    expect(Math.abs(a.summary.peakFollowing - b.summary.peakFollowing)).toBeLessThan(
      0.01 * b.summary.peakFollowing,
    );
    const short = { until: 0.05, points: 0 };
    const analogue = simulate(changed(AX1, { motor: { inductance: 0 } }), RAPID, short);
    const nearly = simulate(changed(AX1, { motor: { inductance: 1e-4 } }), RAPID, short);
    expect(Math.abs(analogue.summary.peakFollowing / nearly.summary.peakFollowing - 1)).toBeLessThan(0.01);
  });
  test('derived: rigid is the limit of stiff', () => {
    const a = simulate(changed(SHOP, { transmission: { stiffness: Number.POSITIVE_INFINITY } }), RAPID);
    const b = simulate(changed(SHOP, { transmission: { stiffness: 1e10, damping: 1e6 } }), RAPID);
    clean(a);
    expect(Math.abs(a.summary.peakFollowing - b.summary.peakFollowing)).toBeLessThan(
      0.02 * b.summary.peakFollowing,
    );
  });
  test('derived: a slide that cannot be moved, a move of nothing, a heavy tilt', () => {
    const stuck = simulate(changed(SHOP, { slide: { staticFriction: 1e9, coulomb: 1e9 } }), RAPID);
    clean(stuck);
    expect(stuck.summary.atCurrentLimit).toBeGreaterThan(0);
    expect(stuck.summary.slips).toBe(0);
    clean(simulate(SHOP, { ...RAPID, distance: 0 } as Move));
    clean(simulate(changed(SHOP, { slide: { tilt: Math.PI / 2, balance: 100 } }), RAPID));
    clean(simulate(changed(SHOP, { slide: { mass: 1e-3 } }), RAPID));
    clean(simulate(changed(SHOP, { supply: { voltage: 1e-3 } }), RAPID));
  });
  test('derived: every move ends, with every number a number', () => {
    for (const move of [
      RAPID,
      { ...RAPID, distance: -0.02, jerk: 50 } as Move,
      { kind: 'step', distance: -1e-5 },
      { kind: 'ramp', speed: -0.01, duration: 0.1 },
      { kind: 'reversal', distance: -0.002, pause: 0.05, speed: 0.02, acceleration: 1, jerk: 20 },
      { kind: 'small-steps', size: 1e-6, count: 3, pause: 0.02 },
      { kind: 'circle', radius: 0.005, turns: 1, speed: 0.02, acceleration: 1, jerk: 0 },
      { kind: 'force-step', force: -400, at: 0.01, duration: 0.05 },
      { kind: 'brake-from-rapid', speed: 0.05, acceleration: 1, jerk: 0, cruise: 0.02, stop: 5 },
      { kind: 'power-cut', speed: 0.05, acceleration: 1, jerk: 0, cruise: 0.02 },
      { kind: 'drop', at: 0.01 },
    ] as Move[])
      clean(simulate(SHOP, move));
  });
});

describe('a band over uncertain parameters', () => {
  const spread = [
    { path: 'slide.coulomb', share: 0.3, form: 'normal' },
    { path: 'motor.resistance', share: 0.1, form: 'even' },
  ] as const;
  test('derived: same seed, same band; quantiles in order; it can be stopped', () => {
    const move = { ...RAPID, distance: 0.005 } as Move;
    const one = band(SHOP, spread, move, 30, 7);
    const two = band(SHOP, spread, move, 30, 7);
    expect(one).toEqual(two);
    one.low.forEach((low, k) => {
      expect(low).toBeLessThanOrEqual(one.middle[k]!);
      expect(one.middle[k]!).toBeLessThanOrEqual(one.high[k]!);
    });
    let asked = 0;
    const stopped = band(
      SHOP,
      spread,
      move,
      100,
      7,
      () => {},
      () => ++asked > 1,
    );
    expect(stopped.runs).toBe(20);
    expect(band(SHOP, spread, move, 30, 8).peaks).not.toEqual(one.peaks);
  });
  test('derived: a spread names what there is', () => {
    for (const path of ['slide.colour', 'x', 'transmission.stiffness.x', 'control.sample', '__proto__.x'])
      expect(() => band(SHOP, [{ path, share: 0.1, form: 'even' }], RAPID, 10, 1)).toThrow(ModelError);
    const tripping = changed(SHOP, { drive: { followingLimit: 1e-4 } });
    expect(band(tripping, spread, RAPID, 20, 1).tripped).toBeGreaterThan(0);
  });
});

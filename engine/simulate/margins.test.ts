import { describe, expect, test } from 'vitest';
import { AX1, COMPLIANT, cascade, changed, PID } from './axis.fixture.ts';
import { constantsOf } from './constants.ts';
import { loopMargins, placedGains, simulate, startingGains } from './index.ts';
import { inertias } from './model.ts';

const degrees = (angle: number): number => (angle * 180) / Math.PI;

test('derived: single-loop gains by a triple pole at 60 rad/s', () => {
  const gains = placedGains(AX1, 60);
  expect(Math.abs(gains.proportional - 47.2481197)).toBeLessThan(6e-8);
  expect(Math.abs(gains.derivative - 0.437468662)).toBeLessThan(6e-10);
  expect(Math.abs(gains.integral - 944.962395)).toBeLessThan(6e-7);
});

describe('margins', () => {
  test('derived: single loop with L, b and a delay of 0.75 ms, as computed outside', () => {
    const margins = loopMargins(changed(AX1, { control: PID }))!;
    expect(Math.abs(degrees(margins.phaseMargin!) - 59.140717)).toBeLessThan(1e-5);
    expect(Math.abs(margins.crossover! - 115.9407)).toBeLessThan(1e-4);
    expect(Math.abs(margins.gainMargin - 10.143987)).toBeLessThan(1e-5);
    expect(Math.abs(margins.oscillatesAt! - 602.80064)).toBeLessThan(1e-4);
    expect(margins.steady).toBe(true);
  });
  test('derived: a position loop closed on the slide swings at Kp = 346.61959 1/s', () => {
    const model = changed(COMPLIANT, {
      motor: { viscous: 0 },
      feedback: { on: 'slide' },
      ...cascade({ speedIntegral: 0, current: 'ideal', positionGain: 300 }),
    });
    expect(Math.abs(300 * loopMargins(model, 'position')!.gainMargin - 346.61959)).toBeLessThan(5e-5);
    const over = changed(model, cascade({ positionGain: 350 }));
    expect(loopMargins(over, 'position')!.steady).toBe(false);
  });
  test('derived: P–P loop, closed form: phase margin of kv Kp/(s (s + kv))', () => {
    const model = changed(AX1, {
      motor: { viscous: 0 },
      ...cascade({ speedIntegral: 0, current: 'ideal' }),
    });
    const margins = loopMargins(model, 'position')!;
    const kv = (0.9 * 0.35) / 0.00127599088773;
    const w = Math.sqrt((-kv * kv + Math.sqrt(kv ** 4 + 4 * (kv * 40) ** 2)) / 2);
    expect(Math.abs(margins.crossover! - w)).toBeLessThan(1e-8 * w);
    expect(Math.abs(margins.phaseMargin! - (Math.PI / 2 - Math.atan(w / kv)))).toBeLessThan(1e-9);
    expect(margins.gainMargin).toBe(Number.POSITIVE_INFINITY);
  });
});

test('derived: starting gains settle without a limit cycle, with margins, on a rigid and on a yielding axis', () => {
  for (const model of [AX1, COMPLIANT]) {
    const gains = startingGains(model)!;
    expect(gains.reasons.cascade.length).toBeGreaterThan(3);
    expect(gains.reasons.single.length).toBeGreaterThan(0);
    const control = {
      ...gains.cascade,
      current: 'pi',
      sample: 1e-4,
      speedEvery: 2,
      positionEvery: 4,
      delay: 1,
    } as const;
    const set = changed(model, { ...cascade(control), supply: { voltage: 75 }, drive: { currentLimit: 20 } });
    const margins = loopMargins(set)!;
    expect(margins.steady).toBe(true);
    expect(degrees(margins.phaseMargin!)).toBeGreaterThan(30);
    expect(margins.gainMargin).toBeGreaterThan(1.8);
    const run = simulate(set, { kind: 'rapid', distance: 0.02, speed: 0.08, acceleration: 1, jerk: 30 });
    expect(run.summary.unstable).toBeNull();
    expect(run.summary.settled).not.toBeNull();
    expect(Math.abs(run.summary.finalFollowing)).toBeLessThan(1e-6);
  }
});

test('derived: gains for a loop that sets a current place the poles where they are wanted', () => {
  const model = changed(AX1, { control: { ...PID, output: 'current' } });
  const { proportional, derivative, integral } = placedGains(model, 100);
  const { motorSide, slideSide } = inertias(model);
  const J = motorSide + slideSide;
  const K = constantsOf(model).K;
  // J s³ + K (D s² + P s + I) is J (s + 100)³.
  expect((K * derivative) / J).toBeCloseTo(300, 9);
  expect((K * proportional) / J).toBeCloseTo(30_000, 6);
  expect((K * integral) / J).toBeCloseTo(1_000_000, 4);
});

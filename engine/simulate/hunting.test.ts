import { describe, expect, test } from 'vitest';
import { AX1, COMPLIANT, cascade, changed } from './axis.fixture.ts';
import { hunting, huntingInWords, playCycle, simulate } from './index.ts';
import type { AxisModel } from './model.ts';
import { springLeft } from './play-cycle.ts';
import { SHOP } from './sampled.fixture.ts';

/** A loop that looks at a slide behind play, without dry friction. */
const LOOSE = changed(SHOP, {
  ...cascade({ speedFrom: 'tacho' }),
  feedback: { on: 'slide', countsPerTurn: 0, countLength: 0 },
  transmission: { ...COMPLIANT.transmission, backlash: 2e-5 },
  slide: { coulomb: 0, staticFriction: 0 },
  motor: { coulomb: 0 },
});

/** Half the way and passes of the middle a second, straight from a long run. */
function watched(model: AxisModel, distance: number, from: number, until: number) {
  const { time, actual } = simulate(model, { kind: 'step', distance }, { until, points: 1e6, books: false });
  const tail = actual.filter((_, k) => time[k]! > from);
  const low = tail.reduce((least, each) => Math.min(least, each));
  const high = tail.reduce((most, each) => Math.max(most, each));
  let ups = 0;
  for (let k = 1; k < tail.length; k++)
    if (tail[k - 1]! < (low + high) / 2 && tail[k]! >= (low + high) / 2) ups++;
  return { amplitude: (high - low) / 2, frequency: ups / (until - from) };
}

test('derived: what a dead zone leaves of a spring, closed form and Fourier integral', () => {
  const n = 100_000;
  let total = 0;
  for (let k = 0; k < n; k++) {
    const x = Math.sin((2 * Math.PI * k) / n);
    total += (2 / n) * (x > 0.3 ? x - 0.3 : x < -0.3 ? x + 0.3 : 0) * x;
  }
  expect(Math.abs(total - springLeft(0.3))).toBeLessThan(1e-8);
  expect(springLeft(1)).toBe(0);
  expect(springLeft(1e-9)).toBeCloseTo(1, 8);
});

describe('play in the loop', () => {
  test('derived: the swing is that of a long run in time, and near that of the describing function', () => {
    for (const positionGain of [20, 40]) {
      const model = changed(LOOSE, cascade({ positionGain }));
      const { swing, by } = hunting(model)!;
      const run = watched(model, 6e-5, 6, 9);
      expect(by).toBe('play');
      expect(Math.abs(swing!.amplitude / run.amplitude - 1)).toBeLessThan(0.02);
      expect(Math.abs(swing!.frequency / run.frequency - 1)).toBeLessThan(0.02);
      // The swing is no sine; first harmonics alone are off by this much.
      const reckoned = playCycle(model)!;
      expect(Math.abs(reckoned.amplitude / run.amplitude - 1)).toBeLessThan(0.1);
      expect(Math.abs(reckoned.frequency / run.frequency - 1)).toBeLessThan(0.3);
    }
  });
  test('derived: twice the play swings twice as far, as often', () => {
    const once = hunting(LOOSE)!.swing!;
    const twice = hunting(changed(LOOSE, { transmission: { backlash: 4e-5 } }))!.swing!;
    expect(Math.abs(twice.amplitude / once.amplitude - 2)).toBeLessThan(0.01);
    expect(Math.abs(twice.frequency / once.frequency - 1)).toBeLessThan(0.01);
  });
  test('derived: without play, and with a loop that looks at the motor, it lies still', () => {
    for (const calm of [{ transmission: { backlash: 0 } }, { feedback: { on: 'motor' as const } }]) {
      const model = changed(LOOSE, calm);
      expect(playCycle(model)).toBeNull();
      expect(hunting(model)!.swing).toBeNull();
    }
  });
});

describe('friction from rest and an integrator', () => {
  const sticky = changed(AX1, {
    ...cascade({ current: 'ideal', sample: 1e-4, speedEvery: 1, positionEvery: 1 }),
    slide: { staticFriction: 500, coulomb: 200, fallSpeed: 0 },
    supply: { voltage: 75 },
    drive: { currentLimit: 20 },
  });
  test('derived: it hunts as in a long run, and not where friction is the same at rest', () => {
    const { swing, by } = hunting(sticky)!;
    const run = watched(sticky, 5e-6, 20, 60);
    expect(by).toBe('friction');
    expect(Math.abs(swing!.amplitude / run.amplitude - 1)).toBeLessThan(0.05);
    expect(Math.abs(swing!.frequency / run.frequency - 1)).toBeLessThan(0.1);
    expect(hunting(changed(sticky, { slide: { staticFriction: 200 } }))!.swing).toBeNull();
  });
  test('derived: between two jumps it stands for as long as the integrator takes from friction to friction', () => {
    const run = simulate(sticky, { kind: 'step', distance: 5e-6 }, { until: 30, points: 1e6, books: false });
    const slips = run.events.filter(({ kind, time }) => kind === 'slip' && time > 10);
    const sticks = run.events.filter(({ kind, time }) => kind === 'stick' && time > slips[0]!.time);
    const r = 0.005 / (2 * Math.PI);
    const { control, motor } = sticky;
    if (control.kind !== 'cascade' || motor.kind !== 'servo') throw new Error('a servo is wanted');
    // The torque goes on by Kt·Kvi·Kp·e while it stands at an error e; it slips at 500 N on the other side.
    for (let k = 0; k < 3; k++) {
      const stood = slips[k + 1]!.time - sticks[k]!.time;
      const at = run.time.findIndex((t) => t > sticks[k]!.time + 0.2 * stood);
      const later = run.time.findIndex((t) => t > sticks[k]!.time + 0.8 * stood);
      const error = run.following[at]! / r;
      const ramp = motor.constant * control.speedIntegral * control.positionGain * error;
      const torque = motor.constant * (run.current[later]! - run.current[at]!);
      expect(Math.abs(torque / (ramp * (run.time[later]! - run.time[at]!)) - 1)).toBeLessThan(0.01);
    }
  });
});

test('derived: the words name the swing, its cause and what helps; no loop, no hunting', () => {
  const said = huntingInWords(hunting(LOOSE)!);
  expect(said.level).toBe('doubtful');
  expect(said.sentence).toMatch(/hunt: to and fro by about [\d.]+ µm to either side, [\d.]+ times a second/);
  expect(said.sentence).toContain('play');
  const still = huntingInWords(hunting(changed(LOOSE, { transmission: { backlash: 0 } }))!);
  expect(still.level).toBe('good');
  const wild = huntingInWords(hunting(changed(LOOSE, cascade({ positionGain: 2000 })))!);
  expect(wild.level).not.toBe('good');
});

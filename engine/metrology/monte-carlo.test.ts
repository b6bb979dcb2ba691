import { describe, expect, test } from 'vitest';
import {
  type Distribution,
  intervals,
  numericalTolerance,
  type Simulated,
  type Simulation,
  simulate,
  simulateInBlocks,
} from './index.ts';

const run = (simulation: Simulation): Simulated => {
  const result = simulate(simulation);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};
const within = (own: number, other: number, room: number): void =>
  expect(Math.abs(own - other), `${own} against ${other}`).toBeLessThanOrEqual(room);
const bell = (standard: number, centre = 0): Distribution => ({ kind: 'normal', centre, standard });
const flat = (standard: number, centre = 0): Distribution => ({
  kind: 'rectangular',
  centre,
  half: standard * Math.sqrt(3),
});
const limits = (low: number, high: number): Distribution => ({
  kind: 'rectangular',
  centre: (low + high) / 2,
  half: (high - low) / 2,
});
const sum = (x: Float64Array): number => x[0]! + x[1]! + x[2]! + x[3]!;
const MILLION = 1_000_000;

/** Room for a million draws: 3 u/√M on the mean, 0.2 % on u, 0.5 % of u on the ends. */
function additive(inputs: readonly Distribution[], u: number, end: number): void {
  const own = run({ inputs, formula: sum, seed: 20, trials: MILLION });
  within(own.mean, 0, (3 * u) / 1000);
  within(own.standard, u, 0.002 * u);
  within(own.symmetric[0], -end, 0.005 * u);
  within(own.symmetric[1], end, 0.005 * u);
  // The shortest interval is nearly flat in its place: its ends wander, its width does not.
  within(own.shortest[1] - own.shortest[0], 2 * end, 0.01 * u);
}

describe('published: additive model (JCGM 101:2008, 9.2; ends given exactly where they have a closed form)', () => {
  test('four normal inputs: u 2.0, ±3.92', () => additive([bell(1), bell(1), bell(1), bell(1)], 2, 3.919928));
  test('four rectangular inputs: u 2.0, ±3.88, not ±3.92', () =>
    additive([flat(1), flat(1), flat(1), flat(1)], 2, 3.879407));
  test('one rectangular input ten times as wide: u 10.1, ±17.0, not ±19.9', () =>
    additive([flat(1), flat(1), flat(1), flat(10)], 10.148892, 17.01));
});

test('published: mass calibration, u 0.0754, shortest interval 1.0834 to 1.3825 (JCGM 101:2008, 9.3)', () => {
  const own = run({
    inputs: [
      bell(0.05, 100_000),
      bell(0.02, 1.234),
      limits(1.1, 1.3),
      limits(7000, 9000),
      limits(7950, 8050),
    ],
    formula: ([m, dm, a, w, r]) => (m! + dm!) * (1 + (a! - 1.2) * (1 / w! - 1 / r!)) - 100_000,
    seed: 3,
    trials: MILLION,
  });
  within(own.mean, 1.234, 0.0005);
  within(own.standard, 0.0754, 0.0005);
  within(own.shortest[0], 1.0834, 0.002);
  within(own.shortest[1], 1.3825, 0.002);
});

test('published: ln x of a rectangle from 0.1 to 1.1 (NPL report DEM-ES-011, 9.2)', () => {
  const own = run({ inputs: [limits(0.1, 1.1)], formula: ([x]) => Math.log(x!), seed: 4, trials: MILLION });
  within(own.mean, -0.66490029, 0.002);
  within(own.standard, 0.6062267, 0.002);
  within(own.shortest[0], -1.89712, 0.01);
  within(own.shortest[1], 0.0953102, 0.002);
});

describe('derived: loss of comparison x₁² + x₂², both ± 0.005 (the problem of JCGM 101:2008, 9.4, in closed form)', () => {
  const u = 0.005;
  const loss = (x1: number, r: number): Simulated =>
    run({
      inputs: [bell(u, x1), bell(u)],
      formula: ([a, b]) => a! * a! + b! * b!,
      correlation: () => r,
      seed: 5,
      trials: 500_000,
    });

  test.each([
    [0, 0],
    [0.01, 0],
    [0.05, 0],
    [0, 0.9],
    [0.01, 0.9],
    [0.05, 0.9],
  ])('x₁ = %d, correlation %d: mean x₁² + 2u², variance 4u⁴(1 + r²) + 4x₁²u²', (x1, r) => {
    const own = loss(x1, r);
    const standard = Math.sqrt(4 * u ** 4 * (1 + r * r) + 4 * x1 * x1 * u * u);
    within(own.mean, x1 * x1 + 2 * u * u, (4 * standard) / Math.sqrt(own.trials));
    within(own.standard, standard, 0.01 * standard);
  });

  test('at x₁ = 0 it is an exponential: the shortest interval begins at zero, where the first-order way has no doubt at all', () => {
    const own = loss(0, 0);
    within(own.shortest[0], 0, 1e-7);
    within(own.shortest[1], -2 * u * u * Math.log(0.05), 1.5e-6);
    within(own.symmetric[0], -2 * u * u * Math.log(0.975), 5e-8);
    within(own.symmetric[1], -2 * u * u * Math.log(0.025), 2e-6);
  });
});

test('derived: end gauge simulated agrees with the variance of products worked exactly (JCGM 100:2008, H.1, inputs)', () => {
  const ls = 50_000_623;
  const alpha = { kind: 'rectangular', centre: 11.5e-6, half: 2e-6 } as const;
  const dTheta = { kind: 'rectangular', centre: 0, half: 0.05 } as const;
  const dAlpha = { kind: 'rectangular', centre: 0, half: 1e-6 } as const;
  const own = run({
    inputs: [
      bell(25, ls),
      bell(9.7, 215),
      alpha,
      bell(0.2, -0.1),
      { kind: 'arcsine', centre: 0, half: 0.5 },
      dAlpha,
      dTheta,
    ],
    formula: ([l, d, a, mean, swing, da, dt]) => l! + d! - l! * (da! * (mean! + swing!) + a! * dt!),
    seed: 9,
    trials: MILLION,
  });
  const [va, vda, vdt] = [4e-12 / 3, 1e-12 / 3, 0.0025 / 3];
  const squareTheta = 0.04 + 0.125 + 0.01;
  const variance = 25 ** 2 + 9.7 ** 2 + ls * ls * (vda * squareTheta + (va + 11.5e-6 ** 2) * vdt);
  within(own.mean, ls + 215, 0.15);
  within(own.standard, Math.sqrt(variance), 0.002 * Math.sqrt(variance));
});

describe('derived: the adaptive procedure', () => {
  const model: Simulation = {
    inputs: [bell(0.5), flat(0.8)],
    formula: ([a, b]) => a! + b!,
    seed: 11,
    digits: 1,
  };

  test('stops when all four numbers stand still within the tolerance, and is right to it', () => {
    const own = run(model);
    expect(own.settled).toBe(true);
    expect(own.tolerance).toBeCloseTo(0.05, 12);
    expect(own.trials).toBe(100_000);
    const finer = run({ ...model, digits: 2, most: 4e6 });
    expect(finer.settled).toBe(true);
    expect(finer.tolerance).toBeCloseTo(0.005, 12);
    expect(finer.trials).toBeGreaterThan(own.trials);
    within(finer.standard, Math.sqrt(0.89), 0.005);
    within(finer.mean, 0, 0.005);
    expect(finer.sorted.length).toBe(finer.trials);
  });

  test('says so where it did not settle', () => {
    const wild = run({
      inputs: [{ kind: 'student', centre: 0, scale: 1, freedom: 1.2 }],
      formula: ([x]) => x!,
      seed: 1,
      most: 100_000,
    });
    expect(wild).toMatchObject({ settled: false, trials: 100_000 });
  });

  test('tolerance is half of the last digit wanted', () => {
    expect(numericalTolerance(0.0754, 2)).toBeCloseTo(0.0005, 15);
    expect(numericalTolerance(0.0754, 1)).toBeCloseTo(0.005, 15);
    expect(numericalTolerance(9.96, 2)).toBeCloseTo(0.5, 12);
    expect(numericalTolerance(32, 2)).toBe(0.5);
    expect(numericalTolerance(0, 2)).toBe(0);
  });

  test('the same seed gives the same result, block by block or at once', () => {
    const steps: number[] = [];
    const generator = simulateInBlocks(model);
    for (let step = generator.next(); ; step = generator.next()) {
      if (!step.done) {
        steps.push(step.value.trials);
        continue;
      }
      if (!step.value.ok) throw new Error(step.value.problem.message);
      expect(step.value.value).toEqual(run(model));
      break;
    }
    expect(steps).toEqual(steps.map((_, i) => 10_000 * (i + 1)));
    expect(run({ ...model, seed: 12 }).mean).not.toBe(run(model).mean);
  });

  test('intervals of a ramp hold their share; of results bunched at one end the shortest lies there', () => {
    const ramp = Float64Array.from({ length: 1001 }, (_, i) => i);
    const { symmetric, shortest } = intervals(ramp, 0.9);
    expect(symmetric[1] - symmetric[0]).toBe(901);
    expect(symmetric).toEqual([50, 951]);
    expect(shortest[1] - shortest[0]).toBe(901);
    expect(
      intervals(
        ramp.map((v) => v * v),
        0.9,
      ).shortest,
    ).toEqual([0, 901 * 901]);
    expect(intervals(Float64Array.of(1), 0.95).shortest).toEqual([1, 1]);
  });

  test('fully correlated inputs add, opposite ones cancel (limit cases)', () => {
    const three = {
      inputs: [bell(1), bell(2), bell(3)],
      formula: ([a, b, c]: Float64Array) => a! + b! + c!,
      seed: 8,
      trials: 50_000,
    };
    within(run({ ...three, correlation: () => 1 }).standard, 6, 0.1);
    const signs = [1, 1, -1];
    within(run({ ...three, correlation: (i, j) => signs[i]! * signs[j]! }).standard, 0, 1e-6);
  });

  test('nothing uncertain gives no width', () => {
    const own = run({ inputs: [bell(0, 5)], formula: ([x]) => x!, seed: 1 });
    expect(own).toMatchObject({ mean: 5, standard: 0, symmetric: [5, 5], shortest: [5, 5], settled: true });
  });

  test.each([
    [
      'a formula without a value',
      { ...model, formula: ([a]: Float64Array) => Math.log(a!) },
      /no value for an input that can occur/,
    ],
    ['a level that is none', { ...model, level: 95 }, /level/],
    ['too few trials', { ...model, trials: 3 }, /number of trials/],
    ['correlated rectangles', { ...model, correlation: () => 0.5 }, /Only normal inputs/],
    [
      'correlations that contradict each other',
      { ...model, inputs: [bell(1), bell(1), bell(1)], correlation: () => -0.9 },
      /contradict/,
    ],
  ])('%s is refused in words', (_, simulation, words) => {
    const result = simulate(simulation);
    expect(result.ok ? '' : result.problem.message).toMatch(words);
  });
});

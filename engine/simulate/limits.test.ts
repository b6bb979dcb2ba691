/** Limits, dry friction and the saturated benchmark of the axis. */
import { describe, expect, test } from 'vitest';
import { AX1, AX1_RADIUS, at, cascade, changed } from './axis.fixture.ts';
import { type Move, simulate } from './index.ts';
import { type Constants, PHI, W2, WIND } from './modes.ts';
import { Plant } from './plant.ts';
import { tick } from './tick.ts';

const r = AX1_RADIUS;
const rel = (got: number, want: number): number => Math.abs(got - want) / Math.abs(want);
/** So far that the loop asks for all there is throughout. */
const FAR: Move = { kind: 'step', distance: 1000 };

test('derived: full current until the bus voltage limits (closed form), L = 0', () => {
  const model = changed(AX1, {
    slide: { coulomb: 0.25 / r },
    drive: { currentLimit: 20 },
    supply: { voltage: 75 },
    ...cascade({ current: 'ideal', speedIntegral: 0 }),
  });
  const run = simulate(model, FAR, { look: 0.005, until: 0.1, points: 1e6 });
  const table = [
    [0.005, 26.3982772, 0.066038794, 20],
    [0.01, 52.6933146, 0.263810706, 20],
    [0.02, 104.975283, 1.05249514, 20],
    [0.025, 130.963017, 1.64238332, 20],
    [0.03, 155.943109, 2.36129626, 17.0165933],
    [0.04, 185.780089, 4.08978407, 8.31414067],
    [0.06, 205.011548, 8.04736693, 2.70496513],
    [0.1, 209.593312, 16.3819219, 1.36861741],
  ] as const;
  for (const [t, w, th, i] of table) {
    expect(rel(at(run.time, run.speed, t), w), `speed ${t}`).toBeLessThan(5e-9);
    expect(rel(at(run.time, run.actual, t) / r, th), `angle ${t}`).toBeLessThan(1e-8);
    expect(rel(at(run.time, run.current, t), i), `current ${t}`).toBeLessThan(5e-9);
  }
  const limit = run.events.find(({ kind }) => kind === 'voltage-limit');
  expect(Math.abs(limit!.time - 0.0278468627)).toBeLessThan(6e-11);
  expect(run.summary.energy!.relative).toBeLessThan(1e-10);
});

test('derived: straight on 75 V without a current limit, L included', () => {
  const model = changed(AX1, { supply: { voltage: 75 } });
  const run = simulate(model, { kind: 'step', distance: 1e6 }, { look: 0.0005, until: 0.05, points: 1e6 });
  const table = [
    [0.0005, 11.3142392, 0.802144202],
    [0.001, 20.4955887, 3.00521783],
    [0.002, 33.6953167, 10.5729578],
    [0.004, 45.9010485, 33.053979],
    [0.006, 47.3922731, 58.8996044],
    [0.01, 38.5866677, 106.513226],
    [0.02, 15.1417973, 175.643857],
    [0.05, 1.12880835, 210.916269],
  ] as const;
  for (const [t, i, w] of table) {
    expect(rel(at(run.time, run.current, t), i), `current ${t}`).toBeLessThan(5e-9);
    expect(rel(at(run.time, run.speed, t), w), `speed ${t}`).toBeLessThan(5e-9);
  }
  const peak = simulate(
    model,
    { kind: 'step', distance: 1e6 },
    { look: 0.00538376922, until: 0.00538376922, points: 1e6 },
  );
  expect(rel(peak.current.at(-1)!, 47.6583294)).toBeLessThan(2e-9);
});

describe('dry friction', () => {
  test('derived: overdamped release stops short of the end by Tc/K, closed form', () => {
    const model = changed(AX1, {
      motor: { viscous: 0 },
      slide: { coulomb: 0.25 / r },
      ...cascade({ current: 'ideal', speedIntegral: 0 }),
    });
    const run = simulate(model, { kind: 'step', distance: 0.5 * r }, { look: 0.01, until: 1.5, points: 1e6 });
    const table = [
      [0.01, 0.387059116],
      [0.02, 0.252815495],
      [0.05, 0.0721987566],
      [0.1, 0.0240940878],
      [0.2, 0.0198693194],
    ] as const;
    for (const [t, x] of table) expect(Math.abs(at(run.time, run.following, t) / r - x)).toBeLessThan(1e-9);
    expect(rel(run.summary.finalFollowing / r, 0.25 / 12.6)).toBeLessThan(1e-9);
  });

  test('derived: undamped spring and mass lose 4 Tc/k in each swing and then truly stick', () => {
    const c: Constants = {
      R: 1,
      L: 0,
      K: 0,
      J1: 1,
      J2: 0.00127599088773,
      stiffness: 12.6,
      damping: 0,
      gap: 0,
      T1: 1e9,
      b1: 0,
      Ts: 0.25,
      Tc: 0.25,
      b2: 0,
      fall: 0,
      smooth: 0,
      currentLimit: 1,
      Kp: 0,
      Kvp: 0,
      Kvi: 0,
      kff: 0,
      kaff: 0,
      Kcp: 0,
      Kci: 0,
      seesWind: 0,
      rotorTeeth: 0,
      fieldDamping: 0,
    };
    const turns: number[] = [];
    const times: number[] = [];
    const plant = new Plant(c, 'open', 1e-4, null, (ending, time) => {
      if (ending !== 'slide-breaks+' && ending !== 'slide-breaks-') {
        turns.push(-plant.x[WIND]!);
        times.push(time);
      }
    });
    plant.x[WIND] = -0.15;
    plant.settleModes();
    for (let k = 0; k < 3000; k++) tick(plant);
    const swings = [-0.11031746, 0.0706349206, -0.030952381, -0.00873015873];
    expect(turns).toHaveLength(4);
    for (const [k, want] of swings.entries()) expect(Math.abs(turns[k]! - want)).toBeLessThan(6e-9);
    expect(Math.abs(times[3]! - 0.126458602)).toBeLessThan(1e-9);
    const stuck = plant.x[WIND]!;
    for (let k = 0; k < 10_000; k++) tick(plant);
    expect(plant.x[WIND]).toBe(stuck);
    expect(plant.x[W2]).toBe(0);
    expect(plant.x[PHI]).toBe(0);
  });

  test('derived: the integrator breaks the axis away after (Ts − T0)/(Kt Kvi Kp e)', () => {
    const model = changed(AX1, {
      slide: { coulomb: 0.25 / r, staticFriction: 0.3 / r },
      ...cascade({ current: 'ideal' }),
    });
    const move: Move = { kind: 'step', distance: 0.00157079632679 * r };
    const run = simulate(model, move, { until: 0.5, points: 0 });
    const slip = run.events.find(({ kind }) => kind === 'slip');
    expect(Math.abs(slip!.time - 0.28315227)).toBeLessThan(6e-9);
  });

  test('derived: no creep under a constant load below the static friction', () => {
    const model = changed(AX1, {
      slide: { coulomb: 300, staticFriction: 400, fallSpeed: 0.001 },
      transmission: { stiffness: 6e7, damping: 5000 },
    });
    const move: Move = { kind: 'force-step', force: 390, at: 0.01, duration: 3 };
    const run = simulate(model, move, { until: 2.9, points: 1e5 });
    expect(run.actual.every((x) => x === run.actual[0])).toBe(true);
    expect(run.summary.slips).toBe(0);
    const more = simulate(model, { ...move, force: 410 }, { until: 0.1, points: 0 });
    expect(more.summary.slips).toBeGreaterThan(0);
  });
});

describe('smoothed friction with both limits: two independent solvers agreed', () => {
  const model = (kaff: number) =>
    changed(AX1, {
      slide: { coulomb: 0.25 / r, smoothing: 0.5 * r },
      drive: { currentLimit: 20 },
      supply: { voltage: 75 },
      ...cascade({ speedForward: 1, accelerationForward: kaff }),
    });
  test('derived: N1, never at a limit', () => {
    const move: Move = { kind: 'rapid', distance: 0.05, speed: 0.12, acceleration: 2, jerk: 0 };
    const table = [
      [0.01, 0.04865606, 18.03378, 11.46602, 0.005920261, 10.13283],
      [0.03, 0.08189931, 76.92116, 10.69446, 0.008492652, 10.13253],
      [0.06, 0.03657438, 152.189, 10.14588, 0.005388436, 10.2967],
      [0.1, -0.0491381, 149.131, 1.108701, 0.0009500146, 1.143745],
      [0.3, -7.645731e-5, 150.7933, 1.14549, 1.545286e-6, 1.145125],
      [0.44, -0.07997089, 92.33195, -9.426075, -0.002780568, -8.185811],
      [0.5, 0.0504315, -0.789871, 0.4253402, -0.004803951, 0.05575978],
      [0.55, 0.02191646, 0.8802325, 0.6014324, -0.002994232, -0.1257512],
      [0.6, 0.0021053, 0.2352548, 0.2877247, -0.0002442787, -0.0536121],
    ] as const;
    const [one, two] = [0, 1].map((kaff) =>
      simulate(model(kaff), move, { look: 0.001, until: 0.6, points: 1e6 }),
    );
    for (const [t, e1, w1, i1, e2, i2] of table) {
      const close = (got: number, want: number): void =>
        expect(rel(got, want), `${t}: ${want}`).toBeLessThan(8e-7);
      close(at(one!.time, one!.following, t) * 1e3, e1);
      close(at(one!.time, one!.speed, t), w1);
      close(at(one!.time, one!.current, t), i1);
      close(at(two!.time, two!.following, t) * 1e3, e2);
      close(at(two!.time, two!.current, t), i2);
    }
    expect(one!.summary.energy!.relative).toBeLessThan(1e-9);
  });
  test('derived: N2, at both limits', () => {
    const move: Move = { kind: 'rapid', distance: 0.05, speed: 0.16, acceleration: 8, jerk: 0 };
    const table = [
      [0.01, 0.2496057, 43.97254, 19.54442, 0.2130613, 19.53837],
      [0.02, 0.8961836, 95.04626, 19.53076, 0.8185396, 19.53102],
      [0.03, 1.537948, 145.7198, 19.53405, 1.419527, 19.40399],
      [0.05, 1.849619, 201.6953, 4.563611, 1.687836, 4.221662],
      [0.1, 1.560155, 209.7514, 1.325924, 1.392237, 1.324612],
      [0.2, 0.8664704, 209.7817, 1.313662, 0.6985302, 1.313662],
      [0.3, 0.1725708, 209.7817, 1.313662, 0.004630546, 1.313662],
      [0.3225, -0.2605673, 167.9731, -19.50817, -0.3242408, -19.48838],
      [0.3325, -0.9721014, 111.4692, -19.48114, -0.917106, -19.48185],
      [0.3525, -1.855205, -0.1896495, -19.48863, -1.566739, -19.51126],
      [0.3825, -0.5861063, -45.61053, 10.63339, -0.4192062, 6.70672],
      [0.4325, -0.07700076, -3.035889, -0.3896987, -0.06587146, -0.4293997],
      [0.5325, -0.0003385507, -0.162486, -0.2033858, 0.0002503322, -0.168738],
    ] as const;
    const [one, two] = [0, 1].map((kaff) =>
      simulate(model(kaff), move, { look: 0.0005, until: 0.54, points: 1e6 }),
    );
    for (const [t, e1, w1, i1, e2, i2] of table) {
      // The two printed solutions differ by up to 2.2e-7 mm.
      const close = (got: number, want: number, slack: number): void =>
        expect(Math.abs(got - want), `${t}: ${want}`).toBeLessThan(slack + 1e-6 * Math.abs(want));
      close(at(one!.time, one!.following, t) * 1e3, e1, 5e-7);
      close(at(one!.time, one!.speed, t), w1, 1e-4);
      close(at(one!.time, one!.current, t), i1, 2e-5);
      close(at(two!.time, two!.following, t) * 1e3, e2, 5e-7);
      close(at(two!.time, two!.current, t), i2, 2e-5);
    }
    expect(rel(one!.summary.overshoot * 1e3, 1.85521)).toBeLessThan(2e-4);
  });
});

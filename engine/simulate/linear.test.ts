/** The benchmark axis without friction or limits, against closed forms and outside integrations printed to nine digits. */
import { describe, expect, test } from 'vitest';
import { AX1, AX1_RADIUS, at, COMPLIANT, cascade, changed, PID } from './axis.fixture.ts';
import { type Move, type Run, type SimulateOptions, simulate } from './index.ts';

const r = AX1_RADIUS;
const step = (rad: number): Move => ({ kind: 'step', distance: rad * r });
/** No bounds of plotting: every look is kept. */
const every = (look: number, until: number): SimulateOptions => ({ look, until, points: 1e6 });
const angle = (run: Run, t: number): number => at(run.time, run.actual, t) / r;
const rel = (got: number, want: number): number => Math.abs(got - want) / Math.abs(want);

describe('P position and P speed, ideal torque, no friction', () => {
  const table = [
    [0.002, 0.0168101268, 0.0624884742],
    [0.005, 0.0835409277, 0.297421139],
    [0.01, 0.2352157251, 0.7302907944],
    [0.02, 0.5147974814, 1.0698828264],
    [0.04, 0.8199366869, 0.9955467077],
    [0.08, 0.9758208403, 0.99999208],
  ] as const;

  test.each([40, 150])('derived: closed-form second-order step, Kp = %d, to 1e-10', (Kp) => {
    const model = changed(AX1, {
      motor: { viscous: 0 },
      ...cascade({ positionGain: Kp, speedIntegral: 0, current: 'ideal' }),
    });
    const run = simulate(model, step(1), every(0.001, 0.08));
    for (const [t, slow, fast] of table)
      expect(Math.abs(angle(run, t) - (Kp === 40 ? slow : fast)), `${t}`).toBeLessThan(1e-10);
  });

  test('derived: overshoot exp(−πζ/√(1−ζ²)) at π/ωd', () => {
    const model = changed(AX1, {
      motor: { viscous: 0 },
      ...cascade({ positionGain: 150, speedIntegral: 0, current: 'ideal' }),
    });
    const run = simulate(model, step(1), { look: 0.0212803715, until: 0.0212803715 * 2, points: 1e6 });
    expect(Math.abs(angle(run, 0.0212803715) - 1.0723159633)).toBeLessThan(1e-9);
    expect(Math.abs(run.summary.overshoot / r - 0.0723159633)).toBeLessThan(1e-9);
  });
});

test('derived: full cascade, step of 0.1 rad, as by matrix exponential (9 digits)', () => {
  const run = simulate(AX1, step(0.1), every(0.001, 0.16));
  const table = [
    [0.001, 0.000271457377, 0.666258313, 3.16903345],
    [0.002, 0.00135501862, 1.47702082, 2.67538845],
    [0.005, 0.00838495949, 3.00290255, 1.17138509],
    [0.01, 0.0256213008, 3.61140834, -0.0679800356],
    [0.02, 0.056803413, 2.43814659, -0.522945863],
    [0.04, 0.0837979186, 0.642956925, -0.140216436],
    [0.08, 0.0956798898, 0.137765521, -0.0151229322],
    [0.16, 0.0996732923, 0.0105586564, -0.0012139318],
  ] as const;
  for (const [t, th, w, i] of table) {
    expect(rel(angle(run, t), th), `angle at ${t}`).toBeLessThan(5e-9);
    expect(rel(at(run.time, run.speed, t), w), `speed at ${t}`).toBeLessThan(5e-9);
    expect(rel(at(run.time, run.current, t), i), `current at ${t}`).toBeLessThan(5e-9);
  }
});

describe('a ramp of 0.1 m/s', () => {
  const ramp: Move = { kind: 'ramp', speed: 0.1, duration: 0.5 };
  const table = [
    [0.005, 0.610354235, 10.5368508, 0.346932963, 104.875817],
    [0.01, 1.13336155, 32.1966762, 0.328444649, 145.652415],
    [0.02, 1.85912413, 71.3812739, 0.0745922796, 147.977908],
    [0.05, 2.7008619, 111.505846, -0.0867842566, 123.458517],
    [0.1, 3.05325569, 122.808504, -0.0169569116, 125.112943],
    [0.2, 3.13810535, 125.551001, -0.000669690963, 125.642063],
    [0.4, 3.14158722, 125.66353, -1.04405235e-6, 125.663672],
  ] as const;
  test.each([0, 1])('derived: following error and speed with kff = %d', (kff) => {
    const run = simulate(changed(AX1, cascade({ speedForward: kff })), ramp, every(0.001, 0.4));
    for (const row of table) {
      const [t] = row;
      expect(Math.abs(at(run.time, run.following, t) / r - row[kff === 0 ? 1 : 3])).toBeLessThan(2e-8);
      expect(Math.abs(at(run.time, run.speed, t) - row[kff === 0 ? 2 : 4])).toBeLessThan(2e-6);
    }
  });

  test('derived: constant-velocity error is v/Kv', () => {
    const run = simulate(AX1, { ...ramp, duration: 2 }, { until: 1.9, points: 0 });
    expect(rel(run.summary.finalFollowing, 0.1 / 40)).toBeLessThan(1e-9);
  });
});

test('derived: constant-acceleration error, P and PI speed loop', () => {
  const rise: Move = { kind: 'rapid', distance: 10, speed: 100, acceleration: 1, jerk: 0 };
  const until = 2;
  const pi = simulate(changed(AX1, cascade({ speedForward: 1 })), rise, { until, points: 0 });
  expect(rel(pi.summary.finalFollowing, 1.5873016e-6)).toBeLessThan(2e-7);
  const p = simulate(
    changed(AX1, {
      motor: { viscous: 0 },
      ...cascade({ speedForward: 1, speedIntegral: 0, current: 'ideal' }),
    }),
    rise,
    { until, points: 0 },
  );
  expect(rel(p.summary.finalFollowing, 101.26912e-6)).toBeLessThan(5e-8);
});

test('derived: trapezoid of 50 mm, as by piecewise matrix exponential', () => {
  const move: Move = { kind: 'rapid', distance: 0.05, speed: 0.12, acceleration: 2, jerk: 0 };
  const table = [
    [0.02, 0.4, 0.338110794, 5.24205743, 0.0778327809, 10.9289797, 0.00278055438],
    [0.06, 3.6, 1.9114215, 8.68657519, 0.034068976, 9.44356874, 0.00296712218],
    [0.1, 8.4, 2.74238049, 1.67735358, -0.0498146518, 0.397594443, 0.000295608773],
    [0.2, 20.4, 2.98977737, 0.478578291, -0.00196311918, 0.440007871, 1.3286458e-5],
    [0.4, 44.4, 2.99998406, 0.430921404, -3.0605221e-6, 0.430861282, 2.07152834e-8],
    [0.44, 48.6555556, 2.5587419, -5.498505, -0.0799709039, -10.1403606, -0.00278057924],
    [0.5, 50, 0.446871266, -2.87406094, 0.0624655274, 1.31063034, -0.000296700485],
    [0.55, 50, 0.0881461259, -0.408161662, 0.0170301961, -0.0862039603, -0.000115767448],
    [0.6, 50, 0.0175183921, -0.0818094645, 0.00336372096, -0.0156776399, -2.27651151e-5],
  ] as const;
  const runs = [
    { speedForward: 0, accelerationForward: 0 },
    { speedForward: 1, accelerationForward: 0 },
    { speedForward: 1, accelerationForward: 1 },
  ].map((control) => simulate(changed(AX1, cascade(control)), move, every(0.001, 0.6)));
  for (const [t, x, e0, i0, e1, i1, e2] of table) {
    const near = (run: number, want: number): void =>
      expect(Math.abs(at(runs[run]!.time, runs[run]!.following, t) * 1e3 - want), `${run} ${t}`).toBeLessThan(
        2e-9 + 3e-9 * Math.abs(want),
      );
    expect(Math.abs(at(runs[0]!.time, runs[0]!.commanded, t) * 1e3 - x)).toBeLessThan(6e-8);
    near(0, e0);
    near(1, e1);
    near(2, e2);
    expect(rel(at(runs[0]!.time, runs[0]!.current, t), i0)).toBeLessThan(1e-8);
    expect(rel(at(runs[1]!.time, runs[1]!.current, t), i1)).toBeLessThan(1e-8);
  }
  const end = simulate(AX1, move, { until: 0.056666667 + 0.42, points: 0 });
  expect(Math.abs(end.summary.finalFollowing * 1e3 - 1.08857716)).toBeLessThan(2e-8);
});

describe('a single sampled loop with a delay of one sample', () => {
  const model = changed(AX1, { control: PID, supply: { voltage: 75 } });
  test('derived: step of 0.2 rad, exact zero-order hold', () => {
    const run = simulate(model, step(0.2), { until: 0.2, points: 1e6 });
    const table = [
      [0.001, 1.72976645e-5, 0.102076809, 1.43979278],
      [0.002, 0.000425119713, 0.811258386, 3.58352702],
      [0.005, 0.00873379576, 5.01982763, 5.79044552],
      [0.01, 0.0513008544, 11.2611807, 2.70883165],
      [0.02, 0.1671582, 9.51240355, -2.48392009],
      [0.03, 0.229086687, 3.34513486, -1.59481013],
      [0.05, 0.247176164, -0.333221415, -0.214549791],
      [0.1, 0.21398803, -0.472916249, 0.0452306585],
      [0.2, 0.200201973, -0.0102302724, 0.00170655239],
    ] as const;
    for (const [t, th, w, i] of table) {
      expect(rel(angle(run, t), th), `angle ${t}`).toBeLessThan(6e-9);
      expect(rel(at(run.time, run.speed, t), w), `speed ${t}`).toBeLessThan(2e-8);
      expect(rel(at(run.time, run.current, t), i), `current ${t}`).toBeLessThan(5e-8);
    }
  });
  test('derived: ramp of 0.1 m/s', () => {
    const run = simulate(model, { kind: 'ramp', speed: 0.1, duration: 1 }, { until: 0.1, points: 1e6 });
    expect(rel(at(run.time, run.following, 0.05) / r, 0.430964807)).toBeLessThan(3e-9);
    expect(rel(at(run.time, run.following, 0.1) / r, 0.0717041982)).toBeLessThan(3e-9);
  });
  test('derived: constant speed without integral: (Ke w + R Tf/Kt)/Kp, and with Kd on the measurement', () => {
    const dry = { slide: { coulomb: 0.25 / r }, motor: { viscous: 0 } };
    const ramp: Move = { kind: 'ramp', speed: 0.1, duration: 2 };
    const one = simulate(changed(AX1, { ...dry, control: { ...PID, integral: 0 } }), ramp, {
      until: 1.9,
      points: 0,
    });
    expect(rel(one.summary.finalFollowing / r, 0.94902062)).toBeLessThan(1e-8);
    const two = simulate(
      changed(AX1, { ...dry, control: { ...PID, integral: 0, derivativeOn: 'measurement' } }),
      ramp,
      { until: 1.9, points: 0 },
    );
    expect(rel(two.summary.finalFollowing / r, 2.1125364)).toBeLessThan(2e-8);
  });
});

describe('two masses', () => {
  const ideal = { speedIntegral: 0, current: 'ideal' } as const;
  const model = changed(COMPLIANT, { motor: { viscous: 0 }, ...cascade(ideal) });
  test('derived: step of 0.1 rad, feedback on the motor', () => {
    const run = simulate(model, step(0.1), every(0.001, 0.05));
    const table = [
      [0.002, 0.00175115422, 0.00033435801],
      [0.005, 0.0083734652, 0.0067784653],
      [0.01, 0.0235017027, 0.0239771511],
      [0.02, 0.0515316438, 0.0510524334],
      [0.05, 0.0890783314, 0.0893387553],
    ] as const;
    for (const [t, motor, load] of table) {
      expect(Math.abs(0.1 - at(run.time, run.following, t) / r - motor)).toBeLessThan(1e-10);
      expect(Math.abs(angle(run, t) - load)).toBeLessThan(1e-10);
    }
  });
  test('derived: with the position from the slide, just below and above the limit Kp = 346.61959 1/s', () => {
    const slide = changed(model, { feedback: { on: 'slide' } });
    const swing = (Kp: number): number => {
      const run = simulate(changed(slide, cascade({ positionGain: Kp })), step(0.01), every(0.0005, 4));
      const top = (from: number, to: number): number => {
        let most = 0;
        run.time.forEach((t, k) => {
          if (t >= from && t <= to) most = Math.max(most, Math.abs(run.following[k]!));
        });
        return most;
      };
      return top(3.5, 4) / top(1.5, 2);
    };
    expect(swing(346.61959 * 0.995)).toBeLessThan(0.9);
    expect(swing(346.61959 * 1.005)).toBeGreaterThan(1.1);
  });
});

test('derived: energy adds up to 1e-9 on every linear run', () => {
  for (const model of [AX1, COMPLIANT, changed(COMPLIANT, { control: PID, supply: { voltage: 75 } })])
    for (const move of [
      step(0.1),
      { kind: 'rapid', distance: 0.05, speed: 0.12, acceleration: 2, jerk: 0 } as const,
      { kind: 'rapid', distance: 0.05, speed: 0.12, acceleration: 2, jerk: 60 } as const,
    ])
      expect(simulate(model, move).summary.energy!.relative).toBeLessThan(
        model.control.kind === 'pid' ? 2e-4 : 1e-9,
      );
});

import { expect, test } from 'vitest';
import { AX1, changed } from '../axis.fixture.ts';
import { ModelError } from '../model-error.ts';
import { type InStepModel, markAngles, simulateTap, simulateThread, stopFrom } from './index.ts';
import { PASS, PLAIN, RPM, STROKE } from './instep.fixture.ts';

const withAxis = (axis: Partial<InStepModel['axis']>, control = PLAIN.control): InStepModel => ({
  ...PLAIN,
  control,
  axis: { ...PLAIN.axis, ...axis } as InStepModel['axis'],
});

/** The limit of the command's ramp alone; the axis itself may follow as hard as its gain asks. */
const L_IN_STEP = 2.0084279e-3;

test('derived: run-in of a speed asked at once, V·τ·(ln 1/e − 1 + e), to 1 %', () => {
  const run = simulateThread(withAxis({}, { ...PLAIN.control, start: 'step' }), PASS);
  expect(Math.abs(run.settledAt! / L_IN_STEP - 1)).toBeLessThan(0.01);
});

test('derived: run-in of a ramp of 0.5 m/s² is 2.0314 mm at 500 and 4.1962 mm at 1000 r/min, to 1 %', () => {
  for (const [rpm, expected] of [
    [500, 2.0313861e-3],
    [1000, 4.1962328e-3],
  ] as const) {
    const run = simulateThread(withAxis({ acceleration: 0.5 }), { ...PASS, speed: rpm * RPM });
    expect(Math.abs(run.settledAt! / expected - 1)).toBeLessThan(0.01);
  }
});

test('derived: it trails by V/Kv once settled, and by half the ramp more against the spindle’s angle', () => {
  const V = PASS.lead * (500 / 60);
  const run = simulateThread(withAxis({ acceleration: 0.5 }), PASS);
  const look = V * PLAIN.control.period;
  expect(run.trail).toBeCloseTo(V / 30 + V ** 2 / (2 * 0.5) + look, 7);
  expect(run.worstPlace).toBeLessThan(2e-6);
  expect(run.faults).toEqual([]);
});

test('derived: the run-out is V·τ + V²/2a, to 3 %', () => {
  const V = PASS.lead * (500 / 60);
  const run = simulateThread(withAxis({ acceleration: 0.5 }), PASS);
  const expected = V / 30 + V ** 2 / (2 * 0.5);
  expect(Math.abs(run.runOut / expected - 1)).toBeLessThan(0.03);
});

test('derived: every pass falls into the same groove, however the marks lie and the counts fall', () => {
  const seen = [0, 1, 2.5, 4].map((firstMark) => {
    const model = {
      ...withAxis({ acceleration: 0.5 }),
      feedback: { counts: 4096, turns: 1, firstMark },
    };
    return simulateThread(model, PASS).trail;
  });
  const grain = PASS.lead / 4096;
  for (const each of seen) expect(Math.abs(each - seen[0]!)).toBeLessThan(grain);
});

test('derived: the tool bites, the spindle dips, and the error is what the dip makes it', () => {
  const model = { ...PLAIN, spindle: { ...PLAIN.spindle, bandwidth: 20 } };
  const run = simulateThread(model, { ...PASS, cutTorque: 8 });
  // Torque T at once on two equal poles at b/2: the speed dips by 2T/(J·b·e).
  const dip = (2 * 8) / (0.015 * 20 * Math.E) / PASS.speed;
  expect(run.dip / dip).toBeGreaterThan(0.6);
  expect(run.dip / dip).toBeLessThanOrEqual(1.01);
  // The axis trails less while the spindle is slow: at most by the dip of the trail.
  expect(run.worstPlace).toBeGreaterThan(1e-6);
  expect(run.worstPlace).toBeLessThan(((PASS.lead * 500) / 60 / 30) * run.dip * 1.05);
});

test('derived: overshoot of a tap is Jω²/2T turns, to one part in a thousand', () => {
  const run = simulateTap(PLAIN, STROKE);
  const closed = (0.015 * run.reached ** 2) / (2 * 15);
  expect(run.reached).toBeCloseTo(1000 * RPM, 3);
  expect(Math.abs(run.overTurn / closed - 1)).toBeLessThan(1e-3);
  expect(run.overTurn).toBeCloseTo(5.4831136, 2);
  expect(Math.abs(run.stopTime - 0.10471976)).toBeLessThan(2 * PLAIN.control.period);
});

test('derived: constant power above the base speed, run against closed form', () => {
  const base = 1000 * RPM;
  const curve = Array.from({ length: 41 }, (_, at) => {
    const speed = (base * at) / 20;
    return { speed, torque: speed <= base ? 15 : (15 * base) / speed };
  });
  // From 2000 r/min: 4.9450995 turns with the true hyperbola; straight pieces of it brake a trifle harder.
  const stop = stopFrom(0.015, curve, 0, 2 * base);
  expect(Math.abs(stop.angle / (2 * Math.PI) / 4.9450995 - 1)).toBeLessThan(1e-3);
  const model = { ...PLAIN, spindle: { ...PLAIN.spindle, braking: curve, driving: curve } };
  const run = simulateTap(model, { ...STROKE, speed: 2 * base, clearance: 60e-3 });
  const closed = stopFrom(0.015, curve, 0, run.reached).angle;
  expect(Math.abs(run.overTurn / closed - 1)).toBeLessThan(2e-3);
});

test('derived: the axis is behind by V/Kv going in and by as much the other way coming out', () => {
  const run = simulateTap(PLAIN, { ...STROKE, speed: 600 * RPM, depth: 40e-3, clearance: 30e-3 });
  const trail = (1.5e-3 * 10) / 30;
  const look = 1.5e-3 * 10 * PLAIN.control.period;
  expect(run.stepIn).toBeCloseTo(-trail - look, 6);
  expect(run.stepOut).toBeCloseTo(trail + look, 5);
  expect(run.float).toBeGreaterThanOrEqual(2 * trail);
});

test('derived: a spindle without a brake runs on with its drag alone', () => {
  const model = {
    ...PLAIN,
    spindle: { ...PLAIN.spindle, braking: [{ speed: 0, torque: 0 }], drag: 1 },
  };
  const run = simulateTap(model, { ...STROKE, speed: 300 * RPM });
  expect(run.overTurn / ((0.015 * run.reached ** 2) / (2 * 1))).toBeCloseTo(1, 2);
});

test('derived: energy given, braked, rubbed away, cut and stored add up', () => {
  const model = { ...PLAIN, spindle: { ...PLAIN.spindle, drag: 0.7 } };
  const { energy } = simulateTap(model, { ...STROKE, cutTorque: 4 });
  expect(Math.abs(energy.residual)).toBeLessThan(1e-6 * energy.given);
  // What the cut took is torque times angle in the hole.
  expect(energy.cut).toBeGreaterThan(4 * ((20e-3 / 1.5e-3) * 2 * Math.PI));
});

test('derived: the whole axis trails as its own loop says, V over the position gain', () => {
  const model: InStepModel = {
    ...PLAIN,
    axis: {
      kind: 'whole',
      model: changed(AX1, { control: { sample: 1e-4, speedEvery: 1, positionEvery: 1, delay: 1 } }),
      acceleration: 0.5,
      topSpeed: 0.2,
    },
    control: { period: 1e-3, delay: 0, start: 'ramp' },
  };
  const run = simulateThread(model, PASS);
  const V = PASS.lead * (500 / 60);
  expect(run.trail).toBeCloseTo(V / 40 + V ** 2 / (2 * 0.5) + V * 1e-3, 5);
  // The cascade's own speed loop makes it settle a little later than one lag would.
  expect(run.settledAt! / 1.6e-3).toBeGreaterThan(0.8);
  expect(run.settledAt! / 1.6e-3).toBeLessThan(1.6);
});

test('derived: the whole axis trips when its drive allows less lag than the thread needs', () => {
  const model: InStepModel = {
    ...PLAIN,
    axis: {
      kind: 'whole',
      model: changed(AX1, {
        control: { sample: 1e-4, speedEvery: 1, positionEvery: 1, delay: 1 },
        drive: { followingLimit: 2e-4 },
      }),
      acceleration: 0.5,
      topSpeed: 0.2,
    },
    control: { period: 1e-3, delay: 0, start: 'ramp' },
  };
  expect(simulateThread(model, PASS).faults[0]).toMatch(/switches off/);
});

test('derived: marks of a geared encoder fall at as many places as its numerator, reduced', () => {
  expect(markAngles(1, 1)).toEqual([0]);
  expect(markAngles(1, 2)).toEqual([0]);
  expect(markAngles(2, 1)).toHaveLength(2);
  expect(markAngles(75, 60)).toHaveLength(5);
  expect(markAngles(1.37, 1)).toHaveLength(0);
});

test('a tap that asks more than the spindle has stands, and so does one that cannot come out', () => {
  expect(simulateTap(PLAIN, { ...STROKE, cutTorque: 20 }).faults[0]).toMatch(/more torque/);
  const stuck = simulateTap(PLAIN, { ...STROKE, cutTorque: 14.9, rub: 1, speed: 100 * RPM });
  expect(stuck.faults).toEqual([]);
  const none = { ...PLAIN, spindle: { ...PLAIN.spindle, braking: [{ speed: 0, torque: 0 }] } };
  expect(simulateTap(none, { ...STROKE, depth: 5e-3 }).faults[0]).toMatch(/never comes to rest/);
});

test('numbers that cannot be are refused by the name of their field', () => {
  const refused = (act: () => unknown): string => {
    try {
      act();
    } catch (fault) {
      if (fault instanceof ModelError) return fault.message;
    }
    return '';
  };
  expect(refused(() => simulateThread(PLAIN, { ...PASS, speed: 0 }))).toMatch(/speed/);
  expect(refused(() => simulateThread(PLAIN, { ...PASS, lead: Number.NaN }))).toMatch(/lead/);
  expect(refused(() => simulateThread(PLAIN, { ...PASS, length: 90 }))).toMatch(/at most/);
  expect(refused(() => simulateTap(PLAIN, { ...STROKE, depth: -1 }))).toMatch(/depth/);
  expect(
    refused(() => simulateTap({ ...PLAIN, spindle: { ...PLAIN.spindle, inertia: 0, braking: [] } }, STROKE)),
  ).toMatch(/inertia[\s\S]*brak/);
});

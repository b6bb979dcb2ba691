/** The bus on braking, a stepping motor's pull-out torque and the chance of a trip against general-purpose solvers. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { AX1, AX1_RADIUS, cascade, changed } from '../../engine/simulate/axis.fixture.ts';
import { band, pullOutTorque, type StepperMotor, simulate, variantOf } from '../../engine/simulate/index.ts';

interface Outside {
  readonly bus: number;
  readonly pullOut: readonly (readonly [rpm: number, torque: number])[];
  readonly trip: number;
}

const SCRIPT = join(import.meta.dirname, 'servo-limits.py');
const committed: Outside = JSON.parse(readFileSync(join(import.meta.dirname, 'servo-limits.json'), 'utf8'));

const MOTOR: StepperMotor = {
  kind: 'stepper',
  holdingTorque: 4.5,
  ratedCurrent: 5.6,
  resistance: 0.4,
  inductance: 3.5e-3,
  rotorTeeth: 50,
  inertia: 3.46e-4,
  coulomb: 0.05,
  viscous: 5e-4,
  damping: 0.02,
};

test('derived: braking from 0.12 m/s lifts the bus as scipy.integrate has it, to a fiftieth of the rise', () => {
  const model = changed(AX1, {
    slide: { coulomb: 0.25 / AX1_RADIUS },
    ...cascade({ speedForward: 1, accelerationForward: 1 }),
    supply: { kind: 'regulated', voltage: 75, capacitance: 0.022 },
  });
  const move = {
    kind: 'brake-from-rapid',
    speed: 0.12,
    acceleration: 2,
    jerk: 0,
    cruise: 0.1,
    stop: 2,
  } as const;
  const { highest } = simulate(model, move, { points: 0 }).supply;
  // Outside the axis follows without any error; the current loop's own answer to the corner adds a little.
  expect(Math.abs(highest - committed.bus)).toBeLessThan(0.02 * (committed.bus - 75));
});

test('derived: pull-out torque as from both windings solved in time by scipy.integrate', () => {
  for (const [rpm, torque] of committed.pullOut)
    expect(pullOutTorque(MOTOR, (rpm * Math.PI) / 30, 68) / torque, `${rpm} r/min`).toBeCloseTo(1, 5);
});

test('derived: the chance of a trip as by a Monte Carlo of numpy, and each draw trips where its own lag says so', () => {
  const limit = 1.05e-3;
  const model = changed(AX1, {
    ...cascade({ sample: 5e-4, positionGain: 40, speedForward: 0 }),
    drive: { followingLimit: limit },
  });
  const spread = [{ path: 'control.positionGain', share: 0.1, form: 'normal' }] as const;
  const move = { kind: 'rapid', distance: 0.02, speed: 0.04, acceleration: 2, jerk: 0 } as const;
  const runs = 300;
  const { tripped } = band(model, spread, move, runs, 7);
  const lags = Array.from({ length: runs }, (_, at) => {
    const { control } = variantOf(model, spread, 7, at).model;
    return 0.04 / (control as { positionGain: number }).positionGain;
  });
  const far = lags.filter((lag) => Math.abs(lag / limit - 1) > 0.02);
  expect(Math.abs(tripped * runs - lags.filter((lag) => lag > limit).length)).toBeLessThanOrEqual(
    runs - far.length,
  );
  // Four standard deviations of so many draws.
  expect(Math.abs(tripped - committed.trip)).toBeLessThan(
    4 * Math.sqrt((committed.trip * (1 - committed.trip)) / runs),
  );
});

const hasScipy = spawnSync('python3', ['-c', 'import scipy']).status === 0;
test.skipIf(!hasScipy)(
  'derived: scipy gives the committed numbers again (skipped where python3 has no scipy)',
  () => {
    const again = spawnSync('python3', [SCRIPT], { encoding: 'utf8', timeout: 200_000 });
    expect(again.stderr).toBe('');
    const now: Outside = JSON.parse(again.stdout);
    expect(now.bus).toBeCloseTo(committed.bus, 6);
    expect(now.trip).toBeCloseTo(committed.trip, 9);
    for (const [at, [, torque]] of now.pullOut.entries())
      expect(torque / committed.pullOut[at]![1]).toBeCloseTo(1, 6);
  },
  220_000,
);

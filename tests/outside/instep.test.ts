/** Tapping with spindle and axis in step against a general-purpose integrator on equations written anew. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { simulateTap } from '../../engine/simulate/instep/index.ts';

interface Outside {
  readonly told: { readonly t: number; readonly speed: number };
  readonly overTurn: number;
  readonly time: number;
  readonly rows: readonly { t: number; angle: number; speed: number; place: number }[];
}

const SCRIPT = join(import.meta.dirname, 'instep.py');
const committed: Outside = JSON.parse(readFileSync(join(import.meta.dirname, 'instep.json'), 'utf8'));

const line = (rest: number, slope: number) =>
  [0, 100, 200].map((speed) => ({ speed, torque: rest - slope * speed }));

/** Steps of 50 µs against a step width that is chosen freely: a few parts in ten thousand of a turn. */
test('derived: a tapping stroke as by scipy’s solve_ivp at 1e-10 (committed)', () => {
  const run = simulateTap(
    {
      spindle: {
        inertia: 0.02,
        driving: line(12, 4 / 200),
        braking: line(9, 5 / 200),
        drag: 0.6,
        bandwidth: 60,
        delay: 0.012,
      },
      feedback: { counts: 4096, turns: 1, firstMark: 0 },
      control: { period: 1e-3, delay: 0, start: 'ramp' },
      axis: { kind: 'trailing', gain: 30, acceleration: 1e3, topSpeed: 10 },
    },
    {
      lead: 1.25e-3,
      speed: (900 * 2 * Math.PI) / 60,
      clearance: 6e-3,
      depth: 18e-3,
      cutTorque: 3,
      rub: 0.3,
    },
    { points: 1e6 },
  );
  expect(run.reached).toBeCloseTo(committed.told.speed, 3);
  expect(Math.abs(run.overTurn / committed.overTurn - 1)).toBeLessThan(1e-3);
  expect(Math.abs(run.time - committed.time)).toBeLessThan(2.1e-3);
  for (const row of committed.rows) {
    const at = Math.round(row.t / 1e-3);
    expect(run.trace.time[at]).toBeCloseTo(row.t, 9);
    expect(Math.abs(run.trace.angle[at]! - row.angle), `angle ${row.t}`).toBeLessThan(0.02);
    expect(Math.abs(run.trace.speed[at]! - row.speed), `speed ${row.t}`).toBeLessThan(0.15);
    expect(Math.abs(run.trace.place[at]! - row.place), `place ${row.t}`).toBeLessThan(3e-6);
  }
});

const hasScipy = spawnSync('python3', ['-c', 'import scipy']).status === 0;
test.skipIf(!hasScipy)(
  'derived: scipy gives the committed stroke again',
  () => {
    const again = spawnSync('python3', [SCRIPT], { encoding: 'utf8', timeout: 120_000 });
    const now: Outside = JSON.parse(again.stdout);
    expect(now.overTurn).toBeCloseTo(committed.overTurn, 6);
    expect(now.time).toBeCloseTo(committed.time, 9);
  },
  120_000,
);

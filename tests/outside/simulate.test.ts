/** The sampled axis with dry friction against two general-purpose integrators on the same equations. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { MODEL, MOVE, numbers } from '../../bench/simulate-model.mjs';
import { byOdex } from '../../bench/simulate-odex.mjs';
import { simulate } from '../../engine/simulate/index.ts';

interface Rows {
  readonly peak: number;
  readonly rows: readonly { t: number; following: number; slide: number; speed: number; current: number }[];
}

const SCRIPT = join(import.meta.dirname, 'simulate.py');
const committed: Rows = JSON.parse(readFileSync(join(import.meta.dirname, 'simulate.json'), 'utf8'));

/** Angles agree to a hundredth of a nanometre, speeds and currents to a part in ten million of their size. */
function compare(outside: Rows): void {
  const run = simulate(MODEL, MOVE, { until: 0.1, points: 1e6 });
  expect(Math.abs(run.summary.peakFollowing - outside.peak)).toBeLessThan(1e-11);
  for (const row of outside.rows) {
    let k = 0;
    while (Math.abs(run.time[k]! - row.t) > 1e-9) k++;
    expect(Math.abs(run.following[k]! - row.following), `following ${row.t}`).toBeLessThan(1e-11);
    expect(Math.abs(run.actual[k]! - row.slide), `slide ${row.t}`).toBeLessThan(1e-11);
    expect(Math.abs(run.speed[k]! - row.speed), `speed ${row.t}`).toBeLessThan(1e-5);
    expect(Math.abs(run.current[k]! - row.current), `current ${row.t}`).toBeLessThan(2e-6);
  }
}

test('derived: as by scipy’s solve_ivp at 1e-11 with its own events (committed)', () => compare(committed));

const hasScipy = spawnSync('python3', ['-c', 'import scipy']).status === 0;
test.skipIf(!hasScipy)(
  'derived: scipy gives the committed numbers again',
  () => {
    const again = spawnSync('python3', [SCRIPT], { encoding: 'utf8', timeout: 120_000 });
    const now: Rows = JSON.parse(again.stdout);
    expect(Math.abs(now.peak - committed.peak)).toBeLessThan(1e-12);
    now.rows.forEach((row, k) => {
      expect(Math.abs(row.slide - committed.rows[k]!.slide)).toBeLessThan(1e-11);
    });
  },
  120_000,
);

test('derived: as by an extrapolation solver of the registry at 1e-11', () => {
  compare(byOdex(numbers(MODEL, MOVE), 0.1, 1e-11, [20, 100, 200, 400, 1000, 1400, 2000]));
}, 60_000);

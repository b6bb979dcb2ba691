/** The circuit solver against ngspice, a general-purpose circuit simulator, on circuits written twice by hand. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { operatingPoint, type Run, runCircuit } from '../../engine/circuit/network/index.ts';
import { type Measure, OP, TRAN } from './circuits.fixture.ts';

interface Outside {
  readonly op: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly tran: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

const SCRIPT = join(import.meta.dirname, 'circuits.py');
const committed: Outside = JSON.parse(readFileSync(join(import.meta.dirname, 'circuits.json'), 'utf8'));

/** Both sides settle to about a hundred-millionth; their constants of nature differ in the seventh digit. */
const STEADY = 2e-6;
/** Errors of both time steppings; the outside one is printed to seven digits. */
const MOVING = 1e-3;

function measured(run: Run, [how, asked, ...rest]: Measure): number {
  const series = (what: typeof asked): Float64Array =>
    what[0] === 'amps' ? run.amps(what[1])! : run.volts(what[1])!;
  const values = series(asked);
  if (how === 'at') return run.at(values, rest[0]!);
  if (how === 'falls to') {
    const level = rest[0]!;
    const k = values.findIndex((value, n) => n > 0 && value < level && values[n - 1]! >= level);
    const share = (values[k - 1]! - level) / (values[k - 1]! - values[k]!);
    return run.times[k - 1]! + share * (run.times[k]! - run.times[k - 1]!);
  }
  const [from, to] = rest as [number, number];
  const n = 20_000;
  const grid = Array.from({ length: n + 1 }, (_, k) => run.at(values, from + ((to - from) * k) / n));
  if (how === 'highest') return Math.max(...grid);
  if (how === 'lowest') return Math.min(...grid);
  const mean = (f: (v: number) => number): number => grid.reduce((sum, v) => sum + f(v), 0) / grid.length;
  return how === 'mean' ? mean((v) => v) : Math.sqrt(mean((v) => v * v));
}

function compare(outside: Outside): void {
  expect(Object.keys(outside.op)).toEqual(Object.keys(OP));
  expect(Object.keys(outside.tran)).toEqual(Object.keys(TRAN));
  for (const [name, [circuit, asks]] of Object.entries(OP)) {
    const solved = operatingPoint(circuit);
    if (!solved.ok) throw new Error(`${name}: ${solved.trouble.sentence}`);
    for (const [key, asked] of Object.entries(asks)) {
      const ours =
        asked[0] === 'amps' ? solved.point.amps(asked[1]) : solved.point.volts(asked[1], asked[2])!;
      expect(Math.abs(ours / outside.op[name]![key]! - 1), `${name}: ${key}: ${ours}`).toBeLessThan(STEADY);
    }
  }
  for (const [name, { circuit, until, asks }] of Object.entries(TRAN)) {
    const ran = runCircuit(circuit, {
      until,
      fromNothing: true,
      tolerance: 1e-6,
      longest: until / 5000,
    });
    if (!ran.ok) throw new Error(`${name}: ${ran.trouble.sentence}`);
    for (const [key, asked] of Object.entries(asks)) {
      const ours = measured(ran.run, asked);
      expect(Math.abs(ours / outside.tran[name]![key]! - 1), `${name}: ${key}: ${ours}`).toBeLessThan(MOVING);
    }
  }
}

test('derived: steady states and runs of 21 small circuits as by ngspice (committed)', () =>
  compare(committed));

const hasNgspice = spawnSync('ngspice', ['--version']).status === 0;
test.skipIf(!hasNgspice)(
  'derived: ngspice gives the committed numbers again (skipped where ngspice is not installed)',
  () => {
    const again = spawnSync('python3', [SCRIPT], { encoding: 'utf8', timeout: 120_000 });
    expect(again.stderr).toBe('');
    compare(JSON.parse(again.stdout));
  },
  120_000,
);

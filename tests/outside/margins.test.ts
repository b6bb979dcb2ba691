/** Loop margins against a general-purpose library of transfer functions on the same axis. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { AX1, COMPLIANT, cascade, changed, PID } from '../../engine/simulate/axis.fixture.ts';
import { type AxisModel, loopMargins } from '../../engine/simulate/index.ts';

type Numbers = Readonly<Record<'phaseMargin' | 'crossover' | 'gainMargin' | 'oscillatesAt', number>>;
type Loops = Readonly<Record<'pid' | 'cascade', Readonly<Record<'rigid' | 'yielding', Numbers>>>>;

const SCRIPT = join(import.meta.dirname, 'margins.py');
const committed: Loops = JSON.parse(readFileSync(join(import.meta.dirname, 'margins.json'), 'utf8'));

const CASCADE = cascade({ current: 'ideal', sample: 2e-4, delay: 1, speedIntegral: 45 });
const MODELS: Readonly<Record<keyof Loops, Readonly<Record<'rigid' | 'yielding', AxisModel>>>> = {
  pid: { rigid: changed(AX1, { control: PID }), yielding: changed(COMPLIANT, { control: PID }) },
  cascade: { rigid: changed(AX1, CASCADE), yielding: changed(COMPLIANT, CASCADE) },
};

function compare(outside: Loops): void {
  for (const kind of ['pid', 'cascade'] as const)
    for (const body of ['rigid', 'yielding'] as const) {
      const ours = loopMargins(MODELS[kind][body], 'whole')!;
      for (const [name, theirs] of Object.entries(outside[kind][body]))
        expect(ours[name as keyof Numbers]! / theirs, `${kind}, ${body}: ${name}`).toBeCloseTo(1, 6);
    }
}

test('derived: margins as by scipy.signal and scipy.optimize (committed)', () => compare(committed));

const hasScipy = spawnSync('python3', ['-c', 'import scipy']).status === 0;
test.skipIf(!hasScipy)(
  'derived: scipy gives the committed margins again (skipped where python3 has no scipy)',
  () => {
    const again = spawnSync('python3', [SCRIPT], { encoding: 'utf8', timeout: 120_000 });
    expect(again.stderr).toBe('');
    compare(JSON.parse(again.stdout));
  },
  120_000,
);

import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inFolder, run } from './run.fixture.ts';

const MODEL = {
  motor: { resistance: '1.2 ohm', inductance: '3 mH', constant: '36.65 V/krpm', inertia: '12 kg·cm²' },
  transmission: { lead: '5 mm' },
  slide: { mass: '120 kg', coulomb: '200 N' },
  drive: { currentLimit: '20 A', followingLimit: '1 mm' },
  control: {
    positionGain: '40 1/s',
    speedGain: '0.7 A·s/rad',
    speedIntegral: '35 A/rad',
    speedForward: '1',
    sample: '0.5 ms',
  },
  supply: { voltage: '75 V' },
};

test('derived: a model file moves, trips, and writes its curves', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'axis.json');
    const csv = join(folder, 'out.csv');
    writeFileSync(file, JSON.stringify(MODEL));
    const calm = await run('simulate', '--model', file, 'rapid', '--csv', csv);
    expect(calm.code).toBe(0);
    expect(calm.out).toContain('within its limits');
    const rows = readFileSync(csv, 'utf8').trimEnd().split('\n');
    expect(rows[0]).toBe('time s,commanded m,actual m,following error m,motor speed rad/s,current A,bus V');
    expect(Number(rows.at(-1)!.split(',')[2])).toBeCloseTo(0.05, 4);
    const fast = await run(
      'simulate',
      '--model',
      file,
      'rapid',
      'speed=30 m/min',
      'acceleration=20 m/s²',
      '--json',
    );
    expect(fast.code).toBe(1);
    const said = JSON.parse(fast.out);
    expect(said.format).toBe('fettle-simulation');
    expect(said.trips[0].sentence).toContain('behind its command');
  });
});

test('derived: what cannot be is refused by its field, and no file is written', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'axis.json');
    const refit = join(folder, 'works.json');
    copyFileSync(join(import.meta.dirname, '..', 'samples', 'carriage-works-lathe.json'), refit);
    writeFileSync(file, JSON.stringify({ ...MODEL, slide: { mass: '-5 kg' } }));
    const cases: readonly (readonly [string, readonly string[]])[] = [
      ['slide.mass', ['--model', file, 'rapid']],
      ['There is no move', ['--model', file, 'fly']],
      ['distance', [refit, 'X', 'rapid', 'distance=5 kg']],
      ['no such field', [refit, 'X', 'rapid', 'height=5 mm']],
      ['given twice', [refit, 'X', 'rapid', 'speed=1 m/min', 'speed=2 m/min']],
      ['not understood', [refit, 'X', 'rapid', 'quickly']],
      ['has no axis', [refit, 'Q', 'rapid']],
      ['could not be read', ['--model', join(folder, 'none.json'), 'rapid']],
      ['does not end in', [refit, 'X', 'rapid', 'distance=1 mm', '--csv', refit]],
      ['at most', [refit, 'X', 'ramp', 'duration=1e6 s']],
    ];
    const before = readFileSync(refit, 'utf8');
    for (const [says, words] of cases) {
      const { code, err } = await run('simulate', ...words);
      expect(err, says).toContain(says);
      expect(code, says).toBe(2);
      expect(err).not.toMatch(/mistake of its own|\n\s+at |undefined/);
    }
    expect(readFileSync(refit, 'utf8')).toBe(before);
  });
});

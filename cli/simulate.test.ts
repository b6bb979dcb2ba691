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
      ['duration: As it is given', [refit, 'X', 'ramp', 'duration=1e6 s']],
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

test('derived: gains come with the gain at which the loop swings; a model that is set just beyond it does', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'axis.json');
    writeFileSync(file, JSON.stringify(MODEL));
    const { code, out } = await run('simulate', '--model', file, '--gains', '--json');
    expect(code).toBe(0);
    const { gains, margins, loop } = JSON.parse(out);
    expect(loop).toBe('cascade');
    expect(margins.steady).toBe(true);
    for (const { name, value, unit, swingsFrom } of gains) {
      if (swingsFrom === null) continue;
      expect(swingsFrom).toBeGreaterThan(value);
      for (const [times, says] of [
        [0.98, /may grow/],
        [1.02, /swings by itself|does not come to rest/],
      ] as const) {
        const own = Object.fromEntries(
          gains.map((each: { name: string; value: number; unit: string }) => [
            each.name,
            `${each.value} ${each.unit}`,
          ]),
        );
        writeFileSync(
          file,
          JSON.stringify({
            ...MODEL,
            control: { ...MODEL.control, ...own, [name]: `${swingsFrom * times} ${unit}` },
          }),
        );
        const said = (await run('simulate', '--model', file, 'step')).out;
        expect(said, `${name} × ${times}`).toMatch(says);
      }
    }
    const { out: words } = await run('simulate', '--model', file, '--gains');
    expect(words).toMatch(/there the loop begins to swing/);
  });
});

test('derived: a band says the chance of a trip, as JSON and as a table; wrong use of it is refused', async () => {
  await inFolder(async (folder) => {
    const csv = join(folder, 'band.csv');
    const hard = await run(
      'simulate',
      LATHE,
      'X',
      'rapid',
      'speed=7 m/min',
      'distance=100 mm',
      '--band',
      '12',
      '--json',
      '--csv',
      csv,
    );
    const { format, runs, tripped, peaks, low, high } = JSON.parse(hard.out);
    expect(format).toBe('fettle-band');
    expect(runs).toBe(12);
    expect(peaks).toHaveLength(12);
    expect(tripped).toBeGreaterThan(0);
    expect(hard.code).toBe(1);
    for (let at = 0; at < low.length; at++) expect(low[at]).toBeLessThanOrEqual(high[at]);
    expect(readFileSync(csv, 'utf8')).toMatch(/^time s,following error m 5 %,/);
    const cases: readonly (readonly [string, readonly string[]])[] = [
      ['whole number', [LATHE, 'X', 'rapid', '--band', '1e99']],
      ['whole number', [LATHE, 'X', 'rapid', '--band', '0']],
      ['does not go with it', [LATHE, 'X', '--gains', '--band', '10']],
      ['leave “rapid” out', [LATHE, 'X', 'rapid', '--gains']],
      ['has to be one of fitted, none', [LATHE, 'X', 'drop', 'brake=maybe']],
      ['turns: As it is given', [LATHE, 'X', 'circle', 'turns=1e9']],
      ['room', [LATHE, 'X', 'power-cut', 'room=-1 mm']],
    ];
    for (const [says, words] of cases) {
      const { code, err } = await run('simulate', ...words);
      expect(err, says).toContain(says);
      expect(code, says).toBe(2);
    }
  });
});

test('derived: a power cut that ends in the end stop fails, one with room enough does not; a drop shows both sides', async () => {
  const short = await run('simulate', LATHE, 'X', 'power-cut', 'room=5 mm');
  expect(short.code).toBe(1);
  expect(short.out.replace(/\s+/g, ' ')).toMatch(/runs into it, with .* left\..*The same the other way/);
  const mill = join(import.meta.dirname, '..', 'samples', 'boatyard-mill.json');
  const drop = await run('simulate', mill, 'Z', 'drop');
  expect(drop.code).toBe(0);
  expect(drop.out).toMatch(
    /falls .* before it is held\.[\s\S]*The same without its brake[\s\S]*Nothing holds/,
  );
  const loose = await run('simulate', mill, 'Z', 'drop', 'brake=none');
  expect(loose.out).toMatch(/Nothing holds[\s\S]*The same with its brake[\s\S]*before it is held/);
});

const LATHE = join(import.meta.dirname, '..', 'samples', 'carriage-works-lathe.json');

test('derived: a move is as the duty of the axis asks where it tells, and the answer says which number is from where', async () => {
  const flat = (text: string): string => text.replace(/\s+/g, ' ');
  const { out } = await run('simulate', LATHE, 'X', 'rapid');
  expect(flat(out)).toContain('acceleration 1.5 m/s² (as the X axis’s duty asks); jerk 0 m/s³ (the usual).');
  const said = JSON.parse((await run('simulate', LATHE, 'X', 'rapid', 'speed=2 m/min', '--json')).out);
  expect(said.move.acceleration).toBe(1.5);
  expect(said.moveFrom).toEqual({ distance: 'duty', speed: 'typed', acceleration: 'duty', jerk: 'usual' });
  expect(flat((await run('simulate', '--list')).out)).toContain('as its duty asks');
});

test('derived: more than the axis is for is said; far more than any axis is refused without --anyway', async () => {
  const far = await run('simulate', LATHE, 'X', 'rapid', 'speed=9999 m/s');
  expect([far.code, far.out]).toEqual([2, '']);
  expect(far.err.replace(/\s+/g, ' ')).toContain(
    'speed: 599940 m/min is far outside what is usual for the rapid',
  );
  expect(far.err).toContain('0.5 m/min');
  expect((await run('simulate', LATHE, 'X', 'rapid', 'speed=500 m/min')).code).toBe(2);
  expect((await run('simulate', LATHE, 'X', 'rapid', 'speed=500 m/min', '--anyway')).code).not.toBe(2);
  const beyond = await run('simulate', LATHE, 'X', 'rapid', 'speed=60 m/min', 'distance=20 m');
  expect(beyond.code).not.toBe(2);
  expect(beyond.out.replace(/\s+/g, ' ')).toContain(
    'The speed of 60 m/min is beyond the rapid of the X axis',
  );
  expect(beyond.out.replace(/\s+/g, ' ')).toContain('is beyond the travel of the X axis');
  const within = await run('simulate', LATHE, 'X', 'rapid', 'speed=6 m/min');
  expect(within.out).not.toContain('is beyond');
  // Slow creep is a thing to try, not a slip.
  expect((await run('simulate', LATHE, 'X', 'ramp', 'speed=0.1 mm/min')).code).not.toBe(2);
});

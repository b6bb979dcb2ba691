import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inFolder, run } from './run.fixture.ts';

test('derived: a refit’s axis gives the plan its speed and acceleration', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'works.json');
    copyFileSync(join(import.meta.dirname, '..', 'samples', 'carriage-works-lathe.json'), file);
    const { out, code } = await run('thread', 'Tr 40x14 (P7)', '--file', file, '--axis', 'z', '--json');
    expect(code).toBe(0);
    const { plan, thread } = JSON.parse(out);
    expect(thread.lead).toBeCloseTo(0.014, 12);
    expect(plan.limits[0].id).toBe('axis');
    // Feed at that spindle speed is nine tenths of the rapid of the refit.
    const shown = await run('show', file);
    const rapid = /Z\.duty[\s\S]*?Rapid speed wanted \(rapid\): ([\d.]+) m\/min/.exec(shown.out)![1];
    expect(plan.feed).toBeCloseTo((0.9 * Number(rapid)) / 60, 9);
    expect(plan.starts).toHaveLength(2);
    expect((await run('thread', 'M10', '--file', file)).code).toBe(2);
    expect((await run('thread', 'M10', '--file', file, '--axis', 'Q')).err).toContain('it has X, Z');
  });
});

test.each([
  ['--rapid', '0 m/min'],
  ['--rapid', '3 m/min'],
  ['--accel', '5 kg'],
  ['--passes', '1e9'],
  ['--passes', 'many'],
  ['--length', '-5 mm'],
  ['--inertia', '1 kg·m²'],
  ['--class', '99z'],
  ['--gain', '1e308 1/s'],
])('derived: thread refuses %s %s in a sentence', async (option, value) => {
  const { code, err, out } = await run('thread', 'M10', option, value);
  expect(code).toBe(2);
  expect(out).toBe('');
  expect(err).toMatch(/\.\n$/);
  expect(err).not.toMatch(/mistake of its own|NaN|undefined/);
});

test.each([
  ['thread', 'M10', '--rapid', '9999 m/s', '--accel', '1 m/s²'],
  ['thread', 'M10', '--rapid', '3 m/min', '--accel', '1e6 m/s²'],
  ['thread', 'M10', '--rapid', '3 m/min', '--accel', '1 m/s²', '--length', '1e5 m'],
  ['thread', 'M10', '--inertia', '1e6 kg·m²', '--torque', '5 N·m'],
  ['cut', 'turning', 'material=steel', 'diameter=60mm', 'depth=2mm', 'feed=30m', 'speed=120m/min'],
  ['cut', 'tapping', 'material=steel', 'thread=M10', 'speed=200rpm', '--torque', '1e9 N·m'],
])('derived: %s with a number far beyond what is usual is asked back: %#', async (...line) => {
  const asked = await run(...line);
  expect([asked.code, asked.out]).toEqual([2, '']);
  expect(asked.err.replace(/\s+/g, ' ')).toMatch(/far outside what is usual for the .* to .*add --anyway\./);
  const sure = await run(...line, '--anyway');
  expect(sure.code).toBeLessThan(2);
  expect(sure.out).not.toMatch(/NaN|undefined/);
});

test('derived: a number a little beyond is answered with a question', async () => {
  const line = ['--rapid', '100 m/min', '--accel', '1 m/s²'];
  const { code, out } = await run('thread', 'M10', ...line);
  expect(code).toBe(0);
  expect(out.replace(/\s+/g, ' ')).toContain(
    'Is this right? Is the fastest speed of the axis really 100 m/min? Usual is 0.5 m/min to 40 m/min.',
  );
  expect((await run('thread', 'M10', '--rapid', '10 m/min', '--accel', '1 m/s²')).out).not.toMatch(/right\?/);
});

test('derived: a cut that is too much has exit code 1, with JSON that says so', async () => {
  const { code, out } = await run(
    'cut',
    'drilling',
    'material=steel',
    'diameter=20mm',
    'feed=0.3mm',
    'speed=20m/min',
    '--force',
    '500 N',
    '--json',
  );
  expect(code).toBe(1);
  const force = JSON.parse(out).asked.find(({ id }: { id: string }) => id === 'force');
  expect(force.margin).toBeLessThan(1);
  expect(force.feed).toBeGreaterThan(0);
});

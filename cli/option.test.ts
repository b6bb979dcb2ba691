import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fixture, inFolder, run } from './run.fixture.ts';

const PROGRAM = join(import.meta.dirname, '..', 'bin', 'fettle.js');

test('derived: an option has facts of its own, and the findings follow the part that is chosen', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    await run('new', 'lathe', 'X', '--out', file);
    expect((await run('option', file, 'X.motor', 'Motor from the shelf')).out).toContain('X.motor@x-motor-2');
    await run('set', file, 'X.motor.type', 'brushed', '--basis', 'plate');
    const aside = await run('set', file, 'x.MOTOR@X-Motor-2.type', 'stepper', '--basis', 'plate');
    expect(aside.code, aside.err).toBe(0);
    expect(aside.out).toContain('No verdict changed.');
    const facts = (await run('show', file)).out;
    expect(facts).toContain('stepping motor (plate)');
    expect(facts).toContain('DC motor with brushes (plate)');

    const asked = async (): Promise<string[]> =>
      JSON.parse((await run('check', file, '--axis', 'X', '--json')).out).findings.map(
        ({ id }: { id: string }) => id,
      );
    const brushed = await asked();
    expect((await run('choose', file, 'X.motor', 'motor FROM the shelf')).code).toBe(0);
    const stepper = await asked();
    expect(brushed).toContain('X.speed');
    expect(stepper).not.toContain('X.speed');
    expect((await run('choose', file, 'X.motor', 'none')).code).toBe(0);
    expect((await run('set', file, 'X.motor.type', 'brushed')).err).toContain('no motor there');
    expect((await run('set', file, 'X.motor@x-motor-9.type', 'brushed')).err).toContain('x-motor-2');
    expect((await run('set', file, 'X.motor@.type', 'brushed')).code).toBe(2);
    expect((await run('set', file, 'X.motor@a@b.type', 'brushed')).code).toBe(2);
    expect((await run('choose', file, 'X.motor.type', 'none')).err).toContain('more than a place');
  });
});

test('derived: a place that no kind of part fills is said to be none', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'odd.json');
    const refit = JSON.parse(readFileSync(fixture('fits.json'), 'utf8'));
    refit.places.cellar = { options: [], chosen: null };
    writeFileSync(file, JSON.stringify(refit));
    const { code, err } = await run('set', file, 'cellar.damp', 'very');
    expect(code).toBe(2);
    expect(err).not.toContain('mistake of its own');
    for (const command of ['check', 'show', 'next']) expect((await run(command, file)).code).not.toBe(2);
  });
});

test('derived: several settings are one edit, and what stands already is none', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    await run('new', 'lathe', 'X', '--out', file);
    await run('set', file, 'X.screw.lead=5 mm', 'X.screw.root=16.9 mm', '--basis', 'measured');
    expect((await run('set', file, 'X.screw.lead', '5 mm', '--basis', 'measured')).out).toContain(
      'nothing was written',
    );
    const { out } = await run('history', file);
    expect(out).toMatch(/^1\. 2024-03-01T10:00:00\.000Z, bench: /);
    expect(out).toContain('16.9 mm (measured)');
    expect(out).not.toMatch(/^2\./m);
  });
});

test('derived: a file that another program changed meanwhile is not written over', async () => {
  const { openRefit, writeRefitFile } = await import('./files.ts');
  await inFolder(async (folder) => {
    const path = join(folder, 'lathe.json');
    copyFileSync(fixture('fits.json'), path);
    const file = openRefit(path);
    const other = `${readFileSync(path, 'utf8')}\n`;
    writeFileSync(path, other);
    expect(() => writeRefitFile(file, true)).toThrow('another program');
    expect(readFileSync(path, 'utf8')).toBe(other);
  });
});

test('derived: a reader that has seen enough is no fault', () => {
  const command = `"${process.execPath}" "${PROGRAM}" why "${fixture('fails.json')}" X.whirl | head -n 1`;
  const { stdout, stderr } = spawnSync('sh', ['-c', command], { encoding: 'utf8' });
  expect(stdout).toContain('X.whirl');
  expect(stderr).toBe('');
});

test('derived: where nothing has been built yet, one sentence says what to run', async () => {
  await inFolder(async (folder) => {
    mkdirSync(join(folder, 'bin'));
    copyFileSync(PROGRAM, join(folder, 'bin', 'fettle.mjs'));
    const { status, stderr } = spawnSync(process.execPath, [join(folder, 'bin', 'fettle.mjs')], {
      encoding: 'utf8',
    });
    expect(status).toBe(2);
    expect(stderr).toContain('npm start');
    expect(stderr.split('\n')).toHaveLength(2);
  });
});

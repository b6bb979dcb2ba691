import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { FIXTURES, fixture, inFolder, run } from './run.fixture.ts';

test.each([
  ['fits.json', 0],
  ['fails.json', 1],
  ['unknown.json', 3],
  ['unreadable-fact.json', 2],
  ['words.json', 2],
  ['reserved-key.json', 2],
  ['there-is-none.json', 2],
])('derived: check %s exits with %i', async (name, code) => {
  expect((await run('check', fixture(name))).code).toBe(code);
});

test('derived: an unreadable fact is named by its path', async () => {
  expect((await run('check', fixture('unreadable-fact.json'))).err).toContain('X.motor.inertia');
});

test('derived: JSON holds the same counts as its findings', async () => {
  const answer = JSON.parse((await run('check', fixture('fails.json'), '--json')).out);
  for (const verdict of ['fits', 'tight', 'fails', 'unknown'])
    expect(answer.findings.filter((each: { verdict: string }) => each.verdict === verdict)).toHaveLength(
      answer.counts[verdict],
    );
  expect(answer.findings[0].verdict).toBe('fails');
});

test('derived: inches change the units and no value', async () => {
  interface Read {
    readonly id: string;
    readonly verdict: string;
    readonly asked?: { readonly value: number; readonly unit: string };
  }
  const read = async (units: string): Promise<Read[]> =>
    JSON.parse((await run('check', fixture('fits.json'), '--json', '--units', units)).out).findings;
  const [mm, inches] = [await read('mm'), await read('in')];
  const bare = (all: Read[]) => all.map(({ id, verdict, asked }) => [id, verdict, asked?.value]);
  expect(bare(inches)).toEqual(bare(mm));
  const units = (all: Read[]) => all.map(({ asked }) => asked?.unit);
  expect(units(inches)).not.toEqual(units(mm));
  expect((await run('check', fixture('fits.json'), '--units', 'ell')).code).toBe(2);
});

test('derived: why gives working, sources and remedies', async () => {
  const { out, code } = await run('why', fixture('fails.json'), 'X.whirl');
  expect(code).toBe(0);
  for (const part of ['Why it matters', 'The working', 'Source:', 'What goes in', 'What would make it fit'])
    expect(out).toContain(part);
});

test('derived: hostile files are refused in one sentence, and a folder is no file', async () => {
  await inFolder(async (folder) => {
    const files: [string, Uint8Array][] = [
      ['empty.json', new Uint8Array()],
      ['deep.json', Buffer.from('['.repeat(100_000))],
      ['long.json', Buffer.from(`"${'x'.repeat(1_000_000)}"`)],
      ['binary.json', Uint8Array.of(0xff, 0xfe, 0x00, 0x80)],
      ['cut.refit', Buffer.from('PK\u0003\u0004')],
      ['climb.refit', zipSync({ '../outside.json': Buffer.from('{}') })],
      ['bomb.refit', zipSync({ 'refit.json': new Uint8Array(30_000_000) })],
    ];
    mkdirSync(join(folder, 'folder'));
    for (const [name, bytes] of files) writeFileSync(join(folder, name), bytes);
    for (const name of ['folder', ...files.map(([each]) => each)]) {
      for (const command of [
        ['check'],
        ['show'],
        ['next'],
        ['history'],
        ['why', 'X.whirl'],
        ['set', 'X.brake', 'none'],
      ]) {
        const [verb, ...rest] = command as [string, ...string[]];
        const { code, err, out } = await run(verb, join(folder, name), ...rest);
        expect(code, `${verb} ${name}`).toBe(2);
        expect(err.length, name).toBeGreaterThan(10);
        expect(err, name).not.toMatch(/\n\s+at |mistake of its own|NaN/);
        expect(out).toBe('');
      }
    }
  });
});

test('derived: the program itself answers with the same code', () => {
  const program = join(FIXTURES, '..', '..', 'bin', 'fettle.js');
  const { status, stdout } = spawnSync(process.execPath, [program, 'check', fixture('fails.json')], {
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  });
  expect(status).toBe(1);
  expect(stdout).toContain('X.whirl');
  expect(stdout).not.toContain('\u001b');
});

test('derived: a blank refit is told what to do next first, and what is unknown by the few facts it waits for', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    await run('new', 'lathe', 'X', 'Z', '--out', file);
    const { out, code } = await run('check', file);
    expect(code).toBe(3);
    const lines = out.split('\n');
    expect(lines.length).toBeLessThan(70);
    expect(lines.indexOf('What next')).toBeLessThan(6);
    expect(lines.indexOf('What next')).toBeLessThan(lines.indexOf('What is not known yet'));
    // The kind of motor is asked before anything of one kind alone.
    expect(out).not.toMatch(/stepper-|brushless motor\b/);
    const { findings } = JSON.parse((await run('check', file, '--json')).out);
    const folded = [...out.matchAll(/^(\d+) (?:more )?questions? waits? for/gm)].map(([, count]) =>
      Number(count),
    );
    expect(folded.reduce((sum, count) => sum + count, 0)).toBe(findings.length);
    const every = (await run('check', file, '--all')).out;
    for (const { id } of findings) expect(every).toContain(`${id}: `);
  });
});

test('derived: what fails stands before what is tight, and each before what is not known; nothing of them is left out', async () => {
  const file = join(import.meta.dirname, '..', 'samples', 'carriage-works-lathe.json');
  const { out } = await run('check', file);
  const { findings } = JSON.parse((await run('check', file, '--json')).out) as {
    findings: { id: string; verdict: string }[];
  };
  const at = (id: string): number => out.indexOf(`    ${id}: `);
  const places = (verdict: string): number[] =>
    findings.filter((each) => each.verdict === verdict).map(({ id }) => at(id));
  const [fails, tight, fits] = [places('fails'), places('tight'), places('fits')];
  expect(Math.min(...fails)).toBeGreaterThan(out.indexOf('What next'));
  expect(Math.min(...tight)).toBeGreaterThan(Math.max(...fails));
  expect(out.indexOf('What is not known yet')).toBeGreaterThan(Math.max(...tight));
  expect(fits.every((place) => place === -1)).toBe(true);
});

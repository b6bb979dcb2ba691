import { copyFileSync, existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { COMMANDS } from './commands/index.ts';
import type { Io } from './io.ts';
import { main } from './main.ts';
import { inFolder, run } from './run.fixture.ts';

const LATHE = join(import.meta.dirname, '..', 'samples', 'carriage-works-lathe.json');
const READINGS = [
  'winding-resistance',
  'reading=1.31,1.33,1.32',
  'probes=0.02 Ω',
  'ohmMeter=0.8 % + 3 digits',
];

/** Each with the file it would write; “-” goes where OUT stands. */
const WRITERS: readonly (readonly string[])[] = [
  ['control', 'works.json', '--census', 'OUT'],
  ['survey', 'works.json', '--sheets', 'OUT'],
  ['survey', 'works.json', '--tags', 'OUT'],
  ['simulate', 'works.json', 'X', 'rapid', 'speed=2 m/min', '--csv', 'OUT'],
  ['work', 'works.json', '--in-step', 'tap-3', '--csv', 'OUT'],
  ['evidence', ...READINGS, '--csv-out', 'OUT'],
  ['unpack', 'works.refit', 'OUT'],
];

test('derived: for any file that is written, “-” gives the same text on the standard output and nothing else', async () => {
  const home = process.cwd();
  await inFolder(async (folder) => {
    copyFileSync(LATHE, join(folder, 'works.json'));
    process.chdir(folder);
    try {
      await run('pack', 'works.json', 'works.refit');
      for (const line of WRITERS) {
        const as = (out: string) => line.map((word) => (word === 'OUT' ? out : word));
        const toFile = await run(...as('made.txt'));
        const { out, err, code } = await run(...as('-'));
        expect(out, line.join(' ')).toBe(readFileSync('made.txt', 'utf8'));
        expect(err).toBe('');
        expect(code).toBe(toFile.code);
        expect(readdirSync(folder), line.join(' ')).not.toContain('-');
        rmSync('made.txt');
      }
      const blank = JSON.parse((await run('new', 'lathe', 'X', '--out', '-')).out);
      expect(blank.chains).toHaveLength(1);
      expect(existsSync('-')).toBe(false);
    } finally {
      process.chdir(home);
    }
  });
}, 120_000);

test('derived: a terminal gets no control character of the file, another program every byte', async () => {
  const printed = async (terminal: boolean): Promise<string> => {
    let text = '';
    const io: Io = {
      out: (more) => {
        text += more;
      },
      err: () => undefined,
      columns: 80,
      terminal,
      env: {},
      now: () => '2024-03-01T10:00:00.000Z',
    };
    expect(await main(['control', LATHE, '--census', '-'], io)).toBe(1);
    return text;
  };
  const [terminal, pipe] = [await printed(true), await printed(false)];
  expect(terminal).not.toMatch(/[^\P{Cc}\n]/u);
  expect(terminal).toBe(pipe.replaceAll('\r\n', '\n'));
});

test('derived: two texts do not share the standard output; what is no text does not go there', async () => {
  await inFolder(async (folder) => {
    for (const line of [
      ['control', LATHE, '--census', '-', '--json'],
      ['survey', LATHE, '--sheets', '-', '--tags', '-'],
      ['pack', LATHE, '-'],
    ]) {
      const { code, out, err } = await run(...line);
      expect([code, out], line.join(' ')).toEqual([2, '']);
      expect(err).toMatch(/standard output/);
    }
    expect(readdirSync(folder)).toEqual([]);
  });
});

test('derived: help says of each option that writes a file that “-” is the standard output', async () => {
  for (const { name, options } of COMMANDS)
    if (Object.values(options).some(({ writes }) => writes))
      expect((await run('help', name)).out, name).toContain('“-”');
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fixture, inFolder, run } from './run.fixture.ts';

const LONG = 'x'.repeat(1_000_000);
const ODD = ['', ' ', LONG, '__proto__', '../..', '\u0000', 'NaN', '1e308'];

test('derived: odd names in any command are refused in one short sentence and write nothing', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    await run('new', 'lathe', 'X', '--out', file);
    const before = readFileSync(file);
    for (const odd of ODD) {
      const lines = [
        [odd],
        ['new', odd, 'X'],
        ['new', 'lathe', odd],
        ['option', file, odd, 'Motor'],
        ['choose', file, odd, 'none'],
        ['choose', file, 'X.motor', odd],
        ['set', file, odd, '1'],
        ['set', file, 'X.motor.resistance', '1 ohm', '--basis', odd],
        ['why', file, odd],
        ['check', file, '--axis', odd],
        ['check', file, '--units', odd],
        ['next', file, '--most', odd],
        ['keep', odd],
        ['keep', file, odd],
        ['worth', odd],
        ['fault', odd],
        ['fault', 'screen-dark', odd],
        ['fault', 'screen-dark', `fuses=${odd.slice(0, 1000)}`],
        ['duty', file, '--size', odd],
        ['sheet', odd],
        ['sheet', '--show', odd],
        ['help', odd],
        ['show', odd],
        ['history', odd],
        ['pack', odd, join(folder, 'a.refit')],
      ];
      for (const line of lines) {
        const { code, err } = await run(...line);
        const said = line.map((word) => word.slice(0, 20)).join(' ');
        expect(code, said).toBe(2);
        expect(err.length, said).toBeLessThan(3_000);
        expect(err, said).not.toMatch(/mistake of its own|\n\s+at |undefined/);
      }
    }
    for (const odd of ['', ' ', LONG, '../..', '\u0000']) {
      const { code, err } = await run('unpack', file, odd);
      expect(code, odd.slice(0, 20)).toBe(2);
      expect(err).not.toContain('mistake of its own');
    }
    expect(readFileSync(file).equals(before)).toBe(true);
  });
});

test('derived: a file is not written into a folder that is not there', async () => {
  await inFolder(async (folder) => {
    const { code, err } = await run('unpack', fixture('fits.json'), join(folder, 'none', 'a.json'));
    expect(code).toBe(2);
    expect(err).toContain('already');
    expect((await run('pack', fixture('fits.json'), join(folder, 'none', 'a.refit'))).code).toBe(2);
  });
});

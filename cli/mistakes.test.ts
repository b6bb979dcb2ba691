import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { OPERATIONS } from '../engine/threads/index.ts';
import { inFolder, run } from './run.fixture.ts';

const flat = (text: string): string => text.replace(/\s+/g, ' ');

const inRefit = (use: (file: string, folder: string) => Promise<void>): Promise<void> =>
  inFolder(async (folder) => {
    const file = join(folder, 'works.json');
    copyFileSync(join(import.meta.dirname, '..', 'samples', 'carriage-works-lathe.json'), file);
    await use(file, folder);
  });

test(
  'derived: what is missing or unreadable is told in a short sentence with one suggestion, and nothing is written',
  () =>
    inRefit(async (file, folder) => {
      const before = readFileSync(file);
      const cases: readonly (readonly [says: string, line: readonly string[]])[] = [
        ['“fettle help” lists them.', ['frobnicate']],
        ['Did you mean “fettle check”?', ['chekc']],
        ['has no axis “Q”; it has X, Z.', ['simulate', file, 'Q', 'rapid']],
        ['Name a refit, an axis and a move', ['simulate']],
        ['Name an axis and a move after the refit', ['simulate', file]],
        ['Name a move after the axis', ['simulate', file, 'X']],
        ['works.json?', ['check', join(folder, 'works.refit')]],
        ['works.json?', ['check', join(folder, 'wroks.json')]],
        ['begins a refit', ['check', join(folder, 'quite-another.refit')]],
        ['there is no such file.', ['check', join(folder, 'nowhere', 'a.refit')]],
        ['Name a method after', ['evidence', file]],
        ['thread: Which thread', ['work', file, '--add', 'tap', 'thread=Q']],
        ['speed: ', ['work', file, '--change', 'tap-3', 'speed=9999999r/min']],
        ['Write what to change of tap-3', ['work', file, '--change', 'tap-3']],
        ['with --in-step', ['work', file, '--csv', join(folder, 'a.csv')]],
        ['thread, tap or cut', ['work', file, '--add']],
        ['which kind to add', ['auxiliary', file, 'add']],
        ['Write what to set of turret', ['auxiliary', file, 'set', 'turret']],
      ];
      for (const [says, line] of cases) {
        const { code, out, err } = await run(...line);
        expect(flat(err), line.join(' ')).toContain(says);
        expect([code, out], line.join(' ')).toEqual([2, '']);
        expect(err.length, line.join(' ')).toBeLessThan(500);
      }
      expect(readFileSync(file).equals(before)).toBe(true);
    }),
  60_000,
);

test('derived: what a cut wants is shown as a whole line that works', async () => {
  for (const operation of OPERATIONS) {
    const { code, err } = await run('cut', operation);
    expect(code).toBe(2);
    const line = /fettle (cut .*)$/.exec(flat(err).trim())?.[1];
    // A thread is asked for by its own words first.
    const example = await run(...(line ?? 'cut').split(' '));
    expect(example.code, `${operation}: ${line} ${example.err}`).toBe(0);
  }
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inFolder, run } from './run.fixture.ts';

test('derived: a spindle is begun with, added, and its facts are set, asked for and explained', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    expect((await run('new', 'lathe', 'X', 'Z', '--spindle', '--out', file)).out).toContain(
      'the axes X, Z and the spindle S',
    );
    expect((await run('show', file)).out).toContain('S.chuck');
    const next = await run('next', file, '--most', '100');
    expect(next.out).toContain('S.spindle-drive.type');
    const set = await run(
      'set',
      file,
      'S.spindle-duty.topSpeed=2000 r/min',
      'S.spindle.topSpeed=1500 r/min',
      'S.chuck.type=collet',
      'S.belts.type=direct',
      '--basis',
      'plate',
    );
    expect(set.code, set.err).toBe(0);
    const open = await run('why', file, 'S.overspeed');
    expect(open.out).toContain('No permission');
    expect(open.out).toContain('highest speed marked');
    await run('set', file, 's.CHUCK.topspeed', '4000 r/min', '--basis', 'plate');
    const why = await run('why', file, 'S.overspeed');
    expect(why.out).toMatch(/Do not turn it\s+faster/);
    expect(why.out).toContain('bearings');
    const check = JSON.parse((await run('check', file, '--axis', 's', '--json')).out);
    expect(check.findings.every(({ id }: { id: string }) => id.startsWith('S.'))).toBe(true);
    expect((await run('check', file, '--all')).out).toContain('Spindle');
    expect((await run('option', file, 'S.chuck', 'The big chuck', '--choose')).code).toBe(0);
    expect((await run('choose', file, 'S.chuck', 'none')).code).toBe(0);
    expect((await run('set', file, 'S.spindle-duty.topSpeed', '0 r/min')).err).toContain('above zero');
  });
});

test('derived: an axis or spindle is added to a refit that is there, once, and in its history', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'mill.refit');
    await run('new', 'mill', 'X', 'Y', '--out', file);
    const added = await run('add', file, 'Spindle');
    expect(added.code, added.err).toBe(0);
    expect(added.out).toContain('S.spindle-motor');
    expect((await run('add', file, 'axis', 'z')).out).toContain('Z axis added');
    expect((await run('show', file)).out).toContain('the axes X, Y, Z and the spindle S');
    expect((await run('history', file)).out).toContain('belts and gears');
    for (const [words, says] of [
      [['spindle'], 'there twice'],
      [['axis', 'X'], 'there twice'],
      [['axis', 'S'], 'kept for the spindle'],
      [['axis', 'left and right'], 'no axis name'],
      [['spindle', '__proto__'], 'no spindle name'],
      [['axis'], 'Which axis'],
      [['turret'], 'cannot be added'],
    ] as const) {
      const before = readFileSync(file);
      const refused = await run('add', file, ...words);
      expect(refused.code, words.join(' ')).toBe(2);
      expect(refused.err).toContain(says);
      expect(readFileSync(file).equals(before)).toBe(true);
    }
    expect((await run('add', file, 'spindle', 'S2')).out).toContain('S2 spindle added');
    expect((await run('new', 'mill', 'X', 'S', '--out', join(folder, 'b.refit'))).err).toContain(
      'kept for the spindle',
    );
  });
});

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inFolder, run } from './run.fixture.ts';

const TEN: readonly [path: string, value: string][] = [
  ['X.screw.pitch', '5 TPI'],
  ['X.screw.lead', '0.2 in'],
  ['X.motor.inertia', '1.2 oz-in-s^2'],
  ['X.motor.emf', '7.5 V/krpm'],
  ['X.motor.resistance', '1.32 ± 0.06 ohm'],
  ['X.feedback.lines', '1000 lines'],
  ['Z.screw.lead', '3-start pitch 2 mm'],
  ['Z.screw.pitch', '2,5 mm'],
  ['X.screw.starts', '1'],
  ['X.screw.dragTorque', '12 lb-in'],
];

test('derived: ten facts in mixed units bring verdicts to a blank lathe', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    expect((await run('new', 'lathe', 'X', 'Z', '--out', file)).code).toBe(0);
    expect((await run('check', file)).code).toBe(3);
    const before = JSON.parse((await run('check', file, '--json')).out).counts;
    for (const [path, value] of TEN) {
      const { code, err } = await run('set', file, path, value, '--basis', 'measured');
      expect(code, `${path} ${value}: ${err}`).toBe(0);
    }
    const after = JSON.parse((await run('check', file, '--json')).out).counts;
    expect(before.fits + before.tight + before.fails).toBe(0);
    expect(after.fits + after.tight + after.fails).toBeGreaterThan(0);
    const history = (await run('history', file)).out;
    expect(history).toContain('10. 2024-03-01');
    expect(history).toContain('1.32 ± 0.06 ohm');
  });
});

const BAD: readonly [path: string, value: string][] = [
  ['X.motor.resistance', ''],
  ['X.motor.resistance', 'quite a lot'],
  ['X.motor.resistance', '5 mm'],
  ['X.motor.resistance', '0 ohm'],
  ['X.motor.resistance', '-1 ohm'],
  ['X.motor.resistance', '1e999 ohm'],
  ['X.motor.resistance', 'NaN'],
  ['X.motor.resistance', '3 bananas'],
  ['X.motor.resistance', '9'.repeat(1_000_000)],
  ['X.screw.freeLength', '1,250 mm'],
  ['X.motor.__proto__', '1'],
  ['__proto__.motor.resistance', '1 ohm'],
  ['X.motor.resistence', '1 ohm'],
  ['policies.whirl', 'lots'],
];

test('derived: what cannot be is refused in words, and the file stays as it was', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    await run('new', 'lathe', 'X', '--out', file);
    const before = readFileSync(file);
    for (const [path, value] of BAD) {
      const { code, err } = await run('set', file, path, value);
      expect(code, `${path} ${value.slice(0, 20)}`).toBe(2);
      expect(err).not.toMatch(/\n\s+at |mistake of its own/);
      expect(err.length).toBeLessThan(3_000);
      expect(readFileSync(file).equals(before)).toBe(true);
    }
    const { err } = await run('set', file, 'X.screw.freeLength', '1,250 mm');
    expect(err).toContain('– 1.250 mm');
    expect(err).toContain('– 1250 mm');
  });
});

test('derived: packing and unpacking give the state back', async () => {
  await inFolder(async (folder) => {
    const [json, refit, again] = ['a.json', 'b.refit', 'c.json'].map((name) => join(folder, name));
    await run('new', 'mill', 'X', '--out', json!);
    expect((await run('pack', json!, refit!)).code).toBe(0);
    expect((await run('unpack', refit!, again!)).code).toBe(0);
    expect(readFileSync(again!, 'utf8')).toBe(readFileSync(json!, 'utf8'));
    expect((await run('pack', json!, refit!)).code).toBe(2);
  });
});

test('derived: wrong use of any command is one sentence and exit 2', async () => {
  for (const line of [
    ['chekc'],
    ['check'],
    ['new'],
    ['new', 'boat', 'X'],
    ['new', 'lathe', 'XYZ'],
    ['next', 'x', '--most', '0'],
    ['check', 'x', '--nonsense'],
    ['sheet'],
    ['why', 'x'],
    ['option', 'x', 'X.motor'],
    ['choose', 'x'],
    ['pack', 'x'],
    ['help', 'nothing'],
  ]) {
    const { code, err, out } = await run(...line);
    expect(code, line.join(' ')).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/[.?]\n$/);
  }
});

test('derived: both forms of setting are read; mixed ones are refused with the first as an example', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    await run('new', 'lathe', 'X', 'Z', '--out', file);
    for (const words of [
      ['Z.screw.root', '16,5', 'mm'],
      ['Z.screw.root', '16,5 mm'],
      ['X.motor.peakTorque', '2.5', 'N.m'],
      ['Z.screw.root=16,5 mm', 'X.duty.rapid=10 m/min'],
      ['X.screw.root', '16.5 ± 0.06 mm', '(k=2)'],
    ]) {
      const { code, err } = await run('set', file, ...words);
      expect(code, `${words.join(' ')}: ${err}`).toBe(0);
    }
    const stood = readFileSync(file);
    for (const [words, says] of [
      [['Z.screw.root', '16,5 mm', 'X.duty.rapid=10 m/min'], "Z.screw.root='16,5 mm'"],
      [['Z.screw.root', '16,5', 'mm', 'X.duty.rapid', '10 m/min'], "Z.screw.root='16,5 mm'"],
      [['X.brake', 'none', 'policies.whirl', '0.7'], 'X.brake=none'],
      [['X.screw.root', '16.5 mm', 'X.motor.resistence', '1 ohm'], "X.screw.root='16.5 mm'"],
      [['Z.screw.root=16,5 mm', 'X.duty.rapid', '10 m/min'], "Z.screw.root='16,5 mm'"],
    ] as const) {
      const { code, err } = await run('set', file, ...words);
      expect(code, words.join(' ')).toBe(2);
      expect(err.replace(/\s+/g, ' ')).toContain(
        `several settings: write each as PATH=VALUE, such as ${says}.`,
      );
      expect(err).not.toMatch(/unit/);
    }
    const loose = await run('set', file, 'Z.screw.root=16,5', 'mm');
    expect(loose.err.replace(/\s+/g, ' ')).toContain("Z.screw.root='16,5 mm'");
    expect(readFileSync(file).equals(stood)).toBe(true);
  });
});

test('derived: what is far outside what is usual is recorded only with --anyway, a little outside as before', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    await run('new', 'lathe', 'X', '--out', file);
    const before = readFileSync(file);
    for (const typed of ['99999999999999999999999 ohm', '1e-9 ohm', '50 MΩ']) {
      const { code, err, out } = await run('set', file, 'x.Motor.resistance', typed);
      expect([code, out], typed).toEqual([2, '']);
      expect(err.replace(/\s+/g, ' ')).toMatch(/is far outside what is usual for the .* to .*\?.*--anyway/);
      expect(readFileSync(file).equals(before)).toBe(true);
    }
    const slip = await run('set', file, 'X.screw.root', '16 m');
    expect(slip.code).toBe(2);
    expect(slip.err.replace(/\s+/g, ' ')).toContain(
      'X.screw.root: 16 m is far outside what is usual for the root diameter, 4 mm to 110 mm. Did you mean 16 mm? Nothing was recorded; if it is right all the same, add --anyway.',
    );
    const habit = await run('set', file, 'policies.run-down', '30 h');
    expect(habit.code).toBe(2);
    expect(habit.err.replace(/\s+/g, ' ')).toContain('Did you mean 30 s?');
    const mild = await run('set', file, 'X.motor.resistance', '400 ohm');
    expect(mild.code).toBe(0);
    expect(mild.out).toContain('Is this right?');
    // Nought is an answer, not a slip.
    expect((await run('set', file, 'X.screw.dragTorque', '0 N·m')).code).toBe(0);
    const sure = await run('set', file, 'X.motor.resistance', '50 MΩ', '--anyway');
    expect(sure.code).toBe(0);
    expect(sure.out).toContain('50 MΩ');
  });
});

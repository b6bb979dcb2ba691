import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { COMMANDS } from './commands/index.ts';
import { fixture, inFolder, run } from './run.fixture.ts';

/** A command line that works, word by word; FILE is a copy of a refit, OUT a file that is not there. */
const LINES: Readonly<Record<string, readonly string[]>> = {
  new: ['lathe', 'X', '--name', 'Lathe', '--about', 'words', '--out', 'OUT'],
  set: ['FILE', 'X.motor.resistance', '1 ohm', '--basis', 'told', '--note', 'words'],
  add: ['FILE', 'axis', 'Y'],
  option: ['FILE', 'X.motor', 'Another'],
  choose: ['FILE', 'X.brake', 'none'],
  next: ['FILE', '--most', '2'],
  check: ['FILE', '--axis', 'X', '--units', 'in'],
  why: ['FILE', 'X.whirl'],
  sheet: ['screw-lead', 'P=5 mm', '--basis', 'told'],
  evidence: [
    'FILE',
    'travel-per-turn',
    '--for',
    'X',
    'turns=10',
    'travel=50.0,50.1',
    '--aside',
    '2',
    '--note',
    'words',
  ],
  survey: ['FILE', 'tag', '12', 'here=X motor', 'ends=both', '--note', 'words'],
  control: ['FILE', '--only', 'control', '--census', 'OUT', '--ask'],
  auxiliary: ['FILE', 'add', 'turret', 'positions=8', 'turn-limit=12 s', '--name', 'words'],
  simulate: ['FILE', 'X', 'rapid', 'speed=1 m/min', '--csv', 'OUT'],
  duty: ['FILE', '--size', 'small'],
  fault: ['screen-dark', 'fuses=whole'],
  keep: ['FILE', 'X.motor'],
  worth: ['FILE'],
  show: ['FILE'],
  wiring: ['FILE', '--list', 'cables', '--csv', 'OUT'],
  wire: ['FILE', 'K1.A1', 'X1.4', 'section=0.75mm²', 'colour=blue'],
  stop: ['FILE', '--pattern', 'one-contactor', '--test-sheet', 'OUT'],
  thread: [
    'M10',
    '--class',
    '6g',
    '--rapid',
    '3 m/min',
    '--accel',
    '0.5 m/s²',
    '--length',
    '20 mm',
    '--passes',
    '8',
    '--inertia',
    '0.02 kg·m²',
    '--torque',
    '15 N·m',
  ],
  cut: [
    'turning',
    'material=steel',
    'diameter=60mm',
    'depth=2mm',
    'feed=0.2mm',
    'speed=120m/min',
    '--power',
    '2 kW',
  ],
  work: ['FILE', '--add', 'thread', 'thread=M20x1.5', 'length=30mm', '--name', 'words'],
  history: ['FILE'],
  pack: ['FILE', 'OUT'],
  unpack: ['FILE', 'OUT'],
  help: ['set'],
  version: [],
};
/** It listens until it is stopped; tests of the server have it. */
const WITHOUT_END = ['serve'];

const HOSTILE: readonly [name: string, text: string][] = [
  ['nothing', ''],
  ['blanks', '   '],
  ['words', 'quite a lot'],
  ['a wrong dimension', '5 kg'],
  ['1e308', '1e308'],
  ['NaN', 'NaN'],
  ['a minus', '-5'],
  ['a dash', '-'],
  ['two dashes', '--'],
  ['an unknown switch', '--nonsense'],
  ['a reserved word', '__proto__'],
  ['a reserved path', 'X.constructor.prototype'],
  ['a null character', 'a\u0000b'],
  ['an escape sequence', '\u001b[2J\u001b]0;title\u0007'],
  ['half a letter', '\ud800'],
  ['a million letters', 'x'.repeat(1_000_000)],
  ['a climb', '../../no-such-folder/file'],
  ['a folder', '.'],
];

test('every command has a line to try', () => {
  expect(Object.keys(LINES).sort()).toEqual(
    COMMANDS.map(({ name }) => name)
      .filter((name) => !WITHOUT_END.includes(name))
      .sort(),
  );
});

test.each(Object.entries(LINES))(
  'derived: %s answers whatever stands in any place of its line',
  async (name, line) => {
    for (const [at, word] of [...line.entries(), [line.length, ''] as const]) {
      if (word.startsWith('--')) continue;
      for (const [what, text] of HOSTILE) {
        await inFolder(async (folder) => {
          const file = join(folder, 'lathe.json');
          copyFileSync(fixture('unknown.json'), file);
          const places = new Map([
            ['FILE', file],
            ['OUT', join(folder, 'out.refit')],
          ]);
          const argv = line.map((each) => places.get(each) ?? each);
          // A new file must not land among the sources.
          argv[at] = word === 'OUT' ? join(folder, text) : text;
          const { code, out, err } = await run(name, ...argv);
          const title = `fettle ${name}, word ${at}: ${what}`;
          expect([0, 1, 2, 3], title).toContain(code);
          expect(err, title).not.toMatch(/\n\s+at |mistake of its own|undefined|\[object/);
          expect(out + err, title).not.toMatch(/[^\P{Cc}\n]/u);
          expect(err.length, title).toBeLessThan(5_000);
          if (code === 2) expect(err, title).toMatch(/[.?)]\n$|\n– /);
          else expect(err, title).toBe('');
          expect(
            readdirSync(folder).filter((each) => each.endsWith('.tmp')),
            title,
          ).toEqual([]);
        });
      }
    }
  },
);

test('derived: a file that cannot be written leaves the old one as it was', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    await run('new', 'lathe', 'X', '--out', file);
    const before = readFileSync(file);
    expect((await run('new', 'lathe', 'X', '--out', file)).err).toContain('is there already');
    expect(readFileSync(file).equals(before)).toBe(true);
    expect((await run('new', 'lathe', 'X', '--out', file, '--force')).code).toBe(0);
    mkdirSync(join(folder, 'deep'));
    expect((await run('new', 'lathe', 'X', '--out', join(folder, 'deep'), '--force')).code).toBe(2);
    expect((await run('new', 'lathe', 'X', '--out', join(folder, 'none', 'a.refit'))).code).toBe(2);
    expect(readdirSync(folder).sort()).toEqual(['deep', 'lathe.refit']);
  });
});

test('derived: what a file may not hold is refused before it is written', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'lathe.refit');
    await run('new', 'lathe', 'X', '--out', file);
    const before = readFileSync(file);
    for (const words of [
      ['set', file, 'X.motor.resistance', '1 ohm', '--note', 'x'.repeat(3_000)],
      ['set', file, 'X.motor.resistance', '1 ohm', '--note', 'a\u0007b'],
      ['option', file, 'X.motor', 'x'.repeat(200)],
      ['option', file, 'X.motor', 'a\u001b[31mb'],
      ['set', file, 'X.motor.resistance=1 ohm', 'X.motor.inductance=5 kg'],
    ]) {
      const { code, err } = await run(...words);
      expect(code, words.join(' ').slice(0, 80)).toBe(2);
      expect(err).not.toContain('mistake of its own');
      expect(readFileSync(file).equals(before)).toBe(true);
    }
  });
});

test('derived: a policy that cannot be, written by hand, is named with exit 2', async () => {
  await inFolder(async (folder) => {
    const refit = JSON.parse(readFileSync(fixture('fits.json'), 'utf8'));
    const file = join(folder, 'lathe.json');
    for (const policies of [{ whirl: '7' }, { whirl: 'lots' }, { nonsense: '1' }]) {
      writeFileSync(file, JSON.stringify({ ...refit, policies }));
      const { code, err } = await run('check', file);
      expect(code).toBe(2);
      expect(err).toContain(`policies.${Object.keys(policies)[0]}`);
    }
  });
});

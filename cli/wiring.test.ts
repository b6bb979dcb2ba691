import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { wired } from '../engine/circuit/wiring/wired.fixture.ts';
import { blankRefit } from '../engine/refit/blank.ts';
import { readRefit, writeRefit } from '../engine/refit/index.ts';
import { withUsual } from '../engine/refit/usual.ts';
import { fixture, inFolder, run } from './run.fixture.ts';

/** A refit with a control whose output for 24 V could be joined to an input of 5 V. */
function inFile(folder: string): string {
  const file = join(folder, 'machine.json');
  const made = blankRefit({ id: 'a', name: 'Lathe', machine: 'lathe', axes: ['X'] });
  if (!made.ok) throw new Error(made.problem.message);
  const wiring = wired(
    [
      'A1 control output-level=24v pulse-axes=X',
      'T1 drive command=pulses input-level=opto-5v motor=brushed',
      'G1 supply volts=24_V current=5_A',
      'F1 fuse amps=4_A',
      'K1 relay coil-volts=24_V suppressor=diode',
      'X1 strip ways=4',
    ],
    ['G1.plus F1.1', 'F1.2 A1.plus', 'G1.minus A1.minus', 'A1.out1 K1.A1 / W1', 'K1.A2 G1.minus / W1'],
    { W1: { cores: '3', section: '0.75 mm²', length: '2 m' } },
  );
  writeFileSync(file, writeRefit({ ...made.value, wiring }));
  return file;
}

test('derived: findings come worst first and decide the exit code; nothing wired is not known', async () => {
  await inFolder(async (folder) => {
    const file = inFile(folder);
    const { code, out } = await run('wiring', file);
    expect([1, 3]).toContain(code);
    expect(out).toMatch(/6 devices, \d+ terminals, 5 wires, 1 cable\./);
    const said = JSON.parse((await run('wiring', file, '--json')).out);
    expect(said).toMatchObject({ format: 'fettle-wiring', version: 1, devices: 6, wires: 5 });
    const verdicts = said.findings.map(({ verdict }: { verdict: string }) => verdict);
    const order = ['fails', 'unknown', 'tight', 'fits'];
    expect(verdicts).toEqual([...verdicts].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
    expect(code).toBe(verdicts.includes('fails') ? 1 : 3);
    const none = await run('wiring', fixture('unknown.json'));
    expect(none.out).toContain('No device is here yet, so nothing can be said of the wiring.');
    expect(none.out).toContain(' --propose\n');
    expect(none.code).toBe(3);
    expect((await run('wiring', fixture('unknown.json'), '--json')).code).toBe(3);
  });
});

test('derived: lists as a table, JSON, CSV and paper; a file that is there is left alone', async () => {
  await inFolder(async (folder) => {
    const file = inFile(folder);
    expect((await run('wiring', file, '--wires')).out).toMatch(/A1\.out1 +w4 +K1\.A1 +0\.75 +2 +0\.75 +W1/);
    const json = JSON.parse((await run('wiring', file, '--list', 'cables', '--json')).out);
    expect(json.groups[0].rows).toHaveLength(2);
    const [csv, paper] = [join(folder, 'labels.csv'), join(folder, 'labels.html')];
    const both = await run('wiring', file, '--list', 'labels', '--csv', csv, '--paper', paper);
    expect(both.code).toBe(0);
    expect(readFileSync(csv, 'utf8').split('\r\n')).toHaveLength(1 + 10 + 2 + 6 + 4 + 1);
    expect(readFileSync(paper, 'utf8')).toContain('licensed electrician');
    const again = await run('wiring', file, '--list', 'labels', '--csv', csv);
    expect(again.code).toBe(2);
    expect(again.err).toContain('is there already');
    for (const list of ['wires', 'strips', 'pins', 'ring-out'])
      expect((await run('wiring', file, '--list', list)).code, list).toBe(0);
    for (const line of [
      ['--list', 'wirs'],
      ['--csv', csv],
      ['--keep'],
      ['--wires', '--propose'],
      ['--wires', '--list', 'pins'],
    ]) {
      const { code, err } = await run('wiring', file, ...line);
      expect(code, line.join(' ')).toBe(2);
      expect(err).toMatch(/[.?]\n$/);
    }
  });
});

test('derived: diagrams are drawn into a folder and over our own files only', async () => {
  await inFolder(async (folder) => {
    const file = inFile(folder);
    const drawn = join(folder, 'drawn');
    const { out, code } = await run('wiring', file, '--draw', drawn);
    expect(code).toBe(0);
    const names = readdirSync(drawn);
    expect(names).toContain('symbols.svg');
    for (const name of names) {
      expect(out).toContain(name);
      expect(readFileSync(join(drawn, name), 'utf8')).toMatch(/<svg[^>]*viewBox/);
    }
    expect((await run('wiring', file, '--draw', drawn)).code).toBe(0);
    const other = names.find((name) => name !== 'symbols.svg')!;
    writeFileSync(join(drawn, other), '<svg>somebody else drew this</svg>');
    writeFileSync(
      join(drawn, 'symbols.svg'),
      readFileSync(join(drawn, 'symbols.svg'), 'utf8').replace('Symbols', 'Old'),
    );
    const refused = await run('wiring', file, '--draw', drawn);
    expect(refused.code).toBe(2);
    expect(refused.err).toContain('was not drawn by Fettle');
    expect(readFileSync(join(drawn, other), 'utf8')).toContain('somebody else');
    expect(readFileSync(join(drawn, 'symbols.svg'), 'utf8')).toContain('Old');
    expect((await run('wiring', file, '--draw', file)).code).toBe(2);
    expect((await run('wiring', file, '--draw', join(folder, 'a', 'b'))).code).toBe(2);
    expect(existsSync(join(folder, 'a'))).toBe(false);
  });
}, 60_000);

test('derived: a wire is tried, joined and cut again; what cannot be is refused by name', async () => {
  await inFolder(async (folder) => {
    const file = inFile(folder);
    const before = readFileSync(file, 'utf8');
    const line = ['wire', file, 'A1.out2', 'T1.STEP+', 'number=40', 'section=0.5 mm²'];
    const tried = await run(...(line as [string, ...string[]]), '--try');
    expect(tried.out).toContain('Nothing is recorded.');
    expect(readFileSync(file, 'utf8')).toBe(before);
    const joined = await run(...(line as [string, ...string[]]));
    expect(joined.out).toContain('Recorded: ');
    const now = JSON.parse(readFileSync(file, 'utf8'));
    expect(now.wiring.wires.w6).toEqual({
      id: 'w6',
      from: 'A1.out2',
      to: 'T1.STEP+',
      cable: null,
      settings: { number: '40', section: '0.5 mm²' },
    });
    await run('wire', file, '--cut', '40');
    expect(JSON.parse(readFileSync(file, 'utf8')).wiring).toEqual(JSON.parse(before).wiring);
    for (const words of [
      ['A1.out9', 'X1.1'],
      ['A1.out2', 'A1.out2'],
      ['A1.out9'],
      ['A1.out2', 'X1.1', 'section=5 kg'],
      ['A1.out2', 'X1.1', 'cable=W9'],
      ['A1.out2', 'X1.1', 'nonsense=1'],
      ['--cut', 'w99'],
      ['A1.out2', 'X1.1', '--cut', 'w1'],
    ]) {
      const { code, err } = await run('wire', file, ...words);
      expect(code, words.join(' ')).toBe(2);
      expect(err).toMatch(/[.?]\n$/);
    }
    expect(JSON.parse(readFileSync(file, 'utf8')).wiring).toEqual(JSON.parse(before).wiring);
  });
}, 60_000);

test('derived: a terminal is shown, said to be otherwise, and set back; nonsense is refused by name', async () => {
  await inFolder(async (folder) => {
    const file = inFile(folder);
    const before = JSON.parse(readFileSync(file, 'utf8')).wiring;
    expect((await run('wire', file, 'A1.out1')).out).toMatch(
      /high: lowest voltage when high: 21 V \(follows from/,
    );
    const tried = await run('wire', file, 'A1.out1.high=5 V', 'A1.out1.top=5 V', '--try');
    expect(tried.code).toBe(1);
    expect(tried.out).toMatch(/fails.*\n[\s\S]*K1/);
    expect(JSON.parse(readFileSync(file, 'utf8')).wiring).toEqual(before);
    await run('wire', file, 'A1.out1.high=5 V', 'K1.coil-current=40 mA', 'W1.length=3 m');
    const { devices, cables } = JSON.parse(readFileSync(file, 'utf8')).wiring;
    expect(devices.A1.terminals.out1).toEqual({ kind: 'output', name: '', settings: { high: '5 V' } });
    expect(devices.K1.settings['coil-current']).toBe('40 mA');
    expect(cables.W1.settings.length).toBe('3 m');
    await run('wire', file, 'A1.out1=usual', 'K1.coil-current=usual', 'W1.length=2 m');
    expect(JSON.parse(readFileSync(file, 'utf8')).wiring).toEqual(before);
    for (const [word, says] of [
      ['A1.out1.high=5 kg', /Lowest voltage when high: .*such as/],
      ['K1.suppressor=sponge', /spike of the coil: .*diode/],
      ['K1.supressor=diode', /Did you mean suppressor/],
      ['A1.out1=5 V', /A1\.out1\.kind=output/],
      ['K9.volts=5 V', /no device, terminal, cable or wire “K9”/],
      ['=5 V', /no “=”/],
      ['constructor.name=x', /no device/],
    ] as const) {
      const { code, err } = await run('wire', file, 'W1.length=9 m', word);
      expect(code, word).toBe(2);
      expect(err.replace(/\s+/g, ' ')).toMatch(says);
    }
    expect(JSON.parse(readFileSync(file, 'utf8')).wiring).toEqual(before);
  });
}, 60_000);

test('derived: a proposal names the command for each question; --keep leaves out what waits, --all does not', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'machine.refit');
    await run('new', 'lathe', 'X', '--out', file);
    const wiresIn = async () => {
      const { out } = await run('wiring', file, '--wires', '--json');
      return JSON.parse(out).groups.flatMap(({ rows }: { rows: unknown[] }) => rows).length / 2;
    };
    const first = JSON.parse((await run('wiring', file, '--propose', '--json')).out);
    const held = new Set(first.open.flatMap(({ wires }: { wires: string[] }) => wires));
    expect(held.size).toBeGreaterThan(0);
    expect(await wiresIn()).toBe(0);
    // Every question is answered by the command that is named for it, filled in.
    const { out } = await run('wiring', file, '--propose');
    const commands = [...out.matchAll(/fettle wire \S+ ((?:\S+='…' ?)+)$/gm)].map(([, places]) =>
      [...places!.matchAll(/(\S+)='…'/g)].map(([, place]) => place!),
    );
    expect(commands).toHaveLength(first.groups.length);
    expect(commands.flat().sort()).toEqual(first.open.map(({ id }: { id: string }) => id).sort());
    expect(out).toContain(`0 of ${first.groups.length} answered.`);
    // Questions come before devices, devices before wires; what is taken for granted of the drives says why, and how not.
    const order = ['Still open: ', 'What it has to be told', 'Devices that come with it', 'Wires: '];
    const at = order.map((each) => out.indexOf(each));
    expect(at).toEqual([...at].sort((a, b) => a - b));
    expect(at[0]).toBeGreaterThan(0);
    expect(out).toMatch(
      /– T1 is fed with direct voltage .*: most drives[^–]*fettle wire \S+ T1\.feed=mains/s,
    );
    // Reasons stand once a group, and with each wire where all is asked for.
    expect(out.match(/[Ss]ection usual for control circuits/g)).toHaveLength(1);
    expect(out).toContain('mains voltage, phase to neutral of X0');
    expect(out).not.toContain('reverse voltage');
    const each = (await run('wiring', file, '--propose', '--all')).out;
    expect(each.match(/section usual for control/g)!.length).toBeGreaterThan(3);
    // What is found says which usual values it rests on, here and as JSON.
    expect(out.replace(/\s+/g, ' ')).toContain(
      'It rests on the usual current of its enable input, 10 mA, of T1;',
    );
    expect(first.findings.some((found: { restsOn?: string[] }) => found.restsOn?.length)).toBe(true);
    // One command answers all that is alike.
    const places = commands.find((each) => each.length > 1)!;
    expect(places).toEqual(['G1.mains-volts', 'G2.mains-volts']);
    expect((await run('wire', file, ...places.map((place) => `${place}=230 V`))).out).toContain('Recorded: ');
    const second = JSON.parse((await run('wiring', file, '--propose', '--json')).out);
    for (const place of places) expect(second.open.map(({ id }: { id: string }) => id)).not.toContain(place);
    expect(second.answered).toBe(1);

    const kept = await run('wiring', file, '--propose', '--keep');
    expect([0, 1, 3]).toContain(kept.code);
    const all = second.changes.filter(({ do: what }: { do: string }) => what === 'wire').length;
    const waiting = new Set(second.open.flatMap(({ wires }: { wires: string[] }) => wires)).size;
    expect(await wiresIn()).toBe(all - waiting);
    await run('wiring', file, '--propose', '--keep', '--all');
    const last = JSON.parse((await run('wiring', file, '--propose', '--json')).out);
    expect(last.changes).toEqual([]);
    expect(await wiresIn()).toBeGreaterThan(all - waiting);
  });
}, 60_000);

test('derived: a usual value says that nobody has looked at it, what rests on it says so, and saying it is so ends that', async () => {
  await inFolder(async (folder) => {
    const file = inFile(folder);
    const read = readRefit(readFileSync(file, 'utf8'));
    if (!read.ok) throw new Error(read.problem.message);
    const { wiring } = read.value;
    const K1 = withUsual(wiring.devices.K1!, { 'coil-current': '40 mA' });
    writeFileSync(
      file,
      writeRefit({ ...read.value, wiring: { ...wiring, devices: { ...wiring.devices, K1 } } }),
    );
    const plain = (text: string) => text.replace(/\s+/g, ' ');
    const said = plain((await run('wiring', file, '--all')).out);
    expect(said).toContain('Usual values, not looked at yet');
    expect(said).toMatch(/fettle wire \S+ K1\.coil-current='40 mA'/);
    expect(said).toContain('It rests on the usual current of the coil, 40 mA, of K1; nobody has looked');
    const json = JSON.parse((await run('wiring', file, '--json')).out);
    expect(json.usual).toMatchObject([{ value: '40 mA', places: ['K1.coil-current'] }]);
    expect(
      json.findings.filter((each: { restsOn?: readonly string[] }) => each.restsOn).length,
    ).toBeGreaterThan(0);
    await run('wire', file, 'K1.coil-current=40 mA');
    expect(readFileSync(file, 'utf8')).not.toContain('"usual"');
    const after = JSON.parse((await run('wiring', file, '--json')).out);
    expect(after.usual).toEqual([]);
    expect(after.findings.some((each: object) => 'restsOn' in each)).toBe(false);
  });
});

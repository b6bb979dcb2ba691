import { copyFileSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fixture, inFolder, run } from './run.fixture.ts';

const WORKS = join(import.meta.dirname, '..', 'samples', 'carriage-works-lathe.json');

test('derived: without a circuit it offers patterns; one laid out is recorded and looked through', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'machine.json');
    copyFileSync(fixture('unknown.json'), file);
    const none = await run('stop', file);
    expect(none.code).toBe(3);
    expect(none.out).toContain('safety-relay: Two channels with a safety relay.');
    const laid = await run('stop', file, '--pattern', 'safety-relay');
    expect(laid.out).toMatch(/Recorded: stop circuit: safety-relay, \d+ elements, \d+ wires/);
    expect(laid.code).toBe(3);
    expect((await run('stop', file)).code).toBe(3);
    const bad = await run('stop', file, '--pattern', 'asks-the-control');
    expect(bad.code).toBe(1);
    expect(bad.out).toContain('The power stays'.toLowerCase().slice(4));
  });
});

test('derived: JSON holds every fault with its verdict; pairs only where they were asked for', async () => {
  const { out, code } = await run('stop', WORKS, '--json');
  expect(code).toBe(1);
  const said = JSON.parse(out);
  expect(said).toMatchObject({ format: 'fettle-stop', version: 1, pattern: 'two-contactors' });
  expect(said.faults[0]).toMatchObject({ id: 'cable W1 crushed', verdict: 'dangerous' });
  expect(said.faults.find(({ id }: { id: string }) => id === 'K1 welded').verdict).toBe('unnoticed');
  expect(said.pairs).toBeUndefined();
  expect(said.notExamined.join(' ')).toMatch(/no certificate/);
});

test('derived: pairs find what two unnoticed faults do together', async () => {
  const { out } = await run('stop', WORKS, '--pairs');
  expect(out).toMatch(/K1 welded, then K2 welded/);
}, 120_000);

test('derived: a test sheet is written once, and over another only by force; truth shows acts in states', async () => {
  await inFolder(async (folder) => {
    const sheet = join(folder, 'test.html');
    expect((await run('stop', WORKS, '--test-sheet', sheet)).code).toBe(1);
    expect(readFileSync(sheet, 'utf8')).toContain('Push the armature of K2 in by hand');
    const again = await run('stop', WORKS, '--test-sheet', sheet);
    expect(again.code).toBe(2);
    expect(again.err).toMatch(/is there already/);
    expect((await run('stop', WORKS, '--test-sheet', sheet, '--force', '--truth')).out).toMatch(
      /press S1 → held: .*X: stop category 0/s,
    );
    expect(existsSync(`${sheet}.tmp`)).toBe(false);
  });
});

test('derived: one finding of the stop circuit is reached by its name and is not that of the whole refit', async () => {
  const stays = await run('why', WORKS, 'X.stays');
  expect(stays.out).toMatch(/without a brake the axis\s+drops/);
  const brake = await run('why', WORKS, 'stop.X.brake');
  expect(brake.out).toMatch(/X drops when nothing holds it, and has no brake[\s\S]*Numbers of cross slide/);
  const faults = await run('why', WORKS, 'Stop.Faults');
  expect(faults.out).toMatch(/Dangerous: 1[\s\S]*Rests on how the device is made: 1/);
  const said = JSON.parse((await run('why', WORKS, 'stop.act.S1', '--json')).out);
  expect(said).toMatchObject({ format: 'fettle-stop-why', version: 1, id: 'stop.act.S1', verdict: 'fails' });
  const near = await run('why', WORKS, 'stop.fault');
  expect(near.code).toBe(2);
  expect(near.err).toMatch(/Did you mean stop\.faults\?/);
  expect((await run('why', fixture('unknown.json'), 'stop.faults')).err).toMatch(
    /No stop circuit is drawn yet/,
  );
});

test('derived: numbers of what moves are typed; a wrong one is refused in words, one far off is asked back, and nothing is written', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'machine.json');
    copyFileSync(WORKS, file);
    const written = readFileSync(file, 'utf8');
    for (const [word, says] of [
      ['X.limt-low=4 mm', /did you mean limit-low\?/],
      ['X.limit-low=4 kg', /limit switch acts/],
      ['X.limit-low', /has no “=”/],
      ['X.travel=900 km', /add --anyway/],
    ] as const) {
      const refused = await run('stop', file, word);
      expect(refused.code).toBe(2);
      expect(refused.err).toMatch(says);
    }
    expect(readFileSync(file, 'utf8')).toBe(written);
    const set = await run('stop', file, 'X.limit-low=3 mm', 'Z.vertical=no');
    expect(set.out).toMatch(/Recorded: stop circuit: .*X.*Z/);
    const kept = JSON.parse(readFileSync(file, 'utf8')).stop.motions;
    expect([kept.X.settings['limit-low'], kept.Z.settings.vertical]).toEqual(['3 mm', 'no']);
    copyFileSync(fixture('unknown.json'), file);
    expect((await run('stop', file, 'X.travel=1 m')).err).toMatch(/--pattern/);
  });
});

test('derived: elements, wires and settings are changed by words; only tried, nothing is written; a slip is asked back', async () => {
  await inFolder(async (folder) => {
    const file = join(folder, 'works.json');
    copyFileSync(WORKS, file);
    const before = readFileSync(file, 'utf8');
    const stop = () => JSON.parse(readFileSync(file, 'utf8')).stop;
    const tried = await run('stop', file, 'K1.linked=yes', '--try');
    expect(tried.out).toMatch(/Nothing is recorded[\s\S]*stop\.unnoticed/);
    for (const words of [
      ['K1.linked=perhaps'],
      ['K77.linked=yes'],
      ['K1.1'],
      ['K1.1', 'K1.99'],
      ['--add', 'K9'],
      ['--remove', 'T1'],
      ['--cut', '../../etc'],
      ['--try'],
    ]) {
      const refused = await run('stop', file, ...words);
      expect(refused.code, words.join(' ')).toBe(2);
      expect(refused.err, words.join(' ')).not.toMatch(/undefined|NaN|at .*\.ts/);
    }
    expect(readFileSync(file, 'utf8')).toBe(before);
    expect((await run('stop', file, 'K1.linked=yes')).out).toContain('Recorded: stop circuit: K1 changed.');
    expect(stop().elements.K1.settings.linked).toBe('yes');
    await run('stop', file, '--add', 'K9=relay', 'K9.nc=2');
    await run('stop', file, 'F1.2', 'K9.A1', 'cable=W7');
    expect(stop().elements.K9).toMatchObject({ kind: 'relay', settings: { nc: '2' } });
    expect(Object.values(stop().wires)).toContainEqual(
      expect.objectContaining({ from: 'F1.2', to: 'K9.A1', cable: 'W7' }),
    );
    await run('stop', file, '--remove', 'K9');
    await run('stop', file, 'K1.linked=no');
    expect(stop()).toEqual(JSON.parse(before).stop);
  });
}, 120_000);

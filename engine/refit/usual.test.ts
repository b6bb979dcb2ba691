import { expect, test } from 'vitest';
import { applyEdit, undoOf } from './edit.ts';
import { readEdits, readRefit } from './read.ts';
import { SAMPLE } from './sample.fixture.ts';
import { sayChange } from './say.ts';
import type { Change, Edit, Refit, WiringDevice } from './types.ts';
import { isUsual, usualNames, withStated, withUsual } from './usual.ts';
import { writeEdits, writeRefit } from './write.ts';

const bare: WiringDevice = {
  id: 'K77',
  kind: 'relay',
  name: '',
  part: null,
  where: 'cabinet',
  settings: { 'coil-volts': '24 V' },
  terminals: {},
  pins: {},
};

function put(refit: Refit, now: WiringDevice | null): { refit: Refit; change: Change } {
  const old = refit.wiring.devices.K77 ?? null;
  const change: Change = { do: 'device', id: 'K77', old, new: now };
  const done = applyEdit(refit, { changes: [change] });
  if (!done.ok) throw new Error(done.problem.message);
  return { refit: done.value, change };
}

test('derived: taken as usual, then looked at: only what nobody stated is marked, and stating it takes the mark away', () => {
  const taken = withUsual(bare, { 'coil-current': '40 mA', 'coil-volts': '12 V' });
  expect(taken.settings).toEqual({ 'coil-volts': '24 V', 'coil-current': '40 mA' });
  expect(usualNames(taken)).toEqual(['coil-current']);
  expect(isUsual(taken, 'coil-volts')).toBe(false);
  const looked = withStated(taken, 'coil-current', '40 mA');
  expect(looked).toEqual({ ...bare, settings: taken.settings });
  expect('usual' in looked).toBe(false);
  expect(withStated(taken, 'coil-current', '')).toEqual(bare);
  expect(withUsual(bare, {})).toBe(bare);
});

test('derived: a mark is kept in the file and in the history, and undoing gives back the very same', () => {
  const before = put(SAMPLE, bare).refit;
  const taken = withUsual(bare, { 'dc-amps': '5 A', 'coil-current': '40 mA' });
  const { refit, change } = put(before, taken);
  const again = readRefit(writeRefit(refit));
  expect(again.ok && again.value).toEqual(refit);
  expect(again.ok && again.value.wiring.devices.K77!.usual).toEqual(['coil-current', 'dc-amps']);
  const edit: Edit = {
    number: 1,
    who: 'a',
    when: '2026-01-02T10:00:00Z',
    basedOn: 0,
    changes: [change],
    says: sayChange(change),
  };
  const edits = readEdits(writeEdits([edit]));
  expect(edits.ok && edits.value).toEqual([edit]);
  const back = undoOf(edit, { number: 2, who: 'a', when: '2026-01-02T10:00:00Z', basedOn: 1 });
  const undone = applyEdit(refit, back);
  expect(undone.ok && undone.value).toEqual(before);
  expect(sayChange(change)).toBe(
    'device K77: dc-amps 5 A, coil-current 40 mA, coil-current, dc-amps as usual',
  );
  const looked = put(refit, withStated(taken, 'coil-current', '40 mA'));
  expect(sayChange(looked.change)).toBe('device K77: coil-current looked at, 40 mA');
  // Somebody who has not seen that it was looked at is told so.
  expect(applyEdit(looked.refit, { changes: [{ ...change, old: taken, new: null } as Change] }).ok).toBe(
    false,
  );
});

test('derived: a file from before has no mark and reads as stated; a mark without its setting means nothing', () => {
  const text = writeRefit(put(SAMPLE, bare).refit);
  expect(text).not.toContain('"usual"');
  const read = readRefit(text);
  expect(read.ok && usualNames(read.value.wiring.devices.K77!)).toEqual([]);
  const odd = { ...bare, usual: ['nothing', 'coil-volts', 'coil-volts', '__proto__'] };
  expect(usualNames(odd)).toEqual(['coil-volts']);
});

test('derived: a mark that is no list of names is refused with its place', () => {
  const document = JSON.parse(writeRefit(put(SAMPLE, bare).refit));
  for (const [usual, where] of [
    ['coil-volts', 'wiring.devices.K77.usual'],
    [[7], 'wiring.devices.K77.usual[0]'],
    [{ a: 1 }, 'wiring.devices.K77.usual'],
    [Array.from({ length: 500 }, (_, n) => `a${n}`), 'wiring.devices.K77.usual'],
  ] as const) {
    document.wiring.devices.K77.usual = usual;
    const read = readRefit(JSON.stringify(document));
    expect(read.ok ? '' : read.problem.where).toBe(where);
  }
});

import { strToU8, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { readArchive, writeArchive } from './archive.ts';
import { foldEdits } from './edit.ts';
import { newRefit } from './new.ts';
import { parseRefit } from './read.ts';
import type { Change, Edit, WiringDevice, WiringWire } from './types.ts';
import { writeEdits } from './write.ts';

const device = (id: string, kind: string, more: Partial<WiringDevice> = {}): WiringDevice => ({
  id,
  kind,
  name: '',
  part: null,
  where: '',
  settings: {},
  terminals: {},
  pins: {},
  ...more,
});

const wires = (...ends: readonly (readonly [string, string])[]): Record<string, WiringWire> =>
  Object.fromEntries(
    ends.map(([from, to], n) => [`w${n}`, { id: `w${n}`, from, to, cable: null, settings: {} }]),
  );

function readAgain(devices: readonly WiringDevice[], laid: Record<string, WiringWire>) {
  const read = parseRefit({
    ...newRefit({ id: 'hoist', name: 'Hoist', machine: 'mill' }),
    version: 4,
    wiring: {
      devices: Object.fromEntries(devices.map((each) => [each.id, each])),
      wires: laid,
      cables: {},
      settings: {},
    },
  });
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
}

const endsOf = (refit: ReturnType<typeof readAgain>) =>
  Object.values(refit.wiring.wires).map(({ from, to }) => `${from} ${to}`);

test('derived: on a bus the old L and N are plus and minus, wherever they stand', () => {
  const refit = readAgain(
    [
      device('T1', 'drive', {
        terminals: { N: { kind: 'feed', name: '', settings: { 'other-end': 'L', volts: '70 V' } } },
        pins: { L: { photo: 'drive.jpg', x: 0.5, y: 0.5 } },
      }),
    ],
    wires(['G2.plus', 'T1.L'], ['T1.N', 'G2.minus'], ['X0.L', 'G1.L']),
  );
  expect(endsOf(refit)).toEqual(['G2.plus T1.DC+', 'T1.DC- G2.minus', 'X0.L G1.L']);
  expect(Object.keys(refit.wiring.devices.T1!.pins)).toEqual(['DC+']);
  expect(refit.wiring.devices.T1!.terminals).toEqual({
    'DC-': { kind: 'feed', name: '', settings: { 'other-end': 'DC+', volts: '70 V' } },
  });
  expect(parseRefit(JSON.parse(JSON.stringify(refit)))).toEqual({ ok: true, value: refit });
});

test('derived: on three phases N was the second of them; on one it is what it is called', () => {
  const laid = wires(['F1.2', 'T3.L'], ['F1.4', 'T3.N'], ['F1.6', 'T3.L3']);
  expect(endsOf(readAgain([device('T3', 'inverter', { settings: { phases: 'three' } })], laid))).toEqual([
    'F1.2 T3.L1',
    'F1.4 T3.L2',
    'F1.6 T3.L3',
  ]);
  const single = wires(['F1.2', 'T3.L'], ['Q1.4', 'T3.N']);
  expect(endsOf(readAgain([device('T3', 'inverter')], single))).toEqual(['F1.2 T3.L', 'Q1.4 T3.N']);
});

test('derived: where the new names are in use, a wire on an old one is left for a person to look at', () => {
  const laid = wires(['G2.plus', 'T1.DC+'], ['X0.L1', 'T1.L']);
  expect(endsOf(readAgain([device('T1', 'drive')], laid))).toEqual(['G2.plus T1.DC+', 'X0.L1 T1.L']);
});

test('derived: a file of today with a wire on a mark that is not there any more is left as it is', () => {
  const laid = wires(['G2.plus', 'T1.L']);
  const refit = readAgain([device('T1', 'drive')], {});
  const today = { ...refit, wiring: { ...refit.wiring, wires: laid } };
  expect(parseRefit(JSON.parse(JSON.stringify(today)))).toEqual({ ok: true, value: today });
});

test('derived: a file with a history gets the new names by an edit after it, and still leads from its beginning', () => {
  const start = newRefit({ id: 'hoist', name: 'Hoist', machine: 'mill' });
  const laid = wires(['G2.plus', 'T1.L'], ['T1.N', 'G2.minus']);
  const edit = (number: number, ...changes: Change[]): Edit => ({
    number,
    who: 'bench',
    when: '2026-02-01T10:00:00Z',
    basedOn: number - 1,
    changes,
    says: 'a change',
  });
  const old = device('T1', 'drive');
  const edits = [
    edit(1, { do: 'device', id: 'T1', old: null, new: old }),
    edit(
      2,
      ...Object.values(laid).map((each): Change => ({ do: 'wire', id: each.id, old: null, new: each })),
    ),
    // A later edit of such a wire, which would be refused if what it changes had been renamed before it.
    edit(3, { do: 'wire', id: 'w0', old: laid.w0!, new: { ...laid.w0!, settings: { length: '2 m' } } }),
  ];
  const state = foldEdits(start, edits);
  if (!state.ok) throw new Error(state.problem.message);
  const bytes = zipSync({
    'refit.json': strToU8(JSON.stringify({ ...state.value, version: 4 })),
    'edits.jsonl': strToU8(writeEdits(edits)),
  });
  const read = readArchive(bytes);
  if (!read.ok) throw new Error(read.problem.message);
  expect(endsOf(read.value.refit)).toEqual(['G2.plus T1.DC+', 'T1.DC- G2.minus']);
  expect(read.value.edits).toHaveLength(4);
  expect(foldEdits(start, read.value.edits)).toEqual({ ok: true, value: read.value.refit });
  const again = writeArchive(read.value);
  if (!again.ok) throw new Error(again.problem.message);
  expect(readArchive(again.value)).toEqual(read);
});

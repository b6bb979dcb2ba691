import { expect, test } from 'vitest';
import { newRefit } from './new.ts';
import { parseRefit } from './read.ts';
import type { WiringDevice, WiringWire } from './types.ts';

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

/** A small invented cabinet: mains, transformer and bus for two drives, 24 V for a control, a contactor and a lamp. */
import { newRefit } from '../../refit/index.ts';
import type { Refit, Wiring } from '../../refit/types.ts';
import { readWiring } from '../wiring/read.ts';
import type { ReadWiring } from '../wiring/types.ts';

type Typed = Readonly<Record<string, string>>;

const device = (id: string, kind: string, settings: Typed = {}, where = 'cabinet') => ({
  id,
  kind,
  name: '',
  part: null,
  where,
  settings,
  terminals: {},
  pins: {},
});

const devices = [
  device('X1', 'mains-inlet', { volts: '230 V', hertz: '50 Hz', current: '16 A' }),
  device('F1', 'breaker', { amps: '10 A', curve: 'C' }),
  device('T1', 'transformer', { primary: '230 V', secondary: '50 V', power: '1 kVA' }),
  device('F4', 'fuse', { amps: '20 A', curve: 'slow' }),
  device('G2', 'bus', { volts: '75 V', current: '11 A', capacitance: '22 mF', bleeder: '220 Ω' }),
  device('F2', 'fuse', { amps: '10 A', curve: 'slow', 'dc-volts': '125 V' }),
  device('T2', 'drive', { volts: '70 V', 'supply-current': '3 A', motor: 'brushed', 'motor-current': '8 A' }),
  device('T3', 'drive', { volts: '70 V', 'supply-current': '4 A', motor: 'brushed', 'motor-current': '8 A' }),
  device('M2', 'servo-motor', { type: 'brushed', current: '6 A' }, 'slide'),
  device('G1', 'supply', { volts: '24 V', current: '5 A', earthed: 'yes' }),
  device('F3', 'fuse', { amps: '4 A', curve: 'slow' }),
  device('A1', 'control', { current: '0.5 A', inputs: '2', outputs: '1' }),
  device('K1', 'contactor', { 'coil-current': '0.15 A', 'coil-resistance': '160 Ω' }),
  device('P1', 'lamp', { 'coil-volts': '24 V', 'coil-current': '50 mA' }),
  device('S1', 'mushroom', {}),
  device('E1', 'earth-bar', {}),
];

/** From, to, area in mm², length in m. */
const wires: readonly (readonly [string, string, string, string])[] = [
  ['X1.L1', 'F1.1', '2.5', '0.5'],
  ['F1.2', 'T1.1', '1.5', '1'],
  ['T1.2', 'X1.N', '1.5', '1'],
  ['F1.2', 'G1.L', '1.5', '1'],
  ['G1.N', 'X1.N', '1.5', '1'],
  ['T1.3', 'F4.1', '4', '0.3'],
  ['F4.2', 'G2.AC1', '4', '0.3'],
  ['G2.AC2', 'T1.4', '4', '0.3'],
  ['G2.plus', 'F2.1', '2.5', '0.3'],
  ['F2.2', 'T2.DC+', '2.5', '0.5'],
  ['F2.2', 'T3.DC+', '2.5', '0.5'],
  ['T2.DC-', 'G2.minus', '2.5', '0.5'],
  ['T3.DC-', 'G2.minus', '2.5', '0.5'],
  ['G1.plus', 'F3.1', '1', '0.3'],
  ['F3.2', 'A1.plus', '1', '2'],
  ['A1.minus', 'G1.minus', '1', '2'],
  ['F3.2', 'S1.11', '0.75', '10'],
  ['S1.12', 'K1.A1', '0.75', '10'],
  ['K1.A2', 'G1.minus', '0.75', '1'],
  ['A1.out1', 'P1.x1', '0.75', '3'],
  ['P1.x2', 'G1.minus', '0.75', '3'],
  ['X1.PE', 'E1.1', '2.5', '0.5'],
  ['E1.2', 'G1.PE', '1.5', '1'],
  ['E1.3', 'T1.PE', '1', '1'],
];

export const WIRING: Wiring = {
  devices: Object.fromEntries(devices.map((each) => [each.id, each])),
  wires: Object.fromEntries(
    wires.map(([from, to, section, length], k) => [
      `W${k + 1}`,
      {
        id: `W${k + 1}`,
        from,
        to,
        cable: null,
        settings: { section: `${section} mm²`, length: `${length} m` },
      },
    ]),
  ),
  cables: {},
  settings: {},
};

export const wireAt = (from: string, to: string): string =>
  `W${wires.findIndex(([a, b]) => a === from && b === to) + 1}`;

/** The cabinet with settings of the wiring and of devices changed; null takes a device's setting away. */
export function cabinetWith(
  settings: Typed = {},
  changes: Readonly<Record<string, Readonly<Record<string, string | null>>>> = {},
  wiring: Wiring = WIRING,
): { readonly refit: Refit; readonly wiring: ReadWiring } {
  const changed = (typed: Typed, change: Readonly<Record<string, string | null>> = {}): Typed =>
    Object.fromEntries(
      Object.entries({ ...typed, ...change }).filter((entry): entry is [string, string] => entry[1] !== null),
    );
  const whole: Wiring = {
    ...wiring,
    devices: Object.fromEntries(
      Object.values(wiring.devices).map((each) => [
        each.id,
        { ...each, settings: changed(each.settings, changes[each.id]) },
      ]),
    ),
    wires: Object.fromEntries(
      Object.values(wiring.wires).map((each) => [
        each.id,
        { ...each, settings: changed(each.settings, changes[each.id]) },
      ]),
    ),
    settings,
  };
  const refit = { ...newRefit({ id: 'r1', name: 'Cabinet', machine: 'lathe' }), wiring: whole };
  return { refit, wiring: readWiring(whole, refit) };
}

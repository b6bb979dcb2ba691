/** The circuits of circuits.py, written a second time by hand. */
import type { Circuit, Diode, Element, Transistor } from '../../engine/circuit/network/index.ts';

const R = (id: string, a: string, b: string, ohms: number): Element => ({ kind: 'resistor', id, a, b, ohms });
const V = (id: string, plus: string, minus: string, volts: number): Element => ({
  kind: 'voltage',
  id,
  plus,
  minus,
  volts,
  ohms: 0,
});
const C = (id: string, a: string, b: string, farads: number, startVolts = 0): Element => ({
  kind: 'capacitor',
  id,
  a,
  b,
  farads,
  startVolts,
});
const L = (id: string, a: string, b: string, henries: number, startAmps = 0): Element => ({
  kind: 'inductor',
  id,
  a,
  b,
  henries,
  ohms: 0,
  startAmps,
});
const I = (id: string, from: string, to: string, amps: number): Element => ({
  kind: 'current',
  id,
  from,
  to,
  amps,
});
const diode =
  (saturation: number, emission: number, ohms: number, breakdown?: number) =>
  (id: string, anode: string, cathode: string): Diode => ({
    kind: 'diode',
    id,
    anode,
    cathode,
    saturation,
    emission,
    ohms,
    ...(breakdown === undefined ? {} : { breakdown }),
  });
const DS = diode(1e-12, 1, 0);
const DB = diode(1e-9, 1.3, 0.01);
const DL = diode(1e-18, 2, 2);
const DI = diode(1e-15, 1.6, 1);
const DZ = diode(1e-14, 1, 0, 5.1);
const transistor =
  (polarity: 'npn' | 'pnp', saturation: number, gain: number, reverseGain: number) =>
  (id: string, collector: string, base: string, emitter: string): Transistor => ({
    kind: 'transistor',
    id,
    polarity,
    collector,
    base,
    emitter,
    gain,
    reverseGain,
    saturation,
  });
const N200 = transistor('npn', 1e-14, 200, 2);
const N150 = transistor('npn', 1e-14, 150, 3);
const P120 = transistor('pnp', 2e-14, 120, 2);

const circuit = (...elements: Element[]): Circuit => ({ elements, references: ['0'] });
const openCollector = (drive: number): Circuit =>
  circuit(
    V('V1', 'vcc', '0', 5),
    R('Rp', 'vcc', 'out', 1000),
    N150('Q1', 'out', 'b', '0'),
    V('Vb', 'drv', '0', drive),
    R('Rb', 'drv', 'b', 4700),
    R('Rin', 'out', '0', 20e3),
  );

/** What is asked: volts of a node against another, or amperes of an element. */
type Asked = readonly ['volts', string, string] | readonly ['amps', string];
const volts = (node: string, against = '0'): Asked => ['volts', node, against];
const amps = (id: string): Asked => ['amps', id];

export const OP: Readonly<Record<string, readonly [Circuit, Readonly<Record<string, Asked>>]>> = {
  divider: [
    circuit(
      V('V1', 'in', '0', 24),
      R('R1', 'in', 'mid', 4700),
      R('R2', 'mid', '0', 1000),
      R('RL', 'mid', '0', 10e3),
    ),
    { mid: volts('mid'), source: amps('V1') },
  ],
  'unbalanced bridge of resistors': [
    circuit(
      V('V1', 'in', '0', 10),
      R('Rs', 'in', 'top', 12),
      R('R1', 'top', 'l', 100),
      R('R2', 'l', '0', 220),
      R('R3', 'top', 'r', 150),
      R('R4', 'r', '0', 180),
      R('R5', 'l', 'r', 47),
    ),
    { l: volts('l'), r: volts('r'), source: amps('V1') },
  ],
  'opto input with series resistor': [
    circuit(
      V('V1', 'in', '0', 24),
      R('R1', 'in', 'a', 2200),
      DI('D1', 'a', 'c'),
      N200('Q1', 'c', 'b', '0'),
      V('Vb', 'drv', '0', 5),
      R('Rb', 'drv', 'b', 10e3),
    ),
    { led: volts('a', 'c'), left: volts('c'), source: amps('V1') },
  ],
  'open collector with pull-up, on': [openCollector(5), { out: volts('out'), source: amps('V1') }],
  'open collector with pull-up, off': [openCollector(0), { out: volts('out') }],
  'encoder supply at the far end of its cable': [
    circuit(
      V('V1', 's', '0', 5),
      R('Rsrc', 's', 'a', 0.05),
      R('Rgo', 'a', 'b', 1.2315),
      R('Rback', 'c', '0', 1.2315),
      I('Ienc', 'b', 'c', 0.15),
      R('Rterm', 'b', 'c', 330),
    ),
    { 'at encoder': volts('b', 'c'), '0 V lifted': volts('c') },
  ],
  'indicator lamp (LED) on 24 V': [
    circuit(V('V1', 'in', '0', 24), R('R1', 'in', 'a', 2700), DL('D1', 'a', '0')),
    { led: volts('a'), amps: amps('V1') },
  ],
  'PNP sensor into an opto input': [
    circuit(
      V('V1', 'p', '0', 24),
      P120('Q1', 'out', 'b', 'p'),
      R('Rb', 'b', '0', 22e3),
      R('Rleak', 'out', '0', 47e3),
      R('Rin', 'out', 'a', 3300),
      DI('D1', 'a', '0'),
    ),
    { out: volts('out'), led: volts('a'), source: amps('V1') },
  ],
  'PNP output working against an NPN output': [
    circuit(
      V('V1', 'p', '0', 24),
      P120('Q1', 'out', 'b1', 'p'),
      R('R1', 'b1', '0', 22e3),
      R('Rs', 'out', 'x', 100),
      N200('Q2', 'x', 'b2', '0'),
      R('R2', 'p', 'b2', 47e3),
    ),
    { out: volts('out'), x: volts('x'), source: amps('V1') },
  ],
  'two supplies joined through diodes': [
    circuit(
      V('V1', 'a', '0', 24.5),
      R('R1', 'a', 'a1', 0.1),
      DB('D1', 'a1', 'bus'),
      V('V2', 'b', '0', 24.2),
      R('R2', 'b', 'b1', 0.15),
      DB('D2', 'b1', 'bus'),
      R('RL', 'bus', '0', 6),
    ),
    { bus: volts('bus'), first: amps('V1'), second: amps('V2') },
  ],
  'analogue command of 10 V through a long cable': [
    circuit(
      V('V1', 's', '0', 10),
      R('Ro', 's', 'a', 47),
      R('Rgo', 'a', 'b', 2.05),
      R('Rin', 'b', 'c', 20e3),
      R('Rback', 'c', '0', 2.05),
      R('Rcm', 'c', '0', 100e3),
      V('Vn', 'e', '0', 0.8),
      R('Rn', 'e', 'c', 22e3),
    ),
    { 'at input': volts('b', 'c'), source: amps('V1') },
  ],
  'dump resistor and divider that watches the bus': [
    circuit(
      V('V1', 's', '0', 82),
      R('Rs', 's', 'bus', 0.25),
      R('Rdump', 'bus', '0', 12),
      R('R1', 'bus', 'sense', 100e3),
      R('R2', 'sense', '0', 3900),
      DS('D1', 'sense', '0'),
    ),
    { bus: volts('bus'), sense: volts('sense'), source: amps('V1') },
  ],
  'Zener diode holding 5 V': [
    circuit(V('V1', 'in', '0', 12), R('R1', 'in', 'z', 330), DZ('D1', '0', 'z'), R('RL', 'z', '0', 1000)),
    { z: volts('z'), source: amps('V1') },
  ],
};

/** A reading at a moment, a mean, extreme or r.m.s. over a stretch, or the moment a falling value passes a level. */
export type Measure =
  | readonly ['at', Asked, number]
  | readonly ['mean' | 'highest' | 'lowest' | 'rms', Asked, from: number, to: number]
  | readonly ['falls to', Asked, number];

interface Moving {
  readonly circuit: Circuit;
  readonly until: number;
  readonly asks: Readonly<Record<string, Measure>>;
}

const sine = (id: string, plus: string, minus: string, amplitude: number, hertz: number): Element => ({
  kind: 'voltage',
  id,
  plus,
  minus,
  volts: { shape: 'sine', amplitude, hertz, phase: 0, offset: 0 },
  ohms: 0,
});

export const TRAN: Readonly<Record<string, Moving>> = {
  'relay coil switched on': {
    circuit: circuit(V('V1', 'in', '0', 24), L('L1', 'in', 'x', 1.2), R('R1', 'x', '0', 480)),
    until: 20e-3,
    asks: {
      'current at 2.5 ms': ['at', amps('L1'), 2.5e-3],
      'current at 10 ms': ['at', amps('L1'), 10e-3],
    },
  },
  'relay coil switched off, with diode': {
    circuit: circuit(
      L('L1', 'a', 'x', 1.2, 0.05),
      R('R1', 'x', '0', 480),
      DS('D1', '0', 'a'),
      R('Ro', 'a', '0', 1e9),
    ),
    until: 8e-3,
    asks: {
      'current at 1 ms': ['at', amps('L1'), 1e-3],
      'current at 4 ms': ['at', amps('L1'), 4e-3],
      'time to 15 %': ['falls to', amps('L1'), 0.0075],
    },
  },
  'relay coil switched off, with a resistor across it only': {
    circuit: circuit(L('L1', 'a', 'x', 1.2, 0.05), R('R1', 'x', '0', 480), R('Rp', 'a', '0', 4700)),
    until: 2e-3,
    asks: {
      'current at 0.1 ms': ['at', amps('L1'), 1e-4],
      'volts at 0.1 ms': ['at', volts('a'), 1e-4],
    },
  },
  'bus capacitor through its bleeder': {
    circuit: circuit(C('C1', 'bus', '0', 22e-3, 81.048651), R('R1', 'bus', '0', 220)),
    until: 6,
    asks: { 'volts at 1 s': ['at', volts('bus'), 1], 'time to 60 V': ['falls to', volts('bus'), 60] },
  },
  'half-wave rectifier with capacitor': {
    circuit: circuit(
      sine('V1', 'in', '0', 33.94, 50),
      R('Rs', 'in', 'a', 0.5),
      DB('D1', 'a', 'out'),
      C('C1', 'out', '0', 4.7e-3),
      R('RL', 'out', '0', 40),
    ),
    until: 0.2,
    asks: {
      mean: ['mean', volts('out'), 0.16, 0.2],
      highest: ['highest', volts('out'), 0.16, 0.2],
      lowest: ['lowest', volts('out'), 0.16, 0.2],
      'first peak of current': ['highest', amps('Rs'), 0, 0.01],
    },
  },
  'bridge rectifier with capacitor': {
    circuit: circuit(
      sine('V1', 'p', 'n', 70.7107, 50),
      R('Rs', 'p', 'p1', 0.25),
      DB('D1', 'p1', 'bus'),
      DB('D2', 'n', 'bus'),
      DB('D3', '0', 'p1'),
      DB('D4', '0', 'n'),
      C('C1', 'bus', '0', 22e-3),
      R('RL', 'bus', '0', 7.4),
      R('Rn', 'n', '0', 1e5),
    ),
    until: 0.3,
    asks: {
      mean: ['mean', volts('bus'), 0.26, 0.3],
      highest: ['highest', volts('bus'), 0.26, 0.3],
      lowest: ['lowest', volts('bus'), 0.26, 0.3],
      'secondary r.m.s.': ['rms', amps('Rs'), 0.26, 0.3],
    },
  },
  'input filter behind a contact': {
    circuit: circuit(
      {
        kind: 'voltage',
        id: 'V1',
        plus: 'in',
        minus: '0',
        volts: {
          shape: 'steps',
          steps: [
            [0, 0],
            [1e-3, 24],
          ],
        },
        ohms: 0,
      },
      R('R1', 'in', 'a', 3300),
      C('C1', 'a', '0', 100e-9),
      R('R2', 'a', '0', 10e3),
    ),
    until: 5e-3,
    asks: { 'volts at 1.2 ms': ['at', volts('a'), 1.2e-3], 'volts at 2 ms': ['at', volts('a'), 2e-3] },
  },
  'coil, capacitor and resistor ringing': {
    circuit: circuit(
      V('V1', 'in', '0', 10),
      R('R1', 'in', 'a', 8),
      L('L1', 'a', 'b', 10e-3),
      C('C1', 'b', '0', 10e-6),
    ),
    until: 6e-3,
    asks: {
      'volts at 1 ms': ['at', volts('b'), 1e-3],
      highest: ['highest', volts('b'), 0, 6e-3],
      'volts at 5 ms': ['at', volts('b'), 5e-3],
    },
  },
};

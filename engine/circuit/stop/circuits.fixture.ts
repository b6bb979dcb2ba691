/** The three circuits of the worked single-fault analysis: one channel; two contactors; two contactors with mirror contacts. */
import type { StopCircuit } from '../../refit/types.ts';
import { draw } from './draw.ts';

const motion = { id: 'X', kind: 'axis' as const, name: 'X axis', drive: 'D1', brake: null, settings: {} };
const drive = ['D1 drive', 'X drive', { enable: 'no' }] as const;
const mains = ['G2 supply', 'Mains', { earthed: 'no' }] as const;

/** One opening contact, one contactor that holds itself. */
export const circuitA = (earthed = 'yes'): StopCircuit =>
  draw({
    pattern: null,
    elements: [
      ['G1 supply', '24 V', { earthed }],
      ['F1 fuse', ''],
      ['S1 mushroom', '', { nc: '1' }],
      ['S2 button', ''],
      ['K1 contactor', '', { main: '1', nc: '0' }],
      mains,
      drive,
    ],
    runs: [
      'G1.plus F1.1',
      'F1.2 S1.11',
      'S1.12 S2.13',
      'S2.13 K1.13',
      'S2.14 K1.A1',
      'K1.14 K1.A1',
      'K1.A2 G1.minus',
      'G2.plus K1.1',
      'K1.2 D1.L',
      'G2.minus D1.N',
    ],
    motions: [motion],
  });

/** Two channels; with `mirror`, true mirror contacts in the start path and K3 proven by its enable contact. */
export const circuitBC = (mirror: boolean, earthed = 'yes', low = false): StopCircuit =>
  draw({
    pattern: null,
    elements: [
      ['G1 supply', '24 V', { earthed }],
      ['F1 fuse', ''],
      ['S1 mushroom', '', { nc: '2' }],
      ['S2 button', ''],
      ['K1 contactor', '', { main: '1', linked: mirror ? 'yes' : 'no' }],
      ['K2 contactor', '', { main: '1', linked: mirror ? 'yes' : 'no' }],
      ['K3 relay', '', { no: '2', nc: '1', linked: mirror ? 'yes' : 'no', 'drop-out': '30 ms' }],
      mains,
      ['D1 drive', 'X drive', { enable: 'yes' }],
    ],
    runs: [
      'G1.plus F1.1',
      ...(low
        ? [
            // The contacts stand between coil and 0 V.
            'F1.2 K1.A1 K2.A1',
            'G1.minus S1.11',
            'S1.11 S1.21',
            'S1.12 K3.13',
            'S1.22 K3.23',
            'K3.13 K1.13',
            'K3.23 K2.13',
            'K3.14 K1.A2',
            'K3.24 K2.A2',
            'K1.14 K1.A2',
            'K2.14 K2.A2',
          ]
        : [
            'F1.2 S1.11',
            'S1.11 S1.21',
            'S1.12 K3.13',
            'S1.22 K3.23',
            'K3.13 K1.13',
            'K3.23 K2.13',
            'K3.14 K1.A1',
            'K3.24 K2.A1',
            'K1.14 K1.A1',
            'K2.14 K2.A1',
            'K1.A2 G1.minus',
            'K2.A2 G1.minus',
          ]),
      'F1.2 S2.13',
      // Without mirror contacts nothing of the contactors stands in the start path.
      ...(mirror ? ['S2.14 K1.51', 'K1.52 K2.51', 'K2.52 K3.A1'] : ['S2.14 K3.A1']),
      'K3.A2 G1.minus',
      ...(mirror ? ['F1.2 K3.51', 'K3.52 D1.EN'] : ['F1.2 D1.EN']),
      'D1.COM G1.minus',
      'G2.plus K1.1',
      'K1.2 K2.1',
      'K2.2 D1.L',
      'G2.minus D1.N',
    ],
    motions: [motion],
  });
